/*
 * Whether a line could be served if only some of the rules held; each verdict is worked out once, when first asked for.
 * Invariant: a verdict does not depend on which rules are switched on; couplings are background that always holds.
 * Not here: searching for the conflict (solver/minimal-conflict.ts) and telling it.
 * Read next: element-table.ts, explain-none.ts.
 */
import type { Model, OptionModel } from '#lib/equipment/model.ts';
import type { Core, FactsOf, LineFacts, Scope } from '#lib/rules/facts.ts';
import { mustCount } from '#lib/rules/must-count.ts';
import type { RuleOf } from '#lib/rules/rule.ts';
import { coreFigures, newCoreMemo } from './core-figures.ts';
import { type ElementTable, elementTable, remembering } from './element-table.ts';
import { couplingText } from './extension-chains.ts';
import type { Frame } from './frames.ts';
import type { GripElement } from './grip-elements.ts';
import { gripFinder } from './grip-finder.ts';
import { CORE_WITHOUT_COUNTER } from './narrow-views.ts';
import { reactionFinder } from './reaction-finder.ts';
import { reactionsOf } from './reactions.ts';
import { ALL_REFUSALS, type Refusals } from './refusals.ts';
import type { ClassQuestion } from './search-class.ts';
import { wishedIn } from './wishes.ts';

/** Which side an adapter grips is what it is, like a coupling: background, never part of a conflict. */
export const BACKGROUND: ReadonlySet<string> = new Set(['grip-kind-of-adapter']);

/** Bits of broken rules, by the rule's place among the refusals of its scope. */
type Broken = bigint;

interface TableCore {
  readonly core: Core;
  /** Rules that do not look at the counter. */
  readonly broken: Broken;
  /** Counters, each with the rules that it breaks. */
  readonly counters: readonly { readonly counter: OptionModel | null; readonly broken: Broken }[];
}

interface Table {
  readonly question: ClassQuestion;
  readonly frames: readonly Frame[];
  readonly line: Broken;
  readonly part: (model: Model) => Broken;
  readonly elements: ElementTable;
  readonly counters: Counters;
  readonly cores: (frame: Frame) => readonly TableCore[];
}

type Counters = readonly (OptionModel | null)[];

/** Answers whether the line could be served if only the rules of these ids held. */
export function couldServeWith(question: ClassQuestion): (ids: ReadonlySet<string>) => boolean {
  const { facts } = question;
  const counters = countersOf(question);
  const table: Table = {
    question,
    frames: wishedFrames(question),
    line: brokenRules(ALL_REFUSALS.line, facts),
    part: remembering((part: Model) => brokenRules(ALL_REFUSALS.part, { ...facts, part })),
    elements: elementTable(question),
    counters,
    cores: remembering(tableCores(facts, counters)),
  };
  return (ids) => couldServe(table, ids);
}

function brokenRules<S extends Scope>(rules: readonly RuleOf<S>[], facts: FactsOf[S]): Broken {
  let broken = 0n;
  for (const [index, rule] of rules.entries()) if (rule.speaks(facts)) broken |= 1n << BigInt(index);
  return broken;
}

function wishedFrames({ frames, stock, wishes }: ClassQuestion): readonly Frame[] {
  const drives = wishedIn(wishes, 'drive');
  const heads = wishedIn(wishes, 'head');
  const options = wishedIn(wishes, 'option');
  const limiters = stock.limiters.filter(({ number }) => options?.has(number) ?? false);
  return frames.frames.filter(
    ({ drive, head, limiter }) =>
      (drives?.has(drive.number) ?? true) &&
      (heads?.has(head.number) ?? true) &&
      (limiters.length === 0 || (limiter !== null && limiters.includes(limiter))),
  );
}

function countersOf({ facts, stock, wishes }: ClassQuestion): Counters {
  const options = wishedIn(wishes, 'option');
  const wished = stock.counters.filter(({ number }) => options?.has(number) ?? false);
  if (wished.length > 0) return wished;
  return mustCount(facts) ? [null, ...stock.counters] : [null];
}

