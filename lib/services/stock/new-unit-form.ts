/*
 * What the form for a new unit offers: the models whose pieces have serial numbers, the depots and their bays.
 * Invariant: reads only; only those who may add a unit get it.
 * Not here: adding it (add-unit.ts).
 * Read next: add-unit.ts.
 */
import { listBays } from '#db/queries/stock.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { houseFacts, houseModels } from '#lib/services/house/house-facts.ts';

export interface NewUnitForm {
  readonly models: readonly { readonly number: string; readonly name: string }[];
  readonly depots: readonly { readonly code: string; readonly name: string }[];
  readonly bays: readonly { readonly depot: string; readonly code: string }[];
}

export function newUnitForm(context: Context): Result<NewUnitForm> {
  const allowed = authorise(context, 'change stock');
  if (!allowed.ok) return allowed;
  return ok({
    models: houseModels(context)
      .filter((model) => !model.counted && !model.madeToOrder)
      .map(({ number, name }) => ({ number, name })),
    depots: houseFacts(context).depots.map(({ code, name }) => ({ code, name })),
    bays: listBays(context.database.db).map(({ depot, code }) => ({ depot, code })),
  });
}
