/*
 * Writes a change of equipment, rates or house into its history and into the log of all actions, inside the transaction that makes it.
 * Invariant: whoever changes such a thing calls this once; before and after are whole, so that a change can be taken back.
 * Not here: the change itself.
 * Read next: equipment-history.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { addAuditEntry } from '#db/queries/audit.ts';
import { addChange } from '#db/queries/changes.ts';
import { type Context, timestamp } from './context.ts';

interface Change {
  /** `model D-112`, `rates D-112`, `house facts`, `house prices`, `house rules`. */
  readonly subject: string;
  readonly version: number;
  readonly action: string;
  readonly before: unknown;
  readonly after: unknown;
}

export function keepChange(tx: DbOrTx, context: Context, change: Change): void {
  const at = timestamp(context);
  const { subject, version, action, before, after } = change;
  const asText = (value: unknown): string | null => (value === null ? null : JSON.stringify(value));
  addChange(tx, {
    subject,
    version,
    at,
    who_id: context.actor.id,
    who: context.actor.name,
    action,
    before_json: asText(before),
    after_json: asText(after),
  });
  addAuditEntry(tx, { at, who: context.actor, action, subject, detail_json: JSON.stringify({ version }) });
}
