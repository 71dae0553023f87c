/*
 * What an enquiry's plan lacks on its dates, and what the house can do about it: who could wait, and what could stand in.
 * Invariant: a model stands in only where every line that uses the missing one passes the independent check with it; reads only.
 * Not here: finding what is short (lib/stock/shortage.ts, lib/fleet), planning anew, what other depots send (../plans/depots-view.ts).
 * Read next: ../../stock/shortage-ways.ts, ../../planning/stand-in.ts.
 */
import { customerOfBooking } from '#db/queries/bookings-found.ts';
import type { Preference } from '#lib/equipment/choices.ts';
import type { Model } from '#lib/equipment/model.ts';
import { rangeOfDays } from '#lib/kernel/date-range.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { tryStandIn } from '#lib/planning/stand-in.ts';
import type { PlanOutcome, WorkedOut, WorkOutInput } from '#lib/planning/worked-out.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { houseModels, knownModels, stockQuestion } from '#lib/services/house/house-facts.ts';
import { prepareInput, readPlan } from '#lib/services/plans/plan-enquiry.ts';
import { freeCount } from '#lib/stock/free-units.ts';
import { findShortages, type Shortage } from '#lib/stock/shortage.ts';
import { type CouldWait, whoCouldWait } from '#lib/stock/shortage-ways.ts';
import type { StockQuestion } from '#lib/stock/unit.ts';

export interface ShortModel extends Shortage {
  readonly name: string;
  readonly waiters: readonly (CouldWait & { readonly customer: string })[];
  readonly standIns: readonly { readonly model: string; readonly name: string; readonly free: number }[];
}

export interface ShortageAnswer {
  readonly short: readonly ShortModel[];
}

/** Nobody reads a longer list, and each is checked on every line. */
const STAND_INS_TRIED = 12;
const LINES_CHECKED = 60;

export function shortageAnswer(
  context: Context,
  { enquiryId, preference }: { readonly enquiryId: number; readonly preference: Preference },
): Result<ShortageAnswer> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const prepared = prepareInput(context, enquiryId);
  if (!prepared.ok) return prepared;
  const worked = readPlan(context, enquiryId);
  const outcome = worked?.plans.find((plan) => plan.preference === preference) ?? worked?.plans[0];
  if (!worked || !outcome) return ok({ short: [] });
  const { input } = prepared.value;
  const models = knownModels(context, input.site.startsOn);
  const needs = needsOf({ worked, outcome, models });
  const window = rangeOfDays(input.site.startsOn, input.site.days);
  const question = stockQuestion(context, { window, enquiryId });
  const names = new Map(models.map(({ number, name }) => [number, name]));
  const offered = houseModels(context, input.site.startsOn).map(({ number }) => number);
  const at = { question, models, offered, outcome, input, names };
  return ok({
    short: findShortages({ ...question, needs }).map((shortage) => shortModel(context, { ...at, shortage })),
  });
}

interface Needing {
  readonly worked: WorkedOut;
  readonly outcome: PlanOutcome;
  readonly models: readonly Model[];
}

/** What the plan carries, and what it would carry besides if it were free; what is made to order is never in stock. */
function needsOf({ worked, outcome, models }: Needing): readonly { readonly model: string; readonly count: number }[] {
  const made = new Set(models.flatMap((model) => (model.madeToOrder ? [model.number] : [])));
  const counts = new Map<string, number>();
  for (const { item, count } of outcome.kits.flatMap(({ items }) => items))
    counts.set(item, (counts.get(item) ?? 0) + count);
  for (const { item, wanted } of worked.shortage?.short ?? [])
    counts.set(item, Math.max(counts.get(item) ?? 0, wanted));
  return [...counts].filter(([model]) => !made.has(model)).map(([model, count]) => ({ model, count }));
}

interface ShortAt {
  readonly question: StockQuestion;
  /** Those of the plan, retired ones included. */
  readonly models: readonly Model[];
  /** Numbers of those that may be chosen. */
  readonly offered: readonly string[];
  readonly outcome: PlanOutcome;
  readonly input: Pick<WorkOutInput, 'lines' | 'site'>;
  readonly names: ReadonlyMap<string, string>;
  readonly shortage: Shortage;
}

function shortModel(context: Context, at: ShortAt): ShortModel {
  const { shortage, question, names } = at;
  return {
    ...shortage,
    name: names.get(shortage.model) ?? '',
    waiters: waitersFor(context, { question, model: shortage.model }),
    standIns: standInsFor(at),
  };
}

interface Waiting {
  readonly question: StockQuestion;
  readonly model: string;
}

export function waitersFor(context: Context, waiting: Waiting): ShortModel['waiters'] {
  const { db } = context.database;
  return whoCouldWait(waiting).map((waiter) => ({ ...waiter, customer: customerOfBooking(db, waiter.number) }));
}

/** Of the same role, free on the dates, and sound on every line that uses the missing one; those with most pieces free first. */
function standInsFor({ question, models, offered, outcome, input, names, shortage }: ShortAt): ShortModel['standIns'] {
  const role = models.find(({ number }) => number === shortage.model)?.role;
  const free = freeCount(question);
  const used = new Set(
    outcome.lines
      .filter(({ parts }) =>
        parts.some(({ assembly }) =>
          JSON.stringify(outcome.assemblies[assembly]?.parts ?? {}).includes(`"${shortage.model}"`),
        ),
      )
      .map(({ tag }) => tag),
  );
  if (used.size > LINES_CHECKED) return [];
  const lines = input.lines.filter(({ tag }) => used.has(tag));
  return models
    .filter((model) => model.role === role && model.number !== shortage.model && !model.madeToOrder)
    .filter(({ number }) => offered.includes(number) && (free.get(number) ?? 0) >= shortage.missing)
    .toSorted((a, b) => (free.get(b.number) ?? 0) - (free.get(a.number) ?? 0) || (a.number < b.number ? -1 : 1))
    .slice(0, STAND_INS_TRIED)
    .filter(({ number }) => {
      const asked = { lines, site: input.site, models, gone: shortage.model, standIn: number };
      const ownLines = outcome.lines.filter(({ tag }) => used.has(tag));
      return tryStandIn({ ...asked, outcome: { lines: ownLines, assemblies: outcome.assemblies } }).ok;
    })
    .map(({ number }) => ({ model: number, name: names.get(number) ?? '', free: free.get(number) ?? 0 }));
}

/** A waiter as one sentence, for where there is room for no more. */
export function tellWaiter({ number, customer, frees, couldStartOn }: ShortModel['waiters'][number]): string {
  const whose = customer === '' ? '' : ` of ${customer}`;
  return `Booking ${number}${whose} would free ${frees} if it began on ${couldStartOn} instead.`;
}
