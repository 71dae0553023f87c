/*
 * Grip elements: an adapter with the extensions before it, and which of the line's cases it takes.
 * Invariant: an element that is left out is worse for every core: it has the parts of another, and more, for no more cases.
 * Not here: whether a core fits it (search-class.ts) and sets of elements (covers.ts).
 * Read next: covers.ts.
 */
import { type Coupling, joins } from '#lib/equipment/coupling.ts';
import type { AdapterModel, ExtensionModel } from '#lib/equipment/model.ts';
import type { GripCase, LineFacts } from '#lib/rules/facts.ts';
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
  return input.adapters.flatMap((adapter) => {
    const mine = input.chains.flatMap((extensions): readonly GripElement[] => {
      if (!couples(extensions, adapter) || !holds(extensions, input.mustHold)) return [];
      const takes = casesTaken({ input, adapter, extensions });
      if (takes === 0n) return [];
      return [{ adapter, extensions, input: extensions[0]?.facts.input ?? adapter.facts.input, takes }];
    });
    return withoutNeedless(mine, input.facts);
  });
}

const holds = (extensions: readonly ExtensionModel[], wanted: readonly string[]): boolean =>
  wanted.every((number) => extensions.some((extension) => extension.number === number));

function couples(extensions: readonly ExtensionModel[], adapter: AdapterModel): boolean {
  const last = extensions.at(-1);
  return last === undefined || joins(last.facts.output, adapter.facts.input);
}

function casesTaken(at: {
  readonly input: ElementsInput;
  readonly adapter: AdapterModel;
  readonly extensions: readonly ExtensionModel[];
}): bigint {
  const { facts, cases, refusals, tally } = at.input;
  let takes = 0n;
  for (const [index, gripCase] of cases.entries()) {
    const caseFacts = { ...facts, adapter: at.adapter, extensions: at.extensions, gripCase };
    if (isAllowed(refusals.case, caseFacts, tally)) takes |= 1n << BigInt(index);
  }
  return takes;
}

/** Drops an element whose extensions hold another's and more; a rising stem may need the longer one. */
function withoutNeedless(elements: readonly GripElement[], facts: LineFacts): readonly GripElement[] {
  if (facts.duty.grip.stemRisesThroughWheel !== 'no') return elements;
  return elements.filter(
    (element) =>
      !elements.some(
        (other) =>
          other.extensions.length < element.extensions.length &&
          other.extensions.every((extension) => element.extensions.includes(extension)) &&
          sameCoupling(other.input, element.input) &&
          (other.takes & element.takes) === element.takes,
      ),
  );
}

function sameCoupling(a: Coupling, b: Coupling): boolean {
  return a.form === b.form && a.size === b.size && a.gender === b.gender;
}
