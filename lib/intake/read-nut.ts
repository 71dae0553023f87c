/*
 * Reads the size of an operating nut or square: `50 mm`, `2 in`, `SW 32`, `45-50`, tapered `50x45` (base and top).
 * Invariant: across flats at the top is the smaller of two when the nut tapers; a range stays a range.
 * Not here: which sockets fit (kits).
 * Read next: read-line.ts.
 */
import type { NutSize } from '#lib/duty/schedule-line.ts';
import { known } from '#lib/units/known-value.ts';
import { parseQuantityRange, type ReadQuantity } from '#lib/units/parse-quantity.ts';
import { type CellContext, cellText, originOf, report } from './cell-context.ts';
import { plainText, quoted } from './plain-text.ts';
import { reportImplausible, reportUnreadable } from './read-cell.ts';

/** Across flats of nuts and squares on valves. Common practice, no source. */
const FLATS_M = { low: 0.006, high: 0.15 } as const;
/** A bare number up to this is inches; 6 mm squares exist, 5 mm ones do not on valves. */
const BARE_INCH_LIMIT = 5;

/** A size with its shape is shorter than this; the rest is not looked at. */
const LONGEST_TEXT = 60;

export function readNut(context: CellContext): NutSize | undefined {
  const text = cellText(context, 'nut_size');
  if (text === undefined) return undefined;
  const plain = plainText(text.slice(0, LONGEST_TEXT))
    .replace(/^(?:sw|af|a\/f|sq(?:uare)?|hex(?:agon)?|vierkant|s\s*=)\s*/, '')
    .replace(/\s*(?:sw|af|a\/f|sq(?:uare)?\.?|hex(?:agon)?|across flats|taper(?:ed)?)$/g, '');
  const pair = /^(.+?)\s*(?:x|×|\/(?!\d+\s*(?:"|in))|\bto\b)\s*(.+)$/.exec(plain);
  const whole = parse(plain);
  if (whole !== null) return sized(context, whole);
  const [first, second] = pair ? [parse(pair[1]), parse(pair[2])] : [null, null];
  if (first === null || second === null) {
    reportUnreadable(context, 'nut_size', text);
    return undefined;
  }
  const [top, base] = first.nominal <= second.nominal ? [first, second] : [second, first];
  const flats = sized(context, top);
  const origin = originOf(context, 'nut_size');
  return flats && base.high <= FLATS_M.high && base.nominal > top.nominal
    ? { ...flats, acrossFlatsAtBase: known('m', base, origin) }
    : flats;
}

interface Flats extends ReadQuantity {
  readonly unitGuessed: 'inches' | 'no';
}

function parse(text: string | undefined): Flats | null {
  if (text === undefined) return null;
  const inMm = parseQuantityRange({ text, dimension: 'length', bareUnit: 'mm' });
  if (!inMm.ok) return null;
  if (inMm.value.unitText !== '' || inMm.value.nominal * 1000 > BARE_INCH_LIMIT)
    return { ...inMm.value, unitGuessed: 'no' };
  const inInches = parseQuantityRange({ text, dimension: 'length', bareUnit: 'in' });
  return inInches.ok ? { ...inInches.value, unitGuessed: 'inches' } : null;
}

function sized(context: CellContext, read: Flats): NutSize | undefined {
  if (read.low < FLATS_M.low || read.high > FLATS_M.high) {
    reportImplausible(context, 'nut_size', '6 to 150 mm across flats');
    return undefined;
  }
  if (read.unitGuessed === 'inches') {
    report(context, {
      code: 'unit-guessed',
      column: 'nut_size',
      sentence: `Nut size ${quoted(context.cells.nut_size ?? '')} has no unit; it makes sense in inches and is read so.`,
      remedy: 'Write the unit after the number.',
    });
  }
  return { acrossFlats: known('m', read, originOf(context, 'nut_size')) };
}
