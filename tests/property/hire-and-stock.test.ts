import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RateCard } from '#lib/equipment/model.ts';
import { addDays, rangeOfDays } from '#lib/kernel/date-range.ts';
import { toMinor } from '#lib/money/money.ts';
import { bestRate } from '#lib/pricing/best-rate.ts';
import { purchaseDays } from '#lib/pricing/purchase-days.ts';
import { freeCount } from '#lib/stock/free-units.ts';
import { findShortages } from '#lib/stock/shortage.ts';
import type { Unit, UnitBooking } from '#lib/stock/unit.ts';

const SEED = 20_250_117;

const rateCards: fc.Arbitrary<RateCard> = fc
  .record({
    day: fc.integer({ min: 1, max: 400 }),
    week: fc.integer({ min: 1, max: 2000 }),
    fourWeeks: fc.integer({ min: 1, max: 6000 }),
    minimum: fc.integer({ min: 1, max: 10 }),
  })
  .map(({ day, week, fourWeeks, minimum }) => ({
    day_minor: toMinor(day),
    week_minor: toMinor(week),
    four_weeks_minor: toMinor(fourWeeks),
    minimum_days: minimum,
  }));

/** Cheapest cost of covering `days`, by dynamic programming over single days: independent of the enumeration under test. */
function cheapestCover(rates: RateCard, days: number): number {
  const cost = [0];
  for (let day = 1; day <= days; day += 1) {
    const before = (span: number): number => cost[Math.max(0, day - span)] ?? 0;
    cost.push(Math.min(before(1) + rates.day_minor, before(7) + rates.week_minor, before(28) + rates.four_weeks_minor));
  }
  return cost[days] ?? 0;
}

function report(law: string, checked: number): void {
  process.stdout.write(`${law}: ${checked} cases checked\n`);
  expect(checked).toBeGreaterThan(0);
}

describe('rates', () => {
  it('no cover of the days is cheaper than the best mix, and the mix covers and costs what it says', () => {
    let checked = 0;
    fc.assert(
      fc.property(rateCards, fc.integer({ min: 1, max: 130 }), (rates, days) => {
        const best = bestRate({ rates, days });
        const charged = Math.max(days, rates.minimum_days);
        expect(best.total_minor).toBe(cheapestCover(rates, charged));
        expect(best.days + 7 * best.weeks + 28 * best.fourWeeks).toBeGreaterThanOrEqual(charged);
        expect(
          best.days * rates.day_minor + best.weeks * rates.week_minor + best.fourWeeks * rates.four_weeks_minor,
        ).toBe(best.total_minor);
        checked += 1;
      }),
      { seed: SEED, numRuns: 400 },
    );
    report('best rate', checked);
  });

  it('a longer hire never costs less', () => {
    let checked = 0;
    fc.assert(
      fc.property(rateCards, fc.integer({ min: 1, max: 200 }), (rates, days) => {
        expect(bestRate({ rates, days: days + 1 }).total_minor).toBeGreaterThanOrEqual(
          bestRate({ rates, days }).total_minor,
        );
        checked += 1;
      }),
      { seed: SEED, numRuns: 300 },
    );
    report('longer hire', checked);
  });

  it('buying pays first on the day that hire against purchase names', () => {
    let checked = 0;
    fc.assert(
      fc.property(rateCards, fc.integer({ min: 1, max: 20_000 }), (rates, price) => {
        const days = purchaseDays({ rates, daysPerWeek: 7, replacement_minor: toMinor(price) });
        if (days === null) return;
        expect(bestRate({ rates, days }).total_minor).toBeGreaterThanOrEqual(price);
        if (days > 1) expect(bestRate({ rates, days: days - 1 }).total_minor).toBeLessThan(price);
        checked += 1;
      }),
      { seed: SEED, numRuns: 60 },
    );
    report('hire against purchase', checked);
  });
});

const ORIGIN = '2030-01-01';
const day = (offset: number): string => addDays(ORIGIN, offset);

