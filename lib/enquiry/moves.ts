/*
 * The states of an enquiry and the steps between them: which are taken by hand, and which follow from a deed such as issuing a quote.
 * Invariant: every state is reached from new, and a person gets out of every state but accepted, which a booking holds.
 * Not here: writing the step down (lib/services/enquiries/move-enquiry.ts).
 * Read next: decide-move.ts.
 */

export const ENQUIRY_STATES = ['new', 'being worked', 'quoted', 'accepted', 'declined', 'lapsed'] as const;
export type EnquiryState = (typeof ENQUIRY_STATES)[number];

/** What makes a step: a person at the Desk, or something done to the enquiry or to its quote. */
export const MOVERS = [
  'by hand',
  'work',
  'quote issued',
  'quote accepted',
  'quote declined',
  'booking cancelled',
] as const;
export type Mover = (typeof MOVERS)[number];

const FROM: Readonly<Record<Mover, Readonly<Partial<Record<EnquiryState, readonly EnquiryState[]>>>>> = {
  'by hand': {
    new: ['being worked', 'declined'],
    'being worked': ['new', 'declined'],
    quoted: ['being worked', 'declined', 'lapsed'],
    declined: ['being worked'],
    lapsed: ['being worked', 'declined'],
  },
  work: { new: ['being worked'], quoted: ['being worked'], declined: ['being worked'], lapsed: ['being worked'] },
  'quote issued': {
    new: ['quoted'],
    'being worked': ['quoted'],
    quoted: ['quoted'],
    declined: ['quoted'],
    lapsed: ['quoted'],
    accepted: ['accepted'],
  },
  'quote accepted': {
    'being worked': ['accepted'],
    quoted: ['accepted'],
    declined: ['accepted'],
    lapsed: ['accepted'],
  },
  'quote declined': {
    'being worked': ['declined'],
    quoted: ['declined'],
    lapsed: ['declined'],
    declined: ['declined'],
  },
  'booking cancelled': { accepted: ['being worked', 'quoted', 'declined'] },
};

export function movesFrom({ from, by }: { readonly from: EnquiryState; readonly by: Mover }): readonly EnquiryState[] {
  return FROM[by][from] ?? [];
}

export function enquiryStateNamed(name: string): EnquiryState {
  return ENQUIRY_STATES.find((state) => state === name) ?? 'new';
}
