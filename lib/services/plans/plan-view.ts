/*
 * A worked-out enquiry as screens show it: plans side by side, kits with names, lines with their assemblies, price.
 * Invariant: a view of what was worked out; nothing is decided here but the price of the shown plan.
 * Not here: working out (../../planning) and drawing papers (draft-paper.ts).
 * Read next: ../quotes/price-outcome.ts.
 */

import { type PlanFigures, planFiguresBefore } from '#db/queries/quotes.ts';
import { NO_CHOICES } from '#lib/contracts/price-choices.ts';
import { partNumbers } from '#lib/documents/drawings/part-numbers.ts';
import type { CrewDaysInput } from '#lib/documents/papers/paper-inputs.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { ItemNeed, Preference } from '#lib/equipment/choices.ts';
import type { Role } from '#lib/equipment/model.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import type { PlanOutcome, WorkedOut } from '#lib/planning/worked-out.ts';
import type { PricedPlan } from '#lib/pricing/priced-plan.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { houseFacts, knownModels } from '#lib/services/house/house-facts.ts';
import { offerOf, type RepairOffer } from '#lib/services/lines/repair-offers.ts';
import { OWN_SLOT, readOption } from '#lib/services/quotes/option-record.ts';
import { priceOutcome } from '#lib/services/quotes/price-outcome.ts';
import { choicesTurnedOver, quotedExchange } from '#lib/services/quotes/quote-currency.ts';
import { type Coverage, coverageOf } from './coverage-view.ts';
import { crewDaysOf } from './crew-days-of.ts';
import { type DepotsView, depotsOf } from './depots-view.ts';
import { fittingNothing } from './fitting-nothing.ts';
import { type PlanState, planState, prepareInput, readPlan } from './plan-enquiry.ts';

export interface KitItemView {
  readonly number: string;
  readonly name: string;
  readonly role: Role;
  readonly count: number;
  /** Tags it is needed for (at most twenty) and how many lines in all. */
  readonly neededFor: readonly string[];
  readonly neededForCount: number;
}

export interface PlanSummary {
  readonly preference: Preference;
  readonly served: number;
  readonly asked: number;
  readonly cost_minor: number;
  readonly price_minor: number;
  readonly hours: number;
  readonly mass_kg: number;
  readonly pieces: number;
  readonly gap: number;
  readonly proof: string;
}

export type PlanBefore = Pick<PlanSummary, 'served' | 'cost_minor' | 'hours' | 'mass_kg' | 'pieces'> & {
  readonly preference: string;
};

export interface PlannedLineView {
  readonly tag: string;
  readonly asked: number;
  readonly served: number;
  readonly crews: readonly number[];
  readonly assembly: Assembly | null;
}

export interface PlanView {
  readonly state: PlanState;
  /** In which plans are compared. */
  readonly currency: string;
  /** In which the customer is quoted. */
  readonly priceCurrency: string;
  readonly shown: Preference;
  readonly summaries: readonly PlanSummary[];
  /** The same of the plan that this one followed, by preference; empty where it is the first. */
  readonly before: readonly PlanBefore[];
  /** Valves of the schedule that no equipment fits; a plan's own count leaves them out. */
  readonly fittingNothing: number;
  readonly kits: readonly {
    readonly crew: number;
    readonly hours: number;
    readonly mass_kg: number;
    readonly pieces: number;
    /** What the crew should have besides and goes without. */
    readonly lacking?: readonly ItemNeed[];
    readonly items: readonly KitItemView[];
  }[];
  readonly coverage: Coverage;
  readonly depots: DepotsView;
  readonly crewDays: readonly CrewDaysInput[];
  readonly lines: readonly PlannedLineView[];
  readonly unserved: readonly (Omit<WorkedOut['unserved'][number], 'repairs'> & {
    readonly repairs: readonly RepairOffer[];
  })[];
  readonly shortage: WorkedOut['shortage'];
  readonly price: PricedPlan | null;
  readonly timings: WorkedOut['timings'];
  readonly effort: WorkedOut['effort'];
  readonly fleetEffort: Readonly<Record<string, number>>;
}

