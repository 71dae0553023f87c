/*
 * What a browser or another system may send about a booking.
 * Invariant: nothing reaches a use case that has not passed one of these.
 * Not here: stock (stock-requests.ts), picking and returns.
 * Read next: ../services/yard/with-booking.ts.
 */
import { z } from 'zod';
import { BOOKING_PURPOSES } from '#lib/stock/booking-purpose.ts';

const serial = z.string().trim().min(1).max(60);
const serials = z.array(serial).max(1000).default([]);
const words = z.string().trim().max(400).default('');
const day = z.string().trim().max(10);
/** Asked beforehand: what it would come to, without doing it. */
const trial = z.boolean().default(false);

export const bookingDeedSchema = z
  .discriminatedUnion('deed', [
    z.strictObject({ deed: z.literal('confirm') }),
    z.strictObject({ deed: z.literal('cancel'), reason: words }),
    z.strictObject({ deed: z.literal('extend'), endsBefore: day, serials, askedBy: words, why: words, trial }),
    z.strictObject({ deed: z.literal('off hire'), noticedAt: z.string().max(30), saidBy: words, serials, note: words }),
    z.strictObject({ deed: z.literal('late'), expectedBackOn: day, saidBy: words, serials, trial }),
    z.strictObject({ deed: z.literal('swap'), serial, replacement: serial, why: words, trial }),
    z.strictObject({ deed: z.literal('release'), serials, why: words }),
    z.strictObject({ deed: z.literal('close') }),
  ])
  .meta({ id: 'BookingDeed', description: 'What is done with a booking.' });

export type BookingDeed = z.output<typeof bookingDeedSchema>;

const wanted = {
  needs: z.array(z.strictObject({ model: z.string().trim().min(1).max(24), count: z.int().min(1).max(1000) })).max(100),
  startsOn: day,
  endsBefore: day,
  depot: z.string().trim().max(8).default(''),
};

export const equipmentWantedSchema = z
  .strictObject(wanted)
  .meta({ id: 'EquipmentWanted', description: 'Equipment of which is asked whether it is free.' });

export const equipmentToBookSchema = z
  .strictObject({
    ...wanted,
    heldUntil: z.string().max(30).nullable().default(null),
    why: words,
    purpose: z.enum(BOOKING_PURPOSES).default('other'),
    customer: z.string().trim().max(200).default(''),
  })
  .meta({ id: 'EquipmentToBook', description: 'Equipment to be booked without a quote.' });
