/*
 * A conflict of rules as a tree: under each rule the facts it looked at and the parts it refuses, nearest to passing first.
 * Invariant: one branch a rule of the conflict, in its order; parts that are not told are counted.
 * Not here: the sentence of a part (tell-conflict.ts).
 * Read next: reason.ts, fact-reasons.ts.
 */
import type { Finding } from '#lib/kernel/finding.ts';
import { RULES } from '#lib/rules/all-rules.ts';
import type { LineFacts } from '#lib/rules/facts.ts';
import type { ClassQuestion } from '../search-class.ts';
import { factReasons } from './fact-reasons.ts';
import type { Reason } from './reason.ts';
import { refusedBy } from './tell-conflict.ts';

const PARTS_TOLD = 4;

export function conflictTree(at: {
  readonly question: ClassQuestion;
  readonly conflict: readonly string[];
}): readonly Reason[] {
  const { facts } = at.question;
  return at.conflict.map((id) => {
    const refused = refusedBy(at.question, { id, conflict: at.conflict }).toSorted((a, b) => a.broken - b.broken);
    const nearest = refused.filter((one, index) => refused.findIndex(({ part }) => part === one.part) === index);
    const parts = nearest.slice(0, PARTS_TOLD).map((one) => partReason(one.finding()));
    return ruleReason({ id, facts, children: [...parts, ...restOf(nearest.length - parts.length)] });
  });
}

/** Findings under their rules; one that no rule made stands for itself. */
export function findingTree(facts: LineFacts, findings: readonly Finding[]): readonly Reason[] {
  return findings.map((finding) => {
    const isRule = RULES.some(({ id }) => id === finding.id);
    if (isRule) return ruleReason({ id: finding.id, facts, children: [partReason(finding)] });
    const { sentence, inUs, source } = finding;
    return { kind: 'fact', sentence, ...(inUs === undefined ? {} : { inUs }), source, children: [] };
  });
}

function ruleReason(at: {
  readonly id: string;
  readonly facts: LineFacts;
  readonly children: readonly Reason[];
}): Reason {
  const rule = RULES.find(({ id }) => id === at.id);
  return {
    kind: 'rule',
    sentence: `${rule?.title ?? at.id}.`,
    ...(rule === undefined ? {} : { source: rule.source }),
    children: [...factReasons(at.facts, rule?.speaksOf ?? []), ...at.children],
  };
}

function partReason({ sentence, inUs }: Finding): Reason {
  return { kind: 'part', sentence, ...(inUs === undefined ? {} : { inUs }), children: [] };
}

function restOf(count: number): readonly Reason[] {
  if (count <= 0) return [];
  const sentence = `${count} more ${count === 1 ? 'is' : 'are'} refused for the same reason, further from passing.`;
  return [{ kind: 'part', sentence, children: [] }];
}
