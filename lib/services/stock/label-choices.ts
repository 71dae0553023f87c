/*
 * What the form for labels offers.
 * Invariant: reads only.
 * Not here: the labels (print-labels.ts).
 * Read next: print-labels.ts.
 */
import { listBays } from '#db/queries/stock.ts';
import { LABELS_A_SHEET } from '#lib/documents/labels/label-sheet.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { houseFacts, houseModels } from '#lib/services/house/house-facts.ts';

export interface LabelChoices {
  readonly depots: readonly { readonly code: string; readonly name: string }[];
  readonly models: readonly { readonly number: string; readonly name: string }[];
  readonly bays: readonly string[];
  /** Labels of a sheet. */
  readonly places: number;
}

export function labelChoices(context: Context): Result<LabelChoices> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  return ok({
    depots: houseFacts(context).depots.map(({ code, name }) => ({ code, name })),
    models: houseModels(context)
      .filter(({ madeToOrder }) => !madeToOrder)
      .map(({ number, name }) => ({ number, name })),
    bays: [...new Set(listBays(context.database.db).map(({ code }) => code))].sort(),
    places: LABELS_A_SHEET,
  });
}
