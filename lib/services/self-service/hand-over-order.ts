/*
 * Hands an order to the Desk with everything filled in: whole, or only the valves that need a look.
 * Invariant: valves that are handed over apart leave the order with their answers and photos; none is lost or doubled.
 * Not here: what the Desk does with it (take-over.ts).
 * Read next: name-customer.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { type AttachmentRow, findAttachment, insertAttachment } from '#db/queries/enquiry-life.ts';
import { countLines, findLine } from '#db/queries/schedule.ts';
import { insertSelfOrder, lineAnswers, writeLineAnswer } from '#db/queries/self-orders.ts';
import type { OrderContact } from '#lib/contracts/self-service.ts';
import type { Cells } from '#lib/intake/columns.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import type { HandOver } from '#lib/questions/hand-over.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { createEnquiry } from '#lib/services/enquiries/create-enquiry.ts';
import { addNote } from '#lib/services/enquiries/enquiry-notes.ts';
import { readEnquiry } from '#lib/services/enquiries/enquiry-record.ts';
import { addLines, removeLines } from '#lib/services/schedule/change-lines.ts';
import { reasonWords } from '#lib/wording/reason-words.ts';
import { nameCustomer } from './name-customer.ts';
import { type LinkAsked, type OpenOrder, openToChange } from './open-link.ts';
import { orderAnswer } from './order-answer.ts';
import { changedDraft, writeStage } from './order-record.ts';
import { writeLink } from './start-order.ts';

export interface HandOverAsked extends LinkAsked {
  readonly contact: OrderContact;
  /** Only valves that need a look, so that the others can be ordered at once; or everything. */
  readonly which: 'marked' | 'all';
  readonly message: string;
}

export interface HandedOver {
  readonly number: string;
  /** A link that only looks at what was handed over apart; null where the order itself was handed over. */
  readonly lookToken: string | null;
}

/** A reason with the valve it speaks of; none where it speaks of the whole order. */
export interface TaggedReason extends HandOver {
  readonly tag: string;
}

const MESSAGE_CHARACTERS = 2_000;

export function handOverOrder(context: Context, input: HandOverAsked): Result<HandedOver> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const opened = openToChange(context, input);
  if (!opened.ok) return opened;
  const { order } = opened.value;
  if (countLines(context.database.db, order.enquiry_id) === 0)
    return failed({ code: 'no-lines', sentence: 'There is no valve in this order yet: add one first.' });
  const answer = orderAnswer(context, opened.value);
  if (!answer.ok) return answer;
  const marked = (answer.value?.valves ?? []).filter(({ handOver }) => handOver.length > 0);
  const reasons = [
    ...(answer.value?.handOver ?? []).map((reason): TaggedReason => ({ ...reason, tag: '' })),
    ...marked.flatMap(({ tag, handOver }) => handOver.map((reason): TaggedReason => ({ ...reason, tag }))),
  ];
  const isApart = input.which === 'marked' && marked.length > 0 && marked.length < (answer.value?.valves.length ?? 0);
  return context.database.db.transaction(
    (tx): Result<HandedOver> => {
      nameCustomer(tx, { context, opened: opened.value, contact: input.contact });
      const message = input.message.slice(0, MESSAGE_CHARACTERS);
      const moving = { context, opened: opened.value, reasons, message, contact: input.contact };
      return ok(isApart ? apart(tx, { ...moving, lineIds: marked.map(({ lineId }) => lineId) }) : whole(tx, moving));
    },
    { behavior: 'immediate' },
  );
}

interface Moving {
  readonly context: Context;
  readonly opened: OpenOrder;
  readonly reasons: readonly TaggedReason[];
  readonly message: string;
  readonly contact: OrderContact;
}

function whole(tx: DbOrTx, { opened, reasons, message }: Moving): HandedOver {
  const { order, enquiry, desk } = opened;
  const set = { reasons_json: JSON.stringify(reasons) };
  writeStage(tx, { context: desk, enquiryId: order.enquiry_id, stage: 'handed over', set });
  tellDesk(desk, { enquiryId: order.enquiry_id, reasons, message });
  return { number: enquiry.row.number, lookToken: null };
}

/** The marked valves become an enquiry of the Desk of their own; the order goes on without them. */
function apart(tx: DbOrTx, moving: Moving & { readonly lineIds: readonly number[] }): HandedOver {
  const { context, opened, reasons, message, contact, lineIds } = moving;
  const { desk, order } = opened;
  const now = done(readEnquiry(desk, order.enquiry_id));
  const made = done(
    createEnquiry(desk, {
      title: `${now.row.title}: needs a look`,
      customer: { id: now.row.customer_id },
      site: JSON.parse(now.row.site_json),
      ...(now.row.contact_id === null ? {} : { contact_id: now.row.contact_id }),
      source: 'self-service',
    }),
  );
  const enquiryId = made.id;
  const at = timestamp(context);
  insertSelfOrder(tx, {
    ...{ enquiry_id: enquiryId, stage: 'handed over', stage_at: at, created_at: at, language: order.language },
    ...{ contact_json: JSON.stringify(contact), reasons_json: JSON.stringify(reasons) },
    from_enquiry_id: order.enquiry_id,
  });
  moveLines(tx, { desk, from: order.enquiry_id, to: enquiryId, lineIds });
  changedDraft(context, opened);
  tellDesk(desk, { enquiryId, reasons, message });
  return { number: made.number, lookToken: writeLink(tx, { context, enquiryId, scope: 'look' }) };
}

interface MovingLines {
  readonly desk: Context;
  readonly from: number;
  readonly to: number;
  readonly lineIds: readonly number[];
}

function moveLines(tx: DbOrTx, { desk, from, to, lineIds }: MovingLines): void {
  const answers = lineAnswers(tx, from);
  for (const lineId of lineIds) {
    const row = findLine(tx, { enquiryId: from, lineId });
    if (row === undefined) continue;
    const added = done(addLines(desk, { enquiryId: to, lines: [{ cells: JSON.parse(row.cells_json) as Cells }] }));
    const answer = answers.get(lineId);
    if (answer === undefined) continue;
    const photo = answer.photo_id === null ? undefined : findAttachment(tx, answer.photo_id);
    const photoId = photo === undefined ? null : copyPhoto(tx, { photo, to });
    writeLineAnswer(tx, {
      lineId: added.lineIds[0] ?? 0,
      set: { unknown_json: answer.unknown_json, photo_id: photoId },
    });
  }
  done(removeLines(desk, { enquiryId: from, lineIds }));
}

function copyPhoto(tx: DbOrTx, { photo, to }: { readonly photo: AttachmentRow; readonly to: number }): number {
  const { id: _id, removed_at: _removed, ...file } = photo;
  return insertAttachment(tx, { ...file, enquiry_id: to });
}

/** Within the transaction nothing may fail half-way: what was looked at before cannot be refused now. */
function done<Value>(result: Result<Value>): Value {
  invariant(result.ok, result.ok ? '' : result.reason.sentence);
  return result.value;
}

interface Telling {
  readonly enquiryId: number;
  readonly reasons: readonly TaggedReason[];
  readonly message: string;
}

/** A note that the Desk reads first: why it came here, and what its owner adds. */
function tellDesk(desk: Context, { enquiryId, reasons, message }: Telling): void {
  const why = reasons.map((reason) => `${reason.tag === '' ? '' : `${reason.tag}: `}${reasonWords('en', reason)}`);
  const said = message.trim() === '' ? [] : [`The customer adds: ${message.trim()}`];
  done(addNote(desk, { enquiryId, text: ['Handed over from self-service.', ...why, ...said].join('\n') }));
}
