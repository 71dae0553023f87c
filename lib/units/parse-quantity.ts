/*
 * Reads one quantity with its unit, or a range of it, out of a text: `6 in`, `400-500 mm`, `~50 Nm`, `5 ft 6 in`.
 * Invariant: low ≤ nominal ≤ high in SI; never throws; a text that is not wholly a quantity is refused with a code.
 * Not here: which unit a column means and which values are plausible (intake).
 * Read next: unit-table.ts, parse-number.ts.
 */
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { NUMBER_PATTERN, parseNumber, plainFractions } from './parse-number.ts';
import { type Dimension, findUnit, toSi, type UnitRow } from './unit-table.ts';

export type Hedge = 'exact' | 'range' | 'about' | 'at most' | 'at least';

export interface ReadQuantity {
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
  readonly hedge: Hedge;
  /** The unit as written; empty when there was none and `bareUnit` was used. */
  readonly unitText: string;
  readonly ambiguousNumber: boolean;
}

interface Term {
  readonly number: number;
  readonly ambiguous: boolean;
  readonly unitText: string;
}

const ABOUT = /^(?:~|≈|±|approx(?:imately)?\.?|about|abt\.?|around|ca\.?|circa|c\.|env(?:iron)?\.?|etwa|aprox\.?)\s*/i;
const AT_MOST = /^(?:<=?|≤|under|below|max(?:imum)?\.?|up to|less than|at most|not over|bis)\s*/i;
const AT_LEAST = /^(?:>=?|≥|over|above|min(?:imum)?\.?(?=\s*\d)|more than|at least|ab)\s*/i;
const TO = /^\s*(?:-|–|—|\.\.\.?|…|\bto\b|\bbis\b|\bà\b|\band\b|~)\s*/i;
const NUMBER = new RegExp(String.raw`^\s*(${NUMBER_PATTERN})`, 'i');
const UNIT_WORD =
  /^\s*(:\s?1(?!\d)|to\s1(?![\d.,])|(?:[^\d\s–—…~<>≤≥]|(?<=\p{L})[23](?!\d)){1,14}(?:[\s·-]?[a-zA-Z²³][a-zA-Z0-9²³/()]*){0,3}|[1:]\/?[a-z]{0,3})/u;
/** `~50` means 50 give or take a tenth: common practice, no source. */
const ABOUT_SPREAD = 0.1;
/** `>50` has no upper end; twice the value is planned for. Assumed, no source. */
const AT_LEAST_SPREAD = 2;

/** One quantity in SI; a range answers with its nominal value. */
export function parseQuantity(question: {
  readonly text: string;
  readonly dimension: Dimension;
}): Result<{ readonly value: number; readonly unitText: string }> {
  const range = parseQuantityRange(question);
  return range.ok ? ok({ value: range.value.nominal, unitText: range.value.unitText }) : range;
}

/** A quantity or a range of it; `bareUnit` is the unit of a number that has none. */
export function parseQuantityRange(question: {
  readonly text: string;
  readonly dimension: Dimension;
  readonly bareUnit?: string;
}): Result<ReadQuantity> {
  const { dimension, bareUnit } = question;
  const cleaned = plainFractions(question.text.normalize('NFC')).trim();
  if (cleaned === '' || cleaned.length > 80) {
    return failed({
      code: 'quantity-unreadable',
      sentence: `There is no quantity to read in “${cleaned.slice(0, 40)}”.`,
    });
  }
  const hedged = readHedge(cleaned);
  const tolerance = hedged.text.split(/\s*(?:±|\+\/-|\+-)\s*/);
  const [middle, spread] = tolerance;
  if (tolerance.length === 2 && middle !== undefined && spread !== undefined) {
    return readTolerance({ middle, spread, dimension, ...(bareUnit === undefined ? {} : { bareUnit }) });
  }
  const first = readSide(hedged.text, dimension);
  if (first === null) return unreadable(question.text, dimension);
  let second: Side | null = null;
  if (first.rest !== '') {
    const separator = TO.exec(first.rest);
    second = separator ? readSide(first.rest.slice(separator[0].length), dimension) : null;
    if (second === null || second.rest !== '') return unreadable(question.text, dimension);
  }
  return combine({ first, second, hedge: hedged.hedge, dimension, bareUnit });
}

function readHedge(text: string): { readonly hedge: Hedge; readonly text: string } {
  for (const [hedge, pattern] of [
    ['about', ABOUT],
    ['at most', AT_MOST],
    ['at least', AT_LEAST],
  ] as const) {
    const found = pattern.exec(text);
    if (found) return { hedge, text: text.slice(found[0].length) };
  }
  return { hedge: 'exact', text };
}

interface Side {
  readonly terms: readonly Term[];
  readonly rest: string;
}

/** One side of a range: a number with a unit, or several (`5 ft 6 in`). */
function readSide(text: string, dimension: Dimension): Side | null {
  const terms: Term[] = [];
  let rest = text;
  while (terms.length < 3) {
    const found = NUMBER.exec(rest);
    const number = found?.[1] === undefined ? null : parseNumber(found[1]);
    if (!found || number === null) break;
    const after = rest.slice(found[0].length);
    const unit = readUnit(after, dimension);
    terms.push({ number: number.value, ambiguous: number.ambiguous, unitText: unit.unitText });
    rest = unit.rest;
    if (unit.unitText === '') break;
  }
  return terms.length === 0 ? null : { terms, rest: rest.trim() };
}

