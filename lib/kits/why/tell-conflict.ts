/*
 * A conflict of rules in sentences: for each rule the part that comes nearest to passing, with its number.
 * Invariant: every rule of the conflict is told at least once, by a part that it refuses.
 * Not here: finding the conflict.
 * Read next: explain-none.ts.
 */
import type { AdapterModel, Model } from '#lib/equipment/model.ts';
import type { Finding } from '#lib/kernel/finding.ts';
import { RULES_OF } from '#lib/rules/all-rules.ts';
import type { Core, GripCase, LineFacts } from '#lib/rules/facts.ts';
import { findingOf, type RuleOf } from '#lib/rules/rule.ts';
import { tellMore } from '#lib/units/say-figure.ts';
import { reactionFigures, reactionsOf } from '../chain/reactions.ts';
import { type CoreTable, coreTable, looksAtCounter, type TableCore } from '../cores/core-table.ts';
import { alikeCases } from '../grips/case-bits.ts';
import { remembering } from '../grips/element-table.ts';
import { couples } from '../grips/extension-chains.ts';
import { gripCases, likeliestCase } from '../grips/grip-cases.ts';
import type { ClassQuestion } from '../search-class.ts';

/** A part that a rule refuses. */
export interface RefusedPart {
  /** Made only for the one that is told. */
  readonly finding: () => Finding;
  /** Which part is refused. */
  readonly part: string;
  /** Broken rules of the conflict; fewer is nearer to fitting. */
  readonly broken: number;
}

export function tellConflict({
  question,
  conflict,
}: {
  readonly question: ClassQuestion;
  readonly conflict: readonly string[];
}): readonly Finding[] {
  return conflict.flatMap((id) => {
    const told = refusedBy(question, { id, conflict });
    const [first, ...rest] = told;
    if (first === undefined) return [];
    const nearest = rest.reduce((best, one) => (one.broken < best.broken ? one : best), first);
    const others = new Set(told.map((one) => one.part)).size - 1;
    const more = others > 0 ? ` (${others} more ${others === 1 ? 'is' : 'are'} refused for the same reason)` : '';
    const finding = nearest.finding();
    return [tellMore(finding, more)];
  });
}

/** Everything that one rule of a conflict refuses. */
export function refusedBy(question: ClassQuestion, asked: Asked): readonly RefusedPart[] {
  const { id } = asked;
  return [
    ...tellParts(question, id),
    ...tellLinks(question, id),
    ...tellCases(question, id),
    ...tellCores(question, asked),
  ];
}

interface Asked {
  readonly id: string;
  readonly conflict: readonly string[];
}

function tellParts({ facts, stock }: ClassQuestion, id: string): readonly RefusedPart[] {
  const rule = RULES_OF.part.find((one) => one.id === id);
  if (rule === undefined) return [];
  const others = RULES_OF.part.filter((one) => one.severity === 'refusal');
  return stock.all.flatMap((part) => {
    const partFacts = { ...facts, part };
    if (!rule.speaks(partFacts)) return [];
    return [
      {
        finding: () => findingOf(rule, partFacts),
        part: part.number,
        broken: others.filter((one) => one.speaks(partFacts)).length,
      },
    ];
  });
}

function tellLinks({ facts, stock, frames }: ClassQuestion, id: string): readonly RefusedPart[] {
  const rule = RULES_OF.link.find((one) => one.id === id);
  if (rule === undefined) return [];
  return sideAdapters(facts, stock.adapters).flatMap((adapter) =>
    frames.chains.all
      .filter((chain) => chain.length <= 1 && couples(chain, adapter.facts.input))
      .flatMap((extensions): readonly RefusedPart[] => {
        const linkFacts = { ...facts, adapter, extensions };
        return rule.speaks(linkFacts)
          ? [{ finding: () => findingOf(rule, linkFacts), part: adapter.number, broken: extensions.length }]
          : [];
      }),
  );
}

