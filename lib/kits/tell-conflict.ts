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
import { findingOf } from '#lib/rules/rule.ts';
import { tellMore } from '#lib/units/say-figure.ts';
import { coreFigures, newCoreMemo } from './core-figures.ts';
import { couples } from './extension-chains.ts';
import { gripCases, likeliestCase } from './grip-cases.ts';
import { reactionFigures, reactionsOf } from './reactions.ts';
import type { ClassQuestion } from './search-class.ts';

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
    const nearest = told.toSorted((a, b) => a.broken - b.broken)[0];
    if (nearest === undefined) return [];
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
  const adapters = sideAdapters(facts, stock.adapters);
  const cases = [likeliest, ...gripCases({ facts, adapters })];
  return adapters.flatMap((adapter) => {
    const missed = cases.filter((gripCase) => rule.speaks({ ...facts, adapter, extensions: [], gripCase }));
    const nearest = missed.toSorted((a, b) => missedBy(adapter, a) - missedBy(adapter, b))[0];
    if (nearest === undefined) return [];
    const finding = (): Finding => findingOf(rule, { ...facts, adapter, extensions: [], gripCase: nearest });
    return [{ finding, part: adapter.number, broken: missed.length / cases.length + missedBy(adapter, nearest) }];
  });
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
  const others = RULES_OF.core.filter((one) => conflict.includes(one.id));
  const parts = RULES_OF.part.filter((one) => one.severity === 'refusal' && conflict.includes(one.id));
  const passes = (part: Model | null): boolean => part === null || !parts.some((one) => one.speaks({ ...facts, part }));
  const ranked = candidateCores(question, passes)
    .map((core) => ({ core, broken: others.filter((one) => one.speaks({ ...facts, core })).length + shortfall(core) }))
    .toSorted((a, b) => a.broken - b.broken);
  if (coreRule !== undefined) {
    return ranked.flatMap(({ core, broken }): readonly RefusedPart[] => {
      const coreFacts = { ...facts, core };
      if (!coreRule.speaks(coreFacts)) return [];
      return [
        { finding: () => findingOf(coreRule, coreFacts), part: `${core.drive.number} ${core.head.number}`, broken },
      ];
    });
  }
  return ranked.slice(0, NEAREST_CORES).flatMap((near) => {
    if (gripRule !== undefined) return tellGrips(question, { ...near, rule: gripRule });
    return reactionRule === undefined ? [] : tellReactions(question, { ...near, rule: reactionRule, passes });
  });
}

/** How far a core falls short of what is needed, as a share below one. */
function shortfall(core: Core): number {
  const { opening, closing, sureAtValve } = core.figures;
  const missing = Math.max(opening.needed - opening.sure, closing.needed - closing.sure, 0);
  return missing / (missing + sureAtValve + 1);
}

function candidateCores({ facts, frames }: ClassQuestion, passes: (part: Model | null) => boolean): readonly Core[] {
  const memo = newCoreMemo();
  return frames.frames
    .filter((frame) => [frame.drive, frame.limiter, frame.head].every(passes))
    .flatMap((frame) =>
      frame.drive.facts.gears.map((gear, gearIndex) => ({
        drive: frame.drive,
        limiter: frame.limiter,
        head: frame.head,
        gear,
        gearIndex,
        counter: null,
        figures: coreFigures({ facts, frame, gearIndex, limiterUpTo: 'needed' }, memo),
      })),
    );
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
