/*
 * The life of a booking and of each unit in it: the states, the steps between them, and how the one follows from the others.
 * Invariant: a booking's state is worked from its units' wherever one has moved; what has ended holds nothing.
 * Not here: who may take a step (lib/services/authorise.ts), and writing it down (lib/services/yard).
 * Read next: hold.ts, unit.ts.
 */
import { failed, ok, type Result } from '#lib/kernel/result.ts';

export const BOOKING_STATES = [
  'held',
  'confirmed',
  'allocated',
  'picked',
  'out',
  'back',
  'closed',
  'cancelled',
  'lapsed',
] as const;
export type BookingState = (typeof BOOKING_STATES)[number];

/** Nothing moves in these any more, and they hold no unit. */
export const ENDED_STATES = ['closed', 'cancelled', 'lapsed'] as const satisfies readonly BookingState[];

/** A unit of a booking in these is taken: nobody else can have it on its days. */
export const HOLDING_STATES = ['held', 'allocated', 'picked', 'out', 'back'] as const;
/** The unit has done its part (`checked`), or left the booking before. */
export const DONE_STATES = ['checked', 'swapped', 'released', 'lost'] as const;
export const BOOKED_UNIT_STATES = [...HOLDING_STATES, ...DONE_STATES] as const;
export type BookedUnitState = (typeof BOOKED_UNIT_STATES)[number];

const UNIT_STEPS: Readonly<Record<BookedUnitState, readonly BookedUnitState[]>> = {
  held: ['allocated', 'released', 'swapped'],
  // Picking may be undone, and a unit may be swapped or given up as long as it has not left.
  allocated: ['held', 'picked', 'released', 'swapped'],
  picked: ['allocated', 'held', 'out', 'released', 'swapped'],
  out: ['back', 'swapped', 'lost'],
  back: ['checked', 'lost'],
  checked: [],
  swapped: [],
  released: [],
  lost: ['back'],
};

export function holds(state: BookedUnitState): boolean {
  return HOLDING_STATES.some((holding) => holding === state);
}

export function hasEnded(state: BookingState): boolean {
  return ENDED_STATES.some((ended) => ended === state);
}

export function isBookingState(text: string): text is BookingState {
  return BOOKING_STATES.some((state) => state === text);
}

export function isBookedUnitState(text: string): text is BookedUnitState {
  return BOOKED_UNIT_STATES.some((state) => state === text);
}

/** What may be taken back as long as the booking has not ended: a leaving, and a check-in. */
const UNDO_STEPS: Partial<Readonly<Record<BookedUnitState, BookedUnitState>>> = {
  out: 'picked',
  back: 'out',
  checked: 'out',
  lost: 'out',
};

export function decideUnitUndo({ serial, from, to }: UnitStep): Result<BookedUnitState> {
  if (UNDO_STEPS[from] === to) return ok(to);
  return failed({
    code: 'unit-undo-not-allowed',
    sentence: `${serial} is ${from} by now: that cannot be taken back to ${to}.`,
  });
}

interface UnitStep {
  readonly serial: string;
  readonly from: BookedUnitState;
  readonly to: BookedUnitState;
}

export function decideUnitStep({ serial, from, to }: UnitStep): Result<BookedUnitState> {
  if (UNIT_STEPS[from].includes(to)) return ok(to);
  if (from === to) return failed({ code: 'unit-state-already', sentence: `${serial} is ${to} already.` });
  return failed({
    code: 'unit-step-not-allowed',
    sentence: `${serial} is ${from} and cannot become ${to}: from there it can only become ${UNIT_STEPS[from].join(' or ') || 'nothing else'}.`,
  });
}

/**
 * The booking's state from its units'. Part deliveries: it is out as soon as one is; part returns: it is back when none is out.
 * Before that it goes with the unit that is least far, so that "picked" means all of it.
 */
export function followedState({
  booking,
  units,
}: {
  readonly booking: BookingState;
  readonly units: readonly BookedUnitState[];
}): BookingState {
  if (hasEnded(booking)) return booking;
  const its = units.filter((state) => state !== 'swapped' && state !== 'released');
  const begun = its.filter((state) => state !== 'held' && state !== 'allocated' && state !== 'picked');
  if (begun.length > 0) return begun.length < its.length || begun.includes('out') ? 'out' : 'back';
  // What has been out stays out: a unit that failed was swapped, and the one in its place has still to leave.
  if (booking === 'out' || booking === 'back') return its.length === 0 ? booking : 'out';
  if (its.length === 0 || its.includes('held')) return booking === 'held' ? 'held' : 'confirmed';
  return its.includes('allocated') ? 'allocated' : 'picked';
}

type Ending = (typeof ENDED_STATES)[number] | 'confirmed';

interface BookingStep {
  readonly number: string;
  readonly from: BookingState;
  readonly to: Ending;
  readonly units: readonly BookedUnitState[];
}

/** The steps of a booking that do not follow from its units: confirming it, and the three ways in which it ends. */
export function decideBookingStep({ number, from, to, units }: BookingStep): Result<Ending> {
  if (from === to) return failed({ code: 'booking-state-already', sentence: `Booking ${number} is ${to} already.` });
  if (hasEnded(from))
    return failed({
      code: 'booking-ended',
      sentence: `Booking ${number} is ${from}: nothing more can be done with it.`,
    });
  const left = units.filter((state) => state === 'out' || state === 'back').length;
  switch (to) {
    case 'confirmed':
      if (from === 'held') return ok(to);
      return failed({
        code: 'booking-state-already',
        sentence: `Booking ${number} was confirmed before and is ${from}.`,
      });
    case 'lapsed':
      if (from === 'held') return ok(to);
      return failed({ code: 'booking-under-way', sentence: `Booking ${number} is ${from}: only a hold can run out.` });
    case 'cancelled':
      if (from !== 'out' && from !== 'back') return ok(to);
      return failed({
        code: 'booking-under-way',
        sentence: `Booking ${number} is ${from}: what has left the house is taken back by the yard, it cannot be cancelled any more.`,
      });
    case 'closed':
      if (from === 'back' && left === 0) return ok(to);
      return failed({
        code: from === 'back' ? 'units-unchecked' : 'units-not-back',
        sentence:
          from === 'back'
            ? `${left} of booking ${number} are back and not checked in yet: check them in, then close it.`
            : `Booking ${number} is ${from}: it is closed once everything is back and checked in.`,
      });
  }
}
