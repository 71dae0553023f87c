/*
 * What a browser or another system may send about the life of an enquiry: steps, who works on it, notes, its site.
 * Invariant: a change names what its sender saw, so that somebody else's change is never overwritten unseen.
 * Not here: the schedule and papers (requests.ts).
 * Read next: ../enquiry/moves.ts.
 */
import { z } from 'zod';
import { ENQUIRY_STATES } from '#lib/enquiry/moves.ts';
import { isIsoDate } from '#lib/kernel/date-range.ts';

const id = z.number().int().positive();
const day = z.string().refine(isIsoDate, 'is not a date in the form YYYY-MM-DD').nullable();
const NOTE_CHARACTERS = 10_000;

const lifeSchema = z.strictObject({
  assigned_to: z.string().max(200).optional(),
  due_on: day.optional(),
  reference: z.string().trim().max(200).optional(),
  source: z.string().trim().max(60).optional(),
  contact_id: id.nullable().optional(),
});

export const enquiryLifeSchema = z
  .strictObject({ set: lifeSchema, was: lifeSchema })
  .meta({ id: 'EnquiryLife', description: 'Facts about the work on an enquiry, and what they were when it was read.' });

export const enquiryMoveSchema = z
  .strictObject({
    from: z.enum(ENQUIRY_STATES),
    to: z.enum(ENQUIRY_STATES),
    why: z.string().trim().max(500).default(''),
  })
  .meta({ id: 'EnquiryMove', description: 'A step of an enquiry from the state that its sender saw.' });

export const enquirySiteSchema = z.strictObject({ version: z.number().int().positive(), site_id: id.nullable() }).meta({
  id: 'EnquirySite',
  description: 'The customer’s site whose facts an enquiry takes over; null to let it go.',
});

export const noteTextSchema = z.strictObject({ text: z.string().trim().max(NOTE_CHARACTERS) }).meta({ id: 'NoteText' });

export const putBackSchema = z
  .strictObject({ removed: z.enum(['yes', 'no']) })
  .meta({ id: 'PutBack', description: 'Whether a file is put away.' });
