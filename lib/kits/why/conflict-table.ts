/*
 * Whether a line could be served if only some of the rules held; each verdict is worked out once, when first asked for.
 * Invariant: a verdict does not depend on which rules are switched on; couplings are background that always holds.
 * Not here: searching for the conflict (solver/minimal-conflict.ts) and telling it.
 * Read next: ../cores/core-table.ts, ../grips/element-table.ts, explain-none.ts.
 */
import type { Model } from '#lib/equipment/model.ts';
import type { CoreView } from '#lib/rules/facts.ts';
import type { RuleOf } from '#lib/rules/rule.ts';
import { reactionFinder } from '../chain/reaction-finder.ts';
import { type Reaction, reactionsOf } from '../chain/reactions.ts';
import type { AlikeCores, HeadAt } from '../cores/alike-cores.ts';
import { bitOf, type CoreTable, coreTable, firstHead, looksAtCounter, looksAtHead } from '../cores/core-table.ts';
import { type ElementsUnder, type ElementTable, elementTable, remembering } from '../grips/element-table.ts';
import { type GripFinder, gripFinder } from '../grips/grip-finder.ts';
import {
  GRIP_SPEED_LIMITS,
  GRIP_TORQUE_LIMITS,
  REACTION_STALL_LIMITS,
  REACTION_TORQUE_LIMITS,
} from '../narrow-views.ts';
import { ALL_REFUSALS, type Refusals } from '../refusals.ts';
import type { ClassQuestion } from '../search-class.ts';
import { wishedIn } from '../wishes.ts';

/** Which side an adapter grips is what it is, like a coupling: background, never part of a conflict. */
export const BACKGROUND: ReadonlySet<string> = new Set(['grip-kind-of-adapter']);

interface Table {
  readonly question: ClassQuestion;
  readonly breaks: (rule: RuleOf<'part'>, model: Model) => boolean;
  readonly elements: ElementTable;
  readonly cores: CoreTable;
  /** What holds and grips under rules that were asked about before. */
  readonly known: Map<string, Beside>;
}

/** Answers whether the line could be served if only the rules of these ids held. */
export function couldServeWith(question: ClassQuestion): (ids: ReadonlySet<string>) => boolean {
  const table: Table = {
    question,
    breaks: partVerdicts(question),
    elements: elementTable(question),
    cores: coreTable(question),
    known: new Map(),
  };
  const answers = new Map<string, boolean>();
  return (ids) => {
    const key = [...ids].sort().join();
    const known = answers.get(key) ?? couldServe(table, ids);
    answers.set(key, known);
    return known;
  };
}

function partVerdicts({ facts, tally }: ClassQuestion): Table['breaks'] {
  const { line, duty, site, place } = facts;
  const verdictsOf = remembering((rule: RuleOf<'part'>) =>
    remembering((part: Model) => {
      tally.evaluations += 1;
      return rule.speaks({ line, duty, site, place, part });
    }),
  );
  return (rule, model) => verdictsOf(rule)(model);
}