/** The longest text after a number that names a unit of the dimension. */
function readUnit(text: string, dimension: Dimension): { readonly unitText: string; readonly rest: string } {
  const found = UNIT_WORD.exec(text);
  const word = found?.[1];
  if (word === undefined || found === null) return { unitText: '', rest: text };
  const lead = found[0].length - word.length;
  for (let length = word.length; length > 0; length -= 1) {
    const candidate = word.slice(0, length);
    const next = text.slice(lead + length);
    const splitsWord = /[\p{L}]$/u.test(candidate) && /^[\p{L}]/u.test(next);
    if (!splitsWord && findUnit({ text: candidate, dimension })) {
      return { unitText: candidate.trim(), rest: next.replace(/^\s*\.(?!\d|\.)/, '') };
    }
  }
  return { unitText: '', rest: text };
}

function combine(parts: {
  readonly first: Side;
  readonly second: Side | null;
  readonly hedge: Hedge;
  readonly dimension: Dimension;
  readonly bareUnit: string | undefined;
}): Result<ReadQuantity> {
  const { first, second, dimension, hedge } = parts;
  const unitText = second?.terms.at(-1)?.unitText || first.terms.at(-1)?.unitText || '';
  const fallback = unitText === '' ? parts.bareUnit : unitText;
  const from = sum({ side: first, dimension, fallback });
  const to = second === null ? from : sum({ side: second, dimension, fallback });
  if (from === null || to === null) {
    return failed({ code: 'quantity-without-unit', sentence: 'The number has no unit; write the unit after it.' });
  }
  const ambiguousNumber = [...first.terms, ...(second?.terms ?? [])].some((term) => term.ambiguous);
  const base = { unitText, ambiguousNumber };
  const low = Math.min(from, to);
  const high = Math.max(from, to);
  if (second !== null) return ok({ ...base, low, nominal: tidy((low + high) / 2), high, hedge: 'range' });
  return ok({ ...base, ...spreadOf(hedge, from), hedge });
}

function spreadOf(
  hedge: Hedge,
  value: number,
): { readonly low: number; readonly nominal: number; readonly high: number } {
  const size = Math.abs(value);
  if (hedge === 'about')
    return { low: tidy(value - size * ABOUT_SPREAD), nominal: value, high: tidy(value + size * ABOUT_SPREAD) };
  if (hedge === 'at most') return { low: Math.min(0, value), nominal: value, high: value };
  if (hedge === 'at least') return { low: value, nominal: value, high: value + size * (AT_LEAST_SPREAD - 1) };
  return { low: value, nominal: value, high: value };
}

/** Drops the noise of binary fractions. */
function tidy(value: number): number {
  return Number(value.toPrecision(15));
}

function sum(parts: {
  readonly side: Side;
  readonly dimension: Dimension;
  readonly fallback: string | undefined;
}): number | null {
  let total = 0;
  for (const term of parts.side.terms) {
    const unit = unitOf(term.unitText === '' ? parts.fallback : term.unitText, parts.dimension);
    if (unit === undefined) return null;
    total += toSi(unit, term.number);
  }
  return Number.isFinite(total) ? Number(total.toPrecision(15)) : null;
}

function unitOf(text: string | undefined, dimension: Dimension): UnitRow | undefined {
  return text === undefined ? undefined : findUnit({ text, dimension });
}

function readTolerance(parts: {
  readonly middle: string;
  readonly spread: string;
  readonly dimension: Dimension;
  readonly bareUnit?: string;
}): Result<ReadQuantity> {
  const { dimension } = parts;
  const spreadSide = readSide(parts.spread, dimension);
  const unitText = spreadSide?.terms.at(-1)?.unitText ?? '';
  const bare = unitText === '' ? parts.bareUnit : unitText;
  const middle = parseQuantityRange({
    text: parts.middle,
    dimension,
    ...(bare === undefined ? {} : { bareUnit: bare }),
  });
  if (!middle.ok || spreadSide === null || spreadSide.rest !== '')
    return unreadable(`${parts.middle}±${parts.spread}`, dimension);
  const unit = unitOf(unitText || middle.value.unitText || bare, dimension);
  const number = spreadSide.terms[0]?.number;
  if (unit === undefined || number === undefined) return unreadable(parts.spread, dimension);
  const half = Math.abs(number * unit.factor);
  const { nominal } = middle.value;
  return ok({
    ...middle.value,
    low: tidy(nominal - half),
    high: tidy(nominal + half),
    hedge: 'range',
    unitText: unitText || middle.value.unitText,
  });
}

function unreadable(text: string, dimension: Dimension): Result<never> {
  return failed({
    code: 'quantity-unreadable',
    sentence: `“${text.trim().slice(0, 40)}” is not a ${dimension} that can be read; write a number and its unit.`,
  });
}
