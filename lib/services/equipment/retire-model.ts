/*
 * Retires a model, brings it back, and takes back the last change of one.
 * Invariant: a retired model is no longer chosen, and stays wherever it was; what is taken back is itself a change that is kept.
 * Not here: changing facts (save-model.ts).
 * Read next: model-record.ts.
 */
import { changesOf } from '#db/queries/changes.ts';
import { findModel } from '#db/queries/equipment.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import {
  CHANGED_MEANWHILE,
  changeModelState,
  isSound,
  type ModelState,
  NO_SUCH_MODEL,
  stateOf,
} from './model-record.ts';

export interface ModelAt {
  readonly number: string;
  readonly version: number;
}

export function retireModel(context: Context, at: ModelAt): Result<ModelAt> {
  return step(context, at, (state) =>
    state.retired_on === null
      ? ok({ after: { ...state, retired_on: today(context) }, action: 'model retired' })
      : failed({ code: 'retired-already', sentence: `${at.number} was retired on ${state.retired_on} already.` }),
  );
}

export function bringBackModel(context: Context, at: ModelAt): Result<ModelAt> {
  return step(context, at, (state) =>
    state.retired_on === null
      ? failed({ code: 'not-retired', sentence: `${at.number} is not retired; it can be chosen as it is.` })
      : ok({ after: { ...state, retired_on: null }, action: 'model brought back' }),
  );
}

export function undoModelChange(context: Context, at: ModelAt): Result<ModelAt> {
  const [last] = changesOf(context.database.db, `model ${at.number}`);
  const before: ModelState | null = JSON.parse(last?.before_json ?? 'null');
  return step(context, at, () =>
    before === null || !isSound(before)
      ? failed({
          code: 'nothing-to-undo',
          sentence: `${at.number} has no change that can be taken back. A model that is not wanted is retired.`,
        })
      : ok({ after: before, action: 'change taken back' }),
  );
}

interface Step {
  readonly after: ModelState;
  readonly action: string;
}

function step(
  context: Context,
  ...[at, decide]: readonly [ModelAt, (state: ModelState) => Result<Step>]
): Result<ModelAt> {
  const allowed = authorise(context, 'change equipment');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction(
    (tx): Result<ModelAt> => {
      const row = findModel(tx, at.number);
      if (row === undefined) return NO_SUCH_MODEL(at.number);
      const decided = decide(stateOf(row));
      if (!decided.ok) return decided;
      const done = changeModelState(tx, context, { row, version: at.version, ...decided.value });
      return done ? ok({ number: at.number, version: at.version + 1 }) : failed(CHANGED_MEANWHILE);
    },
    { behavior: 'immediate' },
  );
}
