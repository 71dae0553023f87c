/*
 * Asks every rule again about a finished assembly, from facts that this checker works out itself.
 * Invariant: the assembly says exactly what the rules say, and no rule refuses it.
 * Not here: the rules (lib/rules) and sizes of wheel or nut one by one (check-cover.ts).
 * Read next: whole-facts.ts.
 */
import type { Model } from '#lib/equipment/model.ts';
import type { Finding } from '#lib/kernel/finding.ts';
import { RULES_OF } from '#lib/rules/all-rules.ts';
import type { FactsOf, LineFacts, Scope } from '#lib/rules/facts.ts';
import { judge } from '#lib/rules/rule.ts';
import type { Subject } from './chain.ts';
import { type Discrepancy, told } from './discrepancy.ts';
import { wholeFacts } from './whole-facts.ts';

export function checkFindings(subject: Subject): readonly Discrepancy[] {
  const all = findingsOf(subject);
  const said = onceEach(all);
  /** Of findings that read alike in SI any one may be kept, with its own text in US customary units. */
  const texts = new Set(all.map(textsOf));
  const expected = new Map(said.map((finding) => [keyOf(finding), finding]));
  const found = subject.assembly.findings;
  const keys = found.map(keyOf);
  const heard = new Set(keys);
  return [
    ...said.filter(({ severity }) => severity === 'refusal').map(refused),
    ...[...expected].filter(([key]) => !heard.has(key)).map(([, finding]) => missing(finding)),
    ...found.filter((_, index) => isUnfounded(keys[index] ?? '', index)).map(unfounded),
  ];

  function isUnfounded(key: string, index: number): boolean {
    const text = found[index];
    return !expected.has(key) || keys.indexOf(key) < index || text === undefined || !texts.has(textsOf(text));
  }
}

function findingsOf(subject: Subject): readonly Finding[] {
  const whole = wholeFacts(subject);
  const { line, duty, site, place, core, links } = whole;
  const facts: LineFacts = { line, duty, site, place };
  return [
    ...ask('line', [facts]),
    ...ask(
      'part',
      partsOf(subject).map((part) => ({ ...facts, part })),
    ),
    ...ask(
      'link',
      links.map((link) => ({ ...facts, ...link })),
    ),
    ...ask('core', [{ ...facts, core }]),
    ...ask(
      'grip',
      links.map((link) => ({ ...facts, core, ...link })),
    ),
    ...ask('reaction', [
      { ...facts, core, restraint: whole.restraint, secondChain: whole.secondChain, reaction: whole.reaction },
    ]),
    ...ask('whole', [whole]),
  ];
}

function ask<S extends Scope>(scope: S, facts: readonly FactsOf[S][]): readonly Finding[] {
  return RULES_OF[scope].flatMap((rule) => facts.flatMap((one) => judge(rule, one) ?? []));
}

/** Every model of the assembly once. */
function partsOf({ chain }: Subject): readonly Model[] {
  const gripping = chain.links.flatMap((link) => [...link.extensions, link.adapter]);
  const besides = chain.accessories.map(({ model }) => model);
  return [...new Set<Model>([chain.drive, chain.head, ...chain.options, ...gripping, chain.restraint]), ...besides];
}

/** What a rule says of several parts in the same words is said once, of the first part on the way to the valve. */
function onceEach(findings: readonly Finding[]): readonly Finding[] {
  const heard = new Set<string>();
  return findings.filter(({ id, sentence }) => {
    const key = `${id} ${sentence}`;
    const first = !heard.has(key);
    heard.add(key);
    return first;
  });
}

function keyOf({ id, severity, about, sentence, source }: Finding): string {
  return JSON.stringify([id, severity, about, sentence, source]);
}

function textsOf({ id, sentence, inUs }: Finding): string {
  return JSON.stringify([id, sentence, inUs]);
}

function refused({ id, sentence }: Finding): Discrepancy {
  return told({
    code: 'assembly-refused',
    sentence: `Rule ${id} refuses the assembly: ${sentence}`,
    expected: 'no refusal',
    found: id,
  });
}

function missing({ id, sentence }: Finding): Discrepancy {
  return told({
    code: 'assembly-finding-missing',
    sentence: `The assembly does not say what rule ${id} says: ${sentence}`,
    expected: sentence,
    found: 'nothing',
  });
}

function unfounded({ id, sentence }: Finding): Discrepancy {
  return told({
    code: 'assembly-finding-unfounded',
    sentence: `The assembly says in the name of ${id} what no rule says, or says it twice: ${sentence}`,
    expected: 'nothing',
    found: sentence,
  });
}
