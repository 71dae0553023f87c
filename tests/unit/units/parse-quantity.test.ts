import { describe, expect, it } from 'vitest';
import { parseNumber } from '#lib/units/parse-number.ts';
import { parseQuantity, parseQuantityRange } from '#lib/units/parse-quantity.ts';
import type { Dimension } from '#lib/units/unit-table.ts';

describe('numbers as people write them', () => {
  it.each([
    ['1.234,5', 1234.5],
    ['1,234.5', 1234.5],
    ['0,5', 0.5],
    ['.5', 0.5],
    ['1 234', 1234],
    ["1'234.5", 1234.5],
    ['1.234.567', 1_234_567],
    ['1,234,567', 1_234_567],
    ['1 1/2', 1.5],
    ['1-1/2', 1.5],
    ['1&1/2', 1.5],
    ['1½', 1.5],
    ['½', 0.5],
    ['3/4', 0.75],
    ['2and half', 2.5],
    ['2 and a half', 2.5],
    ['-4', -4],
    ['−4', -4],
    ['1e5', 100_000],
    ['100.0', 100],
    ['1.234', 1.234],
    ['0,005', 0.005],
  ])('%s is %d', (text, value) => {
    expect(parseNumber(text)?.value).toBeCloseTo(value, 10);
  });

  it('a comma before three digits is a thousand and is called ambiguous', () => {
    expect(parseNumber('1,234')).toEqual({ value: 1234, ambiguous: true });
    expect(parseNumber('12,34')).toEqual({ value: 12.34, ambiguous: false });
  });

  it.each(['', 'abc', '1.2.3', '1,2,3', '12 mm', '1/0', '--1', '1..2', '1,23.4,5', 'NaN', 'Infinity', '9'.repeat(41)])(
    '%s is no number',
    (text) => {
      expect(parseNumber(text)).toBeNull();
    },
  );
});

describe('quantities', () => {
  it.each<readonly [string, Dimension, number]>([
    ['6"', 'length', 0.1524],
    ['6 in', 'length', 0.1524],
    ['6 inch.', 'length', 0.1524],
    ['150mm', 'length', 0.15],
    ['1 1/2"', 'length', 0.0381],
    ['5 ft 6 in', 'length', 1.6764],
    ['5\'6"', 'length', 1.6764],
    ['1,2 m', 'length', 1.2],
    ['16 bar(g)', 'pressure', 1.6e6],
    ['145 psi', 'pressure', 999_739.808],
    ['10 kgf/cm²', 'pressure', 980_665],
    ['30 m head', 'pressure', 294_199.5],
    ['100 ft head', 'pressure', 298_906.692],
    ['1.6 MPa', 'pressure', 1.6e6],
    ['600 kPa', 'pressure', 6e5],
    ['100 ft-lb', 'torque', 135.581_794_8],
    ['100 ft.lbs', 'torque', 135.581_794_8],
    ['100 lb ft', 'torque', 135.581_794_8],
    ['10 in-lb', 'torque', 1.129_848_29],
    ['10 kgf·m', 'torque', 98.0665],
    ['5 kg-cm', 'torque', 0.490_332_5],
    ['68 °F', 'temperature', 20],
    ['293.15 K', 'temperature', 20],
    ['-20 °C', 'temperature', -20],
    ['2 min 30 s', 'time', 150],
    ['100 cfm', 'flow', 0.047_194_745],
    ['4000 l/min', 'flow', 0.066_666_667],
    ['85 %', 'ratio', 0.85],
    ['60 rpm', 'rotation', 60],
    ['12°', 'angle', 12],
    ['22 turns', 'turns', 22],
    ['25 kN', 'force', 25_000],
    ['1 100 N·m', 'torque', 1100],
  ])('%s is read as a %s', (text, dimension, value) => {
    const read = parseQuantity({ text, dimension });
    expect(read.ok && read.value.value).toBeCloseTo(value, value > 1e4 ? 2 : 6);
  });

  it.each<readonly [string, Dimension, string, readonly [number, number, number], string]>([
    ['400-500', 'length', 'mm', [0.4, 0.45, 0.5], 'range'],
    ['400 - 500 mm', 'length', 'mm', [0.4, 0.45, 0.5], 'range'],
    ['16 to 20 in', 'length', 'mm', [0.4064, 0.4572, 0.508], 'range'],
    ['500…400 mm', 'length', 'mm', [0.4, 0.45, 0.5], 'range'],
    ['~50', 'torque', 'N·m', [45, 50, 55], 'about'],
    ['ca. 50 Nm', 'torque', 'N·m', [45, 50, 55], 'about'],
    ['<30', 'torque', 'N·m', [0, 30, 30], 'at most'],
    ['>30 Nm', 'torque', 'N·m', [30, 30, 60], 'at least'],
    ['50±5', 'length', 'mm', [0.045, 0.05, 0.055], 'range'],
    ['-10 to 40 °C', 'temperature', '°C', [-10, 15, 40], 'range'],
  ])('%s is a range', (text, dimension, bareUnit, [low, nominal, high], hedge) => {
    const read = parseQuantityRange({ text, dimension, bareUnit });
    expect(read.ok && read.value).toMatchObject({ low, nominal, high, hedge });
  });

  it.each<readonly [string, Dimension]>([
    ['DN150', 'length'],
    ['3 x 4', 'length'],
    ['6 bar', 'length'],
    ['abc', 'torque'],
    ['', 'torque'],
    ['10 furlongs', 'length'],
    ['1-2-3', 'length'],
  ])('%s as %s is refused with a code', (text, dimension) => {
    expect(parseQuantity({ text, dimension })).toMatchObject({ ok: false, reason: { code: 'quantity-unreadable' } });
  });

  it('a number without a unit is refused where none may be assumed', () => {
    expect(parseQuantity({ text: '50', dimension: 'torque' })).toMatchObject({
      ok: false,
      reason: { code: 'quantity-without-unit' },
    });
  });
});
