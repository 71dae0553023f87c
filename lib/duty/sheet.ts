/*
 * The working sheet of one line: carries ranges through formulas and writes down each step.
 * Invariant: a result's low and high come from the corners of its inputs that give low and high; its basis is no better than theirs.
 * Not here: the formulas (lib/engineering).
 * Read next: assess-duty.ts.
 */
import type { Finding } from '#lib/kernel/finding.ts';
import type { Step } from '#lib/units/calculation-step.ts';
import { type Basis, type Known, type Origin, worstBasis } from '#lib/units/known-value.ts';
import { quantity, type Unit } from '#lib/units/quantity.ts';
import { tell } from '#lib/units/say-figure.ts';
import type { Tape } from './tape.ts';

/** How a result answers to an input: one way, to be tried at both ends (and at nought where the sign turns), or by picking between others. */
export type Effect = 'raises' | 'lowers' | 'either' | 'bends' | 'picks';

export interface Term {
  readonly symbol: string;
  readonly name: string;
  readonly value: Known<Unit>;
  readonly effect: Effect;
}

export interface Work<U extends Unit, Key extends string> {
  readonly id: string;
  readonly name: string;
  readonly formula: string;
  readonly unit: U;
  readonly terms: Readonly<Record<Key, Term>>;
  /** `at('load')` is the value of that input at the corner in question. */
  readonly evaluate: (at: (key: Key) => number) => number;
  readonly source: string;
}

type Blend<Key extends string> = Pick<Work<Unit, Key>, 'terms' | 'evaluate'>;

export interface Sheet {
  /** Null while an answer is only tried out: nothing is written down then. */
  readonly steps: Step[] | null;
  readonly findings: Finding[];
  /** Only where the values are to be drawn anew, by request. */
  readonly tape?: Tape;
}

export function openSheet(): Sheet & { readonly steps: Step[] } {
  return { steps: [], findings: [] };
}

export function scratchSheet(): Sheet {
  return { steps: null, findings: [] };
}

/** Writes no steps either, but remembers how each value follows from the others. */
export function tapedSheet(): Sheet & { readonly tape: Tape } {
  return { steps: null, findings: [], tape: [] };
}

export function term(symbol: string, name: string, value: Known<Unit>): Term {
  return { symbol, name, value, effect: 'raises' };
}

export function withEffect(effect: Effect, base: Term): Term {
  return { ...base, effect };
}

/** Works a formula over the ranges of its inputs and writes the step down. */
export function calculate<U extends Unit, Key extends string>(sheet: Sheet, work: Work<U, Key>): Known<U> {
  const entries = entriesOf(work.terms);
  const values = corners(entries, work.evaluate);
  const bases: Basis[] = ['computed'];
  for (const [, { value }] of entries) bases.push(value.basis);
  const basis = worstBasis(bases);
  if (sheet.steps === null) return remember(sheet, settle(work.unit, values, { basis, source: work.name }), work);
  const source = `${work.name}: computed from ${entries.map(([, { name }]) => name).join(', ')}.`;
  const result = remember(sheet, settle(work.unit, values, { basis, source }), work);
  sheet.steps.push({
    id: work.id,
    name: work.name,
    formula: work.formula,
    inputs: entries.map(([, { symbol, name, value }]) => ({
      symbol,
      name,
      low: value.low,
      nominal: value.nominal,
      high: value.high,
      unit: value.unit,
      basis: value.basis,
      source: value.source,
    })),
    result,
    source: work.source,
  });
  return result;
}

/** A value that follows from others by a rule of ours, without a step of its own: its range, and how it moves with them. */
export function combine<U extends Unit, Key extends string>(
  sheet: Sheet,
  { unit, terms, evaluate, origin }: Blend<Key> & { readonly unit: U; readonly origin: Origin },
): Known<U> {
  return remember(sheet, settle(unit, corners(entriesOf(terms), evaluate), origin), { terms, evaluate });
}

