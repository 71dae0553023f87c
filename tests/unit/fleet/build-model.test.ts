import { describe, expect, it } from 'vitest';
import { buildModel } from '#lib/fleet/build-model.ts';
import { makeSolution } from '#lib/fleet/measure.ts';
import type { Option, Program } from '#lib/fleet/program.ts';
import { readSolution, writeStart } from '#lib/fleet/read-solution.ts';
import { checkValues } from '#lib/milp/check-values.ts';

const option = (id: string, item: number, time: number): Option => ({
  id,
  needs: [{ item, count: 1 }],
  cost_minor: 0,
  time,
});
const ITEMS = ['small drive', 'large drive', 'long bar', 'short bar'];

/** Two drives, each a way of its own, and the same two bars for both. */
function twoWays(secondBars: readonly Option[]): Program {
  const bars = [option('long', 2, 30), option('short', 3, 20)];
  const branches = [
    { family: 'small', chance: 1, roles: [[option('small', 0, 100)], bars] },
    { family: 'large', chance: 1, roles: [[option('large', 1, 60)], secondBars] },
  ];
  return {
    jobs: [{ id: 'gates', qty: 7, moveTime: 10, branches }],
    items: ITEMS.map((id) => ({ id, cost_minor: 100, pieces: 1, free: 2 })),
    crews: 1,
    secondsPerCrew: 10_000,
    labour_minor_per_second: 1,
  };
}

const modelOf = (program: Program) =>
  buildModel({ program, aim: 'cost', settled: [], unserved: 0, crewsAlike: 'kept alike' });
const KIT_COLUMNS = ITEMS.length;

describe('the program of a plan', () => {
  it('has one column for an option of a slot that ways of a job share, whatever the options are called', () => {
    const shared = twoWays([option('long again', 2, 30), option('short again', 3, 20)]);
    expect(modelOf(shared).sparse.columns - KIT_COLUMNS).toBe(4);
    const swifter = twoWays([option('long', 2, 25), option('short', 3, 20)]);
    expect(modelOf(swifter).sparse.columns - KIT_COLUMNS).toBe(6);
  });

  it('gives a plan back that shares a slot out over two ways, with the same measures', () => {
    const program = twoWays([option('long again', 2, 30), option('short again', 3, 20)]);
    const model = modelOf(program);
    const solution = makeSolution(program, [
      { job: 0, crew: 0, branch: 0, options: [0, 0], qty: 2 },
      { job: 0, crew: 0, branch: 0, options: [0, 1], qty: 1 },
      { job: 0, crew: 0, branch: 1, options: [0, 1], qty: 4 },
    ]);
    const checked = checkValues(model.sparse, writeStart({ program, model, solution }));
    expect(checked.kind).toBe('sound');
    if (checked.kind !== 'sound') return;
    expect(checked.objective).toBe(solution.measures.cost);
    const read = readSolution({ program, model, values: checked.values });
    expect(read.measures).toEqual(solution.measures);
    expect(read.uses.filter((use) => use.branch === 1).reduce((sum, use) => sum + use.qty, 0)).toBe(4);
  });
});
