/*
 * A conflict of rules in sentences: for each rule the part that comes nearest to passing, with its number.
 * Invariant: every rule of the conflict is told at least once, by a part that it refuses.
 * Not here: finding the conflict.
 * Read next: explain-none.ts.
 */
import type { AdapterModel } from '#lib/equipment/model.ts';
import type { Finding } from '#lib/kernel/finding.ts';
import { RULES_OF } from '#lib/rules/all-rules.ts';
import type { GripCase } from '#lib/rules/facts.ts';
import { findingOf } from '#lib/rules/rule.ts';
import { tellMore } from '#lib/units/say-figure.ts';
import { alikeCases } from '../grips/case-bits.ts';
import { couples } from '../grips/extension-chains.ts';
import { gripCases, likeliestCase } from '../grips/grip-cases.ts';
import type { ClassQuestion } from '../search-class.ts';
import type { NearestRefused, RefusedPart } from './refused-part.ts';
import { sideAdapters, tellBesideCores } from './tell-beside-cores.ts';
import { nearestCore, refusedCores } from './tell-cores.ts';

export function tellConflict({
  question,
  conflict,
}: {
  readonly question: ClassQuestion;
  readonly conflict: readonly string[];
}): readonly Finding[] {
  return conflict.flatMap((id) => {
    const { nearest, parts } = nearestRefused(question, { id, conflict });
    if (nearest === null) return [];
    const others = parts - 1;
    const more = others > 0 ? ` (${others} more ${others === 1 ? 'is' : 'are'} refused for the same reason)` : '';
    return [tellMore(nearest.finding(), more)];
  });
}

function nearestRefused(question: ClassQuestion, asked: Asked): NearestRefused {
  const rule = RULES_OF.core.find(({ id }) => id === asked.id);
  if (rule !== undefined) return nearestCore(question, { rule, conflict: asked.conflict });
  const told = refusedBy(question, asked);
  const nearest = told.reduce<RefusedPart | null>(
    (best, one) => (best === null || one.broken < best.broken ? one : best),
    null,
  );
  return { nearest, parts: new Set(told.map((one) => one.part)).size };
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

function tellCores(question: ClassQuestion, { id, conflict }: Asked): readonly RefusedPart[] {
  const rule = RULES_OF.core.find((one) => one.id === id);
  return rule === undefined ? tellBesideCores(question, { id, conflict }) : refusedCores(question, { rule, conflict });
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
