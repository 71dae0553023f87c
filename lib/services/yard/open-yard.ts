/*
 * The yard's day: what leaves today, what comes back, and what leaves within the week.
 * Invariant: reads only; what should have left or come back before today stands first and says so.
 * Not here: picking, loading and checking in.
 * Read next: ../../../db/queries/yard-today.ts.
 */
import { type Movement, movements } from '#db/queries/yard-today.ts';
import { addDays, type IsoDate } from '#lib/kernel/date-range.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '../authorise.ts';
import { type Context, today } from '../context.ts';

export interface YardMovement extends Movement {
  /** Its day is past. */
  readonly late: boolean;
}

export interface YardView {
  readonly today: IsoDate;
  readonly outs: readonly YardMovement[];
  readonly backs: readonly YardMovement[];
  readonly ahead: readonly YardMovement[];
}

/** Before it is loaded, in the order of the work. */
const STILL_HERE = ['held', 'confirmed', 'allocated', 'picked'];
const AWAY = ['out'];
/** What leaves within a week is made ready now. House practice, no source. */
const DAYS_AHEAD = 7;

export function openYard(context: Context): Result<YardView> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  const db = context.database.db;
  const day = today(context);
  const leaving = movements(db, { states: STILL_HERE, by: 'start', until: addDays(day, DAYS_AHEAD) });
  return ok({
    today: day,
    outs: leaving.filter(({ startsOn }) => startsOn <= day).map((row) => ({ ...row, late: row.startsOn < day })),
    ahead: leaving.filter(({ startsOn }) => startsOn > day).map((row) => ({ ...row, late: false })),
    backs: movements(db, { states: AWAY, by: 'end', until: addDays(day, 1) }).map((row) => ({
      ...row,
      late: row.endsBefore < addDays(day, 1),
    })),
  });
}
