/*
 * Grip elements: an adapter with the extensions before it, and which of the line's cases it takes.
 * Invariant: wherever an element that is left out would do, one with fewer extensions does: no more pieces than the reach asks for.
 * Not here: whether a core fits it (search-class.ts) and sets of elements (covers.ts).
 * Read next: covers.ts.
 */
import { type Coupling, joins } from '#lib/equipment/coupling.ts';
import type { AdapterModel, ExtensionModel } from '#lib/equipment/model.ts';
import { SHALLOW_M, STRAIGHT_UP_TO_DEG } from '#lib/rules/buried.ts';
import type { GripCase, LineFacts } from '#lib/rules/facts.ts';
import { ARMS_LENGTH_M } from '#lib/rules/reach.ts';
import { CASE_OF_ADAPTER, LINK_OF_EXTENSIONS } from './narrow-views.ts';
import { isAllowed, type Refusals, type Tally } from './refusals.ts';

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
  /** Adapters and extension chains whose parts no rule refuses by themselves. */
  readonly adapters: readonly AdapterModel[];
  readonly chains: readonly (readonly ExtensionModel[])[];
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
  const every = input.cases.map((_, index) => index);
  const chainsOf = chainsByEnd(input);
  return input.adapters.flatMap((adapter) => {
    const taken = (rules: typeof refusals.case, among: readonly number[], extensions: readonly ExtensionModel[]) =>
      casesTaken({ input, adapter, extensions, rules, among });
    const alone = taken(caseRules.alone, every, []);
    const onWheel = duty.grip.kind === 'wheel' ? taken(caseRules.rest, alone, []) : null;
    if (alone.length === 0 || onWheel?.length === 0) return [];
    const wheelBits = onWheel === null ? null : bitsOf(onWheel);
    const chains = chainsOf(adapter);
    const elements = chains.map(({ extensions }): GripElement | null => {
      if (!isAllowed(linkRules, { line, duty, site, place, adapter, extensions }, tally)) return null;
      const takes = wheelBits ?? bitsOf(taken(caseRules.rest, alone, extensions));
      if (takes === 0n) return null;
      return { adapter, extensions, input: extensions[0]?.facts.input ?? adapter.facts.input, takes };
    });
    return withoutNeedless({ elements, chains, facts });
  });
}

/** A chain of extensions that ends in one coupling, with the shorter ones there that are no weaker, slower or longer. */
interface EndedChain {
  readonly extensions: readonly ExtensionModel[];
  /** Positions among the chains of that end. */
  readonly shorter: readonly number[];
}

/** Chains that couple to an adapter and pass what looks at extensions alone; found once for adapters of one coupling. */
function chainsByEnd(input: ElementsInput): (adapter: AdapterModel) => readonly EndedChain[] {
  const { facts, refusals, tally } = input;
  const { line, duty, site, place } = facts;
  const free = lengthMatters(facts) || input.mustHold.length > 0;
  const rules = refusals.link.filter(({ id }) => LINK_OF_EXTENSIONS.has(id));
  const verdicts = new Map<readonly ExtensionModel[], boolean>();
  const passes = (extensions: readonly ExtensionModel[], adapter: AdapterModel): boolean => {
    const known = verdicts.get(extensions) ?? isAllowed(rules, { line, duty, site, place, adapter, extensions }, tally);
    verdicts.set(extensions, known);
    return known;
  };
  const ended = new Map<string, readonly EndedChain[]>();
  return (adapter) => {
    const end = adapter.facts.input;
    const key = `${end.form} ${end.size} ${end.gender}`;
    const known = ended.get(key);
    if (known !== undefined) return known;
    const chains = input.chains.filter(
      (extensions) =>
        (free || extensions.length <= 1) &&
        couples(extensions, adapter) &&
        holds(extensions, input.mustHold) &&
        passes(extensions, adapter),
    );
    const figures = chains.map((extensions) => figuresOf(extensions, end));
    const made = chains.map((extensions, index) => {
      const longer = figures[index];
      const shorter = figures.flatMap((one, at) => (longer !== undefined && isAsGood(one, longer) ? [at] : []));
      return { extensions, shorter };
    });
    ended.set(key, made);
    return made;
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

export function couples(extensions: readonly ExtensionModel[], adapter: AdapterModel): boolean {
  const last = extensions.at(-1);
  return last === undefined || joins(last.facts.output, adapter.facts.input);
}

/** Positions, among those asked, of the cases that some rules let pass. */
function casesTaken(at: {
  readonly input: ElementsInput;
  readonly adapter: AdapterModel;
  readonly extensions: readonly ExtensionModel[];
  readonly rules: Refusals['case'];
  readonly among: readonly number[];
}): readonly number[] {
  const { cases, tally } = at.input;
  const { line, duty, site, place } = at.input.facts;
  const { adapter, extensions, rules } = at;
  return at.among.filter((index) => {
    const gripCase = cases[index];
    return (
      gripCase !== undefined && isAllowed(rules, { line, duty, site, place, adapter, extensions, gripCase }, tally)
    );
  });
}

function bitsOf(positions: readonly number[]): bigint {
  let bits = 0n;
  for (const position of positions) bits |= 1n << BigInt(position);
  return bits;
}

/** Drops an element for one with fewer extensions that takes as much and is no weaker, slower or longer; a rising stem may need the longer one. */
function withoutNeedless(at: {
  readonly elements: readonly (GripElement | null)[];
  readonly chains: readonly EndedChain[];
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
  const figures = ({ extensions, adapter }: GripElement): ChainFigures => figuresOf(extensions, adapter.facts.input);
  return isAsGood(figures(shorter), figures(longer)) && (shorter.takes & longer.takes) === longer.takes;
}

interface ChainFigures {
  readonly count: number;
  readonly input: Coupling;
  readonly weakest: number;
  readonly slowest: number;
  readonly length: number;
}

function figuresOf(extensions: readonly ExtensionModel[], end: Coupling): ChainFigures {
  return {
    count: extensions.length,
    input: extensions[0]?.facts.input ?? end,
    weakest: Math.min(...extensions.map((extension) => extension.facts.torqueRating)),
    slowest: Math.min(...extensions.map((extension) => extension.facts.maxSpeed)),
    length: extensions.reduce((sum, extension) => sum + extension.facts.length.low, 0),
  };
}

function isAsGood(shorter: ChainFigures, longer: ChainFigures): boolean {
  return (
    shorter.count < 2 &&
    shorter.count < longer.count &&
    sameCoupling(shorter.input, longer.input) &&
    shorter.weakest >= longer.weakest &&
    shorter.slowest >= longer.slowest &&
    shorter.length <= longer.length
  );
}

function sameCoupling(a: Coupling, b: Coupling): boolean {
  return a.form === b.form && a.size === b.size && a.gender === b.gender;
}
