import { describe, expect, it } from 'vitest';
import { fillDays, highestDose, type Portion, splitDays } from '#lib/planning/split-days.ts';

const portion = (qty: number, time: number, dose: number): Portion => ({ qty, time, dose });
const counts = (days: readonly (readonly Portion[])[]) => days.map((day) => day.map(({ qty }) => qty));
const NO_CAP = Number.POSITIVE_INFINITY;

describe('fillDays', () => {
  it('fills each day with whole valves before it begins the next', () => {
    expect(counts(fillDays([portion(5, 100, 1), portion(2, 150, 1)], { time: 300, dose: NO_CAP }))).toEqual([
      [3],
      [2],
      [2],
    ]);
  });

  it('gives a valve that is too much for any day a day of its own', () => {
    expect(counts(fillDays([portion(2, 400, 1), portion(1, 10, 1)], { time: 300, dose: NO_CAP }))).toEqual([
      [1],
      [1],
      [1],
    ]);
  });
});

describe('splitDays', () => {
  it('fills the days where no day passes the limit', () => {
    const { days, filled } = splitDays([portion(6, 100, 10)], { days: 5, shift: 300, dose: 30 });
    expect(counts(days)).toEqual([[3], [3]]);
    expect(filled).toBe(2);
  });

  it('spreads the work over more days where that keeps each of them below the limit', () => {
    const { days, filled } = splitDays([portion(6, 100, 10)], { days: 3, shift: 300, dose: 20 });
    expect(counts(days)).toEqual([[2], [2], [2]]);
    expect(filled).toBe(2);
  });

  it('makes the worst day as mild as the days allow where the limit cannot be kept', () => {
    const { days } = splitDays([portion(3, 10, 10), portion(3, 10, 20)], { days: 2, shift: 300, dose: 20 });
    expect(counts(days)).toEqual([[3, 1], [2]]);
    expect(highestDose(days)).toBe(50);
  });

  it('lets a day run over the shift rather than leave a valve half done, by as little as may be', () => {
    const { days } = splitDays([portion(3, 200, 1)], { days: 2, shift: 300, dose: NO_CAP });
    expect(counts(days)).toEqual([[2], [1]]);
  });

  it('has no day where there is no work', () => expect(splitDays([], { days: 2, shift: 1, dose: 1 }).days).toEqual([]));
});
