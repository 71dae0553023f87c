/*
 * Reads a nominal size: `DN150`, `6"`, `6 in`, `150`, `150mm`, `1 1/2"`, NB, NPS, `150-200`, `200X150`.
 * Invariant: the answer is a nominal size in metres, or nothing with a problem that names the plausible range.
 * Not here: sizes in remarks (read-remark.ts) and which of the two wins (choose-size.ts).
 * Read next: choose-size.ts.
 */
import { parseNumber } from '#lib/units/parse-number.ts';
import { parseQuantityRange } from '#lib/units/parse-quantity.ts';
import { dnOfInches, isBareInches, isNominalMm, isNps, nearestNominal, OUTSIDE_DIAMETERS } from './nominal-sizes.ts';
import { plainText } from './plain-text.ts';

/** The plausible range of a valve that is turned by hand or tool. Common practice, no source. */
export const SIZE_MM = { low: 8, high: 3000 } as const;
/** Beyond this share off the next nominal size, the number is kept as it stands. Assumed: a slip of a digit or two. */
const SNAP_SHARE = 0.06;

export type SizeDoubt =
  | 'inches guessed'
  | 'metres guessed'
  | 'not nominal'
  | 'outside diameter'
  | 'two values'
  | 'number ambiguous';

export interface ReadSize {
  readonly kind: 'size';
  /** Nominal sizes in mm. */
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
  readonly doubts: readonly SizeDoubt[];
}

export type SizeAnswer =
  | ReadSize
  | { readonly kind: 'implausible'; readonly mm: number }
  | { readonly kind: 'unreadable' };

/** A size is shorter than this in any writing. */
const LONGEST_TEXT = 60;

