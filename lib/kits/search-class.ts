/*
 * Searches one class of lines: cores that no rule refuses, and for each the grips and restraints that go with it.
 * Invariant: any core with any of its grips, restraints and counters passes every refusal that was switched on; which counter it is matters to no grip or restraint.
 * Not here: families, times and costs (families.ts), and why there is nothing (explain-none.ts).
 * Read next: families.ts.
 */
import type { Model, OptionModel } from '#lib/equipment/model.ts';
import type { Core, CoreFigures, GripCase, LineFacts } from '#lib/rules/facts.ts';
import { mustCount } from '#lib/rules/must-count.ts';
import { type CoreMemo, coreFigures, newCoreMemo, unlimitedFigures } from './core-figures.ts';
import type { Frame, Frames } from './frames.ts';
import { gripCases } from './grip-cases.ts';
import { type GripElement, gripElements } from './grip-elements.ts';
import { type Grip, gripFinder } from './grip-finder.ts';
import { CORE_OF_MESH, CORE_WITHOUT_COUNTER } from './narrow-views.ts';
import { reactionFinder } from './reaction-finder.ts';
import { type Reaction, reactionsOf } from './reactions.ts';
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
  if (!isAllowed(refusals.line, facts, tally)) return;
  const domains = domainsOf(question);
  const { allows, counters } = domains;
  if (domains.elements.length === 0 || domains.reactions.length === 0 || counters.length === 0) return;
  const grips = gripFinder({ ...domains, facts, rules: refusals.grip, tally });
  const holding = reactionFinder({ ...domains, facts, rules: refusals.reaction, tally });
  const passing = coreFilter(question, counters);
  const memo = newCoreMemo();
  for (const frame of question.frames.frames) {
    const { drive, limiter, head, output } = frame;
    if (!allows(drive) || !allows(head) || !grips.mayCover(output)) continue;
    if (!allows(limiter) || !holdsWishedOptions(question, limiter)) continue;
    for (let gearIndex = 0; gearIndex < drive.facts.gears.length; gearIndex += 1) {
      const passed = passing(frame, { gearIndex, memo });
      if (passed === null) continue;
      const reactions = holding(passed.core);
      if (reactions.length === 0) continue;
      const found = grips.gripsFor(passed.core, output);
      if (found.length > 0 && visit({ ...passed, grips: found, reactions }) === 'stop') return;
    }
  }
}

type Passed = Pick<FoundCore, 'core' | 'counters'>;

/** Asks the core rules: what looks at drive, gear and head once for all limiters, what does not look at the counter once for all counters. */
function coreFilter(
  { facts, refusals, tally }: ClassQuestion,
  counters: Domains['counters'],
): (frame: Frame, at: { readonly gearIndex: number; readonly memo: CoreMemo }) => Passed | null {
  const { line, duty, site, place } = facts;
  const ofMesh = refusals.core.filter(({ id }) => CORE_OF_MESH.has(id));
  const ofLimiter = refusals.core.filter(({ id }) => CORE_WITHOUT_COUNTER.has(id) && !CORE_OF_MESH.has(id));
  const ofCounter = refusals.core.filter(({ id }) => !CORE_WITHOUT_COUNTER.has(id));
  const lists = new Map<string, Domains['counters']>();
  /** Equal lists are one array. */
  const fittingCounters = (core: Core): Domains['counters'] => {
    const passes = (counter: OptionModel | null): boolean => {
      const held = counter === core.counter ? core : { ...core, counter };
      return isAllowed(ofCounter, { line, duty, site, place, core: held }, tally);
    };
    const verdicts = counters.map(passes);
    if (!verdicts.includes(false)) return counters;
    const key = verdicts.join();
    const known = lists.get(key) ?? counters.filter((_, index) => verdicts[index]);
    lists.set(key, known);
    return known;
  };
  const meshes = new Map<Frame['drive'], Map<Frame['head'], (boolean | undefined)[]>>();
  return (frame, { gearIndex, memo }) => {
    const { drive, limiter, head } = frame;
    const gear = drive.facts.gears[gearIndex];
    const [first] = counters;
    if (gear === undefined || first === undefined) return null;
    const ofDrive = meshes.get(drive) ?? new Map<Frame['head'], (boolean | undefined)[]>();
    meshes.set(drive, ofDrive);
    const gears = ofDrive.get(head) ?? [];
    ofDrive.set(head, gears);
    const input = { facts, frame, gearIndex, limiterUpTo: 'needed' } as const;
    const coreWith = (figures: CoreFigures): Core => ({
      drive,
      limiter,
      head,
      gear,
      gearIndex,
      counter: first,
      figures,
    });
    gears[gearIndex] ??= isAllowed(
      ofMesh,
      { line, duty, site, place, core: coreWith(unlimitedFigures(input, memo)) },
      tally,
    );
    if (!gears[gearIndex]) return null;
    tally.cores += 1;
    const core = coreWith(coreFigures(input, memo));
    const coreFacts = { line, duty, site, place, core };
    if (!isAllowed(ofLimiter, coreFacts, tally)) return null;
    const fitting = fittingCounters(core);
    const [counter] = fitting;
    if (counter === undefined) return null;
    return { core: counter === first ? core : { ...core, counter }, counters: fitting };
  };
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
