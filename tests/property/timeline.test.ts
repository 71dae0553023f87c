import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, overlaps, rangeOfDays } from '#lib/kernel/date-range.ts';
import { chooseUnits } from '#lib/stock/choose-units.ts';
import { freeCount } from '#lib/stock/free-units.ts';
import { modelTimelines, type TimelineQuestion, unitTimelines } from '#lib/stock/timeline.ts';
import { type CountedHold, type CountedShelf, UNIT_STATES, type Unit, type UnitBooking } from '#lib/stock/unit.ts';

const SEED = 61_129;
const START = '2026-01-01';
const DAYS = 20;
const day = (offset: number) => addDays(START, offset);

const units: fc.Arbitrary<readonly Unit[]> = fc
  .array(
    fc.record({
      model: fc.constantFrom('M-1', 'M-2'),
      depot: fc.constantFrom('VEN', 'HAL'),
      state: fc.constantFrom(...UNIT_STATES, 'ready', 'ready', 'ready'),
      due: fc.option(fc.integer({ min: -3, max: 40 })),
    }),
    { minLength: 1, maxLength: 8 },
  )
  .map((rows) =>
    rows.map(({ due, ...row }, index) => ({
      ...row,
      serial: `U-${index}`,
      bay: 'A01',
      inspectionDueOn: due === null ? null : day(due),
      calibrationDueOn: null,
    })),
  );

const bookings: fc.Arbitrary<readonly UnitBooking[]> = fc
  .array(
    fc.record({
      unit: fc.integer({ min: 0, max: 7 }),
      from: fc.integer({ min: -5, max: 22 }),
      length: fc.integer({ min: 1, max: 9 }),
      why: fc.constantFrom('hire' as const, 'transfer' as const),
      late: fc.boolean(),
    }),
    { maxLength: 10 },
  )
  .map((rows) =>
    rows.map(({ unit, from, length, why, late }, index) => ({
      serial: `U-${unit}`,
      window: rangeOfDays(day(from), length),
      why,
      number: `B-${index}`,
      ...(late && why === 'hire' ? { lateFrom: day(from + 1) } : {}),
    })),
  );

const counted = fc
  .record({
    shelf: fc.integer({ min: 0, max: 9 }),
    holds: fc.array(
      fc.record({
        count: fc.integer({ min: 1, max: 5 }),
        from: fc.integer({ min: -5, max: 22 }),
        length: fc.integer({ min: 1, max: 9 }),
      }),
      { maxLength: 5 },
    ),
  })
  .map(({ shelf, holds }): { shelves: readonly CountedShelf[]; holds: readonly CountedHold[] } => ({
    shelves: [{ model: 'S-1', depot: 'VEN', count: shelf }],
    holds: holds.map(({ count, from, length }) => ({
      model: 'S-1',
      depot: 'VEN',
      count,
      days: rangeOfDays(day(from), length),
    })),
  }));

const questions: fc.Arbitrary<TimelineQuestion> = fc
  .record({
    units,
    bookings,
    counted,
    turnaroundDays: fc.integer({ min: 0, max: 3 }),
    hireDays: fc.integer({ min: 1, max: 6 }),
  })
  .map(({ hireDays, ...stock }) => ({ stock, hireDays, days: rangeOfDays(START, DAYS), depot: '' }));

describe('the timeline', () => {
  it('shows as free exactly as many as an acceptance would be granted for a hire that starts on the day', () => {
    let checked = 0;
    let granted = 0;
    fc.assert(
      fc.property(questions, (question) => {
        for (const { model, days } of modelTimelines(question)) {
          if (model === 'S-1') continue;
          for (const { on, counts } of days) {
            const ask = (count: number) =>
              chooseUnits({
                ...question.stock,
                window: rangeOfDays(on, question.hireDays),
                needs: [{ model, count }],
                depot: 'VEN',
              });
            expect(ask(counts.free).ok, `${model} ${on}: ${counts.free} are granted`).toBe(true);
            expect(ask(counts.free + 1).ok, `${model} ${on}: one more is not`).toBe(false);
            granted += counts.free;
            checked += 1;
          }
        }
      }),
      { seed: SEED, numRuns: 150 },
    );
    process.stdout.write(`timeline against acceptance: ${checked} cases checked, ${granted} pieces granted\n`);
    expect(granted).toBeGreaterThan(checked / 10);
  });

  it('counts every piece once a day, agrees with what plans are given, and unit by unit says the same', () => {
    let checked = 0;
    fc.assert(
      fc.property(questions, (question) => {
        const single = unitTimelines(question);
        for (const { model, total, days } of modelTimelines(question)) {
          for (const { on, counts } of days) {
            const sum = Object.values(counts).reduce((all, count) => all + count, 0);
            expect(sum).toBe(total);
            expect(Object.values(counts).every((count) => count >= 0)).toBe(true);
            const free = freeCount({ ...question.stock, window: rangeOfDays(on, question.hireDays) }).get(model);
            expect(counts.free, `${model} on ${on}`).toBe(free);
            if (model === 'S-1') continue;
            const its = question.stock.units.filter((unit) => unit.model === model).map(({ serial }) => serial);
            const states = single
              .filter(({ serial }) => its.includes(serial))
              .flatMap((unit) => unit.days.filter((one) => one.on === on).map(({ state }) => state));
            expect(states.filter((state) => state === 'free').length).toBe(counts.free);
            expect(states.length).toBe(total);
            checked += 1;
          }
        }
      }),
      { seed: SEED + 1, numRuns: 150 },
    );
    process.stdout.write(`every piece once a day: ${checked} cases checked\n`);
    expect(checked).toBeGreaterThan(1000);
  });

  it('shows a unit as booked on each day of a hire, and depot by depot it adds up to the whole house', () => {
    let checked = 0;
    fc.assert(
      fc.property(questions, (question) => {
        const free = (depot: string) =>
          new Map(
            modelTimelines({ ...question, depot }).flatMap(({ model, days }) =>
              days.map(({ on, counts }) => [`${model} ${on}`, counts.free] as const),
            ),
          );
        const [all, ven, hal] = [free(''), free('VEN'), free('HAL')];
        for (const [key, count] of all) {
          expect((ven.get(key) ?? 0) + (hal.get(key) ?? 0), key).toBe(count);
          checked += 1;
        }
        for (const { serial, days } of unitTimelines(question)) {
          const unit = question.stock.units.find((one) => one.serial === serial);
          for (const { on, state } of days) {
            const hired = question.stock.bookings.some(
              (booking) =>
                booking.serial === serial && booking.why === 'hire' && overlaps(booking.window, rangeOfDays(on, 1)),
            );
            if (hired && unit?.state === 'ready') expect(['booked', 'late']).toContain(state);
          }
        }
      }),
      { seed: SEED + 2, numRuns: 150 },
    );
    process.stdout.write(`depots add up: ${checked} cases checked\n`);
    expect(checked).toBeGreaterThan(1000);
  });
});
