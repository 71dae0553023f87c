/*
 * All cores of one question, whether or not any rule refuses them, and what each core rule says of them, worked out when first asked for.
 * Invariant: a rule says of a core what it says when asked directly; what looks at figures alone is asked once for equal ones.
 * Not here: which rules are switched on (../why/conflict-table.ts) and how a conflict is told (../why/tell-conflict.ts).
 * Read next: ../narrow-views.ts.
 */
import type { OptionModel } from '#lib/equipment/model.ts';
import type { Core, CoreFigures } from '#lib/rules/facts.ts';
import { mustCount } from '#lib/rules/must-count.ts';
import type { RuleOf } from '#lib/rules/rule.ts';
import { CORE_OF_OPTIONS, CORE_WITHOUT_COUNTER, CORE_WITHOUT_HEAD } from '../narrow-views.ts';
import type { ClassQuestion } from '../search-class.ts';
import { wishedIn } from '../wishes.ts';
import { coreFigures, newCoreMemo } from './core-figures.ts';
import type { Counters } from './core-filter.ts';
import type { Frame } from './frames.ts';

export interface TableCore {
  readonly core: Core;
  readonly frame: Frame;
  /** Where it stands among all frames and gears. */
  readonly place: number;
  /** Number of its figures; equal ones have one. */
  readonly figures: number;
  readonly at: number;
}

export interface CoreTable {
  /** Frames that the wishes allow, by the coupling, as text, of what joins their output. */
  readonly frames: ReadonlyMap<string, readonly Frame[]>;
  readonly counters: Counters;
  readonly cores: (partner: string) => readonly TableCore[];
  /** Whether a rule that does not look at the counter refuses a core. */
  readonly refuses: (rule: RuleOf<'core'>, core: TableCore) => boolean;
  /** Whether a rule that looks at the counter refuses a core with one. */
  readonly refusesCounter: (rule: RuleOf<'core'>, core: TableCore, counter: OptionModel | null) => boolean;
  /** How many figures there may be. */
  readonly size: () => number;
}

export const looksAtCounter = ({ id }: RuleOf<'core'>): boolean => !CORE_WITHOUT_COUNTER.has(id);
export const looksAtHead = ({ id }: RuleOf<'core'>): boolean => !CORE_WITHOUT_HEAD.has(id);

const tables = new WeakMap<ClassQuestion, CoreTable>();

/** Kept with the question, so that finding a conflict and telling it work the cores out once. */
export function coreTable(question: ClassQuestion): CoreTable {
  const known = tables.get(question) ?? makeTable(question);
  tables.set(question, known);
  return known;
}

const UNASKED = 0;
const REFUSED = 1;
const PASSED = 2;

function makeTable(question: ClassQuestion): CoreTable {
  const { line, duty, site, place } = question.facts;
  const frames = wishedFrames(question);
  const counters = countersOf(question);
  const { cores, sizes } = coreMaker(question, { frames, counters });
  const speaks = (rule: RuleOf<'core'>, core: Core): boolean => rule.speaks({ line, duty, site, place, core });
  const verdicts = new Map<RuleOf<'core'>, Uint8Array<ArrayBuffer>>();
  const shelf = (rule: RuleOf<'core'>, size: number): Uint8Array<ArrayBuffer> => {
    const known = verdicts.get(rule) ?? new Uint8Array(size);
    const roomy = known.length >= size ? known : Uint8Array.from({ length: 2 * size }, (_, at) => known[at] ?? UNASKED);
    if (roomy !== known || !verdicts.has(rule)) verdicts.set(rule, roomy);
    return roomy;
  };
  const options = new Map<RuleOf<'core'>, Map<OptionModel | null, Map<OptionModel | null, boolean>>>();
  return {
    frames,
    counters,
    cores,
    size: () => sizes.figures,
    refuses: (rule, { core, figures, at }) => {
      const slot = looksAtHead(rule) ? at : figures;
      const row = shelf(rule, looksAtHead(rule) ? sizes.cores : sizes.figures);
      if (row[slot] === UNASKED) row[slot] = speaks(rule, core) ? REFUSED : PASSED;
      return row[slot] === REFUSED;
    },
    refusesCounter: (rule, { core }, counter) => {
      const held = counter === core.counter ? core : { ...core, counter };
      if (!CORE_OF_OPTIONS.has(rule.id)) return speaks(rule, held);
      const ofRule = options.get(rule) ?? new Map<OptionModel | null, Map<OptionModel | null, boolean>>();
      options.set(rule, ofRule);
      const ofLimiter = ofRule.get(core.limiter) ?? new Map<OptionModel | null, boolean>();
      ofRule.set(core.limiter, ofLimiter);
      const verdict = ofLimiter.get(counter) ?? speaks(rule, held);
      ofLimiter.set(counter, verdict);
      return verdict;
    },
  };
}

