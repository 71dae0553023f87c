/*
 * Keeps what was read from the lines of schedules, line by line, as long as a line says the same.
 * Invariant: a line is read anew when its version, its site or what visits know of it has changed; nothing else is trusted.
 * Not here: filters and order (order-lines.ts).
 * Read next: schedule-record.ts, ../lines/line-view.ts.
 */
import type { OpenDatabase } from '#db/client.ts';
import { findLines, type LineRow, lineStamps, listLines } from '#db/queries/schedule.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Cells, Column } from '#lib/intake/columns.ts';
import { readLine } from '#lib/intake/read-line.ts';
import type { IntakeProblem } from '#lib/intake/take-rows.ts';
import type { Context } from '#lib/services/context.ts';

/** A line as it was read from its cells. */
export interface ReadRow {
  readonly row: LineRow;
  readonly cells: Cells;
  readonly measured: readonly Column[];
  readonly listed: ScheduleLine;
  readonly problems: readonly IntakeProblem[];
}

interface Kept {
  version: number;
  order: readonly ReadRow[];
  byId: ReadonlyMap<number, ReadRow>;
}

declare global {
  var kitwrightSchedules: WeakMap<OpenDatabase['raw'], Map<number, Kept>> | undefined;
}

/** Schedules kept at once, the longest unused goes first. */
const SCHEDULES_KEPT = 8;

/** Above so many changed lines the whole schedule is read at once. */
const READ_SINGLY = 400;

/** All lines of an enquiry in the order of the list; only those that changed since are read again. */
export function keptSchedule(
  context: Context,
  enquiry: { readonly id: number; readonly version: number },
): readonly ReadRow[] {
  const kept = schedulesOf(context);
  const before = kept.get(enquiry.id);
  kept.delete(enquiry.id);
  const now = before?.version === enquiry.version ? before : refreshed(context, enquiry, before);
  kept.set(enquiry.id, now);
  for (const id of kept.keys()) {
    if (kept.size <= SCHEDULES_KEPT) break;
    kept.delete(id);
  }
  return now.order;
}

/** Lines read before others get their turn. */
const READ_AT_ONCE = 200;

/** The same; where very many lines changed they are read part by part, and the server answers others in between. */
export async function freshSchedule(
  context: Context,
  enquiry: { readonly id: number; readonly version: number },
): Promise<readonly ReadRow[]> {
  const before = schedulesOf(context).get(enquiry.id);
  if (before?.version === enquiry.version) return keptSchedule(context, enquiry);
  const { db } = context.database;
  const missing = lineStamps(db, enquiry.id)
    .filter(({ id, version }) => before?.byId.get(id)?.row.version !== version)
    .map(({ id }) => id);
  if (missing.length <= READ_SINGLY) return keptSchedule(context, enquiry);
  const byId = new Map(before?.byId);
  for (let at = 0; at < missing.length; at += READ_AT_ONCE) {
    const lineIds = missing.slice(at, at + READ_AT_ONCE);
    for (const row of findLines(db, { enquiryId: enquiry.id, lineIds })) byId.set(row.id, readRow(row));
    await new Promise((resolve) => setImmediate(resolve));
  }
  // Of no version yet: what changed meanwhile is told by its stamp and read again below.
  schedulesOf(context).set(enquiry.id, { version: NO_VERSION, order: [], byId });
  return keptSchedule(context, enquiry);
}

const NO_VERSION = -1;

function refreshed(
  context: Context,
  enquiry: { readonly id: number; readonly version: number },
  before: Kept | undefined,
): Kept {
  const { db } = context.database;
  const stamps = lineStamps(db, enquiry.id);
  const missing = stamps.filter(({ id, version }) => before?.byId.get(id)?.row.version !== version);
  const rows =
    missing.length > READ_SINGLY
      ? listLines(db, enquiry.id)
      : findLines(db, { enquiryId: enquiry.id, lineIds: missing.map(({ id }) => id) });
  const fresh = new Map(rows.map((row) => [row.id, row]));
  const order = stamps.flatMap(({ id, version, position }) => {
    const old = before?.byId.get(id);
    if (old && old.row.version === version) {
      return [old.row.position === position ? old : { ...old, row: { ...old.row, position } }];
    }
    const row = fresh.get(id);
    return row ? [readRow(row)] : [];
  });
  return { version: enquiry.version, order, byId: new Map(order.map((one) => [one.row.id, one])) };
}

export function readRow(row: LineRow): ReadRow {
  const cells = JSON.parse(row.cells_json) as Cells;
  const measured = JSON.parse(row.measured_json) as Column[];
  const { line, problems } = readLine({ row: row.row, cells, measured });
  return { row, cells, measured, listed: line, problems };
}

function schedulesOf({ database }: Context): Map<number, Kept> {
  globalThis.kitwrightSchedules ??= new WeakMap();
  const kept = globalThis.kitwrightSchedules.get(database.raw) ?? new Map<number, Kept>();
  globalThis.kitwrightSchedules.set(database.raw, kept);
  return kept;
}
