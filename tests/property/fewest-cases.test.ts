import { describe, expect, it } from 'vitest';
import { type Random, seededRandom } from '#lib/kernel/random.ts';
import { solveMilp } from '#lib/milp/solve.ts';
import { type CaseKind, caseKinds } from '#lib/packing/case-kinds.ts';
import { fewestCases } from '#lib/packing/fewest-cases.ts';
import { firstFit } from '#lib/packing/first-fit.ts';
import { TWO_PERSONS } from '#lib/packing/lift-mark.ts';
import { loadOf } from '#lib/packing/load.ts';
import { type Piece, pieceOf } from '#lib/packing/piece.ts';
import { kilograms, metres } from '#lib/units/quantity.ts';
import { demoModels } from '#seeds/load.ts';
import { caseProgram } from '#tests/support/plans/case-program.ts';

const MODELS = demoModels();
const HOUSE_CASES = caseKinds(MODELS);

interface Drawn {
  readonly pieces: readonly Piece[];
  readonly cases: readonly CaseKind[];
  readonly onePerson: number;
  readonly twoPersons: number;
}

/** Half of the loads from the catalogue into the house's cases, half made up of pieces that share a case two or three at a time. */
function drawLoad(random: Random, index: number): Drawn {
  const whole = (least: number, most: number): number => least + Math.floor(random() * (most - least + 1));
  const onePerson = whole(15, 25);
  const twoPersons = random() < 0.5 ? TWO_PERSONS : onePerson;
  if (index % 2 === 0) {
    const chosen = Array.from({ length: whole(4, 18) }, () => MODELS[whole(0, MODELS.length - 1)]);
    const pieces = chosen.flatMap((model, at) => (model === undefined ? [] : [pieceOf({ model, serial: `N${at}` })]));
    return { pieces, cases: HOUSE_CASES, onePerson, twoPersons };
  }
  const size = (edge: number) => ({ length: metres(edge), width: metres(0.3), height: metres(0.2) });
  const kinds = [0.5, 0.8].slice(0, whole(1, 2));
  const [model] = MODELS;
  if (model === undefined) throw new Error('The catalogue is empty.');
  return {
    cases: kinds.map((edge) => ({ name: `Case ${edge}`, size: size(edge), mass: kilograms(edge * 4) })),
    pieces: Array.from({ length: whole(5, 16) }, (_, at) => ({
      ...pieceOf({ model, serial: `N${at}` }),
      number: `M-${at}`,
      mass: kilograms(whole(15, 120) / 10),
      size: size(whole(4, 40) / 100),
    })),
    onePerson,
    twoPersons,
  };
}

describe('the fewest cases', () => {
  it('are as many as an integer program finds, on random loads of the catalogue and of made-up pieces', {
    timeout: 280_000,
  }, async () => {
    const random = seededRandom(4_117);
    let agreed = 0;
    let better = 0;
    let effort = 0;
    let settled = 0;
    for (let index = 0; agreed < 210; index += 1) {
      const drawn = drawLoad(random, index);
      const program = caseProgram(drawn, 12_000);
      if (program === null) continue;
      const load = loadOf(drawn);
      const found = fewestCases(load);
      effort += found.effort;
      if (found.fillings.length < firstFit(load).length) better += 1;
      expect(found.bound, `load ${index}`).toBeLessThanOrEqual(found.fillings.length);
      if (found.bound === found.fillings.length) settled += 1;
      const answer = await solveMilp(program, { presolve: 'off', seconds: 60 });
      const optimum =
        answer.kind === 'solved' && answer.stop === 'gap reached' ? Math.round(answer.objective) : answer.kind;
      expect(optimum, `load ${index}`).toBe(found.fillings.length);
      agreed += 1;
    }
    console.info(
      `packing: ${agreed} loads in as few cases as the integer program; proven by ourselves in ${settled}, first fit needed more in ${better}; effort ${effort}`,
    );
    expect(agreed).toBeGreaterThanOrEqual(200);
    expect(settled).toBeGreaterThanOrEqual(200);
    expect(better).toBeGreaterThan(5);
  });
});
