import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readLine } from '#lib/intake/read-line.ts';
import { formatMark, formatQuantity, formatRange } from '#lib/units/format-quantity.ts';
import { exactly } from '#lib/units/known-value.ts';
import { parseQuantity } from '#lib/units/parse-quantity.ts';
import type { Unit } from '#lib/units/quantity.ts';
import { sentenceIn } from '#lib/units/say-figure.ts';
import { type Dimension, UNITS } from '#lib/units/unit-table.ts';
import { holdsFor } from '#tests/support/checked-property.ts';
import { scheduleLines } from '#tests/support/lists/duty-arbitraries.ts';
import { dutyOf } from '#tests/support/lists/duty-lines.ts';

const QUANTITIES: readonly (readonly [Unit, Dimension])[] = [
  ['N·m', 'torque'],
  ['N', 'force'],
  ['m', 'length'],
  ['m²', 'area'],
  ['Pa', 'pressure'],
  ['kg', 'mass'],
  ['°C', 'temperature'],
  ['m³/s', 'flow'],
  ['m/s', 'speed'],
  ['1/min', 'rotation'],
  ['W', 'power'],
  ['l', 'volume'],
];
const sizes = fc.double({ min: 1e-3, max: 1e6, noNaN: true });
const systems = fc.array(fc.constantFrom('si' as const, 'us' as const), { minLength: 1, maxLength: 30 });
/** The marks that figures carry between their making and `tell`. */
const INNER = /[\uE000-\uE002]/;
const BARE_SI = /\d (?:N·m|kN|N|mm|m|kg|bar|l\/s|l\/min)(?![\w·/²³])(?! \()/;

describe('laws of the two unit systems', () => {
  it('switching to and fro changes no stored bit and no text', () => {
    holdsFor({
      law: 'switching drifts nothing',
      cases: fc.record({ value: sizes, at: fc.nat(QUANTITIES.length - 1), systems }),
      runs: 3000,
      check: ({ value, at, systems: switched }) => {
        const unit = QUANTITIES[at]?.[0] ?? 'm';
        const stored = exactly(unit, value, { basis: 'stated', source: 'The list.' });
        const before = structuredClone(stored);
        const first = { si: formatRange(stored, 'si'), us: formatRange(stored, 'us') };
        for (const system of switched) expect(formatRange(stored, system)).toBe(first[system]);
        expect(Object.is(stored.nominal, before.nominal)).toBe(true);
        expect(stored).toEqual(before);
        return undefined;
      },
    });
  });

  it('what is shown is within three digits of what is stored, in either system, and reads back as that', () => {
    holdsFor({
      law: 'shown near enough',
      cases: fc.record({
        value: sizes,
        at: fc.nat(QUANTITIES.length - 1),
        system: fc.constantFrom('si' as const, 'us' as const),
      }),
      runs: 3000,
      check: ({ value, at, system }) => {
        const [unit, dimension] = QUANTITIES[at] ?? ['m', 'length'];
        const read = parseQuantity({ text: formatQuantity({ value, unit, system }), dimension });
        expect(read.ok).toBe(true);
        if (!read.ok) return undefined;
        // Whole millimetres, whole degrees and tenths of a kilogram are coarser than three digits of a small value.
        const coarse = { m: 0.0005, '°C': 0.5, kg: 0.05 }[unit as 'm'] ?? 0;
        expect(Math.abs(read.value.value - value)).toBeLessThanOrEqual(0.00501 * Math.abs(value) + coarse);
        return undefined;
      },
    });
  });

  it('a mark of a limiter is never shown higher than it is', () => {
    holdsFor({
      law: 'marks are cut off',
      cases: fc.record({
        steps: fc.integer({ min: 1, max: 4000 }),
        step: fc.constantFrom(0.5, 1, 2.5, 5, 10, 25),
        system: fc.constantFrom('si' as const, 'us' as const),
      }),
      runs: 4000,
      check: ({ steps, step, system }) => {
        const mark = steps * step;
        const read = parseQuantity({ text: formatMark(mark, system), dimension: 'torque' });
        expect(read.ok).toBe(true);
        if (!read.ok) return undefined;
        expect(read.value.value).toBeLessThanOrEqual(mark * (1 + 1e-9));
        if (system === 'si') expect(read.value.value).toBeCloseTo(mark, 9);
        else expect(read.value.value).toBeGreaterThan(mark * 0.99 - 1e-9);
        return undefined;
      },
    });
  });

  it('a cell typed in US customary units stores the exact conversion, and reading it again stores the same bits', () => {
    const FOOT = UNITS.find(({ names }) => names[0] === 'lbf·ft');
    holdsFor({
      law: 'typed cells are exact',
      cases: fc.record({ pounds: fc.integer({ min: 1, max: 30_000 }), inches: fc.integer({ min: 32, max: 600 }) }),
      runs: 1500,
      check: ({ pounds, inches }) => {
        const cells = {
          tag: 'V1',
          size: 'DN 300',
          starting_torque: `${pounds} lbf·ft`,
          wheel_diameter: `${inches / 16} in`,
        };
        const once = readLine({ row: 1, cells, measured: [] });
        // One binary rounding of the product is all that may lie between; the table keeps fifteen digits.
        const exact = pounds * (FOOT?.factor ?? 0);
        const torque = once.line.torque.starting?.nominal ?? 0;
        expect(Math.abs(torque / exact - 1)).toBeLessThan(1e-14);
        const wheel = once.line.interface.wheelDiameter?.nominal;
        if (wheel !== undefined) expect(Math.abs(wheel / ((inches / 16) * 0.0254) - 1)).toBeLessThan(1e-14);
        const again = readLine({ row: 1, cells: { ...cells }, measured: [] });
        expect(again).toEqual(once);
        return wheel !== undefined;
      },
    });
  });

  it('whatever a duty says holds no inner mark, and in US customary units no figure that is in SI alone', () => {
    let told = 0;
    holdsFor({
      law: 'findings in both systems',
      cases: scheduleLines,
      runs: 800,
      check: (line) => {
        const duty = dutyOf(line);
        expect(INNER.test(JSON.stringify(duty))).toBe(false);
        for (const finding of duty.findings) {
          expect(sentenceIn(finding, 'si')).toBe(finding.sentence);
          expect(sentenceIn(finding, 'us')).not.toMatch(BARE_SI);
          if (finding.inUs !== undefined) told += 1;
        }
        return undefined;
      },
    });
    console.info(`findings told in both unit systems: ${told}`);
    expect(told).toBeGreaterThan(100);
  });
});
