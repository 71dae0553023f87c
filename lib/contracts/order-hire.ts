/*
 * What a customer's program is answered about the hire of an order, and what it may send: off-hire notices and extensions.
 * Invariant: an answer is cut to these fields before it leaves; days are ISO dates, the last one belonging to the hire.
 * Not here: the order before it is hired (order-answers.ts).
 * Read next: openapi.ts.
 */
import { z } from 'zod';
import { isIsoDate } from '#lib/kernel/date-range.ts';

const day = z.string().refine(isIsoDate, 'is not a date in the form YYYY-MM-DD');
const person = z.string().trim().min(1).max(120);
const serial = z.string().trim().min(1).max(60);

const hiredPiece = z
  .object({
    model: z.string(),
    name: z.string(),
    serial: z.string().nullable().meta({ description: 'Absent where pieces are held by number.' }),
    count: z.int(),
  })
  .meta({ id: 'HiredPiece', description: 'A piece on hire by its serial number, or several held by number.' });

const backPiece = hiredPiece
  .extend({
    condition: z.string().meta({ description: 'As the yard found it; empty where it was only counted.' }),
    missing_parts: z.string(),
  })
  .meta({ id: 'PieceBack', description: 'A piece that came back, and how.' });

const missingPiece = hiredPiece
  .extend({ lost: z.enum(['lost', 'awaited']) })
  .meta({ id: 'PieceMissing', description: 'A piece that left and is not back.' });

const returnNote = z
  .object({
    number: z.string(),
    issued_on: z.string(),
    currency: z.string(),
    gross_minor: z.int(),
    lines: z.array(z.object({ label: z.string(), net_minor: z.int() })),
  })
  .meta({ id: 'ReturnNote', description: 'Charges as they were issued, in minor units of the currency (ISO 4217).' });

export const orderHireSchema = z
  .object({
    booking: z.string(),
    state: z.string(),
    starts_on: z.string(),
    last_day: z.string(),
    late: z.boolean().meta({ description: 'Something is out beyond the last day.' }),
    charge_ends: z.enum(['off-hire notice', 'collection']),
    deliveries: z.array(z.object({ left_at: z.string(), pieces: z.array(hiredPiece) })),
    notices: z.array(
      z.object({ number: z.string(), at: z.string(), said_by: z.string(), serials: z.array(z.string()) }),
    ),
    to_notice: z.array(hiredPiece).meta({ description: 'On hire, and no notice names them yet.' }),
    extensions: z.array(z.object({ until: z.string(), at: z.string() })),
    asked: z
      .object({
        until: z.string(),
        asked_at: z.string(),
        state: z.enum(['waits', 'given', 'declined']),
        answer: z.string().meta({ description: 'What the house says to it.' }),
      })
      .nullable()
      .meta({ description: 'The extension that was asked for last and went to the house.' }),
    may_extend: z.boolean(),
    returns: z.array(z.object({ arrived_on: z.string(), pieces: z.array(backPiece) })),
    missing: z.array(missingPiece),
    return_notes: z.array(returnNote),
    papers: z.array(z.string()).meta({ description: 'Papers that are there, by the last part of their address.' }),
  })
  .meta({ id: 'OrderHire', description: 'The hire of an order as it stands.' });
export type OrderHireJson = z.infer<typeof orderHireSchema>;

export const offHireSchema = z
  .strictObject({
    said_by: person.meta({ description: 'Who gives the notice.' }),
    serials: z.array(serial).max(500).default([]).meta({
      description: 'Which pieces; none means all that are on hire without a notice.',
    }),
  })
  .meta({ id: 'OffHire', description: 'Word that the hire of pieces ends at the moment it is sent.' });

export const noticeSchema = z
  .object({
    notice: z.string(),
    serials: z.array(z.string()).meta({ description: 'What this request gave notice of; none where it was given.' }),
  })
  .meta({ id: 'Notice', description: 'The notice that stands, by its number.' });
export type NoticeJson = z.infer<typeof noticeSchema>;

export const extensionSchema = z
  .strictObject({
    until: day.meta({ description: 'The new last day of hire.' }),
    asked_by: person.meta({ description: 'Who asks.' }),
  })
  .meta({ id: 'Extension', description: 'The wish to keep all that is on hire or still to come for longer.' });

export const extensionAnswerSchema = z
  .object({
    given: z.boolean().meta({ description: 'False where the house answers: ask for the hire again later.' }),
    until: z.string(),
    more_minor: z.int().nullable().meta({
      description: 'What more is to pay, before tax and waiver, in minor units; null where it is not said.',
    }),
    currency: z.string().nullable(),
  })
  .meta({ id: 'ExtensionAnswer', description: 'Whether it is given at once, and what it costs.' });
export type ExtensionAnswerJson = z.infer<typeof extensionAnswerSchema>;
