/*
 * The plain inputs that papers are made of: house, customer, site, lines with their duty and assembly, kits, price, cases.
 * Invariant: whole facts, no strings to parse; money in minor units, quantities in SI.
 * Not here: how they are worded and set (…-paper.ts).
 * Read next: quote-paper.ts.
 */
import type { Duty } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { CrewDay } from '#lib/equipment/crew-day.ts';
import type { Model } from '#lib/equipment/model.ts';
import type { DateRange, IsoDate } from '#lib/kernel/date-range.ts';
import type { Finding } from '#lib/kernel/finding.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import type { Told } from '#lib/units/say-figure.ts';

export interface HouseInput {
  readonly name: string;
  readonly address: readonly string[];
  readonly phone?: string;
  readonly email?: string;
  readonly taxNumber?: string;
  readonly bank?: string;
}

export interface CustomerInput {
  readonly name: string;
  readonly contact?: string;
  readonly address: readonly string[];
  /** The customer's own reference or purchase order. */
  readonly reference?: string;
}

export interface SiteInput {
  readonly name: string;
  readonly address?: readonly string[];
  readonly window: DateRange;
  readonly crews: number;
  readonly personsPerCrew: number;
  readonly shiftHours: number;
  readonly operated: boolean;
  /** Other facts that matter, ready to read: `Zone 2`, `Air 6.5 bar at 30 l/s`. */
  readonly facts: readonly string[];
}

/** What every paper of an enquiry shares. */
export interface PaperContext {
  readonly number: string;
  readonly revision?: number;
  readonly issuedOn: IsoDate;
  readonly system: UnitSystem;
  readonly house: HouseInput;
  readonly customer: CustomerInput;
  readonly site: SiteInput;
  readonly models: readonly Model[];
  /** Pictures are lettered in the paper's language before they are set; absent where that is English. */
  readonly tell?: (words: string) => string;
}

/** One line of the schedule with what was worked out for it; null where it is not served. */
/** What one crew does of a line with one assembly, or what nobody does of it. */
export interface PaperLine {
  /** Equal lines share it. */
  readonly classId: string;
  /** Its `qty` is what this part holds. */
  readonly line: ScheduleLine;
  readonly duty: Duty;
  readonly assembly: Assembly | null;
  /** Crew, 1 …; absent when not served. */
  readonly crew?: number;
  /** Where a line is shared out: valves of it that other parts hold before these, and all that it has. */
  readonly share?: { readonly before: number; readonly of: number };
}

/** Id of the finding on a line that equipment fits and that is left all the same. */
export const SHORT_OF_TIME_OR_STOCK = 'not-in-the-time-or-stock';

export interface UnservedLine {
  readonly tag: string;
  readonly qty: number;
  readonly because: readonly Finding[];
  readonly repairs: readonly (Told & { readonly cost?: string })[];
}

export interface KitInput {
  readonly crew: number;
  readonly items: readonly { readonly number: string; readonly count: number; readonly serials?: readonly string[] }[];
  readonly hours: number;
  readonly valves: number;
  readonly mass_kg: number;
}

/** The planned days of one crew, and the heaviest case that it takes in and out of the vehicle. */
export interface CrewDaysInput {
  /** Crew, 1 … */
  readonly crew: number;
  readonly days: readonly CrewDay[];
  readonly heaviestCase: { readonly mass_kg: number; readonly lift: string } | null;
}

export interface PriceInput {
  readonly currency: string;
  readonly days: number;
  readonly lines: readonly {
    readonly label: string;
    readonly how: string;
    readonly quantity: number;
    /** What the quantity counts, where that is not pieces. */
    readonly unit?: string;
    /** After how many days buying would have been cheaper, as a sentence, where the quote is to say so. */
    readonly purchase?: string;
    readonly amount_minor: number;
    readonly taxCategory: string;
  }[];
  readonly taxes: readonly {
    readonly category: string;
    readonly label: string;
    readonly rate_percent: number;
    readonly base_minor: number;
    readonly tax_minor: number;
  }[];
  readonly net_minor: number;
  readonly tax_minor: number;
  readonly total_minor: number;
  readonly deposit_minor?: number;
  /** What the price rests on and what the damage waiver leaves out, whole sentences. */
  readonly notes: readonly string[];
}

export interface CaseInput {
  readonly number: string;
  readonly crew: number;
  readonly contents: readonly {
    readonly number: string;
    readonly name: string;
    readonly count: number;
    readonly serials: readonly string[];
    readonly mass_kg: number;
  }[];
  readonly mass_kg: number;
  /** `one person`, `two persons`, `lifting gear`. */
  readonly lift: string;
  readonly energy_wh: number;
  readonly dangerousGoods: readonly string[];
}

/** A certificate that travels with its unit. */
export interface CertificateInput {
  readonly serial: string;
  readonly name: string;
  readonly kind: 'inspection' | 'calibration';
  readonly doneOn: IsoDate;
  readonly dueOn: IsoDate;
}
