/*
 * A model as it is stored and as its history keeps it, whole.
 * Invariant: what is written has passed the catalogue's schema; the number of a counted model is never written here, triggers add up its shelves.
 * Not here: deciding what may change (save-model.ts, retire-model.ts).
 * Read next: save-model.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { changeModel, insertModels, type ModelRow } from '#db/queries/equipment.ts';
import { type ModelJson, modelSchema } from '#lib/contracts/equipment.ts';
import { type Failed, failed, type Refused } from '#lib/kernel/result.ts';
import type { Context } from '#lib/services/context.ts';
import { keepChange } from '#lib/services/keep-change.ts';

export interface ModelState {
  readonly json: ModelJson;
  readonly retired_on: string | null;
}

export function stateOf(row: ModelRow): ModelState {
  return { json: jsonOf(row), retired_on: row.retired_on };
}

export function jsonOf(row: Pick<ModelRow, 'facts_json'>): ModelJson {
  return JSON.parse(row.facts_json);
}

export const CHANGED_MEANWHILE: Refused = {
  code: 'changed-meanwhile',
  sentence:
    'Somebody else changed it since you opened it. Open it again in another window, compare, and save once more.',
};

export const NO_SUCH_MODEL = (number: string): Failed<Refused> =>
  failed({ code: 'no-such-model', sentence: `There is no model ${number}; look it up in the list of equipment.` });

export function addModelState(tx: DbOrTx, context: Context, state: ModelState): void {
  insertModels(tx, [
    {
      number: state.json.number,
      role: state.json.role,
      name: state.json.name,
      facts_json: JSON.stringify(state.json),
      counted_stock: state.json.counted ? 0 : null,
      retired_on: state.retired_on,
    },
  ]);
  keepChange(tx, context, {
    subject: `model ${state.json.number}`,
    version: 1,
    action: 'model added',
    before: null,
    after: state,
  });
}

interface StateChange {
  readonly row: ModelRow;
  /** The version that the person saw. */
  readonly version: number;
  readonly after: ModelState;
  readonly action: string;
}

/** False where somebody changed it meanwhile. */
export function changeModelState(tx: DbOrTx, context: Context, { row, version, after, action }: StateChange): boolean {
  const done = changeModel(tx, {
    number: row.number,
    version,
    set: {
      name: after.json.name,
      facts_json: JSON.stringify(after.json),
      counted_stock: after.json.counted ? (row.counted_stock ?? 0) : null,
      retired_on: after.retired_on,
    },
  });
  if (done) {
    const subject = `model ${row.number}`;
    keepChange(tx, context, { subject, version: version + 1, action, before: stateOf(row), after });
  }
  return done;
}

/** A stored state that an older program wrote is held against today's schema before it comes back. */
export function isSound(state: ModelState): boolean {
  return modelSchema.safeParse(state.json).success;
}
