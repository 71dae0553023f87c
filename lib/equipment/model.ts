/*
 * Everything that can be hired: a model has a role, a plain name, a number, mass, case, rates and typed facts for its role.
 * Invariant: facts are in SI; a fact that restricts is stated, never implied by the name.
 * Not here: serial-numbered units (stock) and reading catalogue files (contracts).
 * Read next: drive.ts, parts.ts, assembly.ts.
 */
import type { Minor } from '#lib/money/money.ts';
import type { Kilograms, Metres, WattHours } from '#lib/units/quantity.ts';
import type { DriveFacts } from './drive.ts';
import type { AccessoryFacts, AdapterFacts, ExtensionFacts, HeadFacts, OptionFacts, RestraintFacts } from './parts.ts';

export const ROLES = ['drive', 'head', 'adapter', 'extension', 'restraint', 'option', 'accessory'] as const;
export type Role = (typeof ROLES)[number];

export interface RateCard {
  readonly day_minor: Minor;
  readonly week_minor: Minor;
  readonly four_weeks_minor: Minor;
  readonly minimum_days: number;
}

export interface CaseSize {
  readonly length: Metres;
  readonly width: Metres;
  readonly height: Metres;
}

interface ModelBase {
  /** House number, e.g. `D-214`; unique. */
  readonly number: string;
  readonly name: string;
  /** The name on German papers and screens. */
  readonly germanName?: string;
  readonly mass: Kilograms;
  readonly case: CaseSize;
  readonly rates: RateCard;
  readonly replacement_minor: Minor;
  /** Counted items (pegs, pins, lanyards) are not units with serial numbers. */
  readonly counted: boolean;
  /** Made to order by the workshop: an enquiry, not a stock piece. */
  readonly madeToOrder: boolean;
  /** Marking text for hazardous areas as on the plate, or null when unmarked. */
  readonly marking: string | null;
  /** Lithium packs by energy each; for transport. */
  readonly lithium?: { readonly energy: WattHours; readonly packs: number };
}

export interface DriveModel extends ModelBase {
  readonly role: 'drive';
  readonly facts: DriveFacts;
}
export interface HeadModel extends ModelBase {
  readonly role: 'head';
  readonly facts: HeadFacts;
}
export interface AdapterModel extends ModelBase {
  readonly role: 'adapter';
  readonly facts: AdapterFacts;
}
export interface ExtensionModel extends ModelBase {
  readonly role: 'extension';
  readonly facts: ExtensionFacts;
}
export interface RestraintModel extends ModelBase {
  readonly role: 'restraint';
  readonly facts: RestraintFacts;
}
export interface OptionModel extends ModelBase {
  readonly role: 'option';
  readonly facts: OptionFacts;
}
export interface AccessoryModel extends ModelBase {
  readonly role: 'accessory';
  readonly facts: AccessoryFacts;
}

export type Model =
  | DriveModel
  | HeadModel
  | AdapterModel
  | ExtensionModel
  | RestraintModel
  | OptionModel
  | AccessoryModel;
