/*
 * Orders by a customer's program: the same steps as a person takes, with a key in the place of a link.
 * Invariant: an answer is cut to its schema; the same idempotency key makes one order.
 * Not here: the steps themselves (order-lines.ts, quote-order.ts, accept-order.ts).
 * Read next: ../../contracts/order-answers.ts, open-key.ts.
 */
import { insertSelfOrder } from '#db/queries/self-orders.ts';
import { type OrderAnswerJson, orderAnswerSchema } from '#lib/contracts/order-answers.ts';
import type { NewOrder } from '#lib/contracts/self-service.ts';
import { isColumn } from '#lib/intake/columns.ts';
import { readLine } from '#lib/intake/read-line.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { createEnquiry } from '#lib/services/enquiries/create-enquiry.ts';
import { addLines } from '#lib/services/schedule/change-lines.ts';
import { reasonWords } from '#lib/wording/reason-words.ts';
import { openKey } from './open-key.ts';
import { houseFor } from './open-link.ts';
import { type OrderView, openOrderView } from './order-view.ts';
import { siteFacts, soundDates, titleOf } from './set-place.ts';

export interface KeySent {
  readonly token: string;
  readonly address: string;
}

export async function newProgramOrder(
  context: Context,
  { order, ...sent }: KeySent & { readonly order: NewOrder },
): Promise<Result<OrderAnswerJson>> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const key = openKey(context, sent);
  if (!key.ok) return key;
  const dated = soundDates(context, order.place);
  if (!dated.ok) return dated;
  const lines = readValves(order.valves);
  if (!lines.ok) return lines;
  const house = houseFor(context, 0);
  const made = context.database.db.transaction(
    (tx) => {
      const enquiry = createEnquiry(house, {
        title: titleOf(order.place),
        customer: { id: key.value.customer_id },
        site: siteFacts({}, order.place),
        source: 'self-service',
      });
      if (!enquiry.ok) return enquiry;
      const at = timestamp(context);
      insertSelfOrder(tx, {
        ...{ enquiry_id: enquiry.value.id, stage: 'draft', stage_at: at, created_at: at },
        ...{ language: order.language, by_key_id: key.value.id },
      });
      const added = addLines(house, { enquiryId: enquiry.value.id, lines: lines.value.map((cells) => ({ cells })) });
      return added.ok ? ok(enquiry.value.id) : added;
    },
    { behavior: 'immediate' },
  );
  return made.ok ? programOrder(context, { ...sent, enquiryId: made.value }) : made;
}

export async function programOrder(
  context: Context,
  asked: KeySent & { readonly enquiryId: number },
): Promise<Result<OrderAnswerJson>> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const view = await openOrderView(context, asked);
  return view.ok ? ok(orderJson(asked.enquiryId, view.value)) : view;
}

/** All valves are read before one is kept; what cannot be read is told with its valve and column. */
function readValves(valves: NewOrder['valves']): Result<readonly Readonly<Record<string, string>>[]> {
  const problems = valves.flatMap((cells, index) => {
    const strange = Object.keys(cells).filter((name) => !isColumn(name));
    const told = strange.map((name) => `Valve ${index + 1}: there is no column “${name}”.`);
    const read = readLine({ row: index + 1, cells }).problems;
    return [
      ...told,
      ...read.map(({ column, sentence, remedy }) => `Valve ${index + 1}, ${column}: ${sentence} ${remedy}`),
    ];
  });
  if (problems.length > 0) return failed({ code: 'valves-unreadable', sentence: problems.slice(0, 20).join(' ') });
  return ok(valves.map((cells, index) => ({ tag: `V${index + 1}`, ...cells })));
}

function orderJson(id: number, view: OrderView): OrderAnswerJson {
  const { answer, site, quote, booking } = view;
  const told = (
    reasons: readonly { readonly code: string; readonly facts: Readonly<Record<string, string | number>> }[],
  ) => reasons.map((reason) => ({ code: reason.code, sentence: reasonWords('en', reason) }));
  return orderAnswerSchema.parse({
    id,
    number: view.number,
    stage: view.stage,
    place: placeJson(site),
    work: view.work,
    firm: answer?.firm ?? false,
    reasons: told(answer?.handOver ?? []),
    valves: (answer?.valves ?? []).map((valve) => ({
      ...valve,
      reasons: told(valve.handOver),
      pieces: valve.kit?.pieces ?? [],
    })),
    price: answer?.price ?? null,
    availability: answer?.availability ?? null,
    quote: quote === null ? null : { ...quote, valid_until: quote.validUntil },
    booking: booking === null ? null : { ...booking, held_until: booking.heldUntil },
  });
}

function placeJson({ name, startsOn, days, zone, vehicleAccess, enclosed }: OrderView['site']) {
  return {
    starts_on: startsOn,
    days,
    ...(name === undefined ? {} : { name }),
    ...(zone === undefined ? {} : { zone }),
    ...(vehicleAccess === undefined ? {} : { vehicle_access: vehicleAccess }),
    ...(enclosed === undefined ? {} : { enclosed }),
  };
}
