/*
 * Throws away what strangers began and never sent, a stated time after nobody can open it any more.
 * Invariant: done by the house itself; nothing that was sent, quoted, handed over or taken over is ever thrown away, and the log says what was.
 * Not here: how long that is (a fact of the house).
 * Read next: self-facts.ts, ../../../db/queries/self-orders.ts.
 */
import { deleteDraft, outdatedDrafts } from '#db/queries/self-orders.ts';
import { type Context, HOUSE_ITSELF, milliseconds } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { selfServiceFacts } from './self-facts.ts';

const DAY_MS = 86_400_000;
/** How often the house looks by itself while people work with it. */
const LOOK_MS = 6 * 3_600_000;
let lookedAt = 0;

/** Called wherever somebody asks for a page; looks a few times a day. */
export function forgetDraftsNowAndThen(context: Context): void {
  const now = milliseconds(context);
  if (now - lookedAt < LOOK_MS) return;
  lookedAt = now;
  forgetDrafts(context);
}

/** Answers how many were thrown away. */
export function forgetDrafts(asked: Context): number {
  const context = { ...asked, actor: HOUSE_ITSELF };
  const { draft_days, link_days } = selfServiceFacts(context);
  const daysAgo = (days: number) => new Date(milliseconds(context) - days * DAY_MS).toISOString();
  return context.database.db.transaction(
    (tx) => {
      const drafts = outdatedDrafts(tx, {
        linksEndedBefore: daysAgo(draft_days),
        begunBefore: daysAgo(draft_days + link_days),
      });
      for (const id of drafts) deleteDraft(tx, id);
      if (drafts.length > 0)
        logChange(tx, {
          context,
          deed: {
            action: 'self-service: drafts never sent thrown away',
            subject: 'self-service',
            detail: { enquiries: drafts },
          },
        });
      return drafts.length;
    },
    { behavior: 'immediate' },
  );
}
