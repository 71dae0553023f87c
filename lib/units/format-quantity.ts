/*
 * Prints a quantity for people, in SI or in US customary units, with sensible digits.
 * Invariant: the stored SI value never changes; only its text does, so switching units back and forth drifts nothing.
 * Not here: reading (parse-quantity.ts) and layout (documents).
 * Read next: unit-table.ts.
 */
import type { Known } from './known-value.ts';
import type { Unit } from './quantity.ts';
import { type Dimension, findUnit, fromSi } from './unit-table.ts';

export type UnitSystem = 'si' | 'us';

interface Style {
  readonly unit: string;
  readonly dimension: Dimension;
  /** `significant` digits, or fixed `decimals`. */
  readonly digits: { readonly kind: 'significant' | 'decimals'; readonly count: number };
}

const significant = (count: number): Style['digits'] => ({ kind: 'significant', count });
const decimals = (count: number): Style['digits'] => ({ kind: 'decimals', count });

function styleOf(unit: Unit, system: UnitSystem, value: number): Style | undefined {
  const si = system === 'si';
  const size = Math.abs(value);
  switch (unit) {
    case 'N·m':
      return { unit: si ? 'N·m' : 'lbf·ft', dimension: 'torque', digits: significant(3) };
    case 'N':
      return { unit: si ? (size >= 1000 ? 'kN' : 'N') : 'lbf', dimension: 'force', digits: significant(3) };
    case 'm':
      return lengthStyle(si, size);
    case 'm²':
      return { unit: si ? (size < 0.1 ? 'mm²' : 'm²') : 'in²', dimension: 'area', digits: significant(3) };
    case 'Pa':
      return { unit: si ? 'bar' : 'psi', dimension: 'pressure', digits: significant(3) };
    case '1/min':
      return { unit: si ? '1/min' : 'rpm', dimension: 'rotation', digits: significant(3) };
    case 'kg':
      return { unit: si ? 'kg' : 'lb', dimension: 'mass', digits: size < 10 ? decimals(1) : significant(3) };
    case '°C':
      return { unit: si ? '°C' : '°F', dimension: 'temperature', digits: decimals(0) };
    case 'm³/s':
      return {
        unit: si ? (size < 0.002 ? 'l/min' : 'l/s') : 'cfm',
        dimension: 'flow',
        digits: significant(3),
      };
    case 'm/s':
      return { unit: si ? 'm/s' : 'ft/s', dimension: 'speed', digits: significant(3) };
    case 'm/s²':
      return { unit: 'm/s²', dimension: 'acceleration', digits: significant(2) };
    case 'W':
      return { unit: si ? (size >= 1000 ? 'kW' : 'W') : 'hp', dimension: 'power', digits: significant(3) };
    case 'l':
      return { unit: si ? 'l' : 'gal', dimension: 'volume', digits: significant(3) };
    default:
      return undefined;
  }
}

function lengthStyle(si: boolean, size: number): Style {
  if (si && size >= 10) return { unit: 'm', dimension: 'length', digits: significant(3) };
  if (si) return { unit: 'mm', dimension: 'length', digits: size < 0.01 ? significant(3) : decimals(0) };
  if (size >= 3) return { unit: 'ft', dimension: 'length', digits: significant(3) };
  return { unit: 'in', dimension: 'length', digits: significant(3) };
}

const PLAIN: Readonly<Partial<Record<Unit, { readonly text: string; readonly digits: Style['digits'] }>>> = {
  '°': { text: '°', digits: significant(3) },
  turn: { text: ' turns', digits: decimals(1) },
  '1': { text: '', digits: significant(3) },
  dB: { text: ' dB', digits: decimals(0) },
  V: { text: ' V', digits: significant(3) },
  J: { text: ' J', digits: significant(3) },
  Wh: { text: ' Wh', digits: significant(3) },
};

