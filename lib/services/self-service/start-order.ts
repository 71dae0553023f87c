/*
 * Starts an order without an account: an enquiry nobody of the Desk sees yet, and the link that leads back to it.
 * Invariant: a draft belongs to no known customer; the secret of its link is answered once and kept nowhere.
 * Not here: filling it (order-lines.ts, set-place.ts).
 * Read next: open-link.ts, bot-check.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { changeCustomer, findPlaceholder } from '#db/queries/customers.ts';
import { insertOrderLink, insertSelfOrder } from '#db/queries/self-orders.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { NOTHING_AGREED, writeCustomer } from '#lib/services/customers/save-customer.ts';
import { createEnquiry } from '#lib/services/enquiries/create-enquiry.ts';
import type { Language } from '#lib/wording/language.ts';
import { linkEnds } from './link-days.ts';
import { houseFor } from './open-link.ts';
import { newSecret } from './secret.ts';
import { takeTurn } from './self-throttle.ts';

export interface OrderStart {
  readonly language: Language;
  readonly address: string;
  /** Facts of the site as its form has them. */
  readonly site: Readonly<Record<string, unknown>>;
  readonly title: string;
}

export interface StartedOrder {
  readonly enquiryId: number;
  readonly token: string;
}

/** Whose enquiry it is until somebody says who they are. */
const NOT_NAMED = 'Self-service, not named yet';

export function startOrder(context: Context, start: OrderStart): Result<StartedOrder> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  for (const asked of [
    { turn: 'start an order', who: start.address },
    { turn: 'start orders, all', who: 'the world' },
  ] as const) {
    const turn = takeTurn(context, asked);
    if (!turn.ok) return turn;
  }
  const house = houseFor(context, 0);
  return context.database.db.transaction(
    (tx): Result<StartedOrder> => {
      const made = createEnquiry(house, {
        title: start.title,
        customer: { id: findPlaceholder(tx)?.id ?? writePlaceholder(tx, house) },
        site: start.site,
        source: 'self-service',
      });
      if (!made.ok) return made;
      const enquiryId = made.value.id;
      const at = timestamp(context);
      insertSelfOrder(tx, {
        enquiry_id: enquiryId,
        stage: 'draft',
        stage_at: at,
        language: start.language,
        created_at: at,
      });
      return ok({ enquiryId, token: writeLink(tx, { context, enquiryId, scope: 'order' }) });
    },
    { behavior: 'immediate' },
  );
}

function writePlaceholder(tx: DbOrTx, house: Context): number {
  const { id } = writeCustomer(tx, { context: house, entry: { name: NOT_NAMED, facts: NOTHING_AGREED } });
  changeCustomer(tx, { id, at: timestamp(house), set: { placeholder: true } });
  return id;
}

interface NewLink {
  readonly context: Context;
  readonly enquiryId: number;
  readonly scope: 'order' | 'look';
}

/** Writes a link and answers its secret. */
export function writeLink(tx: DbOrTx, { context, enquiryId, scope }: NewLink): string {
  const { secret, hash } = newSecret();
  insertOrderLink(tx, {
    enquiry_id: enquiryId,
    token_hash: hash,
    scope,
    created_at: timestamp(context),
    expires_at: linkEnds(context),
  });
  return secret;
}
