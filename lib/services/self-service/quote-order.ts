/*
 * Makes a firm order into a quote: numbered, frozen, with the same papers as any quote of the house.
 * Invariant: only a firm answer is quoted; two presses make one quote, and an order that did not change keeps the one it has.
 * Not here: issuing itself (../quotes/issue-quote.ts).
 * Read next: accept-order.ts.
 */
import { listQuotes } from '#db/queries/quotes.ts';
import type { OrderContact } from '#lib/contracts/self-service.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { issueQuote } from '#lib/services/quotes/issue-quote.ts';
import type { Language } from '#lib/wording/language.ts';
import { nameCustomer } from './name-customer.ts';
import { type LinkAsked, type OpenOrder, openToChange } from './open-link.ts';
import { orderAnswer } from './order-answer.ts';
import { quotesOfOrder } from './order-quotes.ts';
import { writeStage } from './order-record.ts';
import { stageOf } from './order-stage.ts';

export interface OrderQuoted {
  /** Number and revision, as it is printed. */
  readonly quote: string;
}

declare global {
  var kitwrightQuoting: Map<number, Promise<Result<OrderQuoted>>> | undefined;
}

export async function quoteOrder(
  context: Context,
  input: LinkAsked & { readonly contact: OrderContact; readonly language?: Language },
): Promise<Result<OrderQuoted>> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const opened = openToChange(context, input);
  if (!opened.ok) return opened;
  globalThis.kitwrightQuoting ??= new Map();
  const under = globalThis.kitwrightQuoting;
  const { enquiry_id: enquiryId } = opened.value.order;
  const running = under.get(enquiryId) ?? issue(context, { ...input, opened: opened.value });
  under.set(enquiryId, running);
  try {
    return await running;
  } finally {
    under.delete(enquiryId);
  }
}

interface Issuing {
  readonly opened: OpenOrder;
  readonly contact: OrderContact;
  /** What the papers are to be in, as far as that is not settled with the customer already. */
  readonly language?: Language;
}

async function issue(context: Context, { opened, contact, language }: Issuing): Promise<Result<OrderQuoted>> {
  const { order, desk } = opened;
  const { db } = context.database;
  const [newest] = listQuotes(db, order.enquiry_id);
  const isOpen = quotesOfOrder(context, opened).quote?.standing === 'open';
  if (stageOf(order) === 'quoted' && newest !== undefined && isOpen)
    return ok({ quote: `${newest.number} ${newest.revision}` });
  const answer = orderAnswer(context, opened);
  if (!answer.ok) return answer;
  if (answer.value === null)
    return failed({ code: 'plan-not-current', sentence: 'The answer is being worked out anew: load the page again.' });
  if (!answer.value.firm)
    return failed({
      code: 'not-firm',
      sentence: 'Some valves need a look by the house before there can be a quote: hand them over, or take them out.',
    });
  db.transaction(
    (tx) => nameCustomer(tx, { context, opened, contact, ...(language === undefined ? {} : { language }) }),
    { behavior: 'immediate' },
  );
  const issued = await issueQuote(desk, { enquiryId: order.enquiry_id });
  if (!issued.ok) return issued;
  db.transaction((tx) => writeStage(tx, { context: desk, enquiryId: order.enquiry_id, stage: 'quoted' }));
  return ok({ quote: `${issued.value.number} ${issued.value.revision}` });
}
