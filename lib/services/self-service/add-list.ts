/*
 * A whole list of valves for an order: a file, or rows pasted from a sheet or a mail.
 * Invariant: the file is kept as it came for the Desk; rows that are no valves are told with their reasons.
 * Not here: one valve at a time (order-lines.ts); columns that were not understood (list-columns.ts).
 * Read next: ../schedule/receive-list.ts, ../schedule/take-list.ts.
 */
import { countLines } from '#db/queries/schedule.ts';
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { receiveList } from '#lib/services/schedule/receive-list.ts';
import { previewList, takeList } from '#lib/services/schedule/take-list.ts';
import { isUnderstood } from './list-columns.ts';
import { type LinkAsked, openToChange } from './open-link.ts';
import { roomFor } from './order-lines.ts';
import { changedDraft } from './order-record.ts';
import { takeTurn } from './self-throttle.ts';

export interface ListForOrder extends LinkAsked {
  readonly fileName: string;
  readonly bytes: Uint8Array;
}

/** Some columns were not understood: its sender looks at them first. */
export interface ListToConfirm {
  readonly kind: 'to confirm';
  readonly fileId: number;
}

export interface ListAdded {
  readonly kind: 'added';
  readonly lines: number;
  /** Rows that are no valves, and rows that could not be read, each with its reason. */
  readonly notTaken: readonly { readonly row: number; readonly reason: string }[];
}

const TOLD = 50;

export async function addList(context: Context, input: ListForOrder): Promise<Result<ListAdded | ListToConfirm>> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const opened = openToChange(context, input);
  if (!opened.ok) return opened;
  const turn = takeTurn(context, { turn: 'send a file', who: `link ${opened.value.link.id}` });
  if (!turn.ok) return turn;
  if (input.bytes.length > LIMITS.self_service_file_bytes)
    return failed({
      code: 'file-too-large',
      sentence: `A list may have at most ${LIMITS.self_service_file_bytes / 1024 / 1024} MB here; send a larger one to the house.`,
    });
  const { desk, order } = opened.value;
  const enquiryId = order.enquiry_id;
  const received = await receiveList(desk, { enquiryId, fileName: input.fileName, bytes: input.bytes });
  if (!received.ok) return received;
  const table = received.value.tables.toSorted((a, b) => b.rows - a.rows)[0];
  if (table === undefined) return failed({ code: 'list-empty', sentence: 'There is no table in that list.' });
  if (!isUnderstood(table)) return ok({ kind: 'to confirm', fileId: received.value.fileId });
  const choice = { enquiryId, fileId: received.value.fileId, table: table.name, mapping: table.mapping };
  const preview = await previewList(desk, choice);
  if (!preview.ok) return preview;
  const room = roomFor(countLines(context.database.db, enquiryId) + preview.value.lines.length);
  if (!room.ok) return room;
  const taken = await takeList(desk, { ...choice, existing: 'keep' });
  if (!taken.ok) return taken;
  changedDraft(context, opened.value);
  const { setAside, problems } = preview.value;
  const notTaken = [
    ...setAside.map(({ row, reason }) => ({ row, reason })),
    ...problems
      .filter(({ severity }) => severity === 'refused')
      .map(({ row, sentence, remedy }) => ({ row, reason: `${sentence} ${remedy}` })),
  ];
  return ok({ kind: 'added', lines: taken.value.lines, notTaken: notTaken.slice(0, TOLD) });
}
