import { describe, expect, it } from 'vitest';
import { seededRandom } from '#lib/kernel/random.ts';
import { catalogueOf } from '#lib/kits/catalogue.ts';
import { factsOf } from '#lib/kits/find-choices.ts';
import { ALL_REFUSALS, newTally, type Refusals } from '#lib/kits/refusals.ts';
import { type ClassQuestion, canBeServed } from '#lib/kits/search-class.ts';
import { BACKGROUND } from '#lib/kits/why/conflict-table.ts';
import { conflictOf } from '#lib/kits/why/explain-none.ts';
import { trialsFor } from '#lib/kits/why/repair-trials.ts';
import { randomKitCase } from '#tests/support/kits/kit-cases.ts';
import { plausibleCatalogue } from '#tests/support/kits/plausible-catalogue.ts';
import { PLAUSIBLE_SITE } from '#tests/support/lists/plausible-schedule.ts';
import { NO_WISHES, plausibleLines } from '#tests/support/plans/table-cases.ts';

const IDS = Object.values(ALL_REFUSALS).flatMap((rules: readonly { readonly id: string }[]) =>
  rules.map(({ id }) => id).filter((id) => !BACKGROUND.has(id)),
);
const ALONE = new Set([...ALL_REFUSALS.part, ...ALL_REFUSALS.link, ...ALL_REFUSALS.case].map(({ id }) => id));

/** The search itself, asked with some of the rules alone. */
function servedUnder(question: ClassQuestion, ids: ReadonlySet<string>): boolean {
  const on = ({ id }: { readonly id: string }): boolean => ids.has(id) || BACKGROUND.has(id);
  const refusals: Refusals = {
    line: ALL_REFUSALS.line.filter(on),
    part: ALL_REFUSALS.part.filter(on),
    link: ALL_REFUSALS.link.filter(on),
    case: ALL_REFUSALS.case.filter(on),
    core: ALL_REFUSALS.core.filter(on),
    grip: ALL_REFUSALS.grip.filter(on),
    reaction: ALL_REFUSALS.reaction.filter(on),
  };
  return canBeServed({ ...question, refusals, tally: newTally(), made: 'made to order too' });
}

/** The same answer by dropping one rule after the other, the last first, as long as nothing serves the line. */
function droppedDown(question: ClassQuestion, refusing: ReadonlySet<string>): readonly string[] {
  const ids = IDS.filter((id) => refusing.has(id));
  if (!servedUnder(question, new Set())) return [];
  const alone = ids.find((id) => ALONE.has(id) && !servedUnder(question, new Set([id])));
  if (alone !== undefined) return [alone];
  return ids.reduceRight((kept, id) => {
    const without = kept.filter((other) => other !== id);
    return servedUnder(question, new Set(without)) ? kept : without;
  }, ids);
}

interface Counted {
  impossible: number;
  readonly rules: Map<string, number>;
}

function agree(question: ClassQuestion, counted: Counted): void {
  const asked = { ...question, facts: { ...question.facts }, tally: newTally() };
  if (canBeServed({ ...asked, made: 'made to order too' })) return;
  const expected = droppedDown(question, asked.tally.refusing);
  const conflict = conflictOf(asked);
  expect(conflict).toEqual(expected);
  counted.impossible += 1;
  for (const id of expected) counted.rules.set(id, (counted.rules.get(id) ?? 0) + 1);
}

function tellCounted(name: string, { impossible, rules }: Counted): void {
  const told = [...rules].sort((a, b) => b[1] - a[1]).map(([id, count]) => `${id} ${count}`);
  console.info(`${name}: ${impossible} impossible lines have the conflict that dropping finds; ${told.join(', ')}`);
}

const questionOf = (at: Pick<ClassQuestion, 'facts' | 'stock' | 'frames'>): ClassQuestion => ({
  ...at,
  refusals: ALL_REFUSALS,
  wishes: [],
  tally: newTally(),
  made: 'stock only',
});

describe('the smallest conflict', () => {
  it('is the one that dropping rule by rule from the search itself finds, in small houses', () => {
    const counted: Counted = { impossible: 0, rules: new Map() };
    for (let seed = 1; seed <= 700; seed += 1) {
      const { lineDuty, site, models } = randomKitCase(seed);
      agree(questionOf({ facts: factsOf({ ...lineDuty, site }), ...catalogueOf(models, NO_WISHES) }), counted);
    }
    tellCounted('small houses', counted);
    expect(counted.impossible).toBeGreaterThan(250);
    expect(counted.rules.size).toBeGreaterThan(20);
  });

  it('is that too among 60 models of which some are out, for valves that bear little', () => {
    const { models } = plausibleCatalogue({ seed: 60, models: 60 });
    const random = seededRandom(60);
    const counted: Counted = { impossible: 0, rules: new Map() };
    for (const lineDuty of plausibleLines({ seed: 402, lines: 40 })) {
      const whole = questionOf({
        facts: factsOf({ ...lineDuty, site: PLAUSIBLE_SITE }),
        ...catalogueOf(models, NO_WISHES),
      });
      const bears = trialsFor({ question: whole, conflict: [] }).find(({ id }) => id === 'may-see-more');
      for (const share of [0.25, 0.5, 0.8]) {
        const facts = bears?.at(share).to(whole.facts) ?? whole.facts;
        const excludedParts = models.filter(() => random() < 0.3).map(({ number }) => number);
        agree({ ...whole, facts, ...catalogueOf(models, { excludedParts }) }, counted);
      }
    }
    tellCounted('60 models', counted);
    expect(counted.impossible).toBeGreaterThan(40);
    expect(counted.rules.size).toBeGreaterThan(6);
  });
});
