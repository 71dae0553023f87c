/*
 * The catalogue as a table shows it: models with mass, rates, what is free today, and their facts.
 * Invariant: reads only.
 * Not here: changing models.
 * Read next: ../contracts/equipment.ts.
 */
import { modelToJson } from '#lib/contracts/equipment.ts';
import type { Role } from '#lib/equipment/model.ts';
import { rangeOfDays } from '#lib/kernel/date-range.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from './authorise.ts';
import { type Context, today } from './context.ts';
import { freePieces, houseFacts, houseModels } from './house-facts.ts';

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
  /** As the catalogue holds them: the unit ends the name. */
  readonly facts: Readonly<Record<string, unknown>>;
}

export function listModelsView(context: Context): Result<readonly ModelView[]> {
  const allowed = authorise(context, 'read equipment');
  if (!allowed.ok) return allowed;
  const free = freePieces(context, { window: rangeOfDays(today(context), 1) });
  const { currency } = houseFacts(context).pricing;
  return ok(
    houseModels(context).map((model) => ({
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
      facts: factsOf(modelToJson(model)),
    })),
  );
}

function factsOf(json: unknown): ModelView['facts'] {
  const facts = json !== null && typeof json === 'object' && 'facts' in json ? json.facts : undefined;
  return facts !== null && typeof facts === 'object' ? { ...facts } : {};
}
