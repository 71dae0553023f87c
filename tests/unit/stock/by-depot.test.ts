import { expect, it } from 'vitest';
import { bringFromDepots, freeAt } from '#lib/stock/by-depot.ts';
import { freeCount } from '#lib/stock/free-units.ts';
import type { StockQuestion } from '#lib/stock/unit.ts';
import { readyUnit } from '#tests/support/stock/ready-unit.ts';

const unit = (serial: string, depot: string) => readyUnit(serial, { depot });

const QUESTION: StockQuestion = {
  units: [unit('A', 'NORTH'), unit('B', 'NORTH'), unit('C', 'SOUTH'), unit('D', 'SOUTH'), unit('E', 'EAST')],
  bookings: [{ serial: 'B', window: { starts_on: '2026-05-01', ends_before: '2026-05-20' } }],
  counted: {
    shelves: [
      { model: 'P-1', depot: 'NORTH', count: 4 },
      { model: 'P-1', depot: 'SOUTH', count: 6 },
    ],
    holds: [
      { model: 'P-1', depot: '', count: 3, days: { starts_on: '2026-05-01', ends_before: '2026-05-20' } },
      { model: 'P-1', depot: 'SOUTH', count: 2, days: { starts_on: '2026-05-01', ends_before: '2026-05-20' } },
    ],
  },
  window: { starts_on: '2026-05-11', ends_before: '2026-05-14' },
  turnaroundDays: 1,
};
const DEPOTS = ['NORTH', 'SOUTH', 'EAST'];

it('what the depots have free adds up to what the house has free', () => {
  const whole = freeCount(QUESTION);
  for (const model of ['D-1', 'P-1']) {
    const parts = DEPOTS.map((depot) => freeAt({ question: QUESTION, depot, isDespatching: depot === 'NORTH' }));
    expect(parts.reduce((sum, free) => sum + (free.get(model) ?? 0), 0)).toBe(whole.get(model));
  }
});

it('the despatching depot gives first, the others in their order, loaded a day before the hire', () => {
  const needs = new Map([
    ['D-1', 4],
    ['P-1', 3],
  ]);
  expect(bringFromDepots({ question: QUESTION, needs, depots: DEPOTS })).toEqual([
    { model: 'D-1', count: 2, depot: 'SOUTH', sendOn: '2026-05-10' },
    { model: 'D-1', count: 1, depot: 'EAST', sendOn: '2026-05-10' },
    { model: 'P-1', count: 2, depot: 'SOUTH', sendOn: '2026-05-10' },
  ]);
});

it('nothing is brought where the despatching depot has it all, or where there is no other', () => {
  const needs = new Map([['D-1', 1]]);
  expect(bringFromDepots({ question: QUESTION, needs, depots: DEPOTS })).toEqual([]);
  expect(bringFromDepots({ question: QUESTION, needs: new Map([['D-1', 9]]), depots: ['NORTH'] })).toEqual([]);
});
