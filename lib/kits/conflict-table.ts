/*
 * Every part, core, grip and restraint of one line with the set of rules that it breaks, so that any subset of rules can be tried fast.
 * Invariant: a verdict does not depend on which rules are switched on; couplings are background that always holds.
 * Not here: searching for the conflict (solver/minimal-conflict.ts) and telling it.
 * Read next: explain-none.ts.
 */
import { type Coupling, joins } from '#lib/equipment/coupling.ts';
import type { Model } from '#lib/equipment/model.ts';
import type { Core, FactsOf, Scope } from '#lib/rules/facts.ts';
import type { RuleOf } from '#lib/rules/rule.ts';
import { coreFigures, newCoreMemo } from './core-figures.ts';
import { gripCases } from './grip-cases.ts';
import { couples, lengthMatters } from './grip-elements.ts';
import { type Reaction, reactionFigures, reactionsOf } from './reactions.ts';
import { ALL_REFUSALS } from './refusals.ts';
import type { ClassQuestion } from './search-class.ts';
import { wishedIn } from './wishes.ts';

/** Bits of broken rules, by the rule's place among the refusals of its scope. */
type Broken = bigint;

interface TableCore {
  readonly core: Core;
  readonly output: Coupling;
  readonly broken: Broken;
  /** Parts that part rules look at: drive, limiter, head, counter. */
  readonly parts: readonly Model[];
  readonly grips: Map<number, Broken>;
  readonly reactions: Map<number, Broken>;
}

interface TableElement {
  readonly input: Coupling;
  readonly parts: readonly Model[];
  readonly broken: Broken;
  /** For each case the rules that it breaks. */
  readonly cases: readonly Broken[];
  readonly gripFacts: Pick<FactsOf['grip'], 'adapter' | 'extensions'>;
}

export interface ConflictTable {
  readonly line: Broken;
  readonly part: (model: Model) => Broken;
  readonly cores: readonly TableCore[];
  readonly elements: readonly TableElement[];
  readonly caseCount: number;
  readonly reactions: readonly Reaction[];
  readonly gripBroken: (at: { readonly core: TableCore; readonly element: number }) => Broken;
  readonly reactionBroken: (at: { readonly core: TableCore; readonly reaction: number }) => Broken;
}

export function brokenRules<S extends Scope>(rules: readonly RuleOf<S>[], facts: FactsOf[S]): Broken {
  let broken = 0n;
  for (const [index, rule] of rules.entries()) if (rule.speaks(facts)) broken |= 1n << BigInt(index);
  return broken;
}

export function conflictTable(question: ClassQuestion): ConflictTable {
  const { facts, stock } = question;
  const parts = new Map<string, Broken>();
  const part = (model: Model): Broken => {
    const known = parts.get(model.number) ?? brokenRules(ALL_REFUSALS.part, { ...facts, part: model });
    parts.set(model.number, known);
    return known;
  };
  const wanted = wishedIn(question.wishes, 'restraint');
  const reactions = reactionsOf({
    restraints: stock.restraints.filter((restraint) => wanted?.has(restraint.number) ?? true),
    stock,
    facts,
  });
  const cores = tableCores(question);
  const elements = tableElements(question);
  return {
    line: brokenRules(ALL_REFUSALS.line, facts),
    part,
    cores,
    elements,
    caseCount: elements[0]?.cases.length ?? 0,
    reactions,
    gripBroken: ({ core, element }) => {
      const gripFacts = elements[element]?.gripFacts;
      const known = core.grips.get(element);
      if (known !== undefined || gripFacts === undefined) return known ?? 0n;
      const broken = brokenRules(ALL_REFUSALS.grip, { ...facts, core: core.core, ...gripFacts });
      core.grips.set(element, broken);
      return broken;
    },
    reactionBroken: ({ core, reaction }) => {
      const one = reactions[reaction];
      const known = core.reactions.get(reaction);
      if (known !== undefined || one === undefined) return known ?? 0n;
      const figures = reactionFigures({ core: core.core, restraint: one.restraint });
      const broken = brokenRules(ALL_REFUSALS.reaction, { ...facts, core: core.core, ...one, reaction: figures });
      core.reactions.set(reaction, broken);
      return broken;
    },
  };
}

function tableCores({ facts, frames, stock, wishes }: ClassQuestion): readonly TableCore[] {
  const drives = wishedIn(wishes, 'drive');
  const heads = wishedIn(wishes, 'head');
  const options = wishedIn(wishes, 'option');
  const wishedLimiters = stock.limiters.filter(({ number }) => options?.has(number) ?? false);
  const wishedCounters = stock.counters.filter(({ number }) => options?.has(number) ?? false);
  const counters =
    wishedCounters.length > 0 ? wishedCounters : facts.duty.countTurns ? [null, ...stock.counters] : [null];
  const wanted = frames.frames.filter(
    ({ drive, head, limiter }) =>
      (drives?.has(drive.number) ?? true) &&
      (heads?.has(head.number) ?? true) &&
      (wishedLimiters.length === 0 || (limiter !== null && wishedLimiters.includes(limiter))),
  );
  const memo = newCoreMemo();
  return wanted.flatMap((frame) =>
    frame.drive.facts.gears.flatMap((gear, gearIndex) => {
      const figures = coreFigures({ facts, frame, gearIndex, limiterUpTo: 'needed' }, memo);
      return counters.map((counter): TableCore => {
        const { drive, limiter, head } = frame;
        const core: Core = { drive, limiter, head, gear, gearIndex, counter, figures };
        return {
          core,
          output: frame.output,
          broken: brokenRules(ALL_REFUSALS.core, { ...facts, core }),
          parts: [drive, head, limiter, counter].filter((model) => model !== null),
          grips: new Map(),
          reactions: new Map(),
        };
      });
    }),
  );
}

