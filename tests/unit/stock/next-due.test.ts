import { describe, expect, it } from 'vitest';
import { addMonths, nextDue } from '#lib/stock/next-due.ts';
import { decideStateChange } from '#lib/stock/unit-state.ts';

describe('the next check', () => {
  it.each([
    ['2026-08-31', 6, '2027-02-28'],
    ['2023-08-31', 6, '2024-02-29'],
    ['2026-12-31', 12, '2027-12-31'],
    ['2026-01-31', 1, '2026-02-28'],
    ['2026-11-05', 6, '2027-05-05'],
  ])('%s and %i months is %s', (day, months, then) => {
    expect(addMonths({ day, months })).toBe(then);
  });

  it('of a sling comes after six months, of a limiter and of everything else after twelve', () => {
    const done = { doneOn: '2026-03-02' } as const;
    expect(nextDue({ ...done, kind: 'inspection', pulls: 'chain or sling' })).toBe('2026-09-02');
    expect(nextDue({ ...done, kind: 'inspection', pulls: 'other' })).toBe('2027-03-02');
    expect(nextDue({ ...done, kind: 'calibration', pulls: 'chain or sling' })).toBe('2027-03-02');
  });
});

describe('the state of a unit set by hand', () => {
  const change = { serial: 'A-1', from: 'ready', to: 'lost', reason: 'gone', overdue: null } as const;
  it.each([
    ['granted', {}],
    ['unit-state-already', { from: 'lost' }],
    ['unit-on-the-way', { from: 'on the way' }],
    ['unit-out', { from: 'out', to: 'workshop' }],
    ['granted', { from: 'out' }],
    ['reason-missing', { reason: ' ' }],
    ['certificate-overdue', { from: 'workshop', to: 'ready', overdue: 'inspection' }],
    ['granted', { from: 'workshop', overdue: 'inspection' }],
  ] as const)('%s', (answer, other) => {
    const decided = decideStateChange({ ...change, ...other });
    expect(decided.ok ? 'granted' : decided.reason.code).toBe(answer);
  });
});
