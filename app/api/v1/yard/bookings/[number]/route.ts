import { asking } from '#app/_lib/asking.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import { type BookingDeed, bookingDeedSchema } from '#lib/contracts/booking-requests.ts';
import type { Result } from '#lib/kernel/result.ts';
import type { Context } from '#lib/services/context.ts';
import { cancelBooking } from '#lib/services/yard/cancel-booking.ts';
import { closeBooking } from '#lib/services/yard/close-booking.ts';
import { confirmBooking } from '#lib/services/yard/confirm-booking.ts';
import { extendBooking } from '#lib/services/yard/extend-booking.ts';
import { giveOffHireNotice } from '#lib/services/yard/off-hire.ts';
import { openBooking } from '#lib/services/yard/open-booking.ts';
import { releaseUnits } from '#lib/services/yard/release-units.ts';
import { reportLate } from '#lib/services/yard/report-late.ts';
import { swapUnit } from '#lib/services/yard/swap-unit.ts';

interface BookingParams {
  readonly params: Promise<{ readonly number: string }>;
}

export async function GET(_request: Request, { params }: BookingParams): Promise<Response> {
  return respond(openBooking(await asking(), (await params).number));
}

export async function POST(request: Request, { params }: BookingParams): Promise<Response> {
  const body = await readBody(request, bookingDeedSchema);
  if (!body.ok) return problem(body);
  return respond(done(await asking(), { number: (await params).number, deed: body.value }));
}

interface Doing {
  readonly number: string;
  readonly deed: BookingDeed;
}

function done(context: Context, { number, deed }: Doing): Result<unknown> {
  switch (deed.deed) {
    case 'confirm':
      return confirmBooking(context, { number });
    case 'cancel':
      return cancelBooking(context, { number, ...deed });
    case 'extend':
      return extendBooking(context, { number, ...deed }, earnestOf(deed));
    case 'off hire':
      return giveOffHireNotice(context, { number, ...deed });
    case 'late':
      return reportLate(context, { number, ...deed }, earnestOf(deed));
    case 'swap':
      return swapUnit(context, { number, ...deed }, earnestOf(deed));
    case 'release':
      return releaseUnits(context, { number, ...deed });
    case 'close':
      return closeBooking(context, { number });
  }
}

function earnestOf({ trial }: { readonly trial: boolean }): 'trial' | 'for real' {
  return trial ? 'trial' : 'for real';
}
