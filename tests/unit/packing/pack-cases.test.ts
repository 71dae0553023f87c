import { describe, expect, it } from 'vitest';
import { type CaseKind, caseKinds } from '#lib/packing/case-kinds.ts';
import { consignmentOf } from '#lib/packing/consignment.ts';
import { fewestCases } from '#lib/packing/fewest-cases.ts';
import { firstFit } from '#lib/packing/first-fit.ts';
import { loadOf } from '#lib/packing/load.ts';
import { type PackingInput, packCases, proofOf } from '#lib/packing/pack-cases.ts';
import { type Piece, pieceOf } from '#lib/packing/piece.ts';
import { kilograms, metres } from '#lib/units/quantity.ts';
import { demoModels } from '#seeds/load.ts';

const SMALL: CaseKind = { name: 'Case, small', size: size([0.54, 0.36, 0.2]), mass: kilograms(2.6) };
const LARGE: CaseKind = { name: 'Case, large', size: size([0.8, 0.5, 0.36]), mass: kilograms(7.9) };
const LIMIT = kilograms(25);

function size([length, width, height]: readonly [number, number, number]) {
  return { length: metres(length), width: metres(width), height: metres(height) };
}

function demoPiece(number: string, serial: string | null = null): Piece {
  const model = demoModels().find((each) => each.number === number);
  if (model === undefined) throw new Error(`The demo catalogue has no ${number}.`);
  return pieceOf({ model, serial });
}

function packed(pieces: readonly Piece[], change: Partial<PackingInput> = {}) {
  return packCases({ pieces, liftLimit: LIMIT, cases: [LARGE, SMALL], transport: 'road', ...change }).cases;
}

/** Three cases of 17.1 kg hold them, of which first fit makes four: 9.6 + 4.4 + 2.7, 8.6 + 6.1 + …, 7.1 + 4.6 + 3.7. */
function hardPieces(): readonly Piece[] {
  return [2.7, 2.5, 7.1, 4.4, 4.6, 3.7, 6.1, 9.6, 8.6].map((mass, index) => ({
    ...demoPiece('H-101'),
    number: `H-${index}`,
    mass: kilograms(mass),
  }));
}

