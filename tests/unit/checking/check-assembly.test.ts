import { describe, expect, it } from 'vitest';
import type { AssemblyFacts } from '#lib/checking/chain.ts';
import { checkAssembly } from '#lib/checking/check-assembly.ts';
import { codesOf } from '#tests/support/discrepancy-codes.ts';
import { ASSEMBLY_VIOLATIONS } from '#tests/support/kits/assembly-violations.ts';
import { jointAssembly, keyAssembly, petrolAssembly, wheelAssembly } from '#tests/support/kits/sample-assemblies.ts';
import { mutationsOf } from '#tests/support/mutate.ts';

const SUBJECTS: Readonly<Record<string, AssemblyFacts>> = {
  wheel: wheelAssembly(),
  key: keyAssembly(),
  joint: jointAssembly(),
  petrol: petrolAssembly(),
};

/** Words of a calculation sheet that carry no number and decide nothing; what comes from the duty keeps its source and is checked. */
const WORDS: readonly { readonly at: RegExp; readonly why: string }[] = [
  { at: /^steps\.\d+\.name$/, why: 'the title of a step; its id is checked' },
  {
    at: /^steps\.\d+\.formula$/,
    why: 'the formula in symbols; that its symbols are given and its numbers right is checked',
  },
  { at: /^steps\.\d+\.source$/, why: 'the authority of a formula, a fixed sentence of the house' },
  { at: /^steps\.\d+\.result\.source$/, why: 'a fixed sentence; the basis is checked' },
  { at: /^steps\.\d+\.inputs\.\d+\.name$/, why: 'what a symbol stands for; the symbol is checked' },
  { at: /^steps\.\d+\.inputs\.\d+\.source$/, why: "the house's words for its own figures; the basis is checked" },
];

function isExempt(facts: AssemblyFacts, at: string): boolean {
  if (!WORDS.some((words) => words.at.test(at))) return false;
  const [, step, inputs, input, source] = at.split('.');
  if (inputs !== 'inputs' || source !== 'source') return true;
  const said = facts.assembly.steps[Number(step)]?.inputs[Number(input)]?.source ?? '';
  return !said.startsWith('Sample of the rules');
}

describe('checking an assembly', () => {
  it.each(Object.entries(SUBJECTS))('finds nothing wrong with a sound one: %s', (_, facts) => {
    expect(checkAssembly(facts)).toEqual([]);
  });

  it.each(Object.entries(SUBJECTS))(
    'notices every change of a number, a name or an entry: %s',
    (name, facts) => {
      const mutations = mutationsOf(facts.assembly);
      const asked = mutations.filter((one) => !isExempt(facts, one.at));
      const missed = asked.filter((one) => checkAssembly({ ...facts, assembly: one.value }).length === 0);
      console.info(
        `assembly mutations (${name}): ${asked.length} made, ${asked.length - missed.length} noticed; ${mutations.length - asked.length} of words left out`,
      );
      expect(missed.map((one) => `${one.at} ${one.how}`)).toEqual([]);
      expect(asked.length).toBeGreaterThan(500);
    },
    120_000,
  );

  it.each(Object.entries(ASSEMBLY_VIOLATIONS))('says %s', (code, facts) => {
    expect(checkAssembly(facts).map((one) => one.code)).toContain(code);
  });

  it('has a violation for every kind of discrepancy that its sources can tell', () => {
    expect(Object.keys(ASSEMBLY_VIOLATIONS).toSorted()).toEqual(codesOf('assembly'));
  });

  it('tells each violation in a sentence with what is right and what was found', () => {
    for (const found of Object.values(ASSEMBLY_VIOLATIONS).flatMap(checkAssembly)) {
      expect(found.sentence).toMatch(/^\S.*[.!?]$/);
      expect(found.sentence).not.toMatch(/undefined|NaN|null/);
      expect(found.expected).not.toBe(found.found);
    }
  });
});