/** No drive has as many gears. */
const GEARS = 64;

function coreMaker(
  { facts, frames: { frames: all } }: ClassQuestion,
  at: Pick<CoreTable, 'frames' | 'counters'>,
): { readonly cores: CoreTable['cores']; readonly sizes: { cores: number; figures: number } } {
  const memo = newCoreMemo();
  const counter = at.counters[0] ?? null;
  const sizes = { cores: 0, figures: 0 };
  const numbers = new Map<CoreFigures, number>();
  const numberOf = (figures: CoreFigures): number => {
    const known = numbers.get(figures);
    if (known !== undefined) return known;
    numbers.set(figures, sizes.figures);
    sizes.figures += 1;
    return sizes.figures - 1;
  };
  const made = new Map<string, readonly TableCore[]>();
  const places = new Map<Frame, number>();
  const placeOf = (frame: Frame): number => {
    if (places.size === 0) for (const [position, one] of all.entries()) places.set(one, position);
    return places.get(frame) ?? 0;
  };
  const make = (frame: Frame): readonly TableCore[] =>
    frame.drive.facts.gears.map((gear, gearIndex): TableCore => {
      const { drive, limiter, head } = frame;
      const figures = coreFigures({ facts, frame, gearIndex, limiterUpTo: 'needed' }, memo);
      const core = { drive, limiter, head, gear, gearIndex, counter, figures };
      sizes.cores += 1;
      const place = placeOf(frame) * GEARS + gearIndex;
      return { core, frame, place, figures: numberOf(figures), at: sizes.cores - 1 };
    });
  const cores = (partner: string): readonly TableCore[] => {
    const known = made.get(partner) ?? (at.frames.get(partner) ?? []).flatMap(make);
    made.set(partner, known);
    return known;
  };
  return { cores, sizes };
}

function wishedFrames({ frames, stock, wishes }: ClassQuestion): CoreTable['frames'] {
  const drives = wishedIn(wishes, 'drive');
  const heads = wishedIn(wishes, 'head');
  const options = wishedIn(wishes, 'option');
  const limiters = stock.limiters.filter(({ number }) => options?.has(number) ?? false);
  if (drives === null && heads === null && limiters.length === 0) return frames.byPartner;
  const isWished = ({ drive, head, limiter }: Frame): boolean =>
    (drives?.has(drive.number) ?? true) &&
    (heads?.has(head.number) ?? true) &&
    (limiters.length === 0 || (limiter !== null && limiters.includes(limiter)));
  return new Map([...frames.byPartner].map(([partner, some]) => [partner, some.filter(isWished)]));
}

function countersOf({ facts, stock, wishes }: ClassQuestion): Counters {
  const options = wishedIn(wishes, 'option');
  const wished = stock.counters.filter(({ number }) => options?.has(number) ?? false);
  if (wished.length > 0) return wished;
  return mustCount(facts) ? [null, ...stock.counters] : [null];
}
