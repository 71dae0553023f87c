/**
 * Picks all of a confirmed booking in the database that KITWRIGHT_DATABASE names, as the yard's own services do, for a story that begins at the gate:
 * `node --import tsx tests/support/houses/pick-booking.ts B-00001`
 */
import { findBooking, unitsOfBooking } from '#db/queries/bookings.ts';
import { HOUSE_ITSELF } from '#lib/services/context.ts';
import { openHouse } from '#lib/services/house/open-house.ts';
import { stepUnits } from '#lib/services/yard/step-units.ts';

const number = process.argv[2] ?? '';
const context = openHouse(HOUSE_ITSELF);
context.database.db.transaction((tx) => {
  for (const to of ['allocated', 'picked'] as const) {
    const booking = findBooking(tx, number);
    if (!booking) throw new Error(`No booking ${number}.`);
    const units = unitsOfBooking(tx, booking.id);
    const stepped = stepUnits(tx, { context, booking, units, to, what: to });
    if (!stepped.ok) throw new Error(stepped.reason.sentence);
  }
});
context.database.raw.close();
