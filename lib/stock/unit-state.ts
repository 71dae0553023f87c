/*
 * Which states a person may set on a unit by hand, and what has to be said with it.
 * Invariant: whoever holds a unit back, writes it off or brings it back says why; `out`, `back` and `on the way` follow from hires and transfers.
 * Not here: what a booking does to a unit (booking-life.ts).
 * Read next: unit.ts.
 */
import { failed, ok, type Result } from '#lib/kernel/result.ts';

/** What hands may set; the others follow from what happens to the unit. */
export const SETTABLE_STATES = ['ready', 'quarantine', 'workshop', 'lost', 'retired'] as const;
export type SettableState = (typeof SETTABLE_STATES)[number];

export interface StateChange {
  readonly serial: string;
  readonly from: string;
  readonly to: SettableState;
  readonly reason: string;
  /** A certificate that ran out: such a unit cannot become ready. */
  readonly overdue: 'inspection' | 'calibration' | null;
}

export function decideStateChange({ serial, from, to, reason, overdue }: StateChange): Result<SettableState> {
  if (from === to) return failed({ code: 'unit-state-already', sentence: `${serial} is ${to} already.` });
  if (from === 'on the way') {
    return failed({
      code: 'unit-on-the-way',
      sentence: `${serial} is on its way to another depot: take the transfer in first, or write it off there.`,
    });
  }
  if (from === 'out' && to !== 'lost') {
    return failed({
      code: 'unit-out',
      sentence: `${serial} is out on hire: take it back through its booking, then change its state.`,
    });
  }
  if (reason.trim() === '') {
    return failed({
      code: 'reason-missing',
      sentence: `Say why ${serial} becomes ${to}; whoever meets it next reads it.`,
    });
  }
  if (to === 'ready' && overdue !== null) {
    return failed({
      code: 'certificate-overdue',
      sentence: `The ${overdue} of ${serial} is overdue: record a new one first, then it may become ready.`,
    });
  }
  return ok(to);
}
