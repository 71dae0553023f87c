/*
 * Everything the rules say of a finished assembly: on its line, its parts, its chain.
 * Invariant: a refusal among them means that the assembly must not be offered.
 * Not here: what the duty itself found (duty.findings).
 * Read next: build-assembly.ts.
 */
import type { Model } from '#lib/equipment/model.ts';
import type { Finding } from '#lib/kernel/finding.ts';
import { RULES_OF } from '#lib/rules/all-rules.ts';
import type { FactsOf, LineFacts, Scope, WholeFacts } from '#lib/rules/facts.ts';
import { judge, type RuleOf } from '#lib/rules/rule.ts';
import type { ResolvedChain } from './resolve-parts.ts';

export function assemblyFindings({ whole, accessories }: ResolvedChain): readonly Finding[] {
  const { core, links, restraint, secondChain, reaction } = whole;
  const facts: LineFacts = { line: whole.line, duty: whole.duty, site: whole.site, place: whole.place };
  const parts = [...chainModels(whole), ...accessories.map(({ model }) => model)];
  const grips = links.map((link) => ({ ...facts, core, ...link }));
  return onceEach([
    ...said(RULES_OF.line, [facts]),
    ...said(
      RULES_OF.part,
      parts.map((part) => ({ ...facts, part })),
    ),
    ...said(
      RULES_OF.link,
      links.map((link) => ({ ...facts, ...link })),
    ),
    ...said(RULES_OF.core, [{ ...facts, core }]),
    ...said(RULES_OF.grip, grips),
    ...said(RULES_OF.reaction, [{ ...facts, core, restraint, secondChain, reaction }]),
    ...said(RULES_OF.whole, [whole]),
  ]);
}

/** Models of the chain itself, from power source to valve. */
export function chainModels({ core, links, restraint }: WholeFacts): readonly Model[] {
  const options = [core.limiter, core.counter].flatMap((option) => (option === null ? [] : [option]));
  const gripping = links.flatMap(({ adapter, extensions }) => [...extensions, adapter]);
  return [...new Set([core.drive, core.head, ...options, ...gripping, restraint])];
}

function said<S extends Scope>(rules: readonly RuleOf<S>[], facts: readonly FactsOf[S][]): readonly Finding[] {
  return rules.flatMap((rule) => facts.flatMap((one) => judge(rule, one) ?? []));
}

function onceEach(findings: readonly Finding[]): readonly Finding[] {
  const seen = new Set<string>();
  return findings.filter(({ id, sentence }) => {
    const key = `${id} ${sentence}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
