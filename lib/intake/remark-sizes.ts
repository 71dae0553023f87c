/*
 * Finds the sizes that a remark names, and what each is the size of: the valve, the line it is on, a tee, or another pipe.
 * Invariant: tank names (`4 million`), counts (`2pics`) and the pipe that a branch comes from (`from 600`) are never the valve's size.
 * Not here: which size wins (choose-size.ts).
 * Read next: choose-size.ts.
 */
import { parseNumber } from '#lib/units/parse-number.ts';
import { isNominalMm } from './nominal-sizes.ts';
import { plainText } from './plain-text.ts';
import { readSizeText } from './read-size.ts';

export interface RemarkSize {
  /** Nominal size in mm; low and high differ for a tee or reducer with two sizes. */
  readonly low: number;
  readonly high: number;
  /** `other pipe`: the pipe that this one branches from or feeds; `pipe`: the pipe the valve sits in. */
  readonly of: 'valve' | 'line' | 'two sizes' | 'pipe' | 'other pipe';
  readonly text: string;
}

const NUMBER = String.raw`\d+[ ]\d+\/\d+|\d+[&-]\d+\/\d+|\d+\/\d+|\d+ ?and ?(?:a )?half|\d+(?:[.,]\d+)?`;
const UNIT = String.raw`mm|"|inch(?:es)?\b|ins?\b`;
const SIZE = String.raw`(?:\b(dn|nb|nps)\s?|(?<![\d.,\p{L}]|pn\s?))(${NUMBER})\s*(${UNIT})?(?![\d%])`;
const PAIR = new RegExp(
  String.raw`(?<![\d.,])(${NUMBER})\s*(${UNIT})?\s*(?:x|×|\bby|by)\s*(${NUMBER})\s*(${UNIT})?(?:\s*(?:x|×|by)\s*(${NUMBER})\s*(${UNIT})?)?`,
  'gu',
);
const OTHER_PIPE = new RegExp(
  String.raw`(?:\bfrom|\boff|\blinked (?:to|with)|\bfed (?:by|from)|\bconnected to|\breduced from)\s*(?:the\s|pipe\s|line\s|main\s|§\s?)*\s*${SIZE}`,
  'gu',
);
const ONE = new RegExp(SIZE, 'gu');
/** Names of reservoirs by what they hold, and counts of pieces or pictures. */
const TANKS = /\b(?:on|from|of)?\s*\d+(?:[.,]\d+)?\s*mil+i?o?n\w*(?:\s*gallons?)?/g;
const COUNTS = /\b\d+\s*(?:st|nd|rd|th)?\s*(?:pics?|pcs|pieces|nos?)\b/g;
/** A bare number is a size only after one of these words, or at the start, or alone. */
const LEADS_TO_SIZE =
  /(?:^|\bon|\bof|\bto|\bvalve ?(?:on)?|\bvavle|line|pipe|distribution|\bsize|\bdia\w*|§)\s*(?:the |old |new )?$/;
const NUMBERED_THING = /\b(?:no|nr|house|plot|street|road|km|room|block|hole|zone|phase|unit|chamber)\.?\s*$/;
const SMALLEST_BARE_MM = 40;

export function remarkSizes(remark: string): readonly RemarkSize[] {
  return remark.split(/;\s+/).flatMap(fragmentSizes);
}

function fragmentSizes(fragment: string): readonly RemarkSize[] {
  const sizes: RemarkSize[] = [];
  let text = plainText(fragment)
    .replace(/[“”″]|''/g, '"')
    .replace(/\b(valve|vavle)?(on|of|off|to|from)(?=\d)/g, '$1 $2 ')
    .replace(TANKS, (found) => (/^\s*from/.test(found) ? ' from § ' : ' § '))
    .replace(COUNTS, ' ');
  const pipeLabel = /^pipe ?(?:d|s)[a-z]*:\s*(.+)$/.exec(text);
  if (pipeLabel?.[1] !== undefined) return labelled(pipeLabel[1], fragment);
  text = text.replace(PAIR, (found, a: string, unitA, b: string, unitB, c: string | undefined, unitC) => {
    const unit = firstText([unitC, unitB, unitA]);
    const read = [a, b, ...(c === undefined ? [] : [c])].map((number) => toMm({ number, unit, lead: 'on' }));
    const values = read.filter((mm) => mm !== null);
    if (values.length !== read.length) return ' ';
    const low = Math.min(...values);
    const high = Math.max(...values);
    sizes.push({ low, high, of: low === high ? 'line' : 'two sizes', text: found.trim() });
    return ' ';
  });
  text = text.replace(OTHER_PIPE, (found, dn: string | undefined, number: string, unit: string | undefined) => {
    const mm = toMm({ number, unit: unit ?? dn, lead: 'from' });
    if (mm !== null) sizes.push({ low: mm, high: mm, of: 'other pipe', text: found.trim() });
    return ' ';
  });
  for (const found of text.matchAll(ONE)) {
    const before = text.slice(0, found.index);
    const after = text.slice(found.index + found[0].length);
    const [whole, dn, number = '', unit] = found;
    const lead = before.trim() === '' && after.trim() === '' ? 'on' : leadOf(before);
    const mm = toMm({ number, unit: unit ?? dn, lead });
    if (mm !== null) sizes.push({ low: mm, high: mm, of: roleOf({ before, after, dn }), text: whole.trim() });
  }
  return sizes;
}

function labelled(text: string, fragment: string): readonly RemarkSize[] {
  const read = readSizeText(text);
  return read.kind === 'size' ? [{ low: read.nominal, high: read.nominal, of: 'pipe', text: fragment.trim() }] : [];
}

function firstText(values: readonly unknown[]): string | undefined {
  return values.find((value): value is string => typeof value === 'string' && value !== '');
}

function leadOf(before: string): 'on' | 'from' | 'none' {
  if (NUMBERED_THING.test(before)) return 'none';
  return LEADS_TO_SIZE.test(before) ? 'on' : 'none';
}

function roleOf(place: {
  readonly before: string;
  readonly after: string;
  readonly dn: string | undefined;
}): RemarkSize['of'] {
  if (/^\s*(?:di |ci |gi )?(?:p ?v ?c|g\.?i\.?|d\.?i\.?|hdpe|pe|ac|steel|")?\s*(?:pipe|line|main)/.test(place.after)) {
    return /valve\s*$/.test(place.before) ? 'valve' : 'line';
  }
  if (
    /^\s*(?:gate|sluice|butterfly|globe|air|isolat\w*|control)?\s*(?:valve|vavle)/.test(place.after) ||
    place.dn === 'dn'
  )
    return 'valve';
  return 'line';
}

function toMm(size: {
  readonly number: string;
  readonly unit: string | undefined;
  readonly lead: 'on' | 'from' | 'none';
}): number | null {
  const { unit } = size;
  const value = parseNumber(size.number.replace('&', '-'))?.value;
  if (value === undefined || value <= 0) return null;
  if (unit === undefined) {
    const fits = value >= SMALLEST_BARE_MM && value <= 2000 && (isNominalMm(value) || size.lead === 'from');
    return fits && size.lead !== 'none' ? value : null;
  }
  const inches = unit === '"' || unit.startsWith('in') || unit === 'nps';
  const read = readSizeText(inches ? `${size.number.replace('&', '-')} in` : `${value} mm`);
  return read.kind === 'size' ? read.nominal : null;
}
