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
  const free = lengthMatters(facts) || input.mustHold.length > 0;
  const chains = free ? input.chains : input.chains.filter((chain) => chain.length <= 1);
  return input.adapters.flatMap((adapter) => {
    const onWheel = duty.grip.kind === 'wheel' ? casesTaken({ input, adapter, extensions: [] }) : null;
    if (onWheel === 0n) return [];
    const mine = chains.flatMap((extensions): readonly GripElement[] => {
      if (!couples(extensions, adapter) || !holds(extensions, input.mustHold)) return [];
      if (!isAllowed(refusals.link, { line, duty, site, place, adapter, extensions }, tally)) return [];
      const takes = onWheel ?? casesTaken({ input, adapter, extensions });
      if (takes === 0n) return [];
      return [{ adapter, extensions, input: extensions[0]?.facts.input ?? adapter.facts.input, takes }];
    });
    return withoutNeedless(mine, facts);
  });
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

function casesTaken(at: {
  readonly input: ElementsInput;
  readonly adapter: AdapterModel;
  readonly extensions: readonly ExtensionModel[];
}): bigint {
  const { cases, refusals, tally } = at.input;
  const { line, duty, site, place } = at.input.facts;
  const { adapter, extensions } = at;
  let takes = 0n;
  for (const [index, gripCase] of cases.entries()) {
    if (isAllowed(refusals.case, { line, duty, site, place, adapter, extensions, gripCase }, tally))
      takes |= 1n << BigInt(index);
  }
  return takes;
}

/** Drops an element for one with fewer extensions that takes as much and is no weaker, slower or longer; a rising stem may need the longer one. */
function withoutNeedless(elements: readonly GripElement[], facts: LineFacts): readonly GripElement[] {
  if (facts.duty.grip.stemRisesThroughWheel !== 'no') return elements;
  const short = elements.filter((element) => element.extensions.length < 2);
  return elements.filter((element) => !short.some((other) => doesAsWell(other, element)));
}

export function doesAsWell(shorter: GripElement, longer: GripElement): boolean {
  return (
    shorter.extensions.length < longer.extensions.length &&
    sameCoupling(shorter.input, longer.input) &&
    (shorter.takes & longer.takes) === longer.takes &&
    weakest(shorter) >= weakest(longer) &&
    slowest(shorter) >= slowest(longer) &&
    lengthOf(shorter) <= lengthOf(longer)
  );
}

const weakest = ({ extensions }: GripElement): number =>
  Math.min(...extensions.map((extension) => extension.facts.torqueRating));
const slowest = ({ extensions }: GripElement): number =>
  Math.min(...extensions.map((extension) => extension.facts.maxSpeed));
const lengthOf = ({ extensions }: GripElement): number =>
  extensions.reduce((sum, extension) => sum + extension.facts.length.low, 0);

function sameCoupling(a: Coupling, b: Coupling): boolean {
  return a.form === b.form && a.size === b.size && a.gender === b.gender;
}
