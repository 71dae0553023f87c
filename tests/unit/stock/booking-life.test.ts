import { describe, expect, it } from 'vitest';
import {
  BOOKED_UNIT_STATES,
  BOOKING_STATES,
  type BookedUnitState,
  type BookingState,
  decideBookingStep,
  decideUnitStep,
  followedState,
  hasEnded,
  holds,
} from '#lib/stock/booking-life.ts';

const follow = (booking: BookingState, ...units: readonly BookedUnitState[]) => followedState({ booking, units });
const end = (from: BookingState, to: 'confirmed' | 'cancelled' | 'lapsed' | 'closed', ...units: BookedUnitState[]) =>
  decideBookingStep({ number: 'B-00001', from, to, units });

describe('a unit in a booking', () => {
  it('goes held, allocated, picked, out, back, checked, one step after the other', () => {
    const way: readonly BookedUnitState[] = ['held', 'allocated', 'picked', 'out', 'back', 'checked'];
    for (const from of way)
      for (const to of way) {
        const forward = way.indexOf(to) === way.indexOf(from) + 1;
        const undone = (from === 'allocated' && to === 'held') || (from === 'picked' && way.indexOf(to) < 2);
        expect(decideUnitStep({ serial: 'S1', from, to }).ok, `${from} to ${to}`).toBe(forward || undone);
      }
  });

  it('leaves before it goes out by being released or swapped, and while it is out only swapped or lost', () => {
    for (const from of ['held', 'allocated', 'picked'] as const) {
      expect(decideUnitStep({ serial: 'S1', from, to: 'released' }).ok).toBe(true);
      expect(decideUnitStep({ serial: 'S1', from, to: 'swapped' }).ok).toBe(true);
      expect(decideUnitStep({ serial: 'S1', from, to: 'lost' }).ok).toBe(false);
    }
    expect(decideUnitStep({ serial: 'S1', from: 'out', to: 'released' })).toMatchObject({
      reason: {
        code: 'unit-step-not-allowed',
        sentence: 'S1 is out and cannot become released: from there it can only become back or swapped or lost.',
      },
    });
    expect(decideUnitStep({ serial: 'S1', from: 'out', to: 'swapped' }).ok).toBe(true);
    expect(decideUnitStep({ serial: 'S1', from: 'out', to: 'lost' }).ok).toBe(true);
  });

  it('that was lost may be found, and what is checked, swapped or released stays so', () => {
    expect(decideUnitStep({ serial: 'S1', from: 'lost', to: 'back' }).ok).toBe(true);
    for (const from of ['checked', 'swapped', 'released'] as const)
      for (const to of BOOKED_UNIT_STATES) expect(decideUnitStep({ serial: 'S1', from, to }).ok).toBe(false);
    expect(decideUnitStep({ serial: 'S1', from: 'checked', to: 'checked' })).toMatchObject({
      reason: { code: 'unit-state-already' },
    });
  });

  it('holds its unit until it is checked in or has left the booking', () => {
    expect(BOOKED_UNIT_STATES.filter(holds)).toEqual(['held', 'allocated', 'picked', 'out', 'back']);
  });
});

describe('a booking', () => {
  it('follows the unit that is least far while nothing has left', () => {
    expect(follow('held', 'held', 'held')).toBe('held');
    expect(follow('confirmed', 'held', 'allocated')).toBe('confirmed');
    expect(follow('confirmed', 'allocated', 'picked')).toBe('allocated');
    expect(follow('allocated', 'picked', 'picked')).toBe('picked');
    expect(follow('picked', 'picked', 'held')).toBe('confirmed');
  });

  it('is out as soon as one unit is out, and back when none is', () => {
    expect(follow('picked', 'out', 'picked')).toBe('out');
    expect(follow('confirmed', 'out', 'held')).toBe('out');
    expect(follow('out', 'back', 'out')).toBe('out');
    expect(follow('out', 'back', 'picked')).toBe('out');
    expect(follow('out', 'back', 'checked', 'lost')).toBe('back');
  });

  it('looks past units that were swapped or released', () => {
    expect(follow('confirmed', 'swapped', 'picked', 'released')).toBe('picked');
    expect(follow('out', 'swapped', 'back')).toBe('back');
    expect(follow('held', 'released')).toBe('held');
    expect(follow('confirmed')).toBe('confirmed');
  });

  it('that was out stays out while the unit in the place of one that failed has still to leave', () => {
    expect(follow('out', 'swapped', 'held')).toBe('out');
    expect(follow('out', 'swapped')).toBe('out');
  });

  it('that has ended follows nothing any more', () => {
    for (const state of BOOKING_STATES.filter(hasEnded)) expect(follow(state, 'out')).toBe(state);
  });

  it('is confirmed once, and only while it is held', () => {
    expect(end('held', 'confirmed').ok).toBe(true);
    expect(end('confirmed', 'confirmed')).toMatchObject({ reason: { code: 'booking-state-already' } });
    expect(end('picked', 'confirmed')).toMatchObject({ reason: { code: 'booking-state-already' } });
  });

  it('lapses only while it is held', () => {
    expect(end('held', 'lapsed').ok).toBe(true);
    expect(end('confirmed', 'lapsed')).toMatchObject({ reason: { code: 'booking-under-way' } });
  });

  it('is cancelled until something has left the house', () => {
    for (const from of ['held', 'confirmed', 'allocated', 'picked'] as const)
      expect(end(from, 'cancelled').ok).toBe(true);
    expect(end('out', 'cancelled', 'out')).toMatchObject({ reason: { code: 'booking-under-way' } });
    expect(end('back', 'cancelled', 'back')).toMatchObject({ reason: { code: 'booking-under-way' } });
  });

  it('is closed when everything is back and checked in, lost pieces settled', () => {
    expect(end('back', 'closed', 'checked', 'lost', 'swapped').ok).toBe(true);
    expect(end('back', 'closed', 'checked', 'back')).toMatchObject({ reason: { code: 'units-unchecked' } });
    expect(end('out', 'closed', 'out')).toMatchObject({ reason: { code: 'units-not-back' } });
    expect(end('cancelled', 'closed')).toMatchObject({ reason: { code: 'booking-ended' } });
  });
});
