import { expect, it } from 'vitest';
import { addDays, daysBetween, rangeOfDays } from '#lib/kernel/date-range.ts';
import { seededRandom } from '#lib/kernel/random.ts';
import { bringFromDepots } from '#lib/stock/by-depot.ts';
import { freeCount } from '#lib/stock/free-units.ts';
import { laterStart } from '#lib/stock/later-start.ts';
import type { StockQuestion } from '#lib/stock/unit.ts';
import { readyUnit } from '#tests/support/stock/ready-unit.ts';

const unit = (serial: string, depot: string) => readyUnit(serial, { depot });

const TODAY = '2026-05-11';
const DEPOTS = ['NORTH', 'SOUTH'];
const asked = (change: Partial<StockQuestion> = {}): StockQuestion => ({
  units: [unit('A', 'NORTH'), unit('B', 'SOUTH')],
  bookings: [],
  window: rangeOfDays(TODAY, 3),
  turnaroundDays: 1,
  ...change,
});
const later = (question: StockQuestion, count = 2) =>
  laterStart({ question, needs: new Map([['D-1', count]]), depots: DEPOTS, today: TODAY });

it('begins a day later where the other depot can still send today', () => {
  expect(later(asked())).toEqual({
    startsOn: '2026-05-12',
    bring: [{ model: 'D-1', count: 1, depot: 'SOUTH', sendOn: TODAY }],
  });
});

it('waits until all of it is free for the whole hire, turnaround included', () => {
  const bookings = [{ serial: 'B', window: { starts_on: '2026-05-14', ends_before: '2026-05-18' } }];
  expect(later(asked({ bookings }))?.startsOn).toBe('2026-05-19');
});

it('begins without the other depot where the despatching one has it all back before', () => {
  const units = [unit('A', 'NORTH'), unit('B', 'SOUTH')];
  const bookings = [
    { serial: 'A', window: { starts_on: '2026-05-09', ends_before: '2026-05-12' } },
    { serial: 'B', window: { starts_on: '2026-05-12', ends_before: '2026-06-12' } },
  ];
  expect(later(asked({ units, bookings }), 1)).toEqual({ startsOn: '2026-05-13', bring: [] });
});

it('names no start where there are never enough pieces, and minds nothing that is not kept in stock', () => {
  expect(later(asked(), 3)).toBeNull();
  const needs = new Map([
    ['D-1', 2],
    ['made to order', 1],
  ]);
  expect(laterStart({ question: asked(), needs, depots: DEPOTS, today: TODAY })?.startsOn).toBe('2026-05-12');
});

it('names the start that trying every day finds', () => {
  const random = seededRandom(77);
  const below = (most: number): number => Math.floor(random() * most);
  let found = 0;
  let waited = 0;
  for (let round = 0; round < 300; round += 1) {
    const units = Array.from({ length: 4 }, (_, index) => unit(`U-${index}`, DEPOTS[below(2)] ?? 'NORTH'));
    const bookings = units.flatMap(({ serial }) =>
      Array.from({ length: below(3) }, (_, index) => ({
        serial,
        window: rangeOfDays(addDays(TODAY, 8 * index + below(6)), 1 + below(5)),
      })),
    );
    const question = asked({ units, bookings, window: rangeOfDays(addDays(TODAY, -below(2)), 1 + below(4)) });
    const needs = new Map([['D-1', 1 + below(4)]]);
    const days = Array.from({ length: 60 }, (_, index) => addDays(question.window.starts_on, 1 + index));
    const expected = days
      .filter((start) => start >= TODAY)
      .find((start) => {
        const moved = { ...question, window: rangeOfDays(start, daysBetween(question.window)) };
        const isFree = (freeCount(moved).get('D-1') ?? 0) >= (needs.get('D-1') ?? 0);
        return (
          isFree && bringFromDepots({ question: moved, needs, depots: DEPOTS }).every((one) => one.sendOn >= TODAY)
        );
      });
    const answer = laterStart({ question, needs, depots: DEPOTS, today: TODAY });
    expect(answer?.startsOn).toBe(expected);
    if (expected !== undefined) found += 1;
    if (expected !== undefined && expected > addDays(TODAY, 1)) waited += 1;
  }
  console.info(`later starts: ${found} found as by trying every day, ${waited} of them for what is back later`);
  expect(waited).toBeGreaterThan(50);
});