function tableElements({ facts, frames, stock, wishes }: ClassQuestion): readonly TableElement[] {
  const wanted = wishedIn(wishes, 'adapter');
  const mustHold = [...(wishedIn(wishes, 'extension') ?? [])];
  const free = lengthMatters(facts) || mustHold.length > 0;
  const side = facts.duty.grip.kind;
  const cases = gripCases({
    facts,
    adapters: stock.adapters.filter(
      ({ facts: { wheel, sockets } }) => (side === 'wheel' ? wheel : sockets) !== undefined,
    ),
  });
  const chains = frames.chains.filter(
    (chain) => (free || chain.length <= 1) && mustHold.every((number) => chain.some((one) => one.number === number)),
  );
  return stock.adapters
    .filter((adapter) => wanted?.has(adapter.number) ?? true)
    .flatMap((adapter) => {
      const onWheel =
        side === 'wheel'
          ? cases.map((gripCase) => brokenRules(ALL_REFUSALS.case, { ...facts, adapter, extensions: [], gripCase }))
          : null;
      return chains
        .filter((extensions) => couples(extensions, adapter))
        .map(
          (extensions): TableElement => ({
            input: extensions[0]?.facts.input ?? adapter.facts.input,
            parts: [...extensions, adapter],
            broken: brokenRules(ALL_REFUSALS.link, { ...facts, adapter, extensions }),
            cases:
              onWheel ??
              cases.map((gripCase) => brokenRules(ALL_REFUSALS.case, { ...facts, adapter, extensions, gripCase })),
            gripFacts: { adapter, extensions },
          }),
        );
    });
}

/** Which rules are switched on, as bits by scope. */
export type Enabled = { readonly [S in keyof typeof ALL_REFUSALS]: Broken };

/** Which side an adapter grips is what it is, like a coupling: background, never part of a conflict. */
export const BACKGROUND: ReadonlySet<string> = new Set(['grip-kind-of-adapter']);

export function enabledRules(ids: ReadonlySet<string>): Enabled {
  const bits = (rules: readonly { readonly id: string }[]): Broken =>
    rules.reduce(
      (sum, rule, index) => (ids.has(rule.id) || BACKGROUND.has(rule.id) ? sum | (1n << BigInt(index)) : sum),
      0n,
    );
  return {
    line: bits(ALL_REFUSALS.line),
    part: bits(ALL_REFUSALS.part),
    link: bits(ALL_REFUSALS.link),
    case: bits(ALL_REFUSALS.case),
    core: bits(ALL_REFUSALS.core),
    grip: bits(ALL_REFUSALS.grip),
    reaction: bits(ALL_REFUSALS.reaction),
  };
}

/** Whether the line could be served if only these rules held. */
export function couldServe(table: ConflictTable, on: Enabled): boolean {
  if ((table.line & on.line) !== 0n) return false;
  const passes = (model: Model): boolean => (table.part(model) & on.part) === 0n;
  const reactions = table.reactions.flatMap(({ restraint }, index) => (passes(restraint) ? [index] : []));
  const groups = gripGroups({ table, on, passes });
  if (reactions.length === 0 || groups.length === 0) return false;
  return table.cores.some(
    (core) =>
      (core.broken & on.core) === 0n &&
      core.parts.every(passes) &&
      reactions.some(
        (reaction) => on.reaction === 0n || (table.reactionBroken({ core, reaction }) & on.reaction) === 0n,
      ) &&
      groups.some((group) => joins(core.output, group.input) && covers({ table, on, core, group })),
  );
}

interface GripGroup {
  readonly input: Coupling;
  readonly members: readonly { readonly element: number; readonly takes: bigint }[];
}

/** Elements with one input that together might take every case. */
function gripGroups(at: {
  readonly table: ConflictTable;
  readonly on: Enabled;
  readonly passes: (model: Model) => boolean;
}): readonly GripGroup[] {
  const { table, on, passes } = at;
  const groups = new Map<
    string,
    { readonly input: Coupling; readonly members: { readonly element: number; readonly takes: bigint }[] }
  >();
  for (const [element, { input, parts, broken, cases }] of table.elements.entries()) {
    if ((broken & on.link) !== 0n || !parts.every(passes)) continue;
    let takes = 0n;
    for (const [index, one] of cases.entries()) if ((one & on.case) === 0n) takes |= 1n << BigInt(index);
    const key = `${input.form}${input.size}${input.gender}`;
    const group = groups.get(key) ?? { input, members: [] };
    group.members.push({ element, takes });
    groups.set(key, group);
  }
  const all = (1n << BigInt(table.caseCount)) - 1n;
  return [...groups.values()].filter(
    ({ members }) => members.reduce((union, member) => union | member.takes, 0n) === all,
  );
}

function covers(at: {
  readonly table: ConflictTable;
  readonly on: Enabled;
  readonly core: TableCore;
  readonly group: GripGroup;
}): boolean {
  const { table, on, core, group } = at;
  const all = (1n << BigInt(table.caseCount)) - 1n;
  let union = 0n;
  for (const { element, takes } of group.members) {
    if (on.grip !== 0n && (table.gripBroken({ core, element }) & on.grip) !== 0n) continue;
    union |= takes;
    if (union === all) return true;
  }
  return false;
}
