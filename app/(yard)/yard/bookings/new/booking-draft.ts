import { addDays, isIsoDate } from '#lib/kernel/date-range.ts';
import type { BookingPurpose } from '#lib/stock/booking-purpose.ts';

export interface Need {
  readonly id: number;
  readonly model: string;
  readonly count: string;
}

/** What was typed so far. */
export interface Draft {
  readonly purpose: BookingPurpose;
  readonly customer: string;
  readonly why: string;
  readonly depot: string;
  readonly startsOn: string;
  /** The last day that still belongs to it. */
  readonly lastDay: string;
  /** Last day on which it is held unconfirmed; empty where it does not lapse. */
  readonly heldTo: string;
  readonly needs: readonly Need[];
}

export function wantedOf({ needs, startsOn, lastDay, depot }: Draft) {
  return {
    needs: needs.flatMap(({ model, count }) => {
      const number = Number(count);
      return model !== '' && Number.isInteger(number) && number > 0 ? [{ model, count: number }] : [];
    }),
    startsOn,
    endsBefore: isIsoDate(lastDay) ? addDays(lastDay, 1) : '',
    depot,
  };
}

/** Whether enough is there to look what is free. */
export function canBeTried(draft: Draft): boolean {
  const { needs, startsOn, endsBefore } = wantedOf(draft);
  return needs.length > 0 && isIsoDate(startsOn) && endsBefore > startsOn;
}

export function askedOf(draft: Draft) {
  const { purpose, customer, why, heldTo } = draft;
  return {
    ...wantedOf(draft),
    purpose,
    customer: purpose === 'customer' ? customer : '',
    why,
    heldUntil: heldTo === '' ? null : `${heldTo}T23:59:59.000Z`,
  };
}
