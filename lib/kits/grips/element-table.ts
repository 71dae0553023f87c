/*
 * Grip elements of one line under any subset of the part, link and case rules; each verdict is worked out once, when first asked for.
 * Invariant: under all rules the elements are those of the search, needless ones included.
 * Not here: cores and restraints (../why/conflict-table.ts).
 * Read next: ../why/conflict-table.ts.
 */
import type { AdapterModel, Model } from '#lib/equipment/model.ts';
import type { FactsOf, GripCase } from '#lib/rules/facts.ts';
import type { RuleOf } from '#lib/rules/rule.ts';
import { CASE_OF_ADAPTER, LINK_OF_EXTENSIONS } from '../narrow-views.ts';
import type { Refusals } from '../refusals.ts';
import type { ClassQuestion } from '../search-class.ts';
import { wishedIn } from '../wishes.ts';
import { caseBits } from './case-bits.ts';
import type { Chain, EndedChain } from './extension-chains.ts';
import { gripCases } from './grip-cases.ts';
import { type GripElement, lengthMatters } from './grip-elements.ts';

export interface ElementTable {
  readonly cases: readonly GripCase[];
  readonly under: (on: ElementRules) => ElementsUnder;
}

export interface ElementRules extends Pick<Refusals, 'link' | 'case'> {
  readonly passes: (model: Model) => boolean;
}

/**
 * `first`: of each adapter only what takes more than what its shorter chains take; enough where no rule asks for strength or room.
 */
export type WhichElements = 'first' | 'all';

export interface ElementsUnder {
  /** Whether the adapters could together take every case, whatever is before them: asked first, since it is cheap. */
  readonly mayCover: () => boolean;
  /** Those that a coupling, as text, joins. */
  readonly elements: (partner: string, which: WhichElements) => readonly GripElement[];
  /** Whether those that a coupling joins take every case together. */
  readonly covers: (partner: string) => boolean;
}

interface TableAdapter {
  readonly adapter: AdapterModel;
  /** Chains before it, by their coupling towards the head, as text. */
  readonly chains: () => ReadonlyMap<string, readonly EndedChain[]>;
  /** Cases that a rule refuses, whatever the extensions. */
  readonly refused: (rule: RuleOf<'case'>) => bigint;
}

export function elementTable(question: ClassQuestion): ElementTable {
  const { facts, stock, frames, tally } = question;
  const side = facts.duty.grip.kind;
  const sided = stock.adapters.filter(
    ({ facts: { wheel, sockets } }) => (side === 'wheel' ? wheel : sockets) !== undefined,
  );
  const cases = gripCases({ facts, adapters: sided });
  const bits = caseBits(cases, tally);
  const wanted = wishedIn(question.wishes, 'adapter');
  const adapters = stock.adapters
    .filter((adapter) => wanted?.has(adapter.number) ?? true)
    .map((adapter): TableAdapter => {
      const bare = { ...facts, adapter, extensions: [] };
      return {
        adapter,
        chains: once(() => frames.chains.byInput(adapter.facts.input)),
        refused: remembering((rule) => bits.refusedBy(rule, bare)),
      };
    });
  const withChain = chainVerdicts(question, bits.refusedBy);
  const isOfAdapter = ({ id }: RuleOf<'case'>): boolean => side === 'wheel' || CASE_OF_ADAPTER.has(id);
  const takenUnder = new Map<string, (one: TableAdapter) => bigint>();
  /** Cases that an adapter takes by the rules that look at nothing before it. */
  const takenAlone = (rules: readonly RuleOf<'case'>[]): ((one: TableAdapter) => bigint) => {
    const key = rules.map(({ id }) => id).join();
    const known =
      takenUnder.get(key) ??
      remembering(({ refused }: TableAdapter) => rules.reduce((left, rule) => left & ~refused(rule), bits.all));
    takenUnder.set(key, known);
    return known;
  };
  return {
    cases,
    under: (on) => {
      const takes = takenAlone(on.case.filter(isOfAdapter));
      const rest = on.case.filter((rule) => !isOfAdapter(rule));
      const able = once(() =>
        adapters.flatMap((one) => (on.passes(one.adapter) && takes(one) !== 0n ? [{ one, takes: takes(one) }] : [])),
      );
      const elements = once(() => elementsUnder({ on, able: able(), withChain, rest }, question));
      const mayCover = once(() => {
        let union = 0n;
        return adapters.some((one) => {
          if (on.passes(one.adapter)) union |= takes(one);
          return union === bits.all;
        });
      });
      return {
        mayCover,
        elements: (partner, which) => elements()[which](partner),
        covers: remembering((partner) => {
          const first = elements().first(partner);
          return first.length > 0 && first.reduce((sum, one) => sum | one.takes, 0n) === bits.all;
        }),
      };
    },
  };
}

