/*
 * Reads numbers as people write them: 1.234,5 and 1,234.5 and 0,5, fractions (1 1/2, 1½, 2 and half), powers.
 * Invariant: a text that is not wholly a number gives null, never part of it and never NaN.
 * Not here: units and ranges (parse-quantity.ts).
 * Read next: parse-quantity.ts.
 */
export interface ReadNumber {
  readonly value: number;
  /** `1,234` may be a thousand or a decimal comma; the value taken is the thousand. */
  readonly ambiguous: boolean;
}

const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅓': '1/3',
  '⅔': '2/3',
};

const DECIMAL = String.raw`(?:\d{1,3}(?:[ \u00a0\u2009\u202f'’]\d{3})+(?![\d/])(?:[.,]\d+)?|\d+(?:[.,]\d+)*|[.,]\d+)(?:[eE][-+]?\d{1,3})?`;
const FRACTION = String.raw`\d{1,3}\s?/\s?\d{1,3}`;
/** A pattern source that matches one number at its place, fractions included. */
export const NUMBER_PATTERN = String.raw`[-+−]?(?:\d{1,3}(?:\s+|\s?[-&]\s?|\s?and\s+)${FRACTION}|${FRACTION}(?!\d)|\d{1,3}\s?and\s(?:a\s)?half|${DECIMAL})`;

const WHOLE = new RegExp(String.raw`^${NUMBER_PATTERN}$`, 'i');

/** Writes ½ as 1/2, so that one pattern reads both. */
export function plainFractions(text: string): string {
  return text
    .replace(
      /(\d?)\s?([½¼¾⅛⅜⅝⅞⅓⅔])/g,
      (_all, before: string, mark: string) => `${before === '' ? '' : `${before} `}${VULGAR[mark] ?? mark}`,
    )
    .replace(/⁄/g, '/');
}

export function parseNumber(input: string): ReadNumber | null {
  const text = plainFractions(input).trim().replace(/−/g, '-');
  if (text.length > 40 || !WHOLE.test(text)) return null;
  const half = /^([-+]?)(\d+)\s?and\s(?:a\s)?half$/i.exec(text);
  if (half) return signed(half[1], Number(half[2]) + 0.5);
  const mixed = /^([-+]?)(?:(\d+)(?:\s+|\s?[-&]\s?|\s?and\s+))?(\d+)\s?\/\s?(\d+)$/i.exec(text);
  if (mixed) {
    const below = Number(mixed[4]);
    return below === 0 ? null : signed(mixed[1], Number(mixed[2] ?? 0) + Number(mixed[3]) / below);
  }
  return parseDecimal(text);
}

function signed(sign: string | undefined, size: number): ReadNumber {
  return { value: sign === '-' ? -size : size, ambiguous: false };
}

function parseDecimal(text: string): ReadNumber | null {
  const digits = text.replace(/[ \u00a0\u2009\u202f'’]/g, '');
  const commas = digits.split(',').length - 1;
  const dots = digits.split('.').length - 1;
  if (commas > 0 && dots > 0) {
    const decimal = digits.lastIndexOf(',') > digits.lastIndexOf('.') ? ',' : '.';
    const thousands = decimal === ',' ? '.' : ',';
    if (digits.split(decimal).length > 2) return null;
    return finite(digits.split(thousands).join('').replace(decimal, '.'), false);
  }
  if (commas > 1 || dots > 1) {
    const mark = commas > 1 ? ',' : '.';
    return /^[-+]?\d{1,3}([.,]\d{3})+$/.test(digits) ? finite(digits.split(mark).join(''), false) : null;
  }
  if (commas === 1) {
    const grouped = /^[-+]?[1-9]\d{0,2},\d{3}$/.test(digits);
    return finite(digits.replace(',', grouped ? '' : '.'), grouped);
  }
  return finite(digits, false);
}

function finite(text: string, ambiguous: boolean): ReadNumber | null {
  const value = Number(text);
  return Number.isFinite(value) ? { value, ambiguous } : null;
}
