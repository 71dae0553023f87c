import { formatQuantity, type UnitSystem } from '#lib/units/format-quantity.ts';
import type { Unit } from '#lib/units/quantity.ts';

/** The unit that ends the name of a fact in the catalogue, and what one of it is in SI. */
const ENDINGS: readonly (readonly [ending: string, unit: Unit | 'Ah', size: number])[] = [
  ['_l_min', 'm³/s', 1 / 60_000],
  ['_m_s2', 'm/s²', 1],
  ['_nm', 'N·m', 1],
  ['_mm', 'm', 0.001],
  ['_kg', 'kg', 1],
  ['_rpm', '1/min', 1],
  ['_min', 's', 60],
  ['_bar', 'Pa', 1e5],
  ['_deg', '°', 1],
  ['_db', 'dB', 1],
  ['_wh', 'Wh', 1],
  ['_ah', 'Ah', 1],
  ['_n', 'N', 1],
  ['_m', 'm', 1],
  ['_s', 's', 1],
  ['_c', '°C', 1],
  ['_v', 'V', 1],
  ['_w', 'W', 1],
  ['_l', 'l', 1],
];

interface Measure {
  readonly unit: Unit | 'Ah';
  readonly size: number;
}

export interface FactText {
  readonly label: string;
  readonly text: string;
}

/** The facts of a model in plain words, quantities with their unit; what is held in other facts is told one after another. */
export function factTexts(facts: Readonly<Record<string, unknown>>, system: UnitSystem): readonly FactText[] {
  return Object.entries(facts).map(([key, value]) => {
    const { label, measure } = readName(key);
    return { label, text: tell({ value, measure, system }) };
  });
}

function readName(key: string): { readonly label: string; readonly measure: Measure | null } {
  const found = ENDINGS.find(([ending]) => key.endsWith(ending));
  if (found === undefined) return { label: key.replaceAll('_', ' '), measure: null };
  const [ending, unit, size] = found;
  return { label: key.slice(0, -ending.length).replaceAll('_', ' '), measure: { unit, size } };
}

interface Telling {
  readonly value: unknown;
  readonly measure: Measure | null;
  readonly system: UnitSystem;
}

function tell({ value, measure, system }: Telling): string {
  if (value === null || value === undefined) return 'none';
  if (value === true) return 'yes';
  if (value === false) return 'no';
  if (typeof value === 'number' && measure !== null) return tellNumber(value, { measure, system });
  if (Array.isArray(value)) {
    const told = value.map((one: unknown) => tell({ value: one, measure, system }));
    return told.length === 0 ? 'none' : told.join(value.some(isHolder) ? '; ' : ', ');
  }
  if (isHolder(value)) return tellHolder(value, { measure, system });
  return String(value).replaceAll('_', ' ');
}

function tellNumber(value: number, { measure, system }: { readonly measure: Measure; readonly system: UnitSystem }) {
  const { unit, size } = measure;
  return unit === 'Ah' ? `${value} Ah` : formatQuantity({ value: value * size, unit, system });
}

function isHolder(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** A range as `low to high`, anything else as names with their values. */
function tellHolder(held: Readonly<Record<string, unknown>>, { measure, system }: Omit<Telling, 'value'>): string {
  if (Object.keys(held).length === 2 && 'low' in held && 'high' in held) {
    const [low, high] = [held.low, held.high].map((value) => tell({ value, measure, system }));
    return low === high ? `${low}` : `${low} to ${high}`;
  }
  return Object.entries(held)
    .map(([key, value]) => {
      const own = readName(key);
      return `${own.label} ${tell({ value, measure: own.measure ?? measure, system })}`;
    })
    .join(', ');
}