export function readPlanView(
  context: Context,
  input: { readonly enquiryId: number; readonly preference?: Preference },
): Result<PlanView | null> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const state = planState(context, input.enquiryId);
  if (!state.ok) return state;
  const worked = readPlan(context, input.enquiryId);
  const prepared = prepareInput(context, input.enquiryId);
  if (!prepared.ok) return prepared;
  if (!worked) return ok(null);
  const shown = input.preference ?? prepared.value.enquiry.preference;
  const outcome = worked.plans.find((plan) => plan.preference === shown) ?? worked.plans[0];
  if (!outcome) return ok(null);
  const { site } = prepared.value.input;
  const option = readOption(context, { enquiryId: input.enquiryId, slot: OWN_SLOT });
  const house = houseFacts(context, site.startsOn);
  const exchange = quotedExchange(house, prepared.value.enquiry.customer.currency);
  const quoted = exchange?.to ?? house.pricing.currency;
  const choices = choicesTurnedOver(option?.choices ?? NO_CHOICES, { house, to: quoted });
  if (!choices.ok) return choices;
  // An older plan may hold models that were retired since.
  const models = knownModels(context, site.startsOn);
  const price = (plan: PlanOutcome): PricedPlan =>
    priceOutcome({
      house,
      models,
      site,
      outcome: plan,
      agreed: prepared.value.enquiry.customer.terms,
      choices: choices.value,
      exchange,
    });
  const beyond = fittingNothing({ worked, lines: prepared.value.input.lines });
  return ok({
    state: state.value,
    currency: house.pricing.currency,
    priceCurrency: quoted,
    shown: outcome.preference,
    summaries: worked.plans.map((plan) => ({ ...summaryOf(plan, price(plan)), asked: plan.fleet.asked + beyond })),
    before: planFiguresBefore(context.database.db, { enquiryId: input.enquiryId, slot: OWN_SLOT }).map(beforeOf),
    fittingNothing: beyond,
    kits: outcome.kits.map((kit) => ({
      ...kit,
      hours: kit.time_s / 3600,
      items: itemViews(context, { outcome, crew: kit.crew, items: kit.items }),
    })),
    coverage: coverageOf(outcome),
    depots: depotsOf(context, { enquiryId: input.enquiryId, site, kits: outcome.kits }),
    crewDays: crewDaysOf({ outcome, models, house, site }),
    lines: outcome.lines.map((line) => ({
      tag: line.tag,
      asked: line.asked,
      served: line.served,
      crews: line.parts.map((part) => part.crew),
      assembly: outcome.assemblies[line.parts[0]?.assembly ?? ''] ?? null,
    })),
    unserved: worked.unserved.map((line) => ({ ...line, repairs: line.repairs.map(offerOf) })),
    shortage: worked.shortage ?? null,
    price: price(outcome),
    timings: worked.timings,
    effort: worked.effort,
    fleetEffort: outcome.fleet.effort,
  });
}

function summaryOf(plan: PlanOutcome, price: PricedPlan): Omit<PlanSummary, 'asked'> {
  const sum = (pick: (kit: PlanOutcome['kits'][number]) => number): number =>
    plan.kits.reduce((total, kit) => total + pick(kit), 0);
  return {
    preference: plan.preference,
    served: plan.fleet.served,
    cost_minor: plan.fleet.cost_minor,
    price_minor: price.gross_minor,
    hours: sum((kit) => kit.time_s) / 3600,
    mass_kg: sum((kit) => kit.mass_kg),
    pieces: sum((kit) => kit.pieces),
    gap: plan.fleet.gap,
    proof: plan.fleet.proof,
  };
}

function beforeOf({ time_s, ...figures }: PlanFigures): PlanBefore {
  return { ...figures, hours: time_s / 3600 };
}

const TAGS_SHOWN = 20;

interface ItemsInput {
  readonly outcome: PlanOutcome;
  readonly crew: number;
  readonly items: PlanOutcome['kits'][number]['items'];
}

function itemViews(context: Context, { outcome, crew, items }: ItemsInput): readonly KitItemView[] {
  const models = new Map(knownModels(context).map((model) => [model.number, model]));
  const users = new Map<string, string[]>();
  for (const line of outcome.lines) {
    for (const part of line.parts) {
      if (part.crew !== crew) continue;
      const assembly = outcome.assemblies[part.assembly];
      if (!assembly) continue;
      for (const number of partNumbers(assembly)) users.set(number, [...(users.get(number) ?? []), line.tag]);
    }
  }
  return items.map(({ item, count }) => {
    const tags = users.get(item) ?? [];
    const model = models.get(item);
    return {
      number: item,
      name: model?.name ?? item,
      role: model?.role ?? 'accessory',
      count,
      neededFor: tags.slice(0, TAGS_SHOWN),
      neededForCount: tags.length,
    };
  });
}
