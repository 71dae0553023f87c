/*
 * Grip elements of one line under any subset of the link and case rules; each verdict is worked out once, when first asked for.
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
import { type Chain, couplingText, type EndedChain } from './extension-chains.ts';
import { gripCases } from './grip-cases.ts';
import { type GripElement, lengthMatters } from './grip-elements.ts';

export interface ElementTable {
  readonly cases: readonly GripCase[];
  /** Bits of all cases. */
  readonly all: bigint;
  /** Whether the adapters could together take every case, whatever is before them: asked first, since it is cheap. */
  readonly mayCover: (on: ElementRules) => boolean;
  /** Tells each element that has something to take; how to make it is given, since few are wanted. */
  readonly each: (on: ElementRules, visit: (told: ToldElement) => 'go on' | 'stop') => void;
}

export interface ElementRules extends Pick<Refusals, 'link' | 'case'> {
  readonly passes: (model: Model) => boolean;
}

export interface ToldElement {
  /** The coupling towards the head, as one text. */
  readonly input: string;
  readonly takes: bigint;
  readonly make: () => GripElement;
}

interface TableAdapter {
  readonly adapter: AdapterModel;
  /** Cases that a rule refuses, whatever the extensions. */
  readonly refused: (rule: RuleOf<'case'>) => bigint;
}

export function elementTable(question: ClassQuestion): ElementTable {
  const { facts, stock, tally } = question;
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
        refused: remembering((rule) => bits.refusedBy(rule, bare)),
      };
    });
  const chainsOf = chainsBefore(question);
  const withChain = chainVerdicts(question, bits.refusedBy);
  const isOfAdapter = ({ id }: RuleOf<'case'>): boolean => side === 'wheel' || CASE_OF_ADAPTER.has(id);
  return {
    cases,
    all: bits.all,
    mayCover: (on) => {
      const alone = on.case.filter(isOfAdapter);
      let union = 0n;
      for (const { adapter, refused } of adapters) {
        if (!on.passes(adapter)) continue;
        union |= alone.reduce((left, rule) => left & ~refused(rule), bits.all);
        if (union === bits.all) return true;
      }
      return false;
    },
    each: (on, visit) => {
      const alone = on.case.filter(isOfAdapter);
      const rest = on.case.filter((rule) => !isOfAdapter(rule));
      const ofBoth = on.link.filter(({ id }) => !LINK_OF_EXTENSIONS.has(id));
      const ofExtensions = on.link.filter(({ id }) => LINK_OF_EXTENSIONS.has(id));
      const verdicts = new Map<Chain, boolean>();
      const holds = (chain: Chain, adapter: AdapterModel): boolean => {
        const known =
          verdicts.get(chain) ??
          (chain.every(on.passes) && !ofExtensions.some((rule) => withChain.breaks(rule, adapter, chain)));
        verdicts.set(chain, known);
        return known;
      };
      for (const { adapter, refused } of adapters) {
        if (!on.passes(adapter)) continue;
        const takesAlone = alone.reduce((left, rule) => left & ~refused(rule), bits.all);
        if (takesAlone === 0n) continue;
        for (const { extensions, input } of chainsOf(adapter)) {
          if (!holds(extensions, adapter) || ofBoth.some((rule) => withChain.breaks(rule, adapter, extensions)))
            continue;
          const takes = rest.reduce((left, rule) => left & ~withChain.refused(rule, adapter, extensions), takesAlone);
          if (takes === 0n) continue;
          const make = () => ({ adapter, extensions, input: extensions[0]?.facts.input ?? adapter.facts.input, takes });
          if (visit({ input, takes, make }) === 'stop') return;
        }
      }
    },
  };
}

interface TableChain {
  readonly extensions: Chain;
  readonly input: string;
}

/** Chains that a line may ask for before an adapter, with the coupling towards the head as text. */
function chainsBefore({ facts, frames, wishes }: ClassQuestion): (adapter: AdapterModel) => readonly TableChain[] {
  const mustHold = [...(wishedIn(wishes, 'extension') ?? [])];
  const free = lengthMatters(facts) || mustHold.length > 0;
  const wanted = (chain: Chain): boolean =>
    (free || chain.length <= 1) && mustHold.every((number) => chain.some((one) => one.number === number));
  const filtered = remembering((chains: readonly EndedChain[]) =>
    chains.flatMap(({ extensions, input }) => (wanted(extensions) ? [{ extensions, input: couplingText(input) }] : [])),
  );
  return (adapter) => filtered(frames.chains.endingIn(adapter.facts.input));
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
