/*
 * What a return is charged from: what the check-in, the workshop and the recomputed hire found, as plain facts.
 * Invariant: prices and terms are those of the quote that was accepted; a cause decides whether the damage waiver covers a piece.
 * Not here: working the charges out (return-charges.ts), and the hire for the days that were used (hire-charge.ts).
 * Read next: return-charges.ts.
 */
import type { Minor } from '#lib/money/money.ts';
import type { PricingTerms } from './terms.ts';

/** What stuck to a piece when it came back; `dirty` is dirt and nothing else. */
export const SOILS = ['dirty', 'water', 'sewage', 'product', 'unknown'] as const;
export type Soil = (typeof SOILS)[number];

/** What the house asks for cleaning a piece and for an hour in the workshop; null or absent where it has no price. */
export interface ReturnRates {
  readonly workshop_minor_per_hour: Minor | null;
  readonly cleaning_minor: Readonly<Partial<Record<Soil, Minor>>>;
}

/** How a piece came to be broken or lost, as far as the damage waiver asks. */
export type Cause =
  | { readonly kind: 'not known' }
  | { readonly kind: 'covered' }
  /** One of the things that the waiver leaves out, in the words of the terms. */
  | { readonly kind: 'left out'; readonly words: string };

interface Charged {
  /** Stable name of what is charged, such as `piece 12`. */
  readonly about: string;
  /** Model number; empty where it is none. */
  readonly number: string;
  readonly name: string;
  readonly serials: readonly string[];
}

/** Hire of one piece for the days that it was really charged, against what the quote charged for it. */
export interface HireChange extends Charged {
  readonly kind: 'hire';
  readonly quoted_minor: Minor;
  readonly charged_minor: Minor;
  /** How the days came about. */
  readonly sentence: string;
}

export interface CleaningFact extends Charged {
  readonly kind: 'cleaning';
  readonly soil: Soil;
}

export interface RepairFact extends Charged {
  readonly kind: 'repair';
  readonly hours: number;
  readonly parts_minor: Minor;
  readonly replacement_minor: Minor;
  readonly cause: Cause;
  /** What is broken, and whether the hours are an estimate. */
  readonly words: string;
}

export interface LossFact extends Charged {
  readonly kind: 'loss';
  readonly count: number;
  readonly replacement_minor: Minor;
  readonly cause: Cause;
}

/** Sold by the quote; what was used beyond it is charged, what came back unused is credited. */
export interface SoldFact extends Charged {
  readonly kind: 'sold';
  readonly quoted: number;
  readonly used: number;
  readonly price_minor: Minor;
}

/** Charged as lost on an earlier note, and found since. */
export interface FoundFact extends Charged {
  readonly kind: 'found';
  /** What was charged for its loss in the end, before tax. */
  readonly charged_minor: Minor;
  /** Number of the note on which it was. */
  readonly note: string;
  /** Hire from the day of the loss to the day it was found; nought where the terms leave it free. */
  readonly hire_minor: Minor;
  /** How the hire came about. */
  readonly sentence: string;
}

export type ReturnFact = HireChange | CleaningFact | RepairFact | LossFact | SoldFact | FoundFact;

export interface ReturnQuestion {
  readonly terms: PricingTerms;
  readonly rates: ReturnRates;
  readonly waiver: 'taken' | 'declined';
  readonly facts: readonly ReturnFact[];
}

export const RETURN_KINDS = [
  'more hire',
  'less hire',
  'waiver',
  'cleaning',
  'repair',
  'loss',
  'consumed',
  'unused',
  'found',
  'until found',
] as const;
export type ReturnKind = (typeof RETURN_KINDS)[number];

export interface ReturnLine {
  readonly kind: ReturnKind;
  readonly about: string;
  readonly number: string;
  readonly name: string;
  readonly serials: readonly string[];
  /** Below nought for what is given back (EN 16931, BR-27: a price of one never is). */
  readonly quantity: number;
  readonly unit_minor: Minor;
  readonly net_minor: Minor;
  /** Tax category code. */
  readonly tax: string;
  /** How it came about. */
  readonly sentence: string;
  /** What keeps it from being approved as it stands; null where nothing does. */
  readonly open: 'cause' | 'price' | null;
}
