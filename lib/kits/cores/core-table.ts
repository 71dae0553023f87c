/*
 * All cores of one question, whether or not any rule refuses them, and what each core rule says of them, worked out when first asked for.
 * Invariant: a rule says of a core what it says when asked directly; each is asked once for cores that are alike in what it looks at.
 * Not here: which rules are switched on (../why/conflict-table.ts) and how a conflict is told (../why/tell-cores.ts).
 * Read next: alike-cores.ts, ../narrow-views.ts.
 */
import type { OptionModel } from '#lib/equipment/model.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import type { Core, CoreFigures } from '#lib/rules/facts.ts';
import { mustCount } from '#lib/rules/must-count.ts';
import type { RuleOf } from '#lib/rules/rule.ts';
import {
  CORE_OF_LIMITER,
  CORE_OF_MESH,
  CORE_OF_OPTIONS,
  CORE_WITHOUT_COUNTER,
  CORE_WITHOUT_HEAD,
} from '../narrow-views.ts';
import type { ClassQuestion } from '../search-class.ts';
import { wishedIn } from '../wishes.ts';
import { type AlikeCores, type AllCores, alikeCores, type HeadAt, withHeads } from './alike-cores.ts';
import { type FiguresFrom, figuresFrom, limiterFor, meshFor, shortfallFrom, visitFor } from './core-figures.ts';
import type { Counters } from './core-filter.ts';
import { type CoreInput, type LimiterAt, type Mesh, memoOf } from './core-memo.ts';

export interface CoreTable {
  /** Those that the wishes allow. */
  readonly alike: readonly AlikeCores[];
  readonly counters: Counters;
  readonly counts: AllCores['counts'];
  readonly core: (one: AlikeCores, head: HeadAt) => Core;
  /** How far the torque falls short, as a share below one. */
  readonly shortfall: (one: AlikeCores) => number;
  /** The bits of those of some rules that have one and refuse. */
  readonly bits: (rules: readonly RuleOf<'core'>[]) => (one: AlikeCores) => number;
  /** Those that are refused by the same rules among those with a bit that were asked about, together. */
  readonly byBits: (rules: readonly RuleOf<'core'>[]) => ReadonlyMap<number, readonly AlikeCores[]>;
  /** Whether a rule that does not look at the counter refuses a core. */
  readonly refuses: (rule: RuleOf<'core'>, one: AlikeCores, head: HeadAt) => boolean;
  /** Whether a rule that looks at the counter refuses a core with one. */
  readonly refusesCounter: (rule: RuleOf<'core'>, core: Core, counter: OptionModel | null) => boolean;
}

export const looksAtCounter = ({ id }: RuleOf<'core'>): boolean => !CORE_WITHOUT_COUNTER.has(id);
export const looksAtHead = ({ id }: RuleOf<'core'>): boolean => !CORE_WITHOUT_HEAD.has(id);

const BITS: ReadonlyMap<string, number> = new Map(
  [...CORE_OF_MESH, ...CORE_OF_LIMITER].map((id, index) => [id, 1 << index]),
);

/** Rules that look at the mesh or the limiter alone have a bit each; the others have none. */
export const bitOf = ({ id }: RuleOf<'core'>): number => BITS.get(id) ?? 0;

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

/** Asks a rule of a core, and counts that. */
type Ask = (rule: RuleOf<'core'>, core: Core) => boolean;

