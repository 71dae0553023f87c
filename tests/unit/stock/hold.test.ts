import { describe, expect, it } from 'vitest';
import { BOOKED_UNIT_STATES, holds } from '#lib/stock/booking-life.ts';
import { chooseCounted } from '#lib/stock/choose-counted.ts';
import { mostHeld } from '#lib/stock/counted-holds.ts';
import { freeUnits } from '#lib/stock/free-units.ts';
import { engagedDays, hasRunOut } from '#lib/stock/hold.ts';
import { readyUnit } from '#tests/support/stock/ready-unit.ts';

const WINDOW = { starts_on: '2026-03-10', ends_before: '2026-03-15' };
const QUIET = { window: WINDOW, outOn: null, expectedBackOn: null, backOn: null, today: '2026-03-12' };

describe('a hold', () => {
  it('runs out at its stated moment, not before, and only while nobody confirmed it', () => {
    const heldUntil = '2026-03-10T15:00:00.000Z';
    const at = (time: string) => hasRunOut({ state: 'held', heldUntil, now: new Date(time) });
    expect(at('2026-03-10T14:59:59.999Z')).toBe(false);
    expect(at('2026-03-10T15:00:00.000Z')).toBe(true);
    expect(hasRunOut({ state: 'confirmed', heldUntil, now: new Date('2027-01-01') })).toBe(false);
    expect(hasRunOut({ state: 'held', heldUntil: null, now: new Date('2027-01-01') })).toBe(false);
  });
});

describe('a unit of a booking is engaged', () => {
  it('over its days as long as it is held there, and no longer', () => {
    for (const state of BOOKED_UNIT_STATES)
      expect(engagedDays({ ...QUIET, state }), state).toEqual(holds(state) ? WINDOW : null);
  });

  it('today, where it is out past its last day', () => {
    expect(engagedDays({ ...QUIET, state: 'out', today: '2026-03-20' })?.ends_before).toBe('2026-03-21');
    expect(engagedDays({ ...QUIET, state: 'picked', today: '2026-03-20' })).toEqual(WINDOW);
  });

  it('from the day on which it left, where that was before its first day', () => {
    expect(engagedDays({ ...QUIET, state: 'out', outOn: '2026-03-08' })?.starts_on).toBe('2026-03-08');
    expect(engagedDays({ ...QUIET, state: 'out', outOn: '2026-03-11' })?.starts_on).toBe('2026-03-10');
  });

  it('through the day on which a late one is expected, or came', () => {
    const late = { ...QUIET, today: '2026-03-16', expectedBackOn: '2026-03-19' };
    expect(engagedDays({ ...late, state: 'out' })?.ends_before).toBe('2026-03-20');
    expect(engagedDays({ ...late, state: 'back', backOn: '2026-03-17' })?.ends_before).toBe('2026-03-18');
    expect(engagedDays({ ...late, state: 'back', backOn: '2026-03-12' })).toEqual(WINDOW);
  });
});

describe('a booked unit', () => {
  it('is not free before the day it was booked to, even where the house has shortened its turnaround', () => {
    const unit = readyUnit('S1');
    const free = (starts_on: string) =>
      freeUnits({
        units: [unit],
        bookings: [{ serial: 'S1', window: WINDOW, freeAgainOn: '2026-03-18' }],
        window: { starts_on, ends_before: '2026-03-25' },
        turnaroundDays: 1,
      }).length;
    expect(free('2026-03-17')).toBe(0);
    expect(free('2026-03-18')).toBe(1);
  });
});

describe('counted pieces', () => {
  const hold = (count: number, starts_on: string, ends_before: string) => ({ count, days: { starts_on, ends_before } });

  it('are held on the fullest day, not in sum over the window', () => {
    const holds = [
      hold(3, '2026-03-01', '2026-03-05'),
      hold(4, '2026-03-05', '2026-03-08'),
      hold(2, '2026-03-07', '2026-03-20'),
    ];
    expect(mostHeld({ holds, days: { starts_on: '2026-03-01', ends_before: '2026-03-05' } })).toBe(3);
    expect(mostHeld({ holds, days: { starts_on: '2026-03-01', ends_before: '2026-03-30' } })).toBe(6);
    expect(mostHeld({ holds, days: { starts_on: '2026-03-20', ends_before: '2026-03-30' } })).toBe(0);
  });

  it('are taken together a model, and refused with both numbers where too few are free', () => {
    const needs = [
      { model: 'PEG', count: 2 },
      { model: 'PEG', count: 3 },
    ];
    expect(chooseCounted({ needs, free: { PEG: 5 }, window: WINDOW })).toEqual({
      ok: true,
      value: [{ model: 'PEG', count: 5 }],
    });
    expect(chooseCounted({ needs, free: { PEG: 4 }, window: WINDOW })).toMatchObject({
      reason: {
        code: 'pieces-not-free',
        sentence: '5 of PEG are needed from 2026-03-10 to before 2026-03-15, and 4 are free.',
      },
    });
  });
});
