/*
 * What a customer's program is answered about an order: places, valves, kit, price, quote and booking.
 * Invariant: an answer is cut to these fields before it leaves, so that nothing else of the house can go with it.
 * Not here: what may be sent (self-service.ts).
 * Read next: openapi.ts.
 */
import { z } from 'zod';
import { orderContactSchema, orderPlaceSchema } from './self-service.ts';

const range = z
  .object({ low: z.number(), high: z.number(), guessed: z.boolean() })
  .meta({ id: 'Range', description: 'Low to high; guessed where nobody stated, measured or computed it.' });

const reason = z
  .object({ code: z.string(), sentence: z.string() })
  .meta({ id: 'Reason', description: 'Why the house looks before there can be a quote.' });

const piece = z
  .object({ name: z.string(), role: z.string(), count: z.int() })
  .meta({ id: 'Piece', description: 'A piece of equipment, and how many of it come.' });

const valve = z
  .object({
    tag: z.string(),
    qty: z.int(),
    starting_nm: range,
    ceiling_nm: range,
    turns: range,
    reasons: z.array(reason),
    assumed: z.array(z.string()).meta({ description: 'Columns that nobody filled in and that were assumed.' }),
    pieces: z.array(piece),
  })
  .meta({ id: 'ValveAnswer', description: 'What one valve needs and gets.' });

const price = z
  .object({
    currency: z.string(),
    net_minor: z.int(),
    tax_minor: z.int(),
    gross_minor: z.int(),
    deposit_minor: z.int(),
  })
  .meta({ id: 'Price', description: 'Amounts in minor units of the currency (ISO 4217).' });

const availability = z
  .object({
    kind: z.enum(['free', 'later', 'more days', 'not free']),
    from: z.string().optional().meta({ description: 'The first day on which all of it is free.' }),
  })
  .meta({ id: 'Availability', description: 'Whether everything is free on the days asked.' });

export const orderAnswerSchema = z
  .object({
    id: z.int(),
    number: z.string(),
    stage: z.enum(['draft', 'handed over', 'quoted', 'accepted', 'cancelled']),
    place: orderPlaceSchema,
    work: z.enum(['none', 'running', 'failed', 'ready', 'busy']).meta({
      description: 'Whether the answer is there; ask again after some seconds while it is running or busy.',
    }),
    firm: z.boolean(),
    reasons: z.array(reason),
    valves: z.array(valve),
    price: price.nullable(),
    availability: availability.nullable(),
    quote: z
      .object({ name: z.string(), valid_until: z.string(), total_minor: z.int(), currency: z.string() })
      .nullable(),
    booking: z.object({ number: z.string(), state: z.string(), held_until: z.string().nullable() }).nullable(),
  })
  .meta({ id: 'Order', description: 'An order as it stands, with its answer.' });
export type OrderAnswerJson = z.infer<typeof orderAnswerSchema>;

export const quoteAskedSchema = z
  .strictObject({ contact: orderContactSchema })
  .meta({ id: 'QuoteAsked', description: 'Who asks for the quote.' });

export const quotedSchema = z
  .object({ quote: z.string() })
  .meta({ id: 'Quoted', description: 'The quote that was issued.' });
export const acceptedSchema = z
  .object({ booking: z.string(), held_until: z.string().nullable() })
  .meta({ id: 'Accepted', description: 'The booking that holds the equipment, and until when.' });
export const handedSchema = z
  .object({ number: z.string() })
  .meta({ id: 'HandedOver', description: 'Number of the enquiry that the house works on.' });
export const handOverSchema = z
  .strictObject({
    contact: orderContactSchema,
    which: z.enum(['marked', 'all']).default('all'),
    message: z.string().max(2000).default(''),
  })
  .meta({ id: 'HandOver', description: 'Gives the order, or the valves that need a look, to the house.' });

export const problemSchema = z
  .object({ type: z.string(), title: z.string(), status: z.int(), code: z.string() })
  .meta({ id: 'Problem', description: 'A problem document (RFC 9457) with a stable code.' });
