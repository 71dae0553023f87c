import { describe, expect, it } from 'vitest';
import { rangeOfDays } from '#lib/kernel/date-range.ts';
import { chooseUnits } from '#lib/stock/choose-units.ts';
import { freeCount } from '#lib/stock/free-units.ts';
import { findShortages } from '#lib/stock/shortage.ts';
import { readyUnit } from '#tests/support/stock/ready-unit.ts';

const WINDOW = rangeOfDays('2030-03-10', 5);

const NOTHING_BOOKED = { bookings: [], window: WINDOW, turnaroundDays: 2, depot: 'VEN' } as const;

describe('choosing serial numbers', () => {
  it('takes units of the despatching depot first, then by serial number', () => {
    const units = [readyUnit('D1-01', { depot: 'HAL' }), readyUnit('D1-03'), readyUnit('D1-02')];
    const chosen = chooseUnits({ ...NOTHING_BOOKED, units, needs: [{ model: 'D-1', count: 3 }] });
    expect(chosen.ok && chosen.value.map(({ serial }) => serial)).toEqual(['D1-02', 'D1-03', 'D1-01']);
  });

  it('adds up needs of the same model and refuses when too few are free', () => {
    const units = [readyUnit('D1-01'), readyUnit('D1-02')];
    const needs = [
      { model: 'D-1', count: 2 },
      { model: 'D-1', count: 1 },
    ];
    const chosen = chooseUnits({ ...NOTHING_BOOKED, units, needs });
    expect(chosen.ok ? '' : chosen.reason.sentence).toBe(
      '3 of D-1 are needed from 2030-03-10 to before 2030-03-15, and 2 are free.',
    );
  });
});

describe('what is free', () => {
  it('a check that falls due on the day after the hire does not matter; on its last day it does', () => {
    const after = readyUnit('D1-01', { inspectionDueOn: '2030-03-15' });
    const last = readyUnit('D1-02', { inspectionDueOn: '2030-03-14' });
    const calibration = readyUnit('D1-03', { calibrationDueOn: '2030-03-12' });
    expect(freeCount({ ...NOTHING_BOOKED, units: [after, last, calibration] }).get('D-1')).toBe(1);
  });

  it('turnaround days keep a unit from the hire before and after', () => {
    const free = (starts: string): number =>
      freeCount({
        ...NOTHING_BOOKED,
        units: [readyUnit('D1-01')],
        bookings: [{ serial: 'D1-01', window: rangeOfDays(starts, 3) }],
      }).get('D-1') ?? 0;
    expect([free('2030-03-05'), free('2030-03-06'), free('2030-03-16'), free('2030-03-17')]).toEqual([1, 0, 0, 1]);
  });

  it('a state that nobody knows is not free', () => {
    expect(freeCount({ ...NOTHING_BOOKED, units: [readyUnit('D1-01', { state: 'asleep' })] }).get('D-1')).toBe(0);
  });
});

describe('a shortage', () => {
  it('says how many are missing, why, and from when they are free', () => {
    const units = [
      readyUnit('D1-01'),
      readyUnit('D1-02', { inspectionDueOn: '2030-03-11' }),
      readyUnit('D1-03', { state: 'workshop' }),
      readyUnit('D1-04'),
    ];
    const bookings = [{ serial: 'D1-01', window: rangeOfDays('2030-03-08', 6) }];
    const [short] = findShortages({
      units,
      bookings,
      window: WINDOW,
      turnaroundDays: 2,
      needs: [{ model: 'D-1', count: 2 }],
    });
    expect(short).toEqual({
      model: 'D-1',
      asked: 2,
      free: 1,
      missing: 1,
      freeFrom: '2030-03-16',
      sentence:
        '2 of D-1 are asked for and 1 are free: of 4 there are 1 booked on these dates, 1 with an inspection or calibration that falls due before the hire ends, 1 in quarantine, in the workshop or lost. All of them are free for a hire that starts on 2030-03-16.',
    });
  });

  it('says when the house has none at all, and when there is no start within a year', () => {
    const none = findShortages({
      units: [],
      bookings: [],
      window: WINDOW,
      turnaroundDays: 2,
      needs: [{ model: 'X-9', count: 1 }],
    });
    expect(none[0]?.sentence).toBe(
      '1 of X-9 are asked for and 0 are free: the house has none. Within a year there is no start on which all of them are free.',
    );
  });

  it('is not reported where enough are free', () => {
    expect(
      findShortages({
        units: [readyUnit('D1-01')],
        bookings: [],
        window: WINDOW,
        turnaroundDays: 2,
        needs: [{ model: 'D-1', count: 1 }],
      }),
    ).toEqual([]);
  });
});
