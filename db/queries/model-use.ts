/*
 * Which open enquiries have a model in the kits of their newest plan.
 * Invariant: reads only; the plan is searched inside the database, so that long ones are not carried out of it.
 * Not here: reading a plan (quotes.ts).
 * Read next: quotes.ts.
 */
import { sql } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';

export interface ModelUse {
  readonly id: number;
  readonly number: string;
  readonly title: string;
  /** Pieces in the first plan’s kits. */
  readonly pieces: number;
}

export function enquiriesWithModel(db: DbOrTx, modelNumber: string): readonly ModelUse[] {
  return db.all<ModelUse>(sql`
    SELECT enquiry.id, enquiry.number, enquiry.title,
      (SELECT sum(json_extract(need.value, '$.count'))
         FROM json_each(plan.result_json, '$.plans[0].kits') AS kit, json_each(kit.value, '$.items') AS need
        WHERE json_extract(need.value, '$.item') = ${modelNumber}) AS pieces
    FROM enquiry
    JOIN plan ON plan.id = (SELECT max(newest.id) FROM plan AS newest WHERE newest.enquiry_id = enquiry.id)
    WHERE enquiry.state NOT IN ('accepted', 'declined', 'lapsed')
      AND instr(plan.result_json, ${`"item":"${modelNumber}"`}) > 0
      AND pieces > 0
    ORDER BY enquiry.number`);
}
