/*
 * Serial-numbered pieces and what holds them: the words of stock.
 * Invariant: a booking is a half-open range of days; a unit that is not in a hireable state is never free.
 * Not here: deciding what is free (free-units.ts), moving units between states (yard).
 * Read next: free-units.ts.
 */
import type { DateRange, IsoDate } from '#lib/kernel/date-range.ts';

/** In the yard, with a customer, returned but not yet checked in, and between two depots: these can be hired on later dates. */
export const HIREABLE_STATES = ['ready', 'out', 'back', 'on the way'] as const;
/** These cannot, until somebody changes the state. */
export const HELD_BACK_STATES = ['quarantine', 'workshop', 'lost', 'retired'] as const;
export const UNIT_STATES = [...HIREABLE_STATES, ...HELD_BACK_STATES] as const;
export type UnitState = (typeof UNIT_STATES)[number];

export interface Unit {
  readonly serial: string;
  /** Model number. */
  readonly model: string;
  readonly depot: string;
  readonly bay: string;
  /** One of UNIT_STATES; anything else counts as held back. */
  readonly state: string;
  /** First day on which it may no longer be used without its inspection; null where none is asked. */
  readonly inspectionDueOn: IsoDate | null;
  readonly calibrationDueOn: IsoDate | null;
}

/** One unit held over one range of days. */
export interface UnitBooking {
  readonly serial: string;
  readonly window: DateRange;
  /** First day on which it may go out again, as it was booked; at the earliest. The turnaround of the house decides where it is later. */
  readonly freeAgainOn?: IsoDate;
  /** A unit on its way to another depot needs no turnaround when it arrives; absent is a hire. */
  readonly why?: 'hire' | 'transfer';
  /** Number of the booking or transfer, where it is told. */
  readonly number?: string;
  /** Day on which it was to be back; from then on it is late. Absent where it is not. */
  readonly lateFrom?: IsoDate;
  /** It has gone out: nothing about its start can change any more. */
  readonly hasLeft?: boolean;
}

/** Pieces of a counted model in one depot. */
export interface CountedShelf {
  readonly model: string;
  readonly depot: string;
  readonly count: number;
}

/** A number of counted pieces held over days, turnaround included. */
export interface CountedHold {
  readonly model: string;
  /** The depot they leave from; empty where it was not kept. */
  readonly depot: string;
  readonly count: number;
  readonly days: DateRange;
}

export interface CountedStock {
  readonly shelves: readonly CountedShelf[];
  readonly holds: readonly CountedHold[];
}

export interface StockQuestion {
  readonly units: readonly Unit[];
  readonly bookings: readonly UnitBooking[];
  /** What is held by number; absent where only units are asked about. */
  readonly counted?: CountedStock;
  readonly window: DateRange;
  /** Days after a hire in which the piece is checked, cleaned and charged before it goes out again. */
  readonly turnaroundDays: number;
}
