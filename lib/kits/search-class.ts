/*
 * Searches one class of lines: cores that no rule refuses, and for each the grips and restraints that go with it.
 * Invariant: any core with any of its grips, restraints and counters passes every refusal that was switched on; which counter it is matters to no grip or restraint.
 * Not here: families, times and costs (families.ts), and why there is nothing (explain-none.ts).
 * Read next: families.ts.
 */
import { type Coupling, joins } from '#lib/equipment/coupling.ts';
import type { Model, OptionModel } from '#lib/equipment/model.ts';
import type { Core, CoreView, GripCase, LineFacts } from '#lib/rules/facts.ts';
import { coreFigures, newCoreMemo } from './core-figures.ts';
import { findCovers } from './covers.ts';
import type { Frames } from './frames.ts';
import { gripCases } from './grip-cases.ts';
import { type GripElement, gripElements } from './grip-elements.ts';
import { type Reaction, reactionFigures, reactionsOf } from './reactions.ts';
import { isAllowed, type Refusals, type Tally } from './refusals.ts';
import type { StockByRole } from './stock-by-role.ts';
import { wishedIn } from './wishes.ts';

/** Adapters that together take every size, each behind its extensions; the one that takes the likeliest size first. */
export interface Grip {
  readonly elements: readonly GripElement[];
}

export interface FoundCore {
  readonly core: Core;
  readonly grips: readonly Grip[];
  readonly reactions: readonly Reaction[];
  /** Counters that may be clipped on; `null` alone where none is put in. */
  readonly counters: readonly (OptionModel | null)[];
}

export interface ClassQuestion {
  readonly facts: LineFacts;
  readonly stock: StockByRole;
  readonly frames: Frames;
  readonly refusals: Refusals;
  /** Parts that must be in. */
  readonly wishes: readonly Model[];
  readonly tally: Tally;
  /** Whether parts made to order may be used. */
  readonly made: 'stock only' | 'made to order too';
}

/** What is left of each role, and what does not change from core to core. */
interface Domains {
  readonly cases: readonly GripCase[];
  readonly elements: readonly GripElement[];
  readonly reactions: readonly Reaction[];
  readonly counters: readonly (OptionModel | null)[];
  readonly allows: (model: Model | null) => boolean;
}

export function searchClass(question: ClassQuestion): readonly FoundCore[] {
  const found: FoundCore[] = [];
  walkClass(question, (core) => {
    found.push(core);
    return 'go on';
  });
  return found;
}

export function canBeServed(question: ClassQuestion): boolean {
  let served = false;
  walkClass(question, () => {
    served = true;
    return 'stop';
  });
  return served;
}

function walkClass(question: ClassQuestion, visit: (found: FoundCore) => 'go on' | 'stop'): void {
  const { facts, refusals, tally } = question;
  const { line, duty, site, place } = facts;
  if (!isAllowed(refusals.line, facts, tally)) return;
  const domains = domainsOf(question);
  if (domains.elements.length === 0 || domains.reactions.length === 0) return;
  const covers = coverFinder(domains);
  const holding = reactionFinder(question, domains.reactions);
  const driving = elementFinder(question, domains.elements);
  const memo = newCoreMemo();
  for (const frame of question.frames.frames) {
    if (![frame.drive, frame.limiter, frame.head].every(domains.allows) || !holdsWishedOptions(question, frame.limiter))
      continue;
    for (const gearIndex of frame.drive.facts.gears.keys()) {
      const gear = frame.drive.facts.gears[gearIndex];
      if (gear === undefined) continue;
      tally.cores += 1;
      const figures = coreFigures({ facts, frame, gearIndex, limiterUpTo: 'needed' }, memo);
      const { drive, limiter, head } = frame;
      const counters = domains.counters.filter((counter) => {
        const core: Core = { drive, limiter, head, gear, gearIndex, counter, figures };
        return isAllowed(refusals.core, { line, duty, site, place, core }, tally);
      });
      const [counter] = counters;
      if (counter === undefined) continue;
      const core: Core = { drive, limiter, head, gear, gearIndex, counter, figures };
      const reactions = holding(core);
      if (reactions.length === 0) continue;
      const grips = covers(driving(core, frame.output));
      if (grips.length > 0 && visit({ core, grips, reactions, counters }) === 'stop') return;
    }
  }
}

function domainsOf(question: ClassQuestion): Domains {
  const { facts, stock, frames, refusals, tally, wishes } = question;
  const verdicts = new Map<string, boolean>();
  const wished = {
    drive: wishedIn(wishes, 'drive'),
    head: wishedIn(wishes, 'head'),
    adapter: wishedIn(wishes, 'adapter'),
    restraint: wishedIn(wishes, 'restraint'),
  };
  const allows = (model: Model | null): boolean => {
    if (model === null) return true;
    const known = verdicts.get(model.number);
    if (known !== undefined) return known;
    const verdict = mayBeUsed(model);
    verdicts.set(model.number, verdict);
    return verdict;
  };
  const mayBeUsed = (model: Model): boolean => {
    if (question.made === 'stock only' && model.madeToOrder) return false;
    const { role } = model;
    if (
      (role === 'drive' || role === 'head' || role === 'adapter' || role === 'restraint') &&
      wished[role]?.has(model.number) === false
    )
      return false;
    return isAllowed(
      refusals.part,
      { line: facts.line, duty: facts.duty, site: facts.site, place: facts.place, part: model },
      tally,
    );
  };
  const adapters = stock.adapters.filter(allows);
  const cases = gripCases({ facts, adapters });
  const chains = frames.chains.filter((chain) => chain.every(allows));
  const mustHold = [...(wishedIn(wishes, 'extension') ?? [])];
  return {
    cases,
    elements: gripElements({ facts, adapters, chains, cases, refusals, tally, mustHold }),
    reactions: reactionsOf({ restraints: stock.restraints.filter(allows), stock, facts }),
    counters: countersFor(question, allows),
    allows,
  };
}