/** The refusals of some ids, and the background. */
function refusalsOf(ids: ReadonlySet<string>): Refusals {
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

function couldServe(table: Table, ids: ReadonlySet<string>): boolean {
  const on = refusalsOf(ids);
  if (on.line.some((rule) => rule.speaks(table.question.facts))) return false;
  const passes =
    on.part.length === 0
      ? () => true
      : remembering((model: Model) => !on.part.some((rule) => table.breaks(rule, model)));
  if (!table.cores.counters.some((counter) => counter === null || passes(counter))) return false;
  const bits = on.core.reduce((sum, rule) => sum | bitOf(rule), 0);
  // What drive, gear, limiter and kind of head refuse by themselves is quickly asked, and often decides.
  if (bits !== 0 && ![...table.cores.byBits(on.core).keys()].some((refusedBy) => (refusedBy & bits) === 0))
    return false;
  const beside = besideUnder(table, { on, passes });
  return beside.restraints.length > 0 && beside.elements.mayCover() && holdsCore(table, { on, passes, beside });
}

interface Asked {
  readonly on: Refusals;
  readonly passes: (model: Model) => boolean;
}

/** What stands beside the cores under some rules. */
interface Beside {
  readonly restraints: readonly Reaction[];
  readonly elements: ElementsUnder;
  readonly holds: (core: CoreView) => boolean;
  readonly grips: (core: CoreView, at: AlikeCores) => boolean;
}

/** Core rules apart, the same rules give the same. */
function besideUnder(table: Table, { on, passes }: Asked): Beside {
  const key = [on.part, on.link, on.case, on.grip, on.reaction]
    .map((rules) => rules.map(({ id }) => id).join())
    .join('|');
  const known = table.known.get(key) ?? makeBeside(table, { on, passes });
  table.known.set(key, known);
  return known;
}

function makeBeside(table: Table, { on, passes }: Asked): Beside {
  const { facts, stock, tally, wishes } = table.question;
  const wanted = wishedIn(wishes, 'restraint');
  const restraints = stock.restraints.filter((one) => (wanted?.has(one.number) ?? true) && passes(one));
  const reactions = reactionsOf({ restraints, stock, facts });
  const elements = table.elements.under({ link: on.link, case: on.case, passes });
  let holding: ReturnType<typeof reactionFinder> | null = null;
  const findersOf = (which: 'first' | 'all'): ((partner: string) => GripFinder) =>
    remembering((partner) => {
      const found = elements.elements(partner, which);
      return gripFinder({ facts, rules: on.grip, tally, elements: found, cases: table.elements.cases });
    });
  const finders = { first: findersOf('first'), all: findersOf('all') };
  return {
    restraints: reactions,
    elements,
    holds: (core) => {
      if (on.reaction.length === 0) return true;
      holding ??= reactionFinder({ facts, rules: on.reaction, tally, reactions });
      return holding(core).length > 0;
    },
    grips: (core, { partner, heads }) => {
      if (on.grip.length === 0) return true;
      const output = heads[0]?.frame.output;
      if (output === undefined) return false;
      return finders.first(partner).canGrip(core, output) || finders.all(partner).canGrip(core, output);
    },
  };
}

/** Whether a core of a covered output passes with a grip, a restraint and a counter. */
function holdsCore(table: Table, { on, passes, beside }: Asked & { readonly beside: Beside }): boolean {
  const { cores } = table;
  const bits = on.core.reduce((sum, rule) => sum | bitOf(rule), 0);
  const rest = on.core.filter((rule) => bitOf(rule) === 0 && !looksAtCounter(rule));
  const ofFigures = rest.filter((rule) => !looksAtHead(rule));
  const ofHead = rest.filter(looksAtHead);
  const isCounted = countedUnder(table, { on, passes });
  const isHeadAsked = on.grip.some(looksPastLimits) || on.reaction.some(looksPastLimits);
  const fits = (one: AlikeCores): boolean => {
    const { drive, limiter } = one;
    if (!passes(drive) || (limiter !== null && !passes(limiter)) || !beside.elements.covers(one.partner)) return false;
    const first = firstHead(one);
    if (ofFigures.some((rule) => cores.refuses(rule, one, first))) return false;
    const standing = one.heads.filter(
      (at) => passes(at.frame.head) && !ofHead.some((rule) => cores.refuses(rule, one, at)) && isCounted(one, at),
    );
    // Heads of one kind differ to grips and restraints only where a rule looks at the head itself.
    return (isHeadAsked ? standing : standing.slice(0, 1)).some((at) => {
      const core = cores.core(one, at);
      return beside.holds(core) && beside.grips(core, one);
    });
  };
  if (bits === 0) return cores.alike.some(fits);
  return [...cores.byBits(on.core)].some(([refusedBy, alike]) => (refusedBy & bits) === 0 && alike.some(fits));
}

/** Whether a rule looks at more than the torques and speeds of a core. */
const looksPastLimits = ({ id }: { readonly id: string }): boolean =>
  !GRIP_TORQUE_LIMITS.has(id) &&
  !GRIP_SPEED_LIMITS.has(id) &&
  !REACTION_STALL_LIMITS.has(id) &&
  !REACTION_TORQUE_LIMITS.has(id);

/** Whether a core may have some counter. */
function countedUnder({ cores }: Table, { on, passes }: Asked): (one: AlikeCores, at: HeadAt) => boolean {
  const rules = on.core.filter(looksAtCounter);
  if (rules.length === 0) return () => true;
  const counters = cores.counters.filter((counter) => counter === null || passes(counter));
  return (one, at) => {
    const core = cores.core(one, at);
    return counters.some((counter) => !rules.some((rule) => cores.refusesCounter(rule, core, counter)));
  };
}