/** Cores of a frame, gear by gear. */
function tableCores(facts: LineFacts, counters: Counters): (frame: Frame) => readonly TableCore[] {
  const none = ({ id }: RuleOf<'core'>): boolean => CORE_WITHOUT_COUNTER.has(id);
  const memo = newCoreMemo();
  const { line, duty, site, place } = facts;
  const broken = (core: Core, asked: (rule: RuleOf<'core'>) => boolean): Broken => {
    let bits = 0n;
    for (const [index, rule] of ALL_REFUSALS.core.entries()) {
      if (asked(rule) && rule.speaks({ line, duty, site, place, core })) bits |= 1n << BigInt(index);
    }
    return bits;
  };
  return (frame) =>
    frame.drive.facts.gears.map((gear, gearIndex): TableCore => {
      const { drive, limiter, head } = frame;
      const figures = coreFigures({ facts, frame, gearIndex, limiterUpTo: 'needed' }, memo);
      const core: Core = { drive, limiter, head, gear, gearIndex, counter: counters[0] ?? null, figures };
      return {
        core,
        broken: broken(core, none),
        counters: counters.map((counter) => ({
          counter,
          broken: broken({ ...core, counter }, (rule) => !none(rule)),
        })),
      };
    });
}

/** The refusals of some ids, and the background. */
export function refusalsOf(ids: ReadonlySet<string>): Refusals {
  const on = ({ id }: { readonly id: string }): boolean => ids.has(id) || BACKGROUND.has(id);
  const { line, part, link, case: ofCase, core, grip, reaction } = ALL_REFUSALS;
  return {
    line: line.filter(on),
    part: part.filter(on),
    link: link.filter(on),
    case: ofCase.filter(on),
    core: core.filter(on),
    grip: grip.filter(on),
    reaction: reaction.filter(on),
  };
}

function bitsOf<S extends Scope>(rules: readonly RuleOf<S>[], on: readonly RuleOf<S>[]): Broken {
  return rules.reduce((sum, rule, index) => (on.includes(rule) ? sum | (1n << BigInt(index)) : sum), 0n);
}

function couldServe(table: Table, ids: ReadonlySet<string>): boolean {
  const on = refusalsOf(ids);
  if ((table.line & bitsOf(ALL_REFUSALS.line, on.line)) !== 0n) return false;
  const partBits = bitsOf(ALL_REFUSALS.part, on.part);
  const passes = remembering((model: Model) => (table.part(model) & partBits) === 0n);
  const { facts, stock, tally, wishes } = table.question;
  const wanted = wishedIn(wishes, 'restraint');
  const restraints = stock.restraints.filter((one) => (wanted?.has(one.number) ?? true) && passes(one));
  if (restraints.length === 0 || !table.counters.some((counter) => counter === null || passes(counter))) return false;
  const frames = table.frames.filter(
    ({ drive, head, limiter }) => passes(drive) && passes(head) && (limiter === null || passes(limiter)),
  );
  if (frames.length === 0) return false;
  const elements = coveringElements(table.elements, { on, passes });
  const heads = new Set(elements.keys());
  const reactions = reactionsOf({ restraints, stock, facts });
  const holding = reactionFinder({ facts, rules: on.reaction, tally, reactions });
  const grips = gripFinder({
    facts,
    rules: on.grip,
    tally,
    elements: on.grip.length === 0 ? [] : [...elements.values()].flatMap((make) => make()),
    cases: table.elements.cases,
  });
  const coreBits = bitsOf(ALL_REFUSALS.core, on.core);
  const isBare = on.core.length + on.grip.length + on.reaction.length === 0;
  const fits = ({ core, broken, counters }: TableCore, output: Frame['output']): boolean =>
    (broken & coreBits) === 0n &&
    counters.some((one) => (one.broken & coreBits) === 0n && (one.counter === null || passes(one.counter))) &&
    holding(core).length > 0 &&
    (on.grip.length === 0 || grips.canGrip(core, output));
  return frames.some((frame) => {
    if (!heads.has(couplingText({ ...frame.output, gender: frame.output.gender === 'male' ? 'female' : 'male' })))
      return false;
    return isBare || table.cores(frame).some((core) => fits(core, frame.output));
  });
}

/** By the coupling towards the head: how to make the elements, where they together may take every case. */
function coveringElements(
  table: ElementTable,
  at: { readonly on: Refusals; readonly passes: (model: Model) => boolean },
): ReadonlyMap<string, () => readonly GripElement[]> {
  const all = (1n << BigInt(table.cases.length)) - 1n;
  const groups = new Map<string, { takes: bigint; readonly makers: (() => GripElement)[] }>();
  table.each({ ...at.on, passes: at.passes }, ({ input, takes, make }) => {
    const group = groups.get(input) ?? { takes: 0n, makers: [] };
    groups.set(input, group);
    group.takes |= takes;
    if (at.on.grip.length > 0) group.makers.push(make);
  });
  return new Map(
    [...groups]
      .filter(([, { takes }]) => takes === all)
      .map(([input, { makers }]) => [input, () => makers.map((make) => make())]),
  );
}