interface AbleAdapter {
  readonly one: TableAdapter;
  readonly takes: bigint;
}

interface Under {
  readonly on: ElementRules;
  readonly able: readonly AbleAdapter[];
  readonly withChain: ReturnType<typeof chainVerdicts>;
  /** Case rules that look at the extensions too. */
  readonly rest: readonly RuleOf<'case'>[];
}

function elementsUnder(
  { on, able, withChain, rest }: Under,
  { facts, wishes }: ClassQuestion,
): Readonly<Record<WhichElements, (partner: string) => readonly GripElement[]>> {
  const ofBoth = on.link.filter(({ id }) => !LINK_OF_EXTENSIONS.has(id));
  const ofExtensions = on.link.filter(({ id }) => LINK_OF_EXTENSIONS.has(id));
  const mustHold = [...(wishedIn(wishes, 'extension') ?? [])];
  const longest = lengthMatters(facts) || mustHold.length > 0 ? Number.POSITIVE_INFINITY : 1;
  const verdicts = new Map<Chain, boolean>();
  const holds = (chain: Chain, adapter: AdapterModel): boolean => {
    const known =
      verdicts.get(chain) ??
      (chain.length <= longest &&
        mustHold.every((number) => chain.some((one) => one.number === number)) &&
        chain.every(on.passes) &&
        !ofExtensions.some((rule) => withChain.breaks(rule, adapter, chain)));
    verdicts.set(chain, known);
    return known;
  };
  const find = (partner: string, which: WhichElements): readonly GripElement[] => {
    const found: GripElement[] = [];
    for (const { one, takes: alone } of able) {
      const { adapter, chains } = one;
      let union = 0n;
      for (const { extensions, input } of chains().get(partner) ?? []) {
        if (!holds(extensions, adapter) || ofBoth.some((rule) => withChain.breaks(rule, adapter, extensions))) continue;
        const takes = rest.reduce((left, rule) => left & ~withChain.refused(rule, adapter, extensions), alone);
        if ((which === 'all' ? takes : takes & ~union) === 0n) continue;
        found.push({ adapter, extensions, input, takes });
        union |= takes;
        if (which === 'first' && union === alone) break;
      }
    }
    return found;
  };
  return {
    first: remembering((partner) => find(partner, 'first')),
    all: remembering((partner) => find(partner, 'all')),
  };
}

/** Verdicts on an adapter behind a chain, each worked out once. */
function chainVerdicts(
  { facts }: ClassQuestion,
  refusedBy: (rule: RuleOf<'case'>, setting: Omit<FactsOf['case'], 'gripCase'>) => bigint,
) {
  const links = new Map<RuleOf<'link'>, Map<Chain, boolean>>();
  const pairs = new Map<RuleOf<'link'>, Map<AdapterModel, Map<Chain, boolean>>>();
  const cases = new Map<RuleOf<'case'>, Map<AdapterModel, Map<Chain, bigint>>>();
  return {
    breaks: (rule: RuleOf<'link'>, adapter: AdapterModel, extensions: Chain): boolean => {
      const verdicts = LINK_OF_EXTENSIONS.has(rule.id) ? shelf(links, rule) : shelf(shelf(pairs, rule), adapter);
      const known = verdicts.get(extensions) ?? rule.speaks({ ...facts, adapter, extensions });
      verdicts.set(extensions, known);
      return known;
    },
    refused: (rule: RuleOf<'case'>, adapter: AdapterModel, extensions: Chain): bigint => {
      const verdicts = shelf(shelf(cases, rule), adapter);
      const known = verdicts.get(extensions) ?? refusedBy(rule, { ...facts, adapter, extensions });
      verdicts.set(extensions, known);
      return known;
    },
  };
}

function shelf<Key, Inner, Value>(map: Map<Key, Map<Inner, Value>>, key: Key): Map<Inner, Value> {
  const known = map.get(key) ?? new Map<Inner, Value>();
  map.set(key, known);
  return known;
}

function once<Value>(work: () => Value): () => Value {
  let known: Value | undefined;
  return () => {
    known ??= work();
    return known;
  };
}

export function remembering<Key, Value>(work: (key: Key) => Value): (key: Key) => Value {
  const remembered = new Map<Key, Value>();
  return (key) => {
    const known = remembered.get(key);
    if (known !== undefined) return known;
    const value = work(key);
    remembered.set(key, value);
    return value;
  };
}
