/*
 * A month of models by days, and of one model's units by days: what is free for a hire of some days, and what holds the rest.
 * Invariant: reads only; drawn from the question that plans and acceptances ask.
 * Not here: deciding what is free (lib/stock/timeline.ts).
 * Read next: ../../stock/timeline.ts.
 */
import { engagementsOfModels, type UnitEngagement } from '#db/queries/unit-bookings.ts';
import { type Model, ROLES, type Role } from '#lib/equipment/model.ts';
import { addDays, type IsoDate, isIsoDate, rangeOfDays } from '#lib/kernel/date-range.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import { houseFacts, knownModels, stockQuestion } from '#lib/services/house/house-facts.ts';
import { type ModelTimeline, modelTimelines, type UnitTimeline, unitTimelines } from '#lib/stock/timeline.ts';

/** A month at a glance, in whole weeks and what is left of the last. */
export const SHOWN_DAYS = 31;
export const HIRE_LENGTHS = [1, 3, 7, 14, 28] as const;

export interface AvailabilityAsked {
  /** First day shown; empty begins with the week that today is in. */
  readonly from: IsoDate | '';
  readonly role: Role;
  /** Empty shows all depots together. */
  readonly depot: string;
  /** Length of the hire that is asked about. */
  readonly hireDays: number;
}

export interface AvailabilityView {
  readonly asked: AvailabilityAsked & { readonly from: IsoDate };
  readonly today: IsoDate;
  readonly rows: readonly (ModelTimeline & { readonly name: string })[];
  readonly roles: readonly Role[];
  readonly depots: readonly { readonly code: string; readonly name: string }[];
}

export function openAvailability(context: Context, asked: AvailabilityAsked): Result<AvailabilityView> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  const shown = { ...asked, ...placeOf(context, asked) };
  const models = new Map(
    knownModels(context)
      .filter(({ role, madeToOrder }) => role === shown.role && !madeToOrder)
      .map((model) => [model.number, model]),
  );
  const rows = modelTimelines({ ...shown, ...questionOf(context, { from: shown.from, models }) });
  return ok({
    asked: shown,
    today: today(context),
    rows: rows.map((row) => ({ ...row, name: models.get(row.model)?.name ?? '' })),
    roles: ROLES,
    depots: houseFacts(context).depots.map(({ code, name }) => ({ code, name })),
  });
}

export interface UnitAvailabilityView {
  readonly asked: Omit<AvailabilityAsked, 'role'> & { readonly from: IsoDate };
  readonly today: IsoDate;
  readonly model: { readonly number: string; readonly name: string; readonly role: Role };
  readonly rows: readonly UnitTimeline[];
  readonly places: Readonly<Record<string, string>>;
  readonly engagements: readonly UnitEngagement[];
}

export interface UnitAvailabilityAsked extends Omit<AvailabilityAsked, 'role'> {
  readonly model: string;
}

export function openUnitAvailability(context: Context, asked: UnitAvailabilityAsked): Result<UnitAvailabilityView> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  const model = knownModels(context).find(({ number }) => number === asked.model);
  if (!model)
    return failed({
      code: 'no-such-model',
      sentence: `There is no model ${asked.model.slice(0, 20)}; look it up in the list of equipment.`,
    });
  const shown = { ...asked, ...placeOf(context, asked) };
  const question = questionOf(context, { from: shown.from, models: new Map([[model.number, model]]) });
  return ok({
    asked: shown,
    today: today(context),
    model: { number: model.number, name: model.name, role: model.role },
    rows: unitTimelines({ ...shown, ...question }),
    places: Object.fromEntries(question.stock.units.map(({ serial, depot, bay }) => [serial, `${depot} ${bay}`])),
    engagements: engagementsOfModels(context.database.db, { models: [model.number], from: shown.from }).filter(
      ({ startsOn }) => startsOn < addDays(shown.from, SHOWN_DAYS),
    ),
  });
}

function placeOf(context: Context, asked: Omit<AvailabilityAsked, 'role'>) {
  const { depots } = houseFacts(context);
  return {
    from: isIsoDate(asked.from) ? asked.from : mondayOf(today(context)),
    depot: depots.some(({ code }) => code === asked.depot) ? asked.depot : '',
    hireDays: HIRE_LENGTHS.find((length) => length === asked.hireDays) ?? 1,
  };
}

interface About {
  readonly from: IsoDate;
  readonly models: ReadonlyMap<string, Model>;
}

/** The house's own question, cut down to the models that are shown. */
function questionOf(context: Context, { from, models }: About) {
  const days = rangeOfDays(from, SHOWN_DAYS);
  const { window: _, ...stock } = stockQuestion(context, { window: days });
  const units = stock.units.filter(({ model }) => models.has(model));
  const serials = new Set(units.map(({ serial }) => serial));
  return {
    days,
    stock: {
      ...stock,
      units,
      bookings: stock.bookings.filter(({ serial }) => serials.has(serial)),
      counted: {
        shelves: (stock.counted?.shelves ?? []).filter(({ model }) => models.has(model)),
        holds: (stock.counted?.holds ?? []).filter(({ model }) => models.has(model)),
      },
    },
  };
}

function mondayOf(day: IsoDate): IsoDate {
  const weekday = new Date(`${day}T00:00:00Z`).getUTCDay();
  return addDays(day, -((weekday + 6) % 7));
}