function tellCases({ facts, stock }: ClassQuestion, id: string): readonly RefusedPart[] {
  const rule = RULES_OF.case.find((one) => one.id === id);
  const likeliest = likeliestCase(facts);
  if (rule === undefined || likeliest === null) return [];
  const { line, duty, site, place } = facts;
  const adapters = sideAdapters(facts, stock.adapters);
  const cases = [likeliest, ...gripCases({ facts, adapters })];
  const groups = alikeCases(rule, cases).map((group) => ({ ...group, nearest: mayBeNearest(group.cases) }));
  return adapters.flatMap((adapter) => {
    const missed = groups.filter(({ gripCase }) =>
      rule.speaks({ line, duty, site, place, adapter, extensions: [], gripCase }),
    );
    const near = missed
      .flatMap((group) => group.nearest)
      .map((gripCase) => ({ gripCase, by: missedBy(adapter, gripCase) }))
      .reduce<{ gripCase: GripCase; by: number } | null>(
        (best, one) => (best === null || one.by < best.by ? one : best),
        null,
      );
    if (near === null) return [];
    const finding = (): Finding => findingOf(rule, { ...facts, adapter, extensions: [], gripCase: near.gripCase });
    const count = missed.reduce((sum, group) => sum + group.cases.length, 0);
    return [{ finding, part: adapter.number, broken: count / cases.length + near.by }];
  });
}

/** Of cases that a rule cannot tell apart, those that can lie nearest to an adapter: of one size across flats the shallowest. */
function mayBeNearest(cases: readonly GripCase[]): readonly GripCase[] {
  const nearest = new Map<number | null, GripCase>();
  for (const one of cases) {
    const size = one.kind === 'wheel' ? one.diameter_m : one.acrossFlats_m;
    const known = nearest.get(size);
    const isShallower = known?.kind === 'nut' && one.kind === 'nut' && one.depth_m < known.depth_m;
    if (known === undefined || isShallower) nearest.set(size, one);
  }
  return [...nearest.values()];
}

/** How far a size lies from what an adapter takes. [m] */
function missedBy({ facts }: AdapterModel, gripCase: GripCase): number {
  if (gripCase.kind === 'wheel') {
    const { low, high } = facts.wheel?.diameter ?? { low: 0, high: 0 };
    return Math.max(0, low - gripCase.diameter_m, gripCase.diameter_m - high);
  }
  const across = gripCase.acrossFlats_m ?? 0;
  const nearest = Math.min(...(facts.sockets ?? []).map((socket) => Math.abs(socket.acrossFlats - across)), 1);
  const long = (facts.length?.high ?? facts.height) - gripCase.depth_m;
  return nearest + Math.max(0, -long);
}

/** Cores nearest to fitting that are looked at for what they would be joined to. */
const NEAREST_CORES = 8;

function tellCores(question: ClassQuestion, { id, conflict }: Asked): readonly RefusedPart[] {
  const { facts } = question;
  const coreRule = RULES_OF.core.find((one) => one.id === id);
  const gripRule = RULES_OF.grip.find((one) => one.id === id);
  const reactionRule = RULES_OF.reaction.find((one) => one.id === id);
  if (coreRule === undefined && gripRule === undefined && reactionRule === undefined) return [];
  const parts = RULES_OF.part.filter((one) => one.severity === 'refusal' && conflict.includes(one.id));
  const verdict = remembering((part: Model) => !parts.some((one) => one.speaks({ ...facts, part })));
  const passes = (part: Model | null): boolean => part === null || verdict(part);
  const table = coreTable(question);
  const cores = [...table.frames.keys()]
    .flatMap((partner) => table.cores(partner))
    .filter(({ frame }) => passes(frame.drive) && passes(frame.limiter) && passes(frame.head));
  const nearness = nearnessOf(table, conflict);
  if (coreRule !== undefined) return tellNearestCores({ table, facts, cores, nearness, rule: coreRule });
  return cores
    .map((one) => ({ core: { ...one.core, counter: null }, broken: nearness(one), place: one.place }))
    .toSorted((a, b) => a.broken - b.broken || a.place - b.place)
    .slice(0, NEAREST_CORES)
    .flatMap((near) => {
      if (gripRule !== undefined) return tellGrips(question, { ...near, rule: gripRule });
      return reactionRule === undefined ? [] : tellReactions(question, { ...near, rule: reactionRule, passes });
    });
}

type Nearness = (core: TableCore) => number;

