import type { useAct } from '#app/(yard)/_blocks/use-act.client.ts';
import type { BookingView } from '#lib/services/yard/open-booking.ts';

/** What every deed of a booking is given. */
export interface DeedProps {
  readonly view: BookingView;
  readonly busy: boolean;
  readonly act: ReturnType<typeof useAct>['act'];
}