/** A counter is put in where it is required or wished for, and nowhere else. */
function countersFor(
  { facts, stock, wishes }: ClassQuestion,
  allows: (model: Model) => boolean,
): readonly (OptionModel | null)[] {
  const wished = wishes
    .filter((model) => model.role === 'option')
    .filter((model) => model.facts.kind === 'turns counter');
  if (wished.length > 0) return wished.filter(allows);
  return facts.duty.countTurns ? [null, ...stock.counters.filter(allows)] : [null];
}

function holdsWishedOptions({ wishes }: ClassQuestion, limiter: OptionModel | null): boolean {
  const wished = wishes
    .filter((model) => model.role === 'option')
    .filter((model) => model.facts.kind === 'torque limiter');
  return wished.length === 0 || (limiter !== null && wished.some((model) => model.number === limiter.number));
}

/** Restraints for a core; asked once for cores that are alike in all that a rule may know of them (CoreView). */
function reactionFinder(
  { facts, refusals, tally }: ClassQuestion,
  reactions: readonly Reaction[],
): (core: CoreView) => readonly Reaction[] {
  const { line, duty, site, place } = facts;
  const remembered = new Map<string, readonly Reaction[]>();
  return (core) => {
    const { stallAtValve, highestAtValve } = core.figures;
    const key = `${core.head.number} ${stallAtValve} ${highestAtValve}`;
    const known = remembered.get(key);
    if (known !== undefined) return known;
    const holding = reactions.filter(({ restraint, secondChain }) => {
      tally.pairs += 1;
      const reaction = reactionFigures({ core, restraint });
      return isAllowed(refusals.reaction, { line, duty, site, place, core, restraint, secondChain, reaction }, tally);
    });
    remembered.set(key, holding);
    return holding;
  };
}

interface Placed {
  readonly position: number;
  readonly element: GripElement;
}

/** Positions of the elements that a core may drive; asked once for cores that are alike, the speed aside where nothing extends. */
function elementFinder(
  { facts, refusals, tally }: ClassQuestion,
  elements: readonly GripElement[],
): (core: CoreView, output: Coupling) => readonly number[] {
  const { line, duty, site, place } = facts;
  const joining = remembering((output: Coupling) => {
    const placed = elements.flatMap((element, position) =>
      joins(output, element.input) ? [{ position, element }] : [],
    );
    const isBare = ({ element }: Placed): boolean => element.extensions.length === 0;
    return { bare: placed.filter(isBare), extended: placed.filter((one) => !isBare(one)) };
  });
  const remembered = new Map<string, readonly number[]>();
  const ask = (key: string, core: CoreView, placed: readonly Placed[]): readonly number[] => {
    const known = remembered.get(key);
    if (known !== undefined) return known;
    const fitting = placed.flatMap(({ position, element: { adapter, extensions } }) => {
      tally.pairs += 1;
      return isAllowed(refusals.grip, { line, duty, site, place, core, adapter, extensions }, tally) ? [position] : [];
    });
    remembered.set(key, fitting);
    return fitting;
  };
  return (core, output) => {
    const { bare, extended } = joining(output);
    const { highestAtValve, opening, closing } = core.figures;
    const alike = `${core.head.number} ${output.form} ${output.size} ${highestAtValve}`;
    const speed = Math.max(opening.fastest, closing.fastest);
    return [...ask(`${alike} bare`, core, bare), ...ask(`${alike} ${speed}`, core, extended)].toSorted((a, b) => a - b);
  };
}

function remembering<Key, Value>(work: (key: Key) => Value): (key: Key) => Value {
  const remembered = new Map<Key, Value>();
  return (key) => {
    const known = remembered.get(key);
    if (known !== undefined) return known;
    const value = work(key);
    remembered.set(key, value);
    return value;
  };
}

/** Covering sets of the elements that a core may drive, remembered by what is there. */
function coverFinder({ elements, cases }: Domains): (fitting: readonly number[]) => readonly Grip[] {
  const all = (1n << BigInt(cases.length)) - 1n;
  const likeliest = 1n << BigInt(Math.max(0, cases.length - 1));
  const remembered = new Map<string, readonly Grip[]>();
  return (fitting) => {
    const key = fitting.join(' ');
    const known = remembered.get(key);
    if (known !== undefined) return known;
    const there = fitting.flatMap((position) => elements[position] ?? []);
    const grips = findCovers({ takes: there.map((element) => element.takes), all }).map((cover) => {
      const chosen = cover.flatMap((position) => there[position] ?? []);
      const takesIt = (element: GripElement): boolean => (element.takes & likeliest) !== 0n;
      return { elements: [...chosen.filter(takesIt), ...chosen.filter((element) => !takesIt(element))] };
    });
    remembered.set(key, grips);
    return grips;
  };
}
