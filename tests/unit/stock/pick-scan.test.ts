import { describe, expect, it } from 'vitest';
import { missingObligatory, whyObligatory } from '#lib/stock/obligatory.ts';
import { decidePick, type PickQuestion, type PickRow, type ScannedUnit } from '#lib/stock/pick-scan.ts';
import { demoModels } from '#seeds/load.ts';

const UNIT: ScannedUnit = {
  serial: 'D112-01',
  model: 'D-112',
  role: 'drive',
  depot: 'VEN',
  bay: 'A14',
  state: 'ready',
  inspectionDueOn: '2027-01-01',
  calibrationDueOn: null,
  inspectionDoneOn: '2026-01-01',
  calibrationDoneOn: null,
};
const ROW: PickRow = { id: 1, serial: 'D112-01', model: 'D-112', role: 'drive', state: 'held' };
const QUESTION: PickQuestion = {
  serial: 'D112-01',
  unit: UNIT,
  rows: [ROW],
  otherBooking: null,
  isFree: true,
  window: { starts_on: '2026-03-16', ends_before: '2026-03-18' },
};

function answer(change: Partial<PickQuestion>): string {
  const decided = decidePick({ ...QUESTION, ...change });
  return decided.ok ? decided.value.kind : decided.reason.code;
}

describe('a scanned unit', () => {
  it('that left with the booking is not picked again', () => {
    for (const state of ['out', 'back'] as const)
      expect(answer({ rows: [{ ...ROW, state }] })).toBe('unit-left-already');
  });

  it('whose check falls due on the day after the last day of hire may go', () => {
    const due = (day: string) => answer({ unit: { ...UNIT, inspectionDueOn: day } });
    expect([due('2026-03-17'), due('2026-03-18')]).toEqual(['unit-due-inside-hire', 'take']);
    expect(answer({ unit: { ...UNIT, calibrationDueOn: '2027-01-01' } })).toBe('certificate-missing');
  });

  it('is a stand-in only for a piece of its role that is still open, and an accessory never is', () => {
    const other = { ...UNIT, serial: 'D117-01', model: 'D-117' };
    const question = { serial: 'D117-01', unit: other };
    expect(answer(question)).toBe('stand in');
    expect(answer({ ...question, rows: [{ ...ROW, state: 'allocated' }] })).toBe('not-in-this-job');
    expect(answer({ ...question, isFree: false })).toBe('unit-not-free');
    const charger = { ...UNIT, serial: 'S104-01', model: 'S-104', role: 'accessory' as const };
    expect(answer({ serial: 'S104-01', unit: charger, rows: [{ ...ROW, role: 'accessory' }] })).toBe('not-in-this-job');
  });
});

describe('what may not be left behind', () => {
  it('says of every restraint, hose restraint, pin, lanyard, limiter and charger why it goes', () => {
    const why = (number: string) => {
      const model = demoModels().find((one) => one.number === number);
      return model === undefined
        ? undefined
        : whyObligatory({ model, mains: { voltage: 110, plug: 'IEC 60309 yellow' } });
    };
    for (const number of ['R-103', 'S-214', 'S-303', 'S-309', 'C-203', 'C-102', 'S-318', 'S-222', 'S-207'])
      expect(why(number), number).toMatch(/\.$/);
    expect(why('S-105')).toBe('The packs are charged at the place (110 V, IEC 60309 yellow).');
    expect([why('D-112'), why('S-331')]).toEqual([null, null]);
  });

  it('counts what lacks', () => {
    const needs = [{ number: 'S-214', name: 'Hose restraint', count: 3, why: 'Held.' }];
    expect(missingObligatory({ needs, picked: new Map([['S-214', 1]]) })).toEqual(['2 × S-214 Hose restraint: Held.']);
    expect(missingObligatory({ needs, picked: new Map([['S-214', 3]]) })).toEqual([]);
  });
});
