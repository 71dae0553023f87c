import { describe, expect, it } from 'vitest';
import { formatCeiling, formatMark, formatQuantity, formatRange } from '#lib/units/format-quantity.ts';
import { known } from '#lib/units/known-value.ts';
import { parseQuantity } from '#lib/units/parse-quantity.ts';
import type { Unit } from '#lib/units/quantity.ts';

describe('quantities for people', () => {
  it.each<readonly [number, Unit, string, string]>([
    [128.4, 'N·m', '128 N·m', '94.7 lbf·ft'],
    [1284.4, 'N·m', '1280 N·m', '947 lbf·ft'],
    [0.45, 'm', '450 mm', '17.7 in'],
    [12, 'm', '12 m', '39.4 ft'],
    [0.032, 'm', '32 mm', '1.26 in'],
    [0.03, 'm³/s', '30 l/s', '63.6 cfm'],
    [1500, 'W', '1.5 kW', '2.01 hp'],
    [1e6, 'Pa', '10 bar', '145 psi'],
    [25_000, 'N', '25 kN', '5620 lbf'],
    [6.5, 'kg', '6.5 kg', '14.3 lb'],
    [20, '°C', '20 °C', '68 °F'],
    [125, 's', '2 min 05 s', '2 min 05 s'],
    [4.26, 's', '4.3 s', '4.3 s'],
    [5400, 's', '1 h 30 min', '1 h 30 min'],
    [22.5, 'turn', '22.5 turns', '22.5 turns'],
    [1, 'turn', '1 turn', '1 turn'],
    [0.15, '1', '0.15', '0.15'],
    [85, 'dB', '85 dB', '85 dB'],
    [10, '°', '10°', '10°'],
    [0.001, 'm³/s', '60 l/min', '2.12 cfm'],
    [60, '1/min', '60 1/min', '60 rpm'],
    [0, 'N·m', '0 N·m', '0 lbf·ft'],
    [Number.NaN, 'N·m', '—', '—'],
  ])('%d %s prints in both systems', (value, unit, si, us) => {
    expect(formatQuantity({ value, unit, system: 'si' })).toBe(si);
    expect(formatQuantity({ value, unit, system: 'us' })).toBe(us);
  });

  it('a range prints its unit once, and equal ends once', () => {
    const origin = { basis: 'stated', source: 'Said so.' } as const;
    expect(formatRange(known('m', { low: 0.4, nominal: 0.45, high: 0.5 }, origin), 'si')).toBe('400…500 mm');
    expect(formatRange(known('m', { low: 0.4, nominal: 0.4, high: 0.4 }, origin), 'us')).toBe('15.7 in');
  });

  it('printing and reading back in the other system again and again does not drift', () => {
    const stored = 0.4532;
    const shown = Array.from({ length: 50 }, (_unused, index) =>
      formatQuantity({ value: stored, unit: 'm', system: index % 2 === 0 ? 'si' : 'us' }),
    );
    expect(new Set(shown)).toEqual(new Set(['453 mm', '17.8 in']));
    const back = parseQuantity({ text: '17.8 in', dimension: 'length' });
    expect(back.ok && formatQuantity({ value: back.value.value, unit: 'm', system: 'us' })).toBe('17.8 in');
  });
});

describe('marks of a limiter', () => {
  it.each([
    [102.5, '102.5 N·m', '75.6 lbf·ft'],
    [170, '170 N·m', '125 lbf·ft'],
    [1025, '1025 N·m', '756 lbf·ft'],
    [2.5, '2.5 N·m', '1.84 lbf·ft'],
    [0, '0 N·m', '0 lbf·ft'],
    [Number.NaN, '—', '—'],
  ])('%d N·m is cut off, never rounded up', (value, si, us) => {
    expect(formatMark(value, 'si')).toBe(si);
    expect(formatMark(value, 'us')).toBe(us);
  });

  it.each([
    [309.6, '309 N·m', '228 lbf·ft'],
    [310, '310 N·m', '228 lbf·ft'],
    [99.99, '99.9 N·m', '73.7 lbf·ft'],
    [0, '0 N·m', '0 lbf·ft'],
    [1234.9, '1230 N·m', '910 lbf·ft'],
  ])('a torque of %d N·m that must not be passed is cut off at three digits', (value, si, us) => {
    expect(formatCeiling(value, 'si')).toBe(si);
    expect(formatCeiling(value, 'us')).toBe(us);
  });
});
