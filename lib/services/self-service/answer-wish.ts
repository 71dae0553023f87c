/*
 * What owners of orders asked for by their link while the hire runs, as the Desk sees it, and the Desk's word on an extension.
 * Invariant: a notice is told until what it names is back; an extension until it is given or declined with a reason.
 * Not here: extending (../yard/extend-booking.ts), which settles a wish by itself.
 * Read next: extend-order.ts.
 */
import { bookingsOfEnquiry } from '#db/queries/bookings.ts';
import { type AskedByLink, noticesByLink, settleWish, wishesWaiting } from '#db/queries/order-hire.ts';
import { addDays, type IsoDate } from '#lib/kernel/date-range.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { actingPerson } from '#lib/services/access/acting-person.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { SELF_SERVICE_ACTOR } from './open-link.ts';

export type LinkAsk = AskedByLink &
  (
    | { readonly kind: 'extension'; readonly until: IsoDate }
    | { readonly kind: 'off-hire'; readonly notice: string; readonly saidBy: string }
  );

/** What waits for the Desk, the oldest first. */
export function listAskedByLink(context: Context): Result<readonly LinkAsk[]> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const { db } = context.database;
  const wishes = wishesWaiting(db).map(
    ({ endsBefore, ...row }): LinkAsk => ({ ...row, kind: 'extension', until: addDays(endsBefore, -1) }),
  );
  const notices = noticesByLink(db, SELF_SERVICE_ACTOR).map((row): LinkAsk => ({ ...row, kind: 'off-hire' }));
  return ok([...wishes, ...notices].toSorted((a, b) => (a.at < b.at ? -1 : 1)));
}

export interface WishAnswer {
  readonly enquiryId: number;
  /** Why it cannot be; its owner reads it at the link. */
  readonly answer: string;
}

export function answerWish(context: Context, { enquiryId, answer }: WishAnswer): Result<{ readonly booking: string }> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  if (answer.trim() === '')
    return failed({ code: 'reason-missing', sentence: 'Say why it cannot be: the customer reads it at their link.' });
  return context.database.db.transaction(
    (tx): Result<{ readonly booking: string }> => {
      const set = {
        ...{ settled: 'declined', settled_at: timestamp(context), settled_by: actingPerson(context).name },
        answer: answer.trim(),
      };
      const booking = bookingsOfEnquiry(tx, enquiryId).find(({ id }) => settleWish(tx, { bookingId: id, set }));
      if (booking === undefined)
        return failed({ code: 'no-such-wish', sentence: 'No extension waits here: load the page again.' });
      logChange(tx, {
        context,
        deed: {
          action: 'self-service: extension declined',
          subject: `booking ${booking.number}`,
          detail: { answer: set.answer },
        },
      });
      return ok({ booking: booking.number });
    },
    { behavior: 'immediate' },
  );
}