const stock = fc.record({
  units: fc.array(
    fc.record({
      model: fc.constantFrom('M-1', 'M-2'),
      state: fc.constantFrom('ready', 'ready', 'out', 'back', 'quarantine', 'workshop'),
      inspection: fc.option(fc.integer({ min: -5, max: 40 })),
      calibration: fc.option(fc.integer({ min: -5, max: 40 })),
      bookings: fc.array(
        fc.record({ start: fc.integer({ min: -10, max: 40 }), length: fc.integer({ min: 1, max: 9 }) }),
        { maxLength: 3 },
      ),
    }),
    { minLength: 1, maxLength: 6 },
  ),
  start: fc.integer({ min: 0, max: 25 }),
  length: fc.integer({ min: 1, max: 10 }),
  turnaround: fc.integer({ min: 0, max: 4 }),
});
type Stock = typeof stock extends fc.Arbitrary<infer Value> ? Value : never;

function questionOf(given: Stock): { units: Unit[]; bookings: UnitBooking[] } {
  const units = given.units.map((unit, index) => ({
    serial: `U${index}`,
    model: unit.model,
    depot: 'A',
    bay: 'A01',
    state: unit.state,
    inspectionDueOn: unit.inspection === null ? null : day(unit.inspection),
    calibrationDueOn: unit.calibration === null ? null : day(unit.calibration),
  }));
  const bookings = given.units.flatMap((unit, index) =>
    unit.bookings.map(({ start, length }) => ({ serial: `U${index}`, window: rangeOfDays(day(start), length) })),
  );
  return { units, bookings };
}

/** Marks each day on which a unit cannot be in this hire's hands, and looks at every day of the hire and its turnaround. */
function naiveFree(given: Stock, model: string): number {
  return given.units.filter((unit) => {
    if (unit.model !== model || unit.state === 'quarantine' || unit.state === 'workshop') return false;
    const engaged = new Set<number>();
    for (const { start, length } of unit.bookings) {
      for (let at = start; at < start + length + given.turnaround; at += 1) engaged.add(at);
    }
    for (let at = given.start; at < given.start + given.length + given.turnaround; at += 1) {
      if (engaged.has(at)) return false;
    }
    for (let at = given.start; at < given.start + given.length; at += 1) {
      for (const due of [unit.inspection, unit.calibration]) if (due !== null && due <= at) return false;
    }
    return true;
  }).length;
}

describe('stock', () => {
  it('what is free over a window agrees with a day-by-day model', () => {
    let checked = 0;
    let some = 0;
    fc.assert(
      fc.property(stock, (given) => {
        const free = freeCount({
          ...questionOf(given),
          window: rangeOfDays(day(given.start), given.length),
          turnaroundDays: given.turnaround,
        });
        for (const model of ['M-1', 'M-2']) {
          const naive = naiveFree(given, model);
          expect(free.get(model) ?? 0).toBe(naive);
          some += naive > 0 ? 1 : 0;
          checked += 1;
        }
      }),
      { seed: SEED, numRuns: 600 },
    );
    report('free over a window', checked);
    expect(some).toBeGreaterThan(checked / 10);
  });

  it('the day that a shortage names is the first on which enough are free', () => {
    let checked = 0;
    fc.assert(
      fc.property(stock, fc.integer({ min: 1, max: 4 }), (given, asked) => {
        const question = {
          ...questionOf(given),
          window: rangeOfDays(day(given.start), given.length),
          turnaroundDays: given.turnaround,
        };
        const [short] = findShortages({ ...question, needs: [{ model: 'M-1', count: asked }] });
        if (short === undefined) {
          expect(naiveFree(given, 'M-1')).toBeGreaterThanOrEqual(asked);
          return;
        }
        expect(short.missing).toBe(asked - naiveFree(given, 'M-1'));
        const first = Array.from({ length: 120 }, (_, later) => later + 1).find(
          (later) => naiveFree({ ...given, start: given.start + later }, 'M-1') >= asked,
        );
        expect(short.freeFrom).toBe(first === undefined ? null : day(given.start + first));
        checked += 1;
      }),
      { seed: SEED, numRuns: 500 },
    );
    report('first day after a shortage', checked);
  });
});
