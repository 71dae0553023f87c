/*
 * Decides whether an enquiry may take a step, and how its state reads today.
 * Invariant: a refusal says what to do instead; an enquiry lapses by its date, without anybody moving it.
 * Not here: who may do it (lib/services/authorise.ts).
 * Read next: moves.ts.
 */

import type { IsoDate } from '#lib/kernel/date-range.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { type EnquiryState, type Mover, movesFrom } from './moves.ts';

interface Step {
  readonly from: EnquiryState;
  readonly to: EnquiryState;
  readonly by: Mover;
}

export function decideMove(step: Step): Result<EnquiryState> {
  const { from, to, by } = step;
  if (movesFrom({ from, by }).includes(to)) return ok(to);
  if (from === to) return failed({ code: 'state-already', sentence: `The enquiry is ${to} already.` });
  return failed({
    code: 'move-not-allowed',
    sentence: `An enquiry that is ${from} cannot be made ${to} here. ${INSTEAD[to]}`,
  });
}

const INSTEAD: Readonly<Record<EnquiryState, string>> = {
  new: 'Only one that is being worked and has no quote goes back to new.',
  'being worked': 'Cancel its booking first.',
  quoted: 'Issue a quote under Price & papers: that makes it quoted.',
  accepted: 'Record the acceptance on its quote under Price & papers: that books the equipment.',
  declined: 'Cancel its booking first.',
  lapsed: 'Only one that is quoted lapses.',
};

interface Standing {
  readonly state: EnquiryState;
  /** Last day of the newest quote; null where there is none. */
  readonly validUntil: IsoDate | null;
  readonly today: IsoDate;
}

/** A quoted enquiry whose newest quote is past its last day reads as lapsed. */
export function stateToday({ state, validUntil, today }: Standing): EnquiryState {
  return state === 'quoted' && validUntil !== null && validUntil < today ? 'lapsed' : state;
}
