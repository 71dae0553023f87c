/*
 * The hire of an order by a customer's program: the same notices, extensions and papers as its link has, with a key in the place of it.
 * Invariant: an answer is cut to its schema; each piece is given notice of once, and an extension is given once.
 * Not here: the deeds themselves (off-hire-order.ts, extend-order.ts).
 * Read next: ../../contracts/order-hire.ts, program-orders.ts.
 */

import { newestBookingOfEnquiry } from '#db/queries/order-hire.ts';
import { listQuotes } from '#db/queries/quotes.ts';
import {
  type ExtensionAnswerJson,
  extensionAnswerSchema,
  type NoticeJson,
  noticeSchema,
  type OrderHireJson,
  orderHireSchema,
} from '#lib/contracts/order-hire.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { bookingStateOf } from '../yard/booking-record.ts';
import { type ExtensionAnswer, extendOrder, tryOrderExtension } from './extend-order.ts';
import { sheetsAreDue } from './hire-papers.ts';
import { giveOrderOffHire } from './off-hire-order.ts';
import { openOrder } from './open-link.ts';
import { type HiredPieceView, type OrderHire, orderHire } from './order-hire.ts';
import type { KeySent } from './program-orders.ts';

export interface ProgramAsked extends KeySent {
  readonly enquiryId: number;
}

export function programHire(context: Context, asked: ProgramAsked): Result<OrderHireJson> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const opened = openOrder(context, asked);
  if (!opened.ok) return opened;
  const { order, desk } = opened.value;
  const { db } = context.database;
  const booking = newestBookingOfEnquiry(db, order.enquiry_id);
  if (booking === undefined) return failed({ code: 'no-such-booking', sentence: 'Nothing is booked for this order.' });
  const hire = orderHire(desk, booking);
  const papers = [
    ...(listQuotes(db, order.enquiry_id).length > 0 ? ['quote', 'summary'] : []),
    ...(booking.quote_id !== null && sheetsAreDue(booking) ? ['site-sheet'] : []),
    ...hire.notes.map(({ number }) => number),
  ];
  return ok(
    orderHireSchema.parse({ booking: booking.number, state: bookingStateOf(booking), ...hireJson(hire), papers }),
  );
}

export function programOffHire(
  context: Context,
  { said_by, ...asked }: ProgramAsked & { readonly said_by: string; readonly serials: readonly string[] },
): Result<NoticeJson> {
  const given = giveOrderOffHire(context, { ...asked, saidBy: said_by });
  return given.ok ? ok(noticeSchema.parse(given.value)) : given;
}

/** What it would cost; writes nothing. */
export function programExtensionTried(
  context: Context,
  asked: ProgramAsked & { readonly until: string },
): Result<ExtensionAnswerJson> {
  return extensionJson(tryOrderExtension(context, asked));
}

export function programExtension(
  context: Context,
  { asked_by, ...asked }: ProgramAsked & { readonly until: string; readonly asked_by: string },
): Result<ExtensionAnswerJson> {
  return extensionJson(extendOrder(context, { ...asked, askedBy: asked_by }));
}

function extensionJson(answer: Result<ExtensionAnswer>): Result<ExtensionAnswerJson> {
  if (!answer.ok) return answer;
  const { value } = answer;
  const isPriced = value.kind === 'given' && value.more_minor !== null;
  return ok(
    extensionAnswerSchema.parse({
      given: value.kind === 'given',
      until: value.until,
      more_minor: isPriced ? value.more_minor : null,
      currency: isPriced ? value.currency : null,
    }),
  );
}

function hireJson(hire: OrderHire) {
  const { asked } = hire;
  return {
    starts_on: hire.startsOn,
    last_day: hire.lastDay,
    late: hire.isLate,
    charge_ends: hire.chargeEnds,
    deliveries: hire.deliveries.map(({ leftAt, pieces }) => ({ left_at: leftAt, pieces: pieces.map(pieceJson) })),
    notices: hire.notices.map(({ saidBy, ...notice }) => ({ ...notice, said_by: saidBy })),
    to_notice: hire.toNotice.map(pieceJson),
    extensions: hire.extensions,
    asked: asked === null ? null : { ...asked, asked_at: asked.askedAt },
    may_extend: hire.mayExtend,
    returns: hire.returns.map(({ arrivedOn, pieces }) => ({
      arrived_on: arrivedOn,
      pieces: pieces.map((piece) => ({ ...pieceJson(piece), missing_parts: piece.missingParts })),
    })),
    missing: hire.missing.map(pieceJson),
    return_notes: hire.notes.map(({ issuedOn, ...note }) => ({ ...note, issued_on: issuedOn })),
  };
}

function pieceJson<Piece extends HiredPieceView>(piece: Piece) {
  return { ...piece, serial: piece.serial === '' ? null : piece.serial };
}
