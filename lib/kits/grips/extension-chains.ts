/*
 * Extensions one after the other, by the coupling they end in, with the shorter chains that do as well; worked out once a catalogue.
 * Invariant: nothing here depends on a line.
 * Not here: which chains a line lets through (grip-elements.ts).
 * Read next: grip-elements.ts.
 */
import { type Coupling, joins } from '#lib/equipment/coupling.ts';
import type { AdapterModel, ExtensionModel } from '#lib/equipment/model.ts';

/** Head side first; none, one or two. */
export type Chain = readonly ExtensionModel[];

/** A chain that ends in one coupling, with the shorter ones there that are no weaker, slower or longer. */
export interface EndedChain {
  readonly extensions: Chain;
  /** The coupling towards the head. */
  readonly input: Coupling;
  /** Positions among the chains of that end. */
  readonly shorter: readonly number[];
}

export interface ExtensionChains {
  readonly all: readonly Chain[];
  /** What couples to an adapter; equal couplings have one list. */
  readonly endingIn: (end: Coupling) => readonly EndedChain[];
  /** The same by the coupling towards the head, as text; the shorter ones first. */
  readonly byInput: (end: Coupling) => ReadonlyMap<string, readonly EndedChain[]>;
}

export function extensionChains(extensions: readonly ExtensionModel[]): ExtensionChains {
  const all = chainsOf(extensions);
  const ended = new Map<string, readonly EndedChain[]>();
  const grouped = new Map<string, ReadonlyMap<string, readonly EndedChain[]>>();
  const endingIn = (end: Coupling): readonly EndedChain[] => {
    const known = ended.get(couplingText(end)) ?? endedIn(all, end);
    ended.set(couplingText(end), known);
    return known;
  };
  return {
    all,
    endingIn,
    byInput: (end) => {
      const known = grouped.get(couplingText(end)) ?? byInput(endingIn(end));
      grouped.set(couplingText(end), known);
      return known;
    },
  };
}

function byInput(chains: readonly EndedChain[]): ReadonlyMap<string, readonly EndedChain[]> {
  const groups = new Map<string, EndedChain[]>();
  for (const chain of chains) {
    const group = groups.get(couplingText(chain.input)) ?? [];
    groups.set(couplingText(chain.input), group);
    group.push(chain);
  }
  return groups;
}

export const couplingText = ({ form, size, gender }: Coupling): string => `${form} ${size} ${gender}`;

function chainsOf(extensions: readonly ExtensionModel[]): readonly Chain[] {
  const isJoint = (extension: ExtensionModel): boolean => extension.facts.kind === 'universal joint';
  const pairs = extensions.flatMap((first) =>
    extensions
      .filter((second) => joins(first.facts.output, second.facts.input) && !(isJoint(first) && isJoint(second)))
      .map((second) => [first, second]),
  );
  return [[], ...extensions.map((extension) => [extension]), ...pairs];
}

function endedIn(all: readonly Chain[], end: Coupling): readonly EndedChain[] {
  const chains = all.filter((chain) => couples(chain, end)).map((chain) => ({ chain, figures: figuresOf(chain, end) }));
  const short = chains.flatMap(({ figures }, position) => (figures.count < 2 ? [{ figures, position }] : []));
  return chains.map(({ chain, figures }) => ({
    extensions: chain,
    input: figures.input,
    shorter: short.flatMap((one) => (isAsGood(one.figures, figures) ? [one.position] : [])),
  }));
}

export function couples(chain: Chain, end: Coupling): boolean {
  const last = chain.at(-1);
  return last === undefined || joins(last.facts.output, end);
}

/** Whether a chain of less than two is taken wherever a longer one before the same adapter would do. */
export function chainDoesAsWell(at: {
  readonly shorter: Chain;
  readonly longer: Chain;
  readonly adapter: AdapterModel;
}): boolean {
  const end = at.adapter.facts.input;
  return isAsGood(figuresOf(at.shorter, end), figuresOf(at.longer, end));
}

interface ChainFigures {
  readonly count: number;
  readonly input: Coupling;
  readonly weakest: number;
  readonly slowest: number;
  readonly length: number;
  /** Of the shafts with a stated section, as far as whirling goes: all their lengths drawn out, and the slimmest. */
  readonly drawnOut: number;
  readonly slimmest: number;
}

function figuresOf(chain: Chain, end: Coupling): ChainFigures {
  const sections = chain.flatMap(({ facts: { section, length } }) =>
    section === undefined ? [] : [{ section, length: length.high }],
  );
  return {
    count: chain.length,
    input: chain[0]?.facts.input ?? end,
    weakest: Math.min(...chain.map((extension) => extension.facts.torqueRating)),
    slowest: Math.min(...chain.map((extension) => extension.facts.maxSpeed)),
    length: chain.reduce((sum, extension) => sum + extension.facts.length.low, 0),
    drawnOut: sections.reduce((sum, { length }) => sum + length, 0),
    slimmest: Math.min(...sections.map(({ section }) => Math.hypot(section.outer, section.inner))),
  };
}

function isAsGood(shorter: ChainFigures, longer: ChainFigures): boolean {
  return (
    shorter.count < 2 &&
    shorter.count < longer.count &&
    couplingText(shorter.input) === couplingText(longer.input) &&
    shorter.weakest >= longer.weakest &&
    shorter.slowest >= longer.slowest &&
    shorter.length <= longer.length &&
    shorter.drawnOut <= longer.drawnOut &&
    shorter.slimmest >= longer.slimmest
  );
}
