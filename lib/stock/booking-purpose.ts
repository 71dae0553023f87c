/*
 * What equipment is booked for where no quote says it: a customer beforehand, or the house itself.
 * Invariant: only the first is somebody's, and then says whose.
 * Not here: booking it (lib/services/yard/book-equipment.ts).
 * Read next: booking-life.ts.
 */
export const BOOKING_PURPOSES = ['customer', 'demonstration', 'training', 'own maintenance', 'other'] as const;
export type BookingPurpose = (typeof BOOKING_PURPOSES)[number];
