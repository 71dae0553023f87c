import { describe, expect, it } from 'vitest';
import type { CaseKind } from '#lib/packing/case-kinds.ts';
import { type Piece, pieceOf } from '#lib/packing/piece.ts';
import { decidePutIn } from '#lib/packing/put-in.ts';
import { routeChecks } from '#lib/packing/route-check.ts';
import { kilograms, metres } from '#lib/units/quantity.ts';
import { demoModels } from '#seeds/load.ts';

const LARGE: CaseKind = {
  name: 'Case, large',
  size: { length: metres(0.8), width: metres(0.5), height: metres(0.36) },
  mass: kilograms(7.9),
};

function piece(number: string): Piece {
  const model = demoModels().find((each) => each.number === number);
  if (model === undefined) throw new Error(`The demo catalogue has no ${number}.`);
  return pieceOf({ model, serial: `${number}-1` });
}

function answer(inside: readonly string[], added: string): string {
  const decided = decidePutIn({
    label: 'Case 1',
    kind: LARGE,
    cases: [LARGE],
    onePerson: 25,
    twoPersons: 100 / 3,
    inside: inside.map(piece),
    pieces: [piece(added)],
  });
  return decided.ok ? 'in' : decided.reason.code;
}

describe('one more piece into a case', () => {
  it('goes in up to the lift limit, the room and the opening', () => {
    expect(answer(['D-112'], 'H-104')).toBe('in');
    expect(answer(['D-153'], 'D-131')).toBe('case-too-heavy');
    expect(answer(['S-203', 'S-203', 'S-203'], 'S-203')).toBe('case-too-full');
    expect(answer([], 'K-214')).toBe('piece-too-large');
  });

  it('a piece that needs two persons raises the limit to what two lift', () => {
    expect(answer(['H-348'], 'H-101')).toBe('in');
    expect(answer(['H-348'], 'H-122')).toBe('case-too-heavy');
  });
});

describe('ways of transport', () => {
  it('a drained machine is free of rules by road only, large packs travel in full, small ones with marks', () => {
    const load = (number: string) => routeChecks([{ number: 1, pieces: [piece(number)], gross: kilograms(20) }]);
    const standings = (number: string) => load(number).map(({ standing }) => standing);
    expect(standings('D-316')).toEqual(['no dangerous goods', 'ask the carrier first', 'ask the carrier first']);
    expect(standings('D-153')).toEqual(['in full', 'in full', 'ask the carrier first']);
    expect(standings('D-112')).toEqual(['with marks', 'with marks', 'ask the carrier first']);
    expect(standings('H-101')).toEqual(['no dangerous goods', 'no dangerous goods', 'no dangerous goods']);
    expect(load('D-153').every(({ sources }) => sources.length > 0)).toBe(true);
  });
});