function makeTable(question: ClassQuestion): CoreTable {
  const { tally } = question;
  const { line, duty, site, place } = question.facts;
  const { alike: all, counts } = alikeCores(question.frames);
  const alike = wishedAmong(all, question);
  const counters = countersOf(question);
  const { core, bareCore, shortfall, isRequired } = coreMaker(question, { counts, counter: counters[0] ?? null });
  const ask: Ask = (rule, one) => {
    tally.evaluations += 1;
    return rule.speaks({ line, duty, site, place, core: one });
  };
  const bitRows = bitRowsOf({ core, bareCore, isRequired, shortfall, counts, ask });
  const bits: CoreTable['bits'] = (rules) => {
    const rows = rules.filter((rule) => bitOf(rule) !== 0).map(bitRows);
    return (one) => rows.reduce((sum, row) => sum | row(one), 0);
  };
  let grouping: { readonly rules: readonly RuleOf<'core'>[]; readonly groups: ReturnType<CoreTable['byBits']> } | null =
    null;
  const rows = new Map<string, Uint8Array>();
  return {
    alike,
    counters,
    counts,
    core,
    shortfall,
    bits,
    byBits: (rules) => {
      const before = grouping?.rules ?? [];
      const more = rules.filter((rule) => bitOf(rule) !== 0 && !before.includes(rule));
      if (grouping === null || more.length > 0) {
        const all = [...before, ...more];
        grouping = { rules: all, groups: grouped(alike, bits(all)) };
      }
      return grouping.groups;
    },
    refuses: (rule, one, head) => {
      if (bitOf(rule) !== 0) return bitRows(rule)(one) !== 0;
      const row = rows.get(rule.id) ?? new Uint8Array(looksAtHead(rule) ? counts.core : all.length);
      rows.set(rule.id, row);
      const slot = looksAtHead(rule) ? head.core : one.at;
      if (row[slot] === UNASKED) row[slot] = ask(rule, core(one, head)) ? REFUSED : PASSED;
      return row[slot] === REFUSED;
    },
    refusesCounter: counterVerdicts(ask),
  };
}

interface Asking extends CoreMaker {
  readonly counts: AllCores['counts'];
  readonly ask: Ask;
}

/** For a rule that looks at the mesh or the limiter alone, its bit where it refuses; each mesh and limiter is asked about once. */
function bitRowsOf({
  core,
  bareCore,
  isRequired,
  counts,
  ask,
}: Asking): (rule: RuleOf<'core'>) => (one: AlikeCores) => number {
  const rows = new Map<string, (one: AlikeCores) => number>();
  const make = (rule: RuleOf<'core'>): ((one: AlikeCores) => number) => {
    const bit = bitOf(rule);
    const isOfMesh = CORE_OF_MESH.has(rule.id);
    const row = new Uint8Array(isOfMesh ? counts.mesh : 2 * counts.reach);
    return (one) => {
      const slot = isOfMesh ? one.mesh : 2 * one.reach + (isRequired(one) ? 1 : 0);
      if (row[slot] === UNASKED) {
        const asked = isOfMesh ? bareCore(one) : core(one, firstHead(one));
        row[slot] = ask(rule, asked) ? REFUSED : PASSED;
      }
      return row[slot] === REFUSED ? bit : 0;
    };
  };
  return (rule) => {
    const row = rows.get(rule.id) ?? make(rule);
    rows.set(rule.id, row);
    return row;
  };
}

export function firstHead({ heads: [first] }: AlikeCores): HeadAt {
  invariant(first !== undefined, 'Alike cores have no head.');
  return first;
}

function grouped(
  alike: readonly AlikeCores[],
  bits: (one: AlikeCores) => number,
): ReadonlyMap<number, readonly AlikeCores[]> {
  const groups = new Map<number, AlikeCores[]>();
  for (const one of alike) {
    const of = bits(one);
    const group = groups.get(of);
    if (group === undefined) groups.set(of, [one]);
    else group.push(one);
  }
  return groups;
}

/** What a rule says of limiter and counter, asked once for each two where it looks at nothing else. */
function counterVerdicts(ask: Ask): CoreTable['refusesCounter'] {
  const options = new Map<string, Map<OptionModel | null, Map<OptionModel | null, boolean>>>();
  return (rule, core, counter) => {
    const held = counter === core.counter ? core : { ...core, counter };
    if (!CORE_OF_OPTIONS.has(rule.id)) return ask(rule, held);
    const ofRule = options.get(rule.id) ?? new Map<OptionModel | null, Map<OptionModel | null, boolean>>();
    options.set(rule.id, ofRule);
    const ofLimiter = ofRule.get(core.limiter) ?? new Map<OptionModel | null, boolean>();
    ofRule.set(core.limiter, ofLimiter);
    const verdict = ofLimiter.get(counter) ?? ask(rule, held);
    ofLimiter.set(counter, verdict);
    return verdict;
  };
}

