/*
 * What people without an account and customers' programs may send: place, valves, contact, acceptance.
 * Invariant: everything is bounded in length and number here, before anything looks at it.
 * Not here: the facts of a whole site (site.ts), of which a stranger gives a few.
 * Read next: ../services/self-service/.
 */
import { z } from 'zod';
import { isIsoDate } from '#lib/kernel/date-range.ts';
import { LIMITS } from '#lib/kernel/limits.ts';

const words = (most: number) => z.string().trim().min(1).max(most);

export const orderPlaceSchema = z
  .strictObject({
    name: z.string().trim().max(120).optional().meta({ description: 'What the place is called.' }),
    starts_on: z.string().refine(isIsoDate, 'is not a date in the form YYYY-MM-DD'),
    days: z.int().min(1).max(60),
    zone: z
      .enum(['none', '0', '1', '2', '20', '21', '22', 'mine'])
      .optional()
      .meta({ description: 'Hazardous zone of the place; absent where nobody knows, which the house then asks.' }),
    vehicle_access: z.boolean().optional(),
    enclosed: z.boolean().optional(),
  })
  .meta({ id: 'OrderPlace', description: 'Where and when the equipment is to be used.' });
export type OrderPlace = z.infer<typeof orderPlaceSchema>;

export const valveSchema = z
  .record(z.string().max(60), z.string().max(LIMITS.cell_characters))
  .meta({ id: 'Valve', description: 'One valve by the columns of the list template, as texts with their units.' });

export const orderContactSchema = z
  .strictObject({
    name: words(120),
    firm: words(120),
    email: z.email().max(200),
    telephone: z.string().trim().max(60).optional(),
  })
  .meta({ id: 'OrderContact', description: 'Who asks, and how the house reaches them.' });
export type OrderContact = z.infer<typeof orderContactSchema>;

export const acceptanceSchema = z
  .strictObject({
    quote: words(40).meta({ description: 'Number and revision of the quote as it was issued, such as “Q-00012 A”.' }),
    name: words(120),
    order_number: words(60),
    option: z.int().min(0).max(20).optional().meta({
      description: 'Slot of the option that is ordered, where the quote offers several.',
    }),
    terms: z.literal('accepted').meta({ description: 'The terms of the quote are accepted.' }),
  })
  .meta({ id: 'Acceptance', description: 'The word of the customer that a quote is ordered.' });
export type OrderAcceptance = z.infer<typeof acceptanceSchema>;

export const newOrderSchema = z
  .strictObject({
    place: orderPlaceSchema,
    valves: z.array(valveSchema).min(1).max(LIMITS.self_service_lines),
    contact: orderContactSchema.optional(),
    language: z.enum(['en', 'de']).default('en'),
  })
  .meta({ id: 'NewOrder', description: 'Valves with their place and dates: what an answer is worked out from.' });
export type NewOrder = z.infer<typeof newOrderSchema>;

/** What the Desk may do about an order that came by self-service. */
export const selfServiceDeedSchema = z.discriminatedUnion('deed', [
  z.strictObject({ deed: z.enum(['take-over', 'send-back', 'withdraw-links']) }),
  z.strictObject({ deed: z.literal('decline-extension'), answer: z.string().max(500) }),
]);

export const newKeySchema = z.strictObject({ name: words(80) });