describe('packing', () => {
  it('puts every piece of the catalogue somewhere exactly once, and no case is heavier than its limit', () => {
    const pieces = demoModels().map((model, index) => pieceOf({ model, serial: `N${index}` }));
    const cases = packed(pieces);
    const serials = cases.flatMap((each) => each.pieces.map(({ serial }) => serial));
    expect(serials.sort()).toEqual(pieces.map(({ serial }) => serial).sort());
    for (const each of cases.filter(({ name }) => name !== 'loose')) {
      const forTwo = each.pieces.some(({ mass }) => mass > LIMIT - LARGE.mass);
      expect(each.mass).toBeLessThanOrEqual(forTwo ? 100 / 3 : LIMIT + 1e-9);
      const own = each.name === SMALL.name ? SMALL.mass : LARGE.mass;
      expect(each.mass).toBeCloseTo(own + each.pieces.reduce((sum, piece) => sum + piece.mass, 0), 9);
    }
    expect(cases.length).toBeLessThan(pieces.length / 2);
    expect(cases.map(({ label }) => label)).toEqual(cases.map((_, index) => index + 1));
  });

  it('a long or heavy piece travels loose and is marked for who lifts it', () => {
    const cases = packed([demoPiece('R-176'), demoPiece('K-214')]);
    expect(cases.map(({ name, lift }) => [name, lift.mark])).toEqual([
      ['loose', 'two persons'],
      ['loose', 'one person'],
    ]);
  });

  it('fills a case by volume as well as by mass', () => {
    const light = { ...demoPiece('W-121'), mass: kilograms(0.5), size: size([0.5, 0.34, 0.16]) };
    expect(packed([light, light], { cases: [SMALL] }).length).toBe(2);
    expect(packed([light, light]).map(({ name }) => name)).toEqual(['Case, large']);
  });

  it('a piece that is too heavy for one person’s case goes into one for two, marked so, and nothing else is packed for two', () => {
    const cases = packed([demoPiece('H-348'), demoPiece('H-101'), demoPiece('D-153'), demoPiece('D-355')]);
    expect(cases.map(({ name, mass, lift }) => [name, Math.round(mass * 10) / 10, lift.mark])).toEqual([
      ['Case, large', 32.7, 'two persons'],
      ['Case, large', 21.1, 'one person, near the limit'],
      ['loose', 19.4, 'one person, near the limit'],
    ]);
  });

  it('says how many cases are proven, and what is open where the effort did not reach', () => {
    const few = packCases({ pieces: [demoPiece('D-153')], liftLimit: LIMIT, cases: [LARGE], transport: 'road' });
    expect(few.proof.sentence).toBe('1 case: fewer would not hold these pieces under the lift limit (proven).');
    const load = loadOf({ pieces: hardPieces(), cases: [LARGE], onePerson: LIMIT, twoPersons: LIMIT });
    const halted = fewestCases(load, 5);
    const settled = fewestCases(load);
    expect([firstFit(load).length, halted.fillings.length, halted.bound]).toEqual([4, 4, 3]);
    expect([settled.fillings.length, settled.bound]).toEqual([3, 3]);
    expect(proofOf(halted).sentence).toMatch(/^\d+ cases; at least \d+ are needed\. Whether fewer than \d+ would do/);
  });

  it('what is heavy for its size lies at the bottom, and the centre of mass is in the lower half', () => {
    const [one] = packed([demoPiece('W-353'), demoPiece('H-143'), demoPiece('E-107')]);
    expect(one?.pieces.map(({ number }) => number)).toEqual(['E-107', 'H-143', 'W-353']);
    expect(one?.centre).toBeGreaterThan(0);
    expect(one?.centre).toBeLessThan(LARGE.size.height / 2);
  });

  it('adds up watt-hours and tells packs with their drive from packs alone', () => {
    const [together] = packed([demoPiece('D-112'), demoPiece('S-151')]);
    expect(together?.wattHours).toBe(3 * 99);
    expect(together?.dangerousGoods[0]?.sentence).toMatch(
      /^UN 3481, .*3 packs, the largest of 99 Wh, 297 Wh together\. Small batteries/,
    );
    const [alone] = packed([demoPiece('S-164')]);
    expect(alone?.dangerousGoods[0]?.un).toBe('UN 3480');
    expect(alone?.dangerousGoods[0]?.sentence).toContain('Class 9 in full');
  });

  it('by air the state of charge is named, and packs alone go by cargo aircraft', () => {
    const [drive] = packed([demoPiece('D-131')], { transport: 'air' });
    expect(drive?.dangerousGoods[0]?.sentence).toContain('charged to 30 % or less, packing instruction 966');
    const [pack] = packed([demoPiece('S-156')], { transport: 'air' });
    expect(pack?.dangerousGoods[0]?.sentence).toContain('cargo aircraft only');
  });

  it('a petrol drive is drained, a can is empty and a hose is vented, each with its source', () => {
    const cases = packed([demoPiece('D-316'), demoPiece('S-231'), demoPiece('S-203')]);
    const notes = cases.flatMap((each) => each.dangerousGoods);
    expect(notes.map(({ id }) => id).sort()).toEqual([
      'drained petrol machine',
      'empty fuel can',
      'vented air equipment',
    ]);
    expect(notes.every(({ source, un, sentence }) => source !== '' && un === null && sentence !== '')).toBe(true);
    expect(notes.find(({ id }) => id === 'drained petrol machine')?.source).toContain('special provision 363');
  });

  it('the same pieces in another order give the same cases', () => {
    const pieces = ['D-131', 'H-126', 'W-112', 'R-107', 'C-207', 'S-156'].map((number) => demoPiece(number));
    const names = (cases: ReturnType<typeof packed>) => cases.map((each) => each.pieces.map(({ number }) => number));
    expect(names(packed([...pieces].reverse()))).toEqual(names(packed(pieces)));
  });

  it('takes the house’s own cases, smaller inside than out', () => {
    const models = demoModels();
    const kinds = caseKinds(models);
    expect(kinds.map(({ name }) => name)).toEqual(['Case, small', 'Case, large, with wheels']);
    expect(kinds[0]?.size.length).toBeCloseTo(0.53, 9);
    const cases = packed([demoPiece('H-126'), demoPiece('W-303')], { cases: kinds });
    expect(cases.map(({ name }) => name)).toEqual(['Case, small']);
  });

  it('counts the thousand points of a load without the small packs', () => {
    expect(consignmentOf(packed([demoPiece('D-112')])).sentence).toBe(
      'No goods that count for the thousand-point sum of ADR 1.1.3.6.',
    );
    const few = consignmentOf(packed([demoPiece('D-153'), demoPiece('S-164')]));
    expect(few).toMatchObject({ points: 3 * 17, within: true });
    const many = consignmentOf(packed(Array.from({ length: 30 }, () => demoPiece('D-153'))));
    expect(many.within).toBe(false);
    expect(many.sentence).toContain('above the limit');
  });
});
