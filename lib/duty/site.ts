/*
 * What holds for all lines of a site: sources allowed, supplies, place, crews and days.
 * Invariant: a fact that the site does not give is absent, never a silent default.
 * Not here: house defaults that fill the gaps (house-constants.ts).
 * Read next: schedule-line.ts.
 */
import type { IsoDate } from '#lib/kernel/date-range.ts';
import type { Known } from '#lib/units/known-value.ts';

export const POWER_SOURCES = ['battery', 'air', 'petrol'] as const;
export type PowerSource = (typeof POWER_SOURCES)[number];

export const HOUSE_RULE_KINDS = [
  'no-source',
  'largest-class',
  'no-head-kind',
  'no-adapter-kind',
  'no-restraint-kind',
  'no-restraint-to',
  'no-chain-to',
  'always-limiter',
  'counter-above-turns',
  'no-lithium-by',
  'persons-at-every-valve',
  'max-lift',
  'max-sound',
  'max-vibration',
] as const;
export type HouseRuleKind = (typeof HOUSE_RULE_KINDS)[number];

/** A rule of this house, customer or site, held as data. */
export interface HouseRule {
  readonly id: string;
  readonly kind: HouseRuleKind;
  readonly value: string;
  readonly sentence: string;
}

export interface Site {
  readonly name?: string;
  readonly sourcesAllowed: readonly PowerSource[];
  /** Gauge pressure at the point of supply. */
  readonly airPressure?: Known<'Pa'>;
  /** Free air. */
  readonly airFlow?: Known<'m³/s'>;
  readonly mainsVoltage?: number;
  readonly mainsPlug?: string;
  readonly vehicleAccess?: boolean;
  readonly anchorsAllowed?: readonly string[];
  readonly zone?: string;
  readonly gasGroup?: string;
  readonly temperatureClass?: string;
  /** Free words about the hazardous area: printed, never read. */
  readonly areaRemark?: string;
  readonly enclosed?: boolean;
  readonly altitude?: Known<'m'>;
  readonly temperature?: Known<'°C'>;
  readonly noiseLimit?: Known<'dB'>;
  readonly shiftHours: number;
  readonly crews: number;
  readonly personsPerCrew: number;
  readonly moveMinutes: number;
  readonly startsOn: IsoDate;
  readonly days: number;
  readonly transport: 'road' | 'air' | 'sea';
  readonly operated: boolean;
  readonly houseRules: readonly HouseRule[];
}
