/*
 * Searches one class of lines: cores that no rule refuses, and for each the grips and restraints that go with it.
 * Invariant: any core with any of its grips, restraints and counters passes every refusal that was switched on; which counter it is matters to no grip or restraint.
 * Not here: families, times and costs (cores/families.ts), and why there is nothing (why/explain-none.ts).
 * Read next: cores/families.ts.
 */
import type { Model, OptionModel } from '#lib/equipment/model.ts';
import type { Core, GripCase, LineFacts } from '#lib/rules/facts.ts';
import { mustCount } from '#lib/rules/must-count.ts';
import { reactionFinder } from './chain/reaction-finder.ts';
import { type Reaction, reactionsOf } from './chain/reactions.ts';
import { coreFilter } from './cores/core-filter.ts';
import type { Frames } from './cores/frames.ts';
import { gripCases } from './grips/grip-cases.ts';
import { type GripElement, gripElements } from './grips/grip-elements.ts';
import { type Grip, gripFinder } from './grips/grip-finder.ts';
import { isAllowed, type Refusals, type Tally } from './refusals.ts';
import type { StockByRole } from './stock-by-role.ts';
import { wishedIn } from './wishes.ts';

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
  const found: { readonly core: FoundCore; readonly place: number }[] = [];
  walkClass(question, (core, place) => {
    found.push({ core, place });
    return 'go on';
  });
  return found.sort((a, b) => a.place - b.place).map(({ core }) => core);
}

export function canBeServed(question: ClassQuestion): boolean {
  let served = false;
  walkClass(question, () => {
    served = true;
    return 'stop';
  });
  return served;
}

/** What is found, with where it stands among all frames and gears: the walk takes drive and head together. */
type Visit = (found: FoundCore, place: number) => 'go on' | 'stop';

/** No drive has as many gears. */
const GEARS = 64;

function walkClass(question: ClassQuestion, visit: Visit): void {
  const { facts, refusals, tally } = question;
  if (!isAllowed(refusals.line, facts, tally)) return;
  const domains = domainsOf(question);
  const { allows, counters } = domains;
  if (domains.elements.length === 0 || domains.reactions.length === 0 || counters.length === 0) return;
  const grips = gripFinder({ ...domains, facts, rules: refusals.grip, tally });
  const holding = reactionFinder({ ...domains, facts, rules: refusals.reaction, tally });
  const passing = coreFilter(question, counters);
  const mayLimit = (limiter: OptionModel | null): boolean => allows(limiter) && holdsWishedOptions(question, limiter);
  for (const { drive, head, uses } of question.frames.matings) {
    if (!allows(drive) || !allows(head)) continue;
    const usable = uses.filter(({ frame }) => grips.mayCover(frame.output) && mayLimit(frame.limiter));
    const [first] = usable;
    if (first === undefined) continue;
    for (let gearIndex = 0; gearIndex < drive.facts.gears.length; gearIndex += 1) {
      if (!passing.mesh(first.frame, gearIndex)) continue;
      for (const { frame, position } of usable) {
        const passed = passing.core(frame, gearIndex);
        if (passed === null) continue;
        const reactions = holding(passed.core);
        if (reactions.length === 0) continue;
        const found = grips.gripsFor(passed.core, frame.output);
        if (found.length === 0) continue;
        const { core, counters: fitting } = passed;
        const place = position * GEARS + gearIndex;
        if (visit({ core, grips: found, reactions, counters: fitting }, place) === 'stop') return;
      }
    }
  }
}

function domainsOf(question: ClassQuestion): Domains {
  const { facts, stock, frames, refusals, tally, wishes } = question;
  const verdicts = new Map<Model, boolean>();
  const wished = {
    drive: wishedIn(wishes, 'drive'),
    head: wishedIn(wishes, 'head'),
    adapter: wishedIn(wishes, 'adapter'),
    restraint: wishedIn(wishes, 'restraint'),
  };
  const allows = (model: Model | null): boolean => {
    if (model === null) return true;
    const known = verdicts.get(model);
    if (known !== undefined) return known;
    const verdict = mayBeUsed(model);
    verdicts.set(model, verdict);
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
  const mustHold = [...(wishedIn(wishes, 'extension') ?? [])];
  return {
    cases,
    elements: gripElements({ facts, adapters, chains: frames.chains, allows, cases, refusals, tally, mustHold }),
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
  return mustCount(facts) ? [null, ...stock.counters.filter(allows)] : [null];
}

function holdsWishedOptions({ wishes }: ClassQuestion, limiter: OptionModel | null): boolean {
  const wished = wishes
    .filter((model) => model.role === 'option')
    .filter((model) => model.facts.kind === 'torque limiter');
  return wished.length === 0 || (limiter !== null && wished.some((model) => model.number === limiter.number));
}
