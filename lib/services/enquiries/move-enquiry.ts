/*
 * Takes an enquiry a step through its life, by hand or because something was done to it.
 * Invariant: every step is written with who, when and why; a step from a state that is no longer there is a conflict.
 * Not here: which steps there are (lib/enquiry/moves.ts).
 * Read next: change-enquiry-life.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { findEnquiry } from '#db/queries/enquiries.ts';
import { writeMove } from '#db/queries/enquiry-life.ts';
import { listQuotes } from '#db/queries/quotes.ts';
import { decideMove, stateToday } from '#lib/enquiry/decide-move.ts';
import { type EnquiryState, enquiryStateNamed, type Mover, movesFrom } from '#lib/enquiry/moves.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { actingPerson } from '#lib/services/access/acting-person.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp, today } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { noSuchEnquiry } from './enquiry-record.ts';

export interface EnquiryMove {
  readonly enquiryId: number;
  /** The state that the sender saw. */
  readonly from: EnquiryState;
  readonly to: EnquiryState;
  readonly why: string;
}

export function moveEnquiry(context: Context, move: EnquiryMove): Result<{ readonly state: EnquiryState }> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction(
    (tx): Result<{ readonly state: EnquiryState }> => {
      const now = enquiryStateToday(tx, { context, enquiryId: move.enquiryId });
      if (now === null) return noSuchEnquiry(move.enquiryId);
      if (now !== move.from) {
        return failed({
          code: 'changed-meanwhile',
          sentence: `Somebody else moved this enquiry: it is ${now} now, and was ${move.from} when you read it. Look again before you move it.`,
        });
      }
      const decided = decideMove({ from: now, to: move.to, by: 'by hand' });
      if (!decided.ok) return decided;
      write(tx, { context, ...move, from: now });
      return ok({ state: decided.value });
    },
    { behavior: 'immediate' },
  );
}

interface Deed {
  readonly context: Context;
  readonly enquiryId: number;
  readonly by: Exclude<Mover, 'by hand'>;
  readonly to: EnquiryState;
  readonly why?: string;
}

/** What a deed leads to, inside the deed's own transaction; a state in which it leads nowhere stays. */
export function moveByDeed(tx: DbOrTx, { context, enquiryId, by, to, why = '' }: Deed): void {
  const row = findEnquiry(tx, enquiryId);
  if (!row) return;
  const from = enquiryStateNamed(row.state);
  if (from !== to && movesFrom({ from, by }).includes(to)) write(tx, { context, enquiryId, from, to, why });
}

/** The state as it reads today; null where there is no such enquiry. */
export function enquiryStateToday(
  db: DbOrTx,
  { context, enquiryId }: { readonly context: Context; readonly enquiryId: number },
): EnquiryState | null {
  const row = findEnquiry(db, enquiryId);
  if (!row) return null;
  const [newest] = listQuotes(db, enquiryId);
  return stateToday({
    state: enquiryStateNamed(row.state),
    validUntil: newest?.valid_until ?? null,
    today: today(context),
  });
}

function write(tx: DbOrTx, { context, enquiryId, from, to, why }: EnquiryMove & { readonly context: Context }): void {
  const { id, name } = actingPerson(context);
  writeMove(tx, {
    enquiry_id: enquiryId,
    from_state: from,
    to_state: to,
    at: timestamp(context),
    who_id: id,
    who: name,
    why,
  });
  const detail = { from, to, ...(why === '' ? {} : { why }) };
  logChange(tx, { context, deed: { action: `enquiry made ${to}`, subject: `enquiry ${enquiryId}`, detail } });
}
