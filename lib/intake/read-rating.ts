/*
 * Reads a pressure rating: `PN16`, `16`, `Class 150`, `150#`, `10K`, `16 bar`, and `1016` or `10.16` for PN 10/16.
 * Invariant: the answer is a normalised text; where two ratings can be meant the lower is taken and said.
 * Not here: what a rating means for stem and wheel (duty).
 * Read next: read-line.ts.
 */
import { type Fact, fact } from '#lib/units/known-value.ts';
import { parseQuantityRange } from '#lib/units/parse-quantity.ts';
import { type CellContext, cellText, originOf, report } from './cell-context.ts';
import { plainText, quoted } from './plain-text.ts';
import { reportUnreadable } from './read-cell.ts';

/** EN 1333, with PN 20, 50, 110, 150, 260, 420 of ISO 7005-1 and the old PN 64. */
const PN_VALUES: ReadonlySet<number> = new Set([
  2.5, 6, 10, 16, 20, 25, 40, 50, 63, 64, 100, 110, 160, 250, 260, 320, 400, 420,
]);
/** ASME B16.34 and B16.1. */
const CLASS_VALUES: ReadonlySet<number> = new Set([125, 150, 250, 300, 400, 600, 800, 900, 1500, 2500, 4500]);
/** Nominal pressure classes of JIS B 2220. */
const K_VALUES: ReadonlySet<number> = new Set([2, 5, 10, 16, 20, 30, 40, 63]);

type Rating = { readonly text: string; readonly doubt?: 'two values' | 'not standard' };

export function readRating(context: CellContext): Fact<string> | undefined {
  const text = cellText(context, 'rating');
  if (text === undefined) return undefined;
  const rating = ratingOf(text);
  if (rating === null) {
    reportUnreadable(context, 'rating', text);
    return undefined;
  }
  const origin = originOf(context, 'rating');
  if (rating.doubt === 'two values') {
    report(context, {
      code: 'rating-two-values',
      column: 'rating',
      sentence: `Rating ${quoted(text)} can mean two ratings; the lower is taken: ${rating.text}.`,
      remedy: 'Write the one that is cast on the body.',
    });
    return fact(rating.text, { ...origin, source: `${origin.source} It can mean two ratings; the lower is taken.` });
  }
  if (rating.doubt === 'not standard') {
    report(context, {
      code: 'rating-not-standard',
      column: 'rating',
      sentence: `Rating ${quoted(text)} is no standard class; it is kept as ${rating.text}.`,
      remedy: 'Check what is cast on the body.',
    });
  }
  return fact(rating.text, origin);
}

export function ratingOf(input: string): Rating | null {
  const text = plainText(input).replace(/\.0+(?=\D|$)/g, '');
  const number = String.raw`(\d+(?:[.,]\d+)?)`;
  const pair = new RegExp(
    String.raw`^(pn|class|cl)?\.?\s*${number}\s*(?:/|-|or|and|&|\\)\s*(?:pn|class|cl)?\.?\s*${number}(?:\s*bar)?$`,
  ).exec(text);
  if (pair) return lowerOf(pair[2], pair[3], pair[1] ?? '');
  const joined = joinedPair(text.replace(/^pn\s*/, ''));
  if (joined) return joined;
  const pn = new RegExp(`^pn\\s*${number}$|^${number}\\s*(?:pn|bar|barg|bar\\(g\\))$`).exec(text);
  if (pn) return pnRating(toNumber(pn[1] ?? pn[2]));
  const k = /^(?:jis\s*)?(?:(\d{1,2})\s*k|k\s*(\d{1,2}))$/.exec(text);
  if (k) {
    const value = Number(k[1] ?? k[2]);
    return K_VALUES.has(value) ? { text: `${value}K` } : { text: `${value}K`, doubt: 'not standard' };
  }
  const classed = new RegExp(
    `^(?:ansi|asme|class|cl|lbs?)[. ]*(?:class|cl|b16\\.\\d+)?\\s*#?\\s*${number}\\s*(?:#|lbs?|psi)?$|^${number}\\s*(?:#|lbs?|class|ansi|cwp)$`,
  ).exec(text);
  if (classed) return classRating(toNumber(classed[1] ?? classed[2]));
  if (new RegExp(`^${number}$`).test(text)) return bareRating(toNumber(text));
  const pressure = parseQuantityRange({ text, dimension: 'pressure' });
  if (!pressure.ok || pressure.value.nominal <= 0 || pressure.value.nominal > 1e8) return null;
  return { ...pnRating(Number((pressure.value.nominal / 1e5).toPrecision(3))), doubt: 'not standard' };
}

/** `1016`, `10.16`, `10,16`, `1625`: two PN values run together. */
function joinedPair(text: string): Rating | null {
  const found = /^(6|10|16|25)[.,]?(10|16|25|40)$/.exec(text);
  if (!found || Number(found[1]) >= Number(found[2])) return null;
  return lowerOf(found[1], found[2], 'pn');
}

function lowerOf(a: string | undefined, b: string | undefined, prefix: string): Rating {
  const lower = Math.min(toNumber(a), toNumber(b));
  const rating = prefix.startsWith('c') ? classRating(lower) : bareRating(lower);
  return { text: rating.text, doubt: 'two values' };
}

function bareRating(value: number): Rating {
  if (value === 400) return { text: 'Class 400', doubt: 'two values' };
  if (PN_VALUES.has(value)) return { text: `PN ${value}` };
  if (CLASS_VALUES.has(value)) return classRating(value);
  return value > 100
    ? { text: `Class ${value}`, doubt: 'not standard' }
    : { text: `PN ${value}`, doubt: 'not standard' };
}

function pnRating(value: number): Rating {
  return PN_VALUES.has(value) ? { text: `PN ${value}` } : { text: `PN ${value}`, doubt: 'not standard' };
}

function classRating(value: number): Rating {
  return CLASS_VALUES.has(value) ? { text: `Class ${value}` } : { text: `Class ${value}`, doubt: 'not standard' };
}

function toNumber(text: string | undefined): number {
  return Number((text ?? '0').replace(',', '.'));
}
