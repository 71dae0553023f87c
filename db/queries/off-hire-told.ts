/*
 * Reads the off-hire notices of a booking with how many units each names.
 * Invariant: reads only.
 * Not here: writing them (booking-history.ts).
 * Read next: ../schema/off-hire-notice.ts.
 */
import { asc, eq, sql } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { offHireNotice } from '../schema/off-hire-notice.ts';
import { offHireUnit } from '../schema/off-hire-unit.ts';

export interface NoticeTold {
  readonly number: string;
  readonly noticedAt: string;
  readonly saidBy: string;
  readonly units: number;
}

export function noticesOfBooking(db: DbOrTx, bookingId: number): readonly NoticeTold[] {
  return db
    .select({
      number: offHireNotice.number,
      noticedAt: offHireNotice.noticed_at,
      saidBy: offHireNotice.said_by,
      units: sql<number>`count(${offHireUnit.booking_unit_id})`,
    })
    .from(offHireNotice)
    .leftJoin(offHireUnit, eq(offHireUnit.notice_id, offHireNotice.id))
    .where(eq(offHireNotice.booking_id, bookingId))
    .groupBy(offHireNotice.id)
    .orderBy(asc(offHireNotice.id))
    .all();
}