/** Notes how a value follows from its terms; a range that is set by hand must hold whatever the formula can give. */
export function remember<Value extends Known<Unit>, Key extends string>(
  sheet: Sheet,
  result: Value,
  { terms, evaluate }: Blend<Key>,
): Value {
  sheet.tape?.push({
    result,
    inputs: entriesOf(terms).map(([key, { name, value, effect }]) => ({ key, name, value, picks: effect === 'picks' })),
    evaluate,
  });
  return result;
}

/** Writes a looked-up value down as a step without a formula. */
export function lookUp<U extends Unit>(
  sheet: Sheet,
  entry: { readonly id: string; readonly name: string; readonly value: Known<U> },
): Known<U> {
  sheet.steps?.push({
    id: entry.id,
    name: entry.name,
    formula: '',
    inputs: [],
    result: entry.value,
    source: entry.value.source,
  });
  return entry.value;
}

/** Writes a finding down; its sentence may hold figures (units/say-figure.ts). */
export function note(sheet: Sheet, finding: Finding): void {
  sheet.findings.push({ ...finding, ...tell(finding.sentence) });
}

/** A known value whose ends are put in order; what is not a number becomes nought. */
export function settle<U extends Unit>(
  unit: U,
  values: { readonly low: number; readonly nominal: number; readonly high: number },
  origin: Origin,
): Known<U> {
  const low = finite(values.low);
  const high = finite(values.high);
  const nominal = Math.min(Math.max(finite(values.nominal), Math.min(low, high)), Math.max(low, high));
  return {
    low: quantity<U>(Math.min(low, high)),
    nominal: quantity<U>(nominal),
    high: quantity<U>(Math.max(low, high)),
    unit,
    basis: origin.basis,
    source: origin.source,
  };
}

function finite(value: number): number {
  return Number.isFinite(value) ? value : 0;
}

function entriesOf<Key extends string>(terms: Readonly<Record<Key, Term>>): readonly (readonly [Key, Term])[] {
  const entries: (readonly [Key, Term])[] = [];
  for (const key in terms) entries.push([key, terms[key]]);
  return entries;
}

function corners<Key extends string>(
  entries: readonly (readonly [Key, Term])[],
  evaluate: (at: (key: Key) => number) => number,
): { low: number; nominal: number; high: number } {
  const keys: Key[] = [];
  const point: number[] = [];
  const lowEnds: number[] = [];
  const highEnds: number[] = [];
  const open: number[] = [];
  for (const [key, { effect, value }] of entries) {
    if ((effect === 'either' || effect === 'bends') && value.low < value.high) open.push(keys.length);
    keys.push(key);
    point.push(value.nominal);
    lowEnds.push(effect === 'lowers' ? value.high : value.low);
    highEnds.push(effect === 'lowers' ? value.low : value.high);
  }
  let ends = point;
  const at = (key: Key): number => ends[keys.indexOf(key)] ?? Number.NaN;
  const nominal = evaluate(at);
  if (open.length === 0) {
    ends = lowEnds;
    const low = evaluate(at);
    ends = highEnds;
    return { low, nominal, high: evaluate(at) };
  }
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const choice of choices({ entries, open })) {
    for (const [index, end] of choice) {
      lowEnds[index] = end;
      highEnds[index] = end;
    }
    ends = lowEnds;
    low = Math.min(low, evaluate(at));
    ends = highEnds;
    high = Math.max(high, evaluate(at));
  }
  return { low, nominal, high };
}

/** Every combination of the ends of the inputs that may act either way, and nought where the sign turns. */
function choices<Key extends string>({
  entries,
  open,
}: {
  readonly entries: readonly (readonly [Key, Term])[];
  readonly open: readonly number[];
}): readonly (readonly (readonly [index: number, end: number])[])[] {
  let points: (readonly [number, number])[][] = [[]];
  for (const index of open) {
    const [, term] = entries[index] ?? [];
    if (term === undefined) continue;
    const { low, high } = term.value;
    const ends = term.effect === 'bends' && low < 0 && high > 0 ? [low, 0, high] : [low, high];
    points = points.flatMap((point) => ends.map((end): (readonly [number, number])[] => [...point, [index, end]]));
  }
  return points;
}
