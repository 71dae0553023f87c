/*
 * Lines that nothing serves, for the table of speeds: some as the invented list has them, some because the valve bears a quarter of what is said.
 */
import { catalogueOf } from '#lib/kits/catalogue.ts';
import { factsOf } from '#lib/kits/find-choices.ts';
import { ALL_REFUSALS, newTally } from '#lib/kits/refusals.ts';
import { type ClassQuestion, canBeServed } from '#lib/kits/search-class.ts';
import { conflictOf } from '#lib/kits/why/explain-none.ts';
import { trialsFor } from '#lib/kits/why/repair-trials.ts';
import { findRepairs } from '#lib/kits/why/repairs.ts';
import { tellConflict } from '#lib/kits/why/tell-conflict.ts';
import { processorTime, processorTimeOnce } from '../checked.ts';
import { PLAUSIBLE_SITE } from '../lists/plausible-schedule.ts';
import { NO_WISHES, plausibleLines } from '../plans/table-cases.ts';
import { plausibleCatalogue } from './plausible-catalogue.ts';

export type Impossible = 'no adapter takes it' | 'it bears too little';

/** Processor milliseconds of one line. */
export type ImpossibleTook = Readonly<Record<'search' | 'explained' | 'repaired', number>>;

const SHARE = 0.25;

export function measureImpossible(at: {
  readonly models: number;
  readonly kind: Impossible;
  readonly lines: number;
}): readonly ImpossibleTook[] {
  return questionsOf(at).flatMap((question): readonly ImpossibleTook[] => {
    const runs = [0, 1, 2].flatMap(() => explainOnce(question) ?? []);
    const [first] = runs;
    if (first === undefined) return [];
    const { conflict } = first;
    const isOfAdapters = conflict.every((id) => ALL_REFUSALS.case.some((rule) => rule.id === id));
    if (isOfAdapters !== (at.kind === 'no adapter takes it')) return [];
    const { models } = catalogue(at.models);
    const repaired = processorTime(() =>
      findRepairs({ question: fresh(question), conflict, models, constraints: NO_WISHES, depth: 'single changes' }),
    );
    return [
      {
        search: Math.min(...runs.map(({ search }) => search)),
        explained: Math.min(...runs.map(({ explained }) => explained)),
        repaired: repaired.milliseconds,
      },
    ];
  });
}

/** Nothing that was worked out for the same line before is kept with facts and a tally of their own. */
function fresh(question: ClassQuestion): ClassQuestion {
  return { ...question, facts: { ...question.facts }, tally: newTally() };
}

/** The search of an impossible line and then, with what the search left, why; null where it can be served. */
function explainOnce(question: ClassQuestion) {
  const asked = fresh(question);
  const search = processorTimeOnce(() => canBeServed({ ...asked, made: 'made to order too' }));
  if (search.found) return null;
  const told = processorTimeOnce(() => {
    const conflict = conflictOf(asked) ?? [];
    return { conflict, because: tellConflict({ question: asked, conflict }) };
  });
  return { search: search.milliseconds, explained: told.milliseconds, conflict: told.found.conflict };
}

function questionsOf(at: {
  readonly models: number;
  readonly kind: Impossible;
  readonly lines: number;
}): readonly ClassQuestion[] {
  const { stock, frames } = catalogueOf(catalogue(at.models).models, NO_WISHES);
  return plausibleLines({ seed: 401, lines: at.lines }).map((lineDuty) => {
    const facts = factsOf({ ...lineDuty, site: PLAUSIBLE_SITE });
    const tally = newTally();
    const question = { facts, stock, frames, refusals: ALL_REFUSALS, wishes: [], tally, made: 'stock only' } as const;
    const bears = trialsFor({ question, conflict: [] }).find(({ id }) => id === 'may-see-more');
    if (at.kind === 'no adapter takes it' || bears === undefined) return question;
    return { ...question, facts: bears.at(SHARE).to(facts) };
  });
}

const catalogues = new Map<number, ReturnType<typeof plausibleCatalogue>>();

function catalogue(size: number): ReturnType<typeof plausibleCatalogue> {
  const known = catalogues.get(size) ?? plausibleCatalogue({ seed: size, models: size });
  catalogues.set(size, known);
  return known;
}
