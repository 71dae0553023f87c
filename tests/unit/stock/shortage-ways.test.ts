import { describe, expect, it } from 'vitest';
import { rangeOfDays } from '#lib/kernel/date-range.ts';
import { findShortages } from '#lib/stock/shortage.ts';
import { whoCouldWait } from '#lib/stock/shortage-ways.ts';
import { daysOnTheWay } from '#lib/stock/transfer-days.ts';
import type { StockQuestion, UnitBooking } from '#lib/stock/unit.ts';
import { readyUnit } from '#tests/support/stock/ready-unit.ts';

const unit = (serial: string) => readyUnit(serial, { model: 'M-1' });

const hire = (serial: string, from: string, days: number, more: Partial<UnitBooking> = {}): UnitBooking => ({
  serial,
  window: rangeOfDays(from, days),
  number: 'B-1',
  ...more,
});

const question = (change: Partial<StockQuestion>): StockQuestion => ({
  units: [unit('A-1'), unit('A-2')],
  bookings: [],
  window: rangeOfDays('2026-03-10', 3),
  turnaroundDays: 1,
  ...change,
});

describe('who could wait', () => {
  it('is named with the pieces that frees and the first day on which it could begin', () => {
    const bookings = [
      hire('A-1', '2026-03-09', 5),
      hire('A-2', '2026-03-12', 2, { number: 'B-2' }),
      hire('A-1', '2026-03-20', 4, { number: 'B-3' }),
    ];
    expect(whoCouldWait({ question: question({ bookings }), model: 'M-1' })).toEqual([
      // The hire asked about is over on the 13th and turned round on the 14th: five days from then end, turned round, as B-3 begins.
      { number: 'B-1', startsOn: '2026-03-09', frees: 1, couldStartOn: '2026-03-14' },
      { number: 'B-2', startsOn: '2026-03-12', frees: 1, couldStartOn: '2026-03-14' },
    ]);
  });

  it('is nobody whose equipment has left, and no transfer', () => {
    const bookings = [
      hire('A-1', '2026-03-09', 5, { hasLeft: true }),
      hire('A-2', '2026-03-09', 5, { number: 'T-1', why: 'transfer' }),
    ];
    expect(whoCouldWait({ question: question({ bookings }), model: 'M-1' })).toEqual([]);
  });

  it('is nobody who would find nothing later', () => {
    const bookings = [hire('A-1', '2026-03-10', 3), hire('A-1', '2026-03-14', 400, { number: 'B-9' })];
    expect(whoCouldWait({ question: question({ units: [unit('A-1')], bookings }), model: 'M-1' })).toEqual([]);
  });
});

describe('a shortage of counted pieces', () => {
  it('says how many the house counts and when enough are back', () => {
    const counted = {
      shelves: [{ model: 'S-1', depot: 'VEN', count: 5 }],
      holds: [{ model: 'S-1', depot: 'VEN', count: 4, days: rangeOfDays('2026-03-08', 9) }],
    };
    expect(findShortages({ ...question({ counted }), needs: [{ model: 'S-1', count: 3 }] })).toMatchObject([
      {
        missing: 2,
        freeFrom: '2026-03-17',
        sentence:
          '3 of S-1 are asked for and 1 are free: the house counts 5, and others hold the rest on these dates. All of them are free for a hire that starts on 2026-03-17.',
      },
    ]);
  });
});

describe('a unit on its way', () => {
  it('is away until its day, and today where it is overdue', () => {
    const sent = { sentOn: '2026-03-01', dueOn: '2026-03-04' };
    expect(daysOnTheWay({ ...sent, today: '2026-03-02' })).toEqual({
      starts_on: '2026-03-01',
      ends_before: '2026-03-04',
    });
    expect(daysOnTheWay({ ...sent, today: '2026-03-09' })).toEqual({
      starts_on: '2026-03-01',
      ends_before: '2026-03-10',
    });
  });
});
