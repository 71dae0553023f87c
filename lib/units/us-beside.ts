/*
 * Puts the US customary value in brackets beside each SI quantity of a text whose numbers are given as they are written.
 * Invariant: nothing of the text is changed or left out, so a citation stays a citation, and words in “quotes” are left alone; the number converted is the one read there.
 * Not here: sentences made from values (say-figure.ts), which are told in either system outright.
 * Read next: say-figure.ts.
 */
import { inUsUnits, type UnitSystem } from './format-quantity.ts';
import type { Unit } from './quantity.ts';
import { type Dimension, findUnit, toSi } from './unit-table.ts';

const WRITTEN: Readonly<Record<string, readonly [Unit, Dimension]>> = {
  N·m: ['N·m', 'torque'],
  kN·m: ['N·m', 'torque'],
  kN: ['N', 'force'],
  N: ['N', 'force'],
  mm: ['m', 'length'],
  m: ['m', 'length'],
  kg: ['kg', 'mass'],
  bar: ['Pa', 'pressure'],
  'l/min': ['m³/s', 'flow'],
  'l/s': ['m³/s', 'flow'],
  '°C': ['°C', 'temperature'],
};

const NUMBER = String.raw`[-−]?\d{1,3}(?:[, ]\d{3})+(?![\d.])|[-−]?\d+(?:\.\d+)?`;
const QUANTITY = new RegExp(
  String.raw`(?<![\w.,/·-])(${NUMBER})(?:( to |…|–|-)(${NUMBER}))?[ \u00a0](${Object.keys(WRITTEN).join('|')})(?![\w·/²³”])(?! \(\d)`,
  'gu',
);
/** A bracket that already follows a US quantity: `200 lbf (890 N)`. */
const ALREADY_BESIDE = /(?:lbf(?:·(?:ft|in))?|ft|in|psi|lb) \($/;

export function besideIt(text: string): string {
  return text.replace(
    QUANTITY,
    (whole: string, first: string, _to, second: string | undefined, name: string, at: number) => {
      const [unit, dimension] = WRITTEN[name] ?? [];
      const row = dimension === undefined ? undefined : findUnit({ text: name, dimension });
      if (unit === undefined || row === undefined || ALREADY_BESIDE.test(text.slice(0, at))) return whole;
      const values = [first, ...(second === undefined ? [] : [second])].map((number) =>
        toSi(row, Number(number.replace(/[, ]/g, '').replace('−', '-'))),
      );
      return `${whole} (${inUsUnits(unit, ...values)})`;
    },
  );
}

/** A citation or an explanation as it is shown in a unit system. */
export function sourceIn(source: string, system: UnitSystem): string {
  return system === 'us' ? besideIt(source) : source;
}