/** A quantity as text, e.g. `128 N·m`, `94.4 lbf·ft`, `450 mm`, `2 min 05 s`. */
export function formatQuantity(quantity: {
  readonly value: number;
  readonly unit: Unit;
  readonly system: UnitSystem;
}): string {
  const { value, unit, system } = quantity;
  if (!Number.isFinite(value)) return '—';
  if (unit === 's') return formatTime(value);
  const plain = PLAIN[unit];
  if (plain)
    return `${digitsOf(value, plain.digits)}${unit === 'turn' && digitsOf(value, plain.digits) === '1' ? ' turn' : plain.text}`;
  const style = styleOf(unit, system, value);
  return style ? `${numberIn(style, value)} ${style.unit}` : `${digitsOf(value, significant(3))} ${unit}`;
}

/** A torque mark on a limiter's scale: cut off, never rounded up, so that nobody is told to set more than was worked out. */
export function formatMark(value: number, system: UnitSystem): string {
  /** In SI a mark is a whole step and is printed in full; three digits are all that a converted one is good for. */
  return cutOff({ value, system, digits: system === 'si' ? 'tenths' : 'three' });
}

/** A torque that must not be passed: three digits, cut off, so that what is printed is never more than what is allowed. */
export function formatCeiling(value: number, system: UnitSystem): string {
  return cutOff({ value, system, digits: 'three' });
}

interface CutOff {
  readonly value: number;
  readonly system: UnitSystem;
  readonly digits: 'tenths' | 'three';
}

function cutOff({ value, system, digits }: CutOff): string {
  if (!Number.isFinite(value)) return '—';
  const unit = system === 'si' ? 'N·m' : 'lbf·ft';
  const row = findUnit({ text: unit, dimension: 'torque' });
  const shown = Number((row ? fromSi(row, value) : value).toPrecision(12));
  if (shown === 0) return `0 ${unit}`;
  const step = digits === 'tenths' ? 0.1 : 10 ** (Math.floor(Math.log10(Math.abs(shown))) - 2);
  return `${Number((Math.floor(shown / step + 1e-9) * step).toPrecision(6))} ${unit}`;
}

/** `400…500 mm`, or one value where both ends print the same. */
export function formatRange(known: Known<Unit>, system: UnitSystem): string {
  const high = formatQuantity({ value: known.high, unit: known.unit, system });
  const low = formatQuantity({ value: known.low, unit: known.unit, system });
  if (low === high) return high;
  const style = styleOf(known.unit, system, known.high);
  if (style) return `${numberIn(style, known.low)}…${numberIn(style, known.high)} ${style.unit}`;
  const plain = PLAIN[known.unit];
  if (plain) return `${digitsOf(known.low, plain.digits)}…${digitsOf(known.high, plain.digits)}${plain.text}`;
  return `${low}…${high}`;
}

/** The US customary text of one quantity or of a range. */
export function inUsUnits(unit: Unit, ...values: readonly number[]): string {
  const texts = values.map((value) => formatQuantity({ value, unit, system: 'us' }));
  const last = texts.at(-1) ?? '';
  const name = last.slice(last.indexOf(' '));
  const same = texts.every((text) => text.endsWith(name));
  return [...texts.slice(0, -1).map((text) => (same ? text.slice(0, -name.length) : text)), last].join(' to ');
}

function numberIn(style: Style, value: number): string {
  const unit = findUnit({ text: style.unit, dimension: style.dimension });
  return digitsOf(unit ? fromSi(unit, value) : value, style.digits);
}

function digitsOf(value: number, digits: Style['digits']): string {
  if (!Number.isFinite(value)) return '—';
  if (value === 0) return '0';
  const places =
    digits.kind === 'decimals' ? digits.count : Math.max(0, digits.count - 1 - Math.floor(Math.log10(Math.abs(value))));
  const rounded = digits.kind === 'significant' ? Number(value.toPrecision(digits.count)) : value;
  if (!Number.isFinite(rounded)) return '—';
  const text = rounded.toFixed(Math.min(places, 12));
  const trimmed = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return trimmed === '-0' ? '0' : trimmed;
}

function formatTime(value: number): string {
  const sign = value < 0 ? '-' : '';
  const size = Math.abs(value);
  if (size < 60) return `${sign}${digitsOf(size, size < 10 ? significant(2) : decimals(0))} s`;
  const whole = Math.round(size);
  if (whole < 3600) return `${sign}${Math.floor(whole / 60)} min ${String(whole % 60).padStart(2, '0')} s`;
  const minutes = Math.round(size / 60);
  return `${sign}${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')} min`;
}
