/*
 * Writes one entry of the log: who did what to which subject, and when.
 * Invariant: it is written in the transaction of the change itself.
 * Not here: reading the log (db/queries/audit.ts).
 * Read next: context.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { addAuditEntry } from '#db/queries/audit.ts';
import { type Context, timestamp } from './context.ts';

interface Deed {
  readonly action: string;
  /** Kind and id, such as `customer 7`. */
  readonly subject: string;
  readonly detail?: unknown;
}

export function logChange(tx: DbOrTx, { context, deed }: { readonly context: Context; readonly deed: Deed }): void {
  addAuditEntry(tx, {
    at: timestamp(context),
    who: context.actor,
    action: deed.action,
    subject: deed.subject,
    detail_json: JSON.stringify(deed.detail ?? {}),
  });
}
