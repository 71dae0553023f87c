import { type Sent, send } from '#app/_lib/send.client.tsx';
import type { LineView } from '#lib/services/lines/line-view.ts';
import type { BulkDone, BulkEdit } from '#lib/services/schedule/bulk-edit.ts';
import type { Clash } from '#lib/services/schedule/change-answer.ts';
import type { LinesAdded, LinesRemoved, NewLine } from '#lib/services/schedule/change-lines.ts';
import type { CellEdit, CellsEdited } from '#lib/services/schedule/edit-cells.ts';
import type { ChangeUndone } from '#lib/services/schedule/undo-change.ts';

/** One thing to do to the schedule; `group` ties those that are taken back together. */
export type Job = { readonly key: string; readonly group: string } & Work;

export type Work =
  | { readonly kind: 'cells'; readonly edits: readonly CellEdit[] }
  | { readonly kind: 'add'; readonly lines: readonly NewLine[]; readonly after?: number | undefined }
  | { readonly kind: 'remove'; readonly lineIds: readonly number[] }
  | { readonly kind: 'move'; readonly lineIds: readonly number[]; readonly before: number }
  | { readonly kind: 'bulk'; readonly lineIds?: readonly number[] | undefined; readonly edit: BulkEdit }
  | { readonly kind: 'undo'; readonly changes: readonly number[]; readonly way: 'undo' | 'redo' | 'any' };

export interface JobDone {
  /** Numbers of the changes that were made, the first first. */
  readonly changes: readonly number[];
  readonly lines: readonly LineView[];
  readonly clashes: readonly Clash[];
  /** Lines came, went or moved. */
  readonly moved: boolean;
  /** Cells may have changed that the answer does not hold. */
  readonly wide: boolean;
  readonly told: string;
}

const NOTHING: JobDone = { changes: [], lines: [], clashes: [], moved: false, wide: false, told: '' };

/** Sends one job to the house. */
export async function doJob(path: string, job: Job): Promise<Sent<JobDone>> {
  switch (job.kind) {
    case 'cells':
      return done(
        await send<CellsEdited>({ method: 'PATCH', path: `${path}/lines`, body: { edits: job.edits } }),
        (value) => ({
          ...{ ...NOTHING, changes: made(value.change), lines: value.lines, clashes: value.clashes },
          wide: new Set(job.edits.map(({ lineId }) => lineId)).size > value.lines.length,
        }),
      );
    case 'add':
      return done(
        await send<LinesAdded>({ method: 'POST', path: `${path}/lines`, body: { lines: job.lines, after: job.after } }),
        ({ change }) => ({ ...NOTHING, changes: made(change), moved: true }),
      );
    case 'remove':
      return done(
        await send<LinesRemoved>({ method: 'DELETE', path: `${path}/lines`, body: { lineIds: job.lineIds } }),
        ({ change, removed }) => ({
          ...NOTHING,
          changes: made(change),
          moved: true,
          told: `${removed.length} removed.`,
        }),
      );
    case 'move':
      return done(
        await send<{ readonly change: number }>({
          ...{ method: 'POST', path: `${path}/lines/move` },
          body: { lineIds: job.lineIds, before: job.before },
        }),
        ({ change }) => ({ ...NOTHING, changes: made(change), moved: true }),
      );
    case 'bulk':
      return done(
        await send<BulkDone>({
          ...{ method: 'POST', path: `${path}/lines/bulk` },
          body: { lineIds: job.lineIds, edit: job.edit },
        }),
        ({ change, lines, clashes, cells }) => ({
          ...{ ...NOTHING, changes: made(change), lines, clashes, wide: true },
          told: cells === 1 ? '1 cell written.' : `${cells} cells written.`,
        }),
      );
    case 'undo':
      return takeBack(path, job.changes);
  }
}

async function takeBack(path: string, changes: readonly number[]): Promise<Sent<JobDone>> {
  let all = NOTHING;
  for (const change of changes.toReversed()) {
    const sent = await send<ChangeUndone>({ method: 'POST', path: `${path}/changes/${change}/undo` });
    if (!sent.ok) return all.changes.length === 0 ? sent : { ok: true, value: { ...all, told: sent.sentence } };
    const { value } = sent;
    all = {
      ...all,
      changes: [...all.changes, ...made(value.change)],
      lines: [...all.lines, ...value.lines],
      clashes: [...all.clashes, ...value.clashes],
      moved: all.moved || value.moved,
      wide: true,
    };
  }
  return { ok: true, value: all };
}

function made(change: number): readonly number[] {
  return change === 0 ? [] : [change];
}

function done<Value>(sent: Sent<Value>, answer: (value: Value) => JobDone): Sent<JobDone> {
  return sent.ok ? { ok: true, value: answer(sent.value) } : sent;
}
