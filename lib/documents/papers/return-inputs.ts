/*
 * The plain inputs of a return note: what came back, piece by piece, what is still out, and what is charged for it.
 * Invariant: whole facts, money in minor units; the charges are those that the Desk decided.
 * Not here: how they are worded and set (return-paper.ts), working them out (pricing).
 * Read next: return-paper.ts.
 */
import type { WrittenForms } from '#lib/documents/words/written-forms.ts';
import type { IsoDate } from '#lib/kernel/date-range.ts';
import type { Language } from '#lib/wording/language.ts';
import type { PaperContext } from './paper-inputs.ts';

export interface ReturnNoteInput {
  readonly context: PaperContext;
  readonly bookingNumber: string;
  /** Quote with its revision, and the customer's order where there is one. */
  readonly quote: string;
  readonly orderNumber: string;
  /** Earlier return notes that it changes something of; each stays as it was issued. */
  readonly refersTo: readonly string[];
  readonly waiver: 'taken' | 'declined';
  readonly arrivals: readonly ArrivalInput[];
  readonly offHire: readonly {
    readonly number: string;
    readonly at: string;
    readonly saidBy: string;
    readonly units: number;
  }[];
  readonly stillOut: readonly {
    readonly name: string;
    readonly mark: string;
    readonly count: number;
    readonly due: IsoDate;
  }[];
  readonly charges: ReturnMoney;
  /** Where another currency than the house's own was quoted: the rate of the quote. */
  readonly exchange: { readonly from: string; readonly to: string; readonly rate: number } | null;
  /** How it is written where the quote was not in English; absent in all others. */
  readonly written?: WrittenNote;
}

export interface WrittenNote {
  readonly language: Language;
  readonly forms: WrittenForms;
  /** What somebody wrote, and what is named: it stays. */
  readonly names: readonly string[];
  /** Equipment and the house's own words, in English and in the language. */
  readonly own: readonly (readonly [english: string, told: string])[];
}

/** One coming back: what was said of it before anything was touched, and its pieces. */
export interface ArrivalInput {
  readonly sequence: number;
  readonly arrivedOn: IsoDate;
  readonly depot: string;
  readonly broughtBy: string;
  /** Declared before anything was checked in, in words. */
  readonly contamination: string;
  readonly pieces: readonly PieceInput[];
  readonly counted: readonly CountedInput[];
}

export interface PieceInput {
  readonly serial: string;
  readonly name: string;
  readonly condition: 'good' | 'dirty' | 'damaged' | 'missing';
  readonly runHours: number | null;
  readonly missingParts: string;
  readonly note: string;
  /** References of its photographs, such as `P-12`. */
  readonly photos: readonly string[];
  readonly sawOverload: boolean;
  /** Where it went from here: `ready`, `quarantine, W-00012`. */
  readonly went: string;
}

export interface CountedInput {
  readonly number: string;
  readonly name: string;
  readonly sent: number;
  readonly back: number;
  readonly unused: number;
  readonly sold: 'sold' | 'hired';
}

export interface ReturnMoney {
  readonly currency: string;
  readonly lines: readonly {
    readonly label: string;
    readonly how: string;
    /** What was worked out where the Desk decided otherwise; empty where it stands. */
    readonly remark: string;
    readonly quantity: number;
    readonly taxCategory: string;
    readonly net_minor: number;
  }[];
  readonly taxes: readonly {
    readonly category: string;
    readonly label: string;
    readonly rate_percent: number;
    readonly base_minor: number;
    readonly tax_minor: number;
    /** Why none is charged, where none is (EN 16931, BR-E-10 and its kin). */
    readonly reason?: string;
  }[];
  readonly net_minor: number;
  readonly tax_minor: number;
  readonly gross_minor: number;
}
