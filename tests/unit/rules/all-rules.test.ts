import { describe, expect, it } from 'vitest';
import { listRules, RULES, RULES_OF } from '#lib/rules/all-rules.ts';
import type { Scope } from '#lib/rules/facts.ts';
import { judge, type RuleOf, TOPICS } from '#lib/rules/rule.ts';

interface Ran {
  readonly rule: string;
  readonly example: string;
  readonly spoke: boolean;
  readonly expected: boolean;
  readonly sentence: string;
  readonly us: string;
  readonly severity: string;
}

function runExamples<S extends Scope>(rule: RuleOf<S>): readonly Ran[] {
  return rule.examples().map((example) => {
    const finding = judge(rule, example.facts);
    return {
      rule: rule.id,
      example: example.name,
      spoke: finding !== null,
      expected: example.speaks,
      sentence: finding?.sentence ?? '',
      us: finding?.inUs ?? finding?.sentence ?? '',
      severity: finding?.severity ?? rule.severity,
    };
  });
}

const ran: readonly Ran[] = [
  ...RULES_OF.line.flatMap(runExamples),
  ...RULES_OF.part.flatMap(runExamples),
  ...RULES_OF.link.flatMap(runExamples),
  ...RULES_OF.case.flatMap(runExamples),
  ...RULES_OF.pair.flatMap(runExamples),
  ...RULES_OF.core.flatMap(runExamples),
  ...RULES_OF.grip.flatMap(runExamples),
  ...RULES_OF.reaction.flatMap(runExamples),
  ...RULES_OF.whole.flatMap(runExamples),
];

describe('rules', () => {
  it('do in every example what the example says', () => {
    expect(ran.filter((one) => one.spoke !== one.expected)).toEqual([]);
    expect(ran.length).toBeGreaterThan(2 * RULES.length - 1);
  });

  it('each have an example that speaks and one that is silent', () => {
    const without = RULES.filter(({ id }) => {
      const mine = ran.filter((one) => one.rule === id);
      return !mine.some((one) => one.spoke) || !mine.some((one) => !one.spoke);
    });
    expect(without.map((rule) => rule.id)).toEqual([]);
  });

  it('tell every quantity in US customary units as well', () => {
    const si = /\d (?:N·m|kN|N|mm|m|kg|bar|l\/s|l\/min|°C)(?![\w·/²³])(?! \()/;
    const us = /\d (?:lbf·ft|lbf|lb|psi|cfm|°F)(?![\w·])/;
    expect(ran.filter((one) => si.test(one.us))).toEqual([]);
    expect(ran.filter((one) => us.test(one.sentence))).toEqual([]);
    const both = ran.filter((one) => one.us !== one.sentence);
    console.info(`${both.length} rule sentences told in both unit systems`);
    expect(both.length).toBeGreaterThan(25);
  });

  it('speak in whole sentences without holes', () => {
    const bad = ran.filter(
      (one) => one.spoke && (!/[.!?]$/.test(one.sentence.trim()) || /undefined|NaN|null|\[object/.test(one.sentence)),
    );
    expect(bad).toEqual([]);
  });

  it('have unique kebab-case ids, a source and a known topic', () => {
    const ids = RULES.map((rule) => rule.id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.filter((id) => !/^[a-z0-9]+(-[a-z0-9]+)*$/.test(id))).toEqual([]);
    expect(RULES.filter((rule) => rule.source.length === 0 || !TOPICS.includes(rule.topic))).toEqual([]);
  });

  it('cover every topic', () => {
    expect(TOPICS.filter((topic) => !RULES.some((rule) => rule.topic === topic))).toEqual([]);
  });

  it('never refuse by looking at the whole chain, so that slots of a family combine freely', () => {
    expect(RULES_OF.whole.filter((rule) => rule.severity === 'refusal')).toEqual([]);
  });

  it('are listed one for one', () => {
    expect(listRules().map((rule) => rule.id)).toEqual(RULES.map((rule) => rule.id));
  });
});
