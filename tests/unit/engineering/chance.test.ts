import { describe, expect, it } from 'vitest';
import { chanceAmong, chanceAtMost, chanceCovered, chanceOfAll } from '#lib/engineering/chance.ts';
import { ratio } from '#lib/units/quantity.ts';

describe('chance', () => {
  it('is certain or impossible for a value that is known', () => {
    const value = { low: 400, nominal: 400, high: 400 };
    expect(chanceAtMost({ value, limit: 400 })).toBe(1);
    expect(chanceAtMost({ value, limit: 399 })).toBe(0);
    expect(chanceCovered({ value, cover: [{ low: 300, high: 400 }] })).toBe(1);
    expect(chanceCovered({ value, cover: [{ low: 401, high: 500 }] })).toBe(0);
  });

  it('stays a number where the range is too narrow to square', () => {
    expect(chanceAtMost({ value: { low: 0, nominal: 0, high: 5e-324 }, limit: 0 })).toBe(0);
  });

  it('takes a range whose likeliest value is at an end', () => {
    expect(chanceAtMost({ value: { low: 0, nominal: 0, high: 10 }, limit: 5 })).toBeCloseTo(0.75, 12);
    expect(chanceAtMost({ value: { low: 0, nominal: 10, high: 10 }, limit: 5 })).toBeCloseTo(0.25, 12);
  });

  it('counts overlapping ranges once', () => {
    const value = { low: 0, nominal: 5, high: 10 };
    const cover = [
      { low: 4, high: 10 },
      { low: 0, high: 6 },
    ];
    expect(chanceCovered({ value, cover })).toBeCloseTo(1, 12);
    expect(chanceCovered({ value, cover: [] })).toBe(0);
  });

  it('is a share of equally likely sizes, and certain when there is nothing to choose', () => {
    expect(chanceAmong({ all: 4, covered: 3 })).toBe(0.75);
    expect(chanceAmong({ all: 0, covered: 0 })).toBe(1);
    expect(chanceOfAll([])).toBe(1);
    expect(chanceOfAll([ratio(0.5), ratio(0)])).toBe(0);
  });
});