interface CoreMaker extends Pick<CoreTable, 'core' | 'shortfall'> {
  /** The core as if nothing limited it. */
  readonly bareCore: (one: AlikeCores) => Core;
  readonly isRequired: (one: AlikeCores) => boolean;
}

function coreMaker(
  { facts }: ClassQuestion,
  { counts, counter }: { readonly counts: AllCores['counts']; readonly counter: OptionModel | null },
): CoreMaker {
  const memo = memoOf(facts);
  const meshes = Array.from<Mesh | undefined>({ length: counts.mesh });
  const reaches = Array.from<LimiterAt | null | undefined>({ length: counts.reach });
  const shortfalls: number[] = [];
  const inputOf = (one: AlikeCores): CoreInput => {
    const { frame } = firstHead(one);
    return { facts, frame, gearIndex: one.gearIndex, limiterUpTo: 'needed' };
  };
  const meshOf = (one: AlikeCores): Mesh => {
    const known = meshes[one.mesh];
    if (known !== undefined) return known;
    const mesh = meshFor(inputOf(one), memo);
    meshes[one.mesh] = mesh;
    return mesh;
  };
  const bareFrom = (one: AlikeCores): FiguresFrom => {
    const input = inputOf(one);
    return { input, visit: visitFor(input, memo), mesh: meshOf(one), at: null };
  };
  const from = (one: AlikeCores): FiguresFrom => {
    const input = inputOf(one);
    const mesh = meshOf(one);
    let at = reaches[one.reach];
    if (at === undefined) {
      at = limiterFor(input, { memo, mesh });
      reaches[one.reach] = at;
    }
    return { input, visit: visitFor(input, memo), mesh, at };
  };
  const coreWith = (one: AlikeCores, { frame }: HeadAt, figures: CoreFigures): Core => {
    const { drive, head } = frame;
    const { gearIndex } = one;
    const limiter = figures.limiter === null ? null : frame.limiter;
    const gear = drive.facts.gears[gearIndex];
    invariant(gear !== undefined, `Drive ${drive.number} has no gear ${gearIndex}.`);
    return { drive, limiter, head, gear, gearIndex, counter, figures };
  };
  return {
    core: (one, head) => coreWith(one, head, figuresFrom(from(one))),
    bareCore: (one) => coreWith(one, firstHead(one), figuresFrom(bareFrom(one))),
    shortfall: (one) => {
      const known = shortfalls[one.at] ?? Number.NaN;
      if (known >= 0) return known;
      const short = shortfallFrom(from(one));
      shortfalls[one.at] = short;
      return short;
    },
    isRequired: (one) => meshOf(one).limiterRequired,
  };
}

function wishedAmong(all: readonly AlikeCores[], { stock, wishes }: ClassQuestion): readonly AlikeCores[] {
  const drives = wishedIn(wishes, 'drive');
  const heads = wishedIn(wishes, 'head');
  const options = wishedIn(wishes, 'option');
  const limiters = stock.limiters.filter(({ number }) => options?.has(number) ?? false);
  if (drives === null && heads === null && limiters.length === 0) return all;
  return all
    .filter(
      ({ drive, limiter }) =>
        (drives?.has(drive.number) ?? true) &&
        (limiters.length === 0 || (limiter !== null && limiters.includes(limiter))),
    )
    .flatMap((one) => (heads === null ? one : (withHeads(one, ({ number }) => heads.has(number)) ?? [])));
}

function countersOf({ facts, stock, wishes }: ClassQuestion): Counters {
  const options = wishedIn(wishes, 'option');
  const wished = stock.counters.filter(({ number }) => options?.has(number) ?? false);
  if (wished.length > 0) return wished;
  return mustCount(facts) ? [null, ...stock.counters] : [null];
}