/** Broken rules of the conflict, and as a share below one how far the torque falls short; fewer is nearer to fitting. */
function nearnessOf(table: CoreTable, conflict: readonly string[]): Nearness {
  const others = RULES_OF.core.filter((one) => conflict.includes(one.id));
  const short = remembering((figures: Core['figures']) => shortfall(figures));
  const refuses = (rule: RuleOf<'core'>, one: TableCore): boolean =>
    looksAtCounter(rule) ? table.refusesCounter(rule, one, null) : table.refuses(rule, one);
  return (one) => others.filter((rule) => refuses(rule, one)).length + short(one.core.figures);
}

/** Of the cores that a core rule refuses the nearest of each drive and head. */
function tellNearestCores(at: {
  readonly table: CoreTable;
  readonly facts: LineFacts;
  readonly cores: readonly TableCore[];
  readonly nearness: Nearness;
  readonly rule: RuleOf<'core'>;
}): readonly RefusedPart[] {
  const { table, facts, rule } = at;
  const nearest = new Map<Core['drive'], Map<Core['head'], { one: TableCore; broken: number }>>();
  for (const one of at.cores) {
    const speaks = looksAtCounter(rule) ? table.refusesCounter(rule, one, null) : table.refuses(rule, one);
    if (!speaks) continue;
    const broken = at.nearness(one);
    const ofDrive = nearest.get(one.core.drive) ?? new Map<Core['head'], { one: TableCore; broken: number }>();
    nearest.set(one.core.drive, ofDrive);
    const known = ofDrive.get(one.core.head);
    if (known === undefined || broken < known.broken || (broken === known.broken && one.place < known.one.place))
      ofDrive.set(one.core.head, { one, broken });
  }
  return [...nearest.values()]
    .flatMap((ofDrive) => [...ofDrive.values()])
    .toSorted((a, b) => a.one.place - b.one.place)
    .map(({ one, broken }): RefusedPart => {
      const core = { ...one.core, counter: null };
      const part = `${core.drive.number} ${core.head.number}`;
      return { finding: () => findingOf(rule, { ...facts, core }), part, broken };
    });
}

function shortfall({ opening, closing, sureAtValve }: Core['figures']): number {
  const missing = Math.max(opening.needed - opening.sure, closing.needed - closing.sure, 0);
  return missing / (missing + sureAtValve + 1);
}

function tellGrips(
  { facts, stock, frames }: ClassQuestion,
  at: { readonly core: Core; readonly broken: number; readonly rule: (typeof RULES_OF.grip)[number] },
): readonly RefusedPart[] {
  const { core, broken, rule } = at;
  return sideAdapters(facts, stock.adapters).flatMap((adapter): readonly RefusedPart[] => {
    const refused = frames.chains.all
      .filter((chain) => chain.length <= 1 && couples(chain, adapter.facts.input))
      .map((extensions) => ({ ...facts, core, adapter, extensions }))
      .find((gripFacts) => rule.speaks(gripFacts));
    if (refused === undefined) return [];
    const lacking = 1 / (1 + adapter.facts.torqueRating);
    return [{ finding: () => findingOf(rule, refused), part: adapter.number, broken: broken + lacking }];
  });
}

const sideAdapters = (
  facts: LineFacts,
  adapters: ClassQuestion['stock']['adapters'],
): ClassQuestion['stock']['adapters'] =>
  adapters.filter(
    (adapter) => (facts.duty.grip.kind === 'wheel' ? adapter.facts.wheel : adapter.facts.sockets) !== undefined,
  );

function tellReactions(
  { facts, stock }: ClassQuestion,
  at: {
    readonly core: Core;
    readonly broken: number;
    readonly rule: (typeof RULES_OF.reaction)[number];
    readonly passes: (part: Model | null) => boolean;
  },
): readonly RefusedPart[] {
  const { core, broken, rule } = at;
  return reactionsOf({ restraints: stock.restraints.filter(at.passes), stock, facts }).flatMap(
    (one): readonly RefusedPart[] => {
      const reaction = reactionFigures({ core, restraint: one.restraint });
      const reactionFacts = { ...facts, core, ...one, reaction };
      if (!rule.speaks(reactionFacts)) return [];
      const lacking = 1 / (1 + one.restraint.facts.torqueRating);
      return [{ finding: () => findingOf(rule, reactionFacts), part: one.restraint.number, broken: broken + lacking }];
    },
  );
}
