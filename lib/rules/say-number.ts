/*
 * Numbers inside sentences of rules: SI units, sensible digits, thousands set off.
 * Invariant: the same number always reads the same; sentences are kept in SI and converted nowhere.
 * Not here: tables and screens with a choice of units (units/format-quantity.ts).
 * Read next: rule.ts.
 */
export function sayTorque(value: number): string {
  return `${threeDigits(value)} N·m`;
}

export function sayForce(value: number): string {
  return Math.abs(value) >= 1000 ? `${threeDigits(value / 1000)} kN` : `${threeDigits(value)} N`;
}

export function sayLength(value_m: number): string {
  return Math.abs(value_m) >= 2 ? `${threeDigits(value_m)} m` : `${grouped(Math.round(value_m * 1000))} mm`;
}

export function sayMass(value: number): string {
  return `${threeDigits(value)} kg`;
}

export function sayMinutes(value_s: number): string {
  return value_s < 90 ? `${Math.round(value_s)} s` : `${threeDigits(value_s / 60)} min`;
}

export function sayPlain(value: number): string {
  return threeDigits(value);
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
