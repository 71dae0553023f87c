/*
 * Numbers inside sentences of rules: sensible digits, thousands set off, in SI and in US customary units.
 * Invariant: the same number always reads the same; both texts are made from the exact value, and `tell` takes them apart.
 * Not here: tables and screens (units/format-quantity.ts).
 * Read next: rule.ts, ../units/say-figure.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';
import { figure } from '#lib/units/say-figure.ts';
import { type Dimension, findUnit, fromSi, type UnitRow } from '#lib/units/unit-table.ts';

const LBF_FT = unitNamed('lbf·ft', 'torque');
const LBF = unitNamed('lbf', 'force');
const IN = unitNamed('in', 'length');
const FT = unitNamed('ft', 'length');
const LB = unitNamed('lb', 'mass');
const PSI = unitNamed('psi', 'pressure');
const CFM = unitNamed('cfm', 'flow');
const FAHRENHEIT = unitNamed('°F', 'temperature');

export function sayTorque(value: number): string {
  return figure({ si: `${threeDigits(value)} N·m`, us: inUnit(value, LBF_FT) });
}

/** A torque that is promised: cut off in either system, so that no text promises more than the value. */
export function sayTorqueDown(value: number): string {
  const pounds = numberIn(value, LBF_FT);
  return figure({
    si: `${threeDigits(threeDigitsDown(value))} N·m`,
    us: `${threeDigits(threeDigitsDown(pounds))} lbf·ft`,
  });
}

export function sayForce(value: number): string {
  const si = Math.abs(value) >= 1000 ? `${threeDigits(value / 1000)} kN` : `${threeDigits(value)} N`;
  return figure({ si, us: inUnit(value, LBF) });
}

export function sayLength(value_m: number): string {
  const si = Math.abs(value_m) >= 2 ? `${threeDigits(value_m)} m` : `${grouped(Math.round(value_m * 1000))} mm`;
  return figure({ si, us: inUnit(value_m, Math.abs(value_m) >= 3 ? FT : IN) });
}

export function sayMass(value: number): string {
  return figure({ si: `${threeDigits(value)} kg`, us: inUnit(value, LB) });
}

export function sayPressure(value_pa: number): string {
  return figure({
    si: `${threeDigits(value_pa / 1e5)} bar`,
    us: inUnit(value_pa, PSI),
  });
}

/** Free air. */
export function sayAirFlow(value_m3s: number): string {
  return figure({
    si: `${threeDigits(value_m3s * 1000)} l/s`,
    us: inUnit(value_m3s, CFM),
  });
}

export function sayTemperatures({ low, high }: { readonly low: number; readonly high: number }): string {
  return figure({
    si: `${low} to ${high} °C`,
    us: `${Math.round(numberIn(low, FAHRENHEIT))} to ${Math.round(numberIn(high, FAHRENHEIT))} °F`,
  });
}

export function sayMinutes(value_s: number): string {
  return value_s < 90 ? `${Math.round(value_s)} s` : `${threeDigits(value_s / 60)} min`;
}

export function sayPlain(value: number): string {
  return threeDigits(value);
}

interface Named {
  readonly name: string;
  readonly row: UnitRow;
}

function unitNamed(name: string, dimension: Dimension): Named {
  const row = findUnit({ text: name, dimension });
  invariant(row !== undefined, `The table of units has ${name}.`);
  return { name, row };
}

function numberIn(value: number, { row }: Named): number {
  return fromSi(row, value);
}

function inUnit(value: number, unit: Named): string {
  return `${threeDigits(numberIn(value, unit))} ${unit.name}`;
}

/** Never promises more than was tried. */
function threeDigitsDown(value: number): number {
  if (value <= 0) return value;
  const step = 10 ** (Math.floor(Math.log10(value)) - 2);
  return Math.floor(value / step + 1e-9) * step;
}

function threeDigits(value: number): string {
  if (!Number.isFinite(value)) return value > 0 ? 'no limit' : 'nothing';
  if (value === 0) return '0';
  const digits = Math.max(0, 2 - Math.floor(Math.log10(Math.abs(value))));
  const rounded = digits === 0 ? roundTo(value) : Number(value.toFixed(Math.min(digits, 3)));
  return grouped(rounded);
}

function roundTo(value: number): number {
  const step = 10 ** Math.max(0, Math.floor(Math.log10(Math.abs(value))) - 2);
  return Math.round(value / step) * step;
}

function grouped(value: number): string {
  const [whole = '', part] = String(value).split('.');
  const set = whole.replace(/\B(?=(\d{3})+(?!\d))/g, ',');
  return part === undefined ? set : `${set}.${part}`;
}
