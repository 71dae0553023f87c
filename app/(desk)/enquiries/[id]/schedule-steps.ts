import { type Sent, send } from '#app/_lib/send.client.tsx';
import type { NewLine } from '#lib/services/change-lines.ts';
import type { CellEdit, CellsEdited } from '#lib/services/edit-cells.ts';
import type { LineView } from '#lib/services/line-view.ts';

/** One change of the schedule; its answer says how to take it back. */
export type Step =
  | { readonly kind: 'cells'; readonly edits: readonly CellEdit[] }
  /** `was` holds the ids that the lines had before they were removed. */
  | { readonly kind: 'add'; readonly lines: readonly NewLine[]; readonly was: readonly number[] }
  | { readonly kind: 'remove'; readonly lineIds: readonly number[] };

export interface StepDone {
  readonly back: Step;
  readonly changed: readonly LineView[];
  /** Lines came or went: what is loaded must be loaded again. */
  readonly moved: boolean;
  /** Old and new ids of lines that were brought back. */
  readonly renamed: ReadonlyMap<number, number>;
}

const SAME: ReadonlyMap<number, number> = new Map();

/** Sends one step to the house. */
export async function takeStep(path: string, step: Step): Promise<Sent<StepDone>> {
  if (step.kind === 'cells') {
    const sent = await send<CellsEdited>({ method: 'PATCH', path, body: { edits: step.edits } });
    if (!sent.ok) return sent;
    const back: Step = { kind: 'cells', edits: sent.value.undo };
    return { ok: true, value: { back, changed: sent.value.lines, moved: false, renamed: SAME } };
  }
  if (step.kind === 'add') {
    const sent = await send<{ readonly lineIds: readonly number[] }>({
      method: 'POST',
      path,
      body: { lines: step.lines },
    });
    if (!sent.ok) return sent;
    const { lineIds } = sent.value;
    const renamed = new Map(step.was.flatMap((old, at) => pair(old, lineIds[at])));
    return { ok: true, value: { back: { kind: 'remove', lineIds }, changed: [], moved: true, renamed } };
  }
  const sent = await send<{ readonly removed: readonly NewLine[] }>({
    method: 'DELETE',
    path,
    body: { lineIds: step.lineIds },
  });
  if (!sent.ok) return sent;
  const back: Step = { kind: 'add', lines: sent.value.removed, was: step.lineIds };
  return { ok: true, value: { back, changed: [], moved: true, renamed: SAME } };
}

function pair(old: number, now: number | undefined): readonly (readonly [number, number])[] {
  return now === undefined ? [] : [[old, now]];
}

/** The same step with the ids that lines have now. */
export function renameLines(step: Step, renamed: ReadonlyMap<number, number>): Step {
  if (renamed.size === 0) return step;
  if (step.kind === 'cells') {
    return {
      ...step,
      edits: step.edits.map((edit) => ({ ...edit, lineId: renamed.get(edit.lineId) ?? edit.lineId })),
    };
  }
  if (step.kind === 'remove') return { ...step, lineIds: step.lineIds.map((id) => renamed.get(id) ?? id) };
  return { ...step, was: step.was.map((id) => renamed.get(id) ?? id) };
}
