/*
 * The catalogue as a table shows it: models with mass, rates, what is free today, and their facts.
 * Invariant: reads only.
 * Not here: changing models.
 * Read next: ../../contracts/equipment.ts.
 */
import { listModels } from '#db/queries/equipment.ts';
import { modelToJson } from '#lib/contracts/equipment.ts';
import type { Role } from '#lib/equipment/model.ts';
import { rangeOfDays } from '#lib/kernel/date-range.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import { freePieces, houseFacts, knownModels } from '#lib/services/house/house-facts.ts';

export interface ModelView {
  readonly number: string;
  readonly name: string;
  readonly role: Role;
  readonly mass_kg: number;
  readonly day_minor: number;
  readonly week_minor: number;
  readonly four_weeks_minor: number;
  readonly currency: string;
  readonly madeToOrder: boolean;
  readonly free: number;
  readonly retired_on: string | null;
  /** Of a drive. */
  readonly source: string | null;
  /** As the catalogue holds them: the unit ends the name. */
  readonly facts: Readonly<Record<string, unknown>>;
}

/** The models that may be chosen, or those that were retired. */
export function listModelsView(context: Context, which: 'in use' | 'retired' = 'in use'): Result<readonly ModelView[]> {
  const allowed = authorise(context, 'read equipment');
  if (!allowed.ok) return allowed;
  const free = freePieces(context, { window: rangeOfDays(today(context), 1) });
  const { currency } = houseFacts(context).pricing;
  const retired = new Map(listModels(context.database.db).map(({ number, retired_on }) => [number, retired_on]));
  const shown = knownModels(context).filter(
    ({ number }) => ((retired.get(number) ?? null) === null) === (which === 'in use'),
  );
  return ok(
    shown.map((model) => ({
      number: model.number,
      name: model.name,
      role: model.role,
      mass_kg: model.mass,
      day_minor: model.rates.day_minor,
      week_minor: model.rates.week_minor,
      four_weeks_minor: model.rates.four_weeks_minor,
      currency,
      madeToOrder: model.madeToOrder,
      free: free[model.number] ?? 0,
      retired_on: retired.get(model.number) ?? null,
      source: model.role === 'drive' ? model.facts.power.kind : null,
      facts: factsOf(modelToJson(model)),
    })),
  );
}

function factsOf(json: unknown): ModelView['facts'] {
  const facts = json !== null && typeof json === 'object' && 'facts' in json ? json.facts : undefined;
  return facts !== null && typeof facts === 'object' ? { ...facts } : {};
}
