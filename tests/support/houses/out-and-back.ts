/** A booked house taken out of the yard and back by the yard's own services, for what is tested after it. */
import type { Context, UserRole } from '#lib/services/context.ts';
import { checkIn, type PieceSeen } from '#lib/services/yard/back/check-in.ts';
import { decideCharge } from '#lib/services/yard/back/decide-charge.ts';
import { issueReturnNote } from '#lib/services/yard/back/issue-return-note.ts';
import { openCharges } from '#lib/services/yard/back/open-charges.ts';
import { openReturn } from '#lib/services/yard/back/open-return.ts';
import { confirmBooking } from '#lib/services/yard/confirm-booking.ts';
import { beginDelivery, scanLoad } from '#lib/services/yard/out/load-delivery.ts';
import { openOut } from '#lib/services/yard/out/open-out.ts';
import { type Leaving, sendDelivery } from '#lib/services/yard/out/send-delivery.ts';
import type { Contamination } from '#lib/stock/check-in.ts';
import { INSTRUCTION_POINTS } from '#lib/stock/load-check.ts';
import { granted } from '../granted.ts';
import { type BookedHouse, bookedHouse, HIRE, onDay, takeUnits } from './booked-house.ts';

export const LEAVING: Omit<Leaving, 'deliveryId' | 'checks'> = {
  loadedBy: 'Yard Hand',
  vehicle: 'van 3',
  instructedBy: 'Yard Hand',
  instruction: INSTRUCTION_POINTS,
  handedTo: 'R. Dunlin',
  signature: { how: 'typed', name: 'R. Dunlin' },
};

export function as(context: Context, role: UserRole): Context {
  return { ...context, actor: { id: `test-${role}`, name: `Test ${role}`, role } };
}

/** Everything picked, on the first day of the hire. */
export async function pickedHouse(): Promise<BookedHouse> {
  const house = await bookedHouse();
  granted(confirmBooking(house.context, { number: house.number }));
  const context = as(onDay(house.context, HIRE.starts_on), 'yard');
  takeUnits(context, { number: house.number, to: 'picked' });
  return { ...house, context };
}

/** Every question of the load answered with yes. */
export function yes(context: Context, number: string): readonly string[] {
  return granted(openOut(context, number)).questions.map(({ id }) => id);
}

export function send(
  context: Context,
  { number, serials }: { readonly number: string; readonly serials: readonly string[] },
) {
  const { id } = granted(beginDelivery(context, { number, transport: 'road' }));
  for (const serial of serials) granted(scanLoad(context, { deliveryId: id, scan: serial }));
  return granted(sendDelivery(context, { ...LEAVING, deliveryId: id, checks: yes(context, number) }));
}

/** Confirmed, picked and sent on its first day; answers the serial numbers. */
export function confirmedAndSent(
  desk: Context,
  { number, day }: { readonly number: string; readonly day: string },
): readonly string[] {
  granted(confirmBooking(desk, { number }));
  const yard = as(onDay(desk, day), 'yard');
  takeUnits(yard, { number, to: 'picked' });
  const rows = desk.database.raw
    .prepare(
      'SELECT unit_serial AS serial FROM booking_unit u JOIN booking b ON b.id = u.booking_id WHERE b.number = ? ORDER BY u.id',
    )
    .all(number) as readonly { readonly serial: string }[];
  const serials = rows.map(({ serial }) => serial);
  send(yard, { number, serials });
  return serials;
}

/** All of it out, and the day on which it comes back: the last of the hire. */
export async function outHouse(): Promise<BookedHouse> {
  const house = await pickedHouse();
  send(house.context, house);
  return { ...house, context: onDay(house.context, '2026-03-20') };
}

export function declare(context: Context, number: string, contamination: Contamination = 'none'): number {
  const note = contamination === 'product' ? 'diesel' : '';
  return granted(openReturn(context, { number, depot: 'VEN', broughtBy: 'driver', contamination, note })).id;
}

export const GOOD: Omit<PieceSeen, 'returnId' | 'scan'> = {
  condition: 'good',
  runHours: null,
  missingParts: '',
  note: '',
  sawOverload: false,
  repairHours: 0,
  repairPartsMinor: 0,
};

export function backGood(
  context: Context,
  { returnId, serials }: { readonly returnId: number; readonly serials: readonly string[] },
): void {
  for (const scan of serials) granted(checkIn(context, { ...GOOD, returnId, scan }));
}

/** Every charge approved as it was proposed, and the note issued. */
export async function noteIssued(desk: Context, number: string) {
  for (const { key, proposedMinor } of granted(openCharges(desk, number)).charges)
    granted(decideCharge(desk, { number, key, proposedMinor, decision: { kind: 'approved' } }));
  return granted(await issueReturnNote(desk, { number }));
}
