/*
 * Whether a line could be served if only some of the rules held; each verdict is worked out once, when first asked for.
 * Invariant: a verdict does not depend on which rules are switched on; couplings are background that always holds.
 * Not here: searching for the conflict (solver/minimal-conflict.ts) and telling it.
 * Read next: ../grips/element-table.ts, explain-none.ts.
 */
import type { Model } from '#lib/equipment/model.ts';
import type { LineFacts } from '#lib/rules/facts.ts';
import type { RuleOf } from '#lib/rules/rule.ts';
import { reactionFinder } from '../chain/reaction-finder.ts';
import { reactionsOf } from '../chain/reactions.ts';
import { type CoreTable, coreTable, looksAtCounter, looksAtHead, type TableCore } from '../cores/core-table.ts';
import type { Frame } from '../cores/frames.ts';
import { type ElementRules, type ElementTable, elementTable, remembering } from '../grips/element-table.ts';
import type { GripElement } from '../grips/grip-elements.ts';
import { gripFinder } from '../grips/grip-finder.ts';
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
}

/** Answers whether the line could be served if only the rules of these ids held. */
export function couldServeWith(question: ClassQuestion): (ids: ReadonlySet<string>) => boolean {
  const table: Table = {
    question,
    breaks: partVerdicts(question.facts),
    elements: elementTable(question),
    cores: coreTable(question),
  };
  return (ids) => couldServe(table, ids);
}

function partVerdicts({ line, duty, site, place }: LineFacts): Table['breaks'] {
  const verdictsOf = remembering((rule: RuleOf<'part'>) =>
    remembering((part: Model) => rule.speaks({ line, duty, site, place, part })),
  );
  return (rule, model) => verdictsOf(rule)(model);
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

function couldServe(table: Table, ids: ReadonlySet<string>): boolean {
  const on = refusalsOf(ids);
  if (on.line.some((rule) => rule.speaks(table.question.facts))) return false;
  const passes =
    on.part.length === 0
      ? () => true
      : remembering((model: Model) => !on.part.some((rule) => table.breaks(rule, model)));
  const { stock, wishes } = table.question;
  const wanted = wishedIn(wishes, 'restraint');
  const restraints = stock.restraints.filter((one) => (wanted?.has(one.number) ?? true) && passes(one));
  if (restraints.length === 0 || !table.cores.counters.some((counter) => counter === null || passes(counter)))
    return false;
  const elementRules = { ...on, passes };
  if (!table.elements.mayCover(elementRules)) return false;
  const framePasses = ({ drive, head, limiter }: Frame): boolean =>
    passes(drive) && passes(head) && (limiter === null || passes(limiter));
  const partners = new Set(
    [...table.cores.frames].flatMap(([partner, frames]) => (frames.some(framePasses) ? [partner] : [])),
  );
  if (partners.size === 0) return false;
  const isBare = on.core.length + on.grip.length + on.reaction.length === 0;
  const covered = coveredPartners(table.elements, { on: elementRules, partners, until: isBare ? 'one is' : 'all are' });
  return isBare ? covered.size > 0 : holdsCore(table, { on, passes, framePasses, covered, restraints });
}

interface CoreQuestion {
  readonly on: Refusals;
  readonly passes: (model: Model) => boolean;
  readonly framePasses: (frame: Frame) => boolean;
  readonly covered: Covered;
  readonly restraints: ClassQuestion['stock']['restraints'];
}

/** Whether a core of a covered output passes with a grip, a restraint and a counter. */
function holdsCore(table: Table, at: CoreQuestion): boolean {
  const { on, covered } = at;
  const { facts, stock, tally } = table.question;
  const reactions = reactionsOf({ restraints: at.restraints, stock, facts });
  const holding = reactionFinder({ facts, rules: on.reaction, tally, reactions });
  const elements = on.grip.length === 0 ? [] : [...covered.values()].flatMap((makers) => makers.map((make) => make()));
  const grips = gripFinder({ facts, rules: on.grip, tally, elements, cases: table.elements.cases });
  const passing = passingCores(table.cores, at);
  const fits = (one: TableCore): boolean =>
    at.framePasses(one.frame) &&
    passing(one) &&
    (on.reaction.length === 0 || holding(one.core).length > 0) &&
    (on.grip.length === 0 || grips.canGrip(one.core, one.frame.output));
  return [...covered.keys()].some((partner) => table.cores.cores(partner).some(fits));
}

/** Whether the core rules that are on let a core pass with some counter. */
function passingCores(table: CoreTable, { on, passes }: CoreQuestion): (core: TableCore) => boolean {
  const ofFigures = on.core.filter((rule) => !looksAtCounter(rule) && !looksAtHead(rule));
  const ofHead = on.core.filter((rule) => !looksAtCounter(rule) && looksAtHead(rule));
  const ofCounter = on.core.filter(looksAtCounter);
  const counters = table.counters.filter((counter) => counter === null || passes(counter));
  return (one) =>
    !ofFigures.some((rule) => table.refuses(rule, one)) &&
    !ofHead.some((rule) => table.refuses(rule, one)) &&
    counters.some((counter) => !ofCounter.some((rule) => table.refusesCounter(rule, one, counter)));
}

/** How to make the elements of each coupling towards a head, where they together take every case. */
type Covered = ReadonlyMap<string, readonly (() => GripElement)[]>;

function coveredPartners(
  table: ElementTable,
  at: {
    readonly on: ElementRules;
    readonly partners: ReadonlySet<string>;
    readonly until: 'one is' | 'all are';
  },
): Covered {
  const groups = new Map<string, { takes: bigint; readonly makers: (() => GripElement)[] }>();
  table.each(at.on, ({ input, takes, make }) => {
    if (!at.partners.has(input)) return 'go on';
    const group = groups.get(input) ?? { takes: 0n, makers: [] };
    groups.set(input, group);
    group.takes |= takes;
    group.makers.push(make);
    return at.until === 'one is' && group.takes === table.all ? 'stop' : 'go on';
  });
  return new Map(
    [...groups].flatMap(([input, { takes, makers }]) => (takes === table.all ? [[input, makers] as const] : [])),
  );
}
