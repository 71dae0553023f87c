/*
 * Grip elements: an adapter with the extensions before it, and which of the line's cases it takes.
 * Invariant: wherever an element that is left out would do, one with fewer extensions does: no more pieces than the reach asks for.
 * Not here: whether a core fits it (../search-class.ts) and sets of elements (covers.ts).
 * Read next: covers.ts.
 */
import type { Coupling } from '#lib/equipment/coupling.ts';
import type { AdapterModel, ExtensionModel, Model } from '#lib/equipment/model.ts';
import { SHALLOW_M } from '#lib/rules/buried.ts';
import type { GripCase, LineFacts } from '#lib/rules/facts.ts';
import { ARMS_LENGTH_M } from '#lib/rules/reach.ts';
import { STRAIGHT_UP_TO_DEG } from '#lib/rules/ways-of-working.ts';
import { CASE_OF_ADAPTER, LINK_OF_EXTENSIONS } from '../narrow-views.ts';
import { isAllowed, type Refusals, type Tally } from '../refusals.ts';
import { caseBits } from './case-bits.ts';
import { type Chain, chainDoesAsWell, type EndedChain, type ExtensionChains } from './extension-chains.ts';

export interface GripElement {
  readonly adapter: AdapterModel;
  readonly extensions: readonly ExtensionModel[];
  /** What it takes from the head's side. */
  readonly input: Coupling;
  /** Bit by bit the cases that it takes. */
  readonly takes: bigint;
}

export interface ElementsInput {
  readonly facts: LineFacts;
  /** Adapters that no rule refuses by themselves. */
  readonly adapters: readonly AdapterModel[];
  readonly chains: ExtensionChains;
  /** Whether no rule refuses a part by itself. */
  readonly allows: (model: Model) => boolean;
  readonly cases: readonly GripCase[];
  readonly refusals: Refusals;
  readonly tally: Tally;
  /** Extensions that must be part of every element, by a person's wish. */
  readonly mustHold: readonly string[];
}

export function gripElements(input: ElementsInput): readonly GripElement[] {
  const { facts, refusals, tally } = input;
  const { line, duty, site, place } = facts;
  const linkRules = refusals.link.filter(({ id }) => !LINK_OF_EXTENSIONS.has(id));
  const caseRules = {
    alone: refusals.case.filter(({ id }) => CASE_OF_ADAPTER.has(id)),
    rest: refusals.case.filter(({ id }) => !CASE_OF_ADAPTER.has(id)),
  };
  const bits = caseBits(input.cases, tally);
  const chainsOf = chainFilter(input);
  const able = input.adapters.flatMap((adapter) => {
    const bare = { ...facts, adapter, extensions: [] };
    const alone = bits.passing(caseRules.alone, bare);
    const onWheel = duty.grip.kind === 'wheel' ? alone & bits.passing(caseRules.rest, bare) : null;
    return alone === 0n || onWheel === 0n ? [] : [{ adapter, bare, alone, onWheel }];
  });
  // Extensions make no adapter take more: where all of them together miss a case, none is looked at further.
  if (able.reduce((union, { alone, onWheel }) => union | (onWheel ?? alone), 0n) !== bits.all) return [];
  return able.flatMap(({ adapter, bare, alone, onWheel }) => {
    const chains = chainsOf(adapter);
    const elements = chains.map((chain): GripElement | null => {
      if (chain === null) return null;
      const { extensions } = chain;
      if (!isAllowed(linkRules, { line, duty, site, place, adapter, extensions }, tally)) return null;
      const takes = onWheel ?? alone & bits.passing(caseRules.rest, { ...bare, extensions });
      if (takes === 0n) return null;
      return { adapter, extensions, input: chain.input, takes };
    });
    return withoutNeedless({ elements, chains, facts });
  });
}

/** Chains before an adapter as the catalogue has them, null where the line does not let them through; found once for adapters of one coupling. */
function chainFilter(input: ElementsInput): (adapter: AdapterModel) => readonly (EndedChain | null)[] {
  const { facts, refusals, tally, allows } = input;
  const { line, duty, site, place } = facts;
  const free = lengthMatters(facts) || input.mustHold.length > 0;
  const rules = refusals.link.filter(({ id }) => LINK_OF_EXTENSIONS.has(id));
  const verdicts = new Map<Chain, boolean>();
  const passes = (extensions: Chain, adapter: AdapterModel): boolean => {
    const known =
      verdicts.get(extensions) ??
      ((free || extensions.length <= 1) &&
        holds(extensions, input.mustHold) &&
        extensions.every(allows) &&
        isAllowed(rules, { line, duty, site, place, adapter, extensions }, tally));
    verdicts.set(extensions, known);
    return known;
  };
  const ended = new Map<readonly EndedChain[], readonly (EndedChain | null)[]>();
  return (adapter) => {
    const chains = input.chains.endingIn(adapter.facts.input);
    const known = ended.get(chains) ?? chains.map((chain) => (passes(chain.extensions, adapter) ? chain : null));
    ended.set(chains, known);
    return known;
  };
}

/** Where neither reach, depth, angle nor a rising stem asks for more, one extension is enough to turn one coupling into another. */
export function lengthMatters({ line, duty }: LineFacts): boolean {
  return (
    (line.place.reach?.high ?? 0) > ARMS_LENGTH_M ||
    (duty.grip.depthToNut?.high ?? 0) > SHALLOW_M ||
    (line.place.misalignment?.high ?? 0) > STRAIGHT_UP_TO_DEG ||
    duty.grip.stemRisesThroughWheel !== 'no'
  );
}

const holds = (extensions: readonly ExtensionModel[], wanted: readonly string[]): boolean =>
  wanted.every((number) => extensions.some((extension) => extension.number === number));

/** Drops an element for one with fewer extensions that takes as much and is no weaker, slower or longer; a rising stem may need the longer one. */
function withoutNeedless(at: {
  readonly elements: readonly (GripElement | null)[];
  readonly chains: readonly (EndedChain | null)[];
  readonly facts: LineFacts;
}): readonly GripElement[] {
  const { elements, chains } = at;
  const there = elements.filter((element) => element !== null);
  if (at.facts.duty.grip.stemRisesThroughWheel !== 'no') return there;
  return elements.flatMap((element, index) => {
    if (element === null) return [];
    const isNeedless = chains[index]?.shorter.some((position) => {
      const takes = elements[position]?.takes ?? 0n;
      return (takes & element.takes) === element.takes;
    });
    return isNeedless === true ? [] : [element];
  });
}

/** Whether a shorter element is taken wherever a longer one of the same adapter would do. */
export function doesAsWell(shorter: GripElement, longer: GripElement): boolean {
  const chains = { shorter: shorter.extensions, longer: longer.extensions, adapter: longer.adapter };
  return chainDoesAsWell(chains) && (shorter.takes & longer.takes) === longer.takes;
}