export function readSizeText(input: string): SizeAnswer {
  if (input.length > LONGEST_TEXT) return { kind: 'unreadable' };
  const text = plainText(input)
    .replace(/[øØ⌀]/g, '')
    .replace(/[“”″]|''/g, '"')
    .replace(/^(?:size|dia(?:m(?:eter)?)?\.?|nominal|d\s*=|valve)\s*/, '')
    .replace(/\s*(?:dia(?:m(?:eter)?)?\.?|nominal|valve)$/, '')
    .trim();
  const slash = /^(?:dn\s*)?(\d{2,4})\s*\/\s*(?:dn\s*)?(\d{2,4})(?:\s*mm)?$/.exec(text);
  if (slash) return readPair([slash[1], slash[2]]);
  const pair = /^(.+?)\s*(?:x|×|\*|\bby\b)\s*(.+?)(?:\s*(?:x|×|\*|\bby\b)\s*(.+))?$/.exec(text);
  if (pair) return readPair([pair[1], pair[2], pair[3]]);
  const dn = /^(?:dn|d\.n\.|nd|ду)\s*[.:]?\s*(.+)$/.exec(text);
  if (dn?.[1] !== undefined) return readMm(dn[1].replace(/\s*mm$/, ''));
  const nps = /^(?:nps)\s*(.+)$/.exec(text);
  if (nps?.[1] !== undefined) return readInches(nps[1].replace(/\s*(?:"|in|inch)$/, ''));
  const nb = /^(?:nb|n\.b\.)\s*(.+)$/.exec(text)?.[1] ?? /^(.+?)\s*(?:nb|n\.b\.|dn)$/.exec(text)?.[1];
  return readPlain(nb ?? text);
}

function readPair(parts: readonly (string | undefined)[]): SizeAnswer {
  const given = parts.filter((part) => part !== undefined);
  const unit = /(mm|"|in(?:ch(?:es)?)?)\s*$/.exec(given.at(-1) ?? '')?.[1] ?? '';
  const sizes = given.map((part) => readPlain(/[a-z"]\s*$/.test(part) ? part : `${part}${unit}`));
  const read = sizes.filter((size) => size.kind === 'size');
  if (read.length !== given.length) return { kind: 'unreadable' };
  const values = read.map((size) => size.nominal);
  const low = Math.min(...values);
  const high = Math.max(...values);
  const doubts: readonly SizeDoubt[] = low === high ? [] : ['two values'];
  return { kind: 'size', low, nominal: low, high, doubts };
}

/** A number with or without a unit, or a range. */
function readPlain(text: string): SizeAnswer {
  const bare = parseNumber(text);
  if (bare !== null) return readBare(bare.value, bare.ambiguous);
  const read = parseQuantityRange({ text, dimension: 'length', bareUnit: 'mm' });
  if (!read.ok) return { kind: 'unreadable' };
  const inches = /^("|″|''|in|zoll|pouce|pulg|poleg|pollic|дюйм)/.test(read.value.unitText.toLowerCase());
  const ends = [read.value.low, read.value.nominal, read.value.high].map((metres) =>
    inches
      ? fromInches(metres / 0.0254)
      : read.value.unitText === '' && read.value.hedge !== 'exact'
        ? readBare(metres * 1000, false)
        : fromMm(metres * 1000),
  );
  const [low, nominal, high] = ends;
  if (low?.kind !== 'size' || nominal?.kind !== 'size' || high?.kind !== 'size')
    return nominal ?? { kind: 'unreadable' };
  if (read.value.hedge === 'range') {
    return { kind: 'size', low: low.low, nominal: high.high, high: high.high, doubts: [...low.doubts, ...high.doubts] };
  }
  return nominal;
}

function readBare(value: number, ambiguous: boolean): SizeAnswer {
  const doubts: readonly SizeDoubt[] = ambiguous ? ['number ambiguous'] : [];
  if (isBareInches(value)) return withDoubts(fromInches(value), ['inches guessed', ...doubts]);
  if (value > 0 && value < 3 && isNominalMm(Math.round(value * 1000)) && !isNps(value)) {
    return withDoubts(fromMm(Math.round(value * 1000)), ['metres guessed', ...doubts]);
  }
  return withDoubts(fromMm(value), doubts);
}

function readMm(text: string): SizeAnswer {
  const range = parseQuantityRange({ text, dimension: 'length', bareUnit: 'mm' });
  if (!range.ok) {
    return { kind: 'unreadable' };
  }
  const low = fromMm(range.value.low * 1000);
  const high = fromMm(range.value.high * 1000);
  if (low.kind !== 'size' || high.kind !== 'size') return high;
  return { kind: 'size', low: low.low, nominal: high.high, high: high.high, doubts: high.doubts };
}

function readInches(text: string): SizeAnswer {
  const number = parseNumber(text);
  return number === null ? { kind: 'unreadable' } : fromInches(number.value);
}

function fromInches(inches: number): SizeAnswer {
  const dn = dnOfInches(inches);
  if (inches <= 0 || dn < SIZE_MM.low || dn > SIZE_MM.high) return { kind: 'implausible', mm: inches * 25.4 };
  return { kind: 'size', low: dn, nominal: dn, high: dn, doubts: isNps(inches) ? [] : ['not nominal'] };
}

function fromMm(raw: number): SizeAnswer {
  const mm = Number(raw.toPrecision(10));
  if (mm < SIZE_MM.low || mm > SIZE_MM.high) return { kind: 'implausible', mm };
  if (isNominalMm(mm)) return { kind: 'size', low: mm, nominal: mm, high: mm, doubts: [] };
  const outside = OUTSIDE_DIAMETERS.find(([diameter]) => Math.abs(diameter - mm) < 0.05);
  if (outside) {
    return {
      kind: 'size',
      low: outside[1],
      nominal: outside[1],
      high: nearestNominal(mm),
      doubts: ['outside diameter'],
    };
  }
  const inches = Math.round((mm / 25.4) * 8) / 8;
  if (Math.abs(inches * 25.4 - mm) < 0.6 && isNps(inches)) return fromInches(inches);
  const near = nearestNominal(mm);
  const snapped = Math.abs(near - mm) <= SNAP_SHARE * near ? near : mm;
  return { kind: 'size', low: snapped, nominal: snapped, high: snapped, doubts: ['not nominal'] };
}

function withDoubts(answer: SizeAnswer, doubts: readonly SizeDoubt[]): SizeAnswer {
  return answer.kind === 'size' ? { ...answer, doubts: [...doubts, ...answer.doubts] } : answer;
}
