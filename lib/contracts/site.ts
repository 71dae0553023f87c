/*
 * The site as JSON: keys of the site form, quantities as text with their unit or as numbers in the unit of the default.
 * Invariant: unknown keys are refused with the nearest known key named; what is not given is absent, but for the named defaults.
 * Not here: house defaults that fill the gaps of a duty (lib/duty/house-constants.ts).
 * Read next: ../duty/site.ts.
 */
import { z } from 'zod';
import { HOUSE_RULE_KINDS, POWER_SOURCES, type Site } from '#lib/duty/site.ts';
import { type IsoDate, isIsoDate } from '#lib/kernel/date-range.ts';
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { type Known, known } from '#lib/units/known-value.ts';
import { parseQuantityRange } from '#lib/units/parse-quantity.ts';
import { DIMENSIONS, type Dimension, findUnit, fromSi } from '#lib/units/unit-table.ts';
import { wrongRuleValue } from './house-rule-values.ts';

type QuantityKey = 'air_pressure' | 'air_flow' | 'altitude' | 'temperature' | 'noise_limit';

/** Dimension, unit of a bare number, and plausible range in SI of each quantity. */
const QUANTITIES = {
  air_pressure: { dimension: 'pressure', bareUnit: 'bar', low: 5e4, high: 4e6, words: '0.5 to 40 bar' },
  air_flow: { dimension: 'flow', bareUnit: 'l/min', low: 0, high: 2, words: '0 to 120 000 l/min' },
  altitude: { dimension: 'length', bareUnit: 'm', low: -450, high: 6000, words: '-450 to 6000 m' },
  temperature: { dimension: 'temperature', bareUnit: '°C', low: -60, high: 65, words: '-60 to 65 °C' },
  noise_limit: { dimension: 'sound', bareUnit: 'dB', low: 30, high: 140, words: '30 to 140 dB' },
} as const satisfies Readonly<
  Record<QuantityKey, { dimension: Dimension; bareUnit: string; low: number; high: number; words: string }>
>;

/** A quantity as text with a unit, or a number in the unit that its key has by default. */
function quantity(key: QuantityKey) {
  const { dimension, bareUnit, low, high, words } = QUANTITIES[key];
  return z
    .union([z.string().trim().min(1).max(80), z.number()])
    .superRefine((value, context) => {
      const read = parseQuantityRange({ text: String(value), dimension, bareUnit });
      if (!read.ok)
        context.addIssue({
          code: 'custom',
          message: `is not readable: write a number and its unit, for example “${words.split(' to ')[1]}”`,
        });
      else if (read.value.low < low || read.value.high > high)
        context.addIssue({ code: 'custom', message: `is outside what is plausible (${words})` });
    })
    .meta({ description: `Text with its unit, or a number in ${bareUnit}.` })
    .optional();
}

const text = z.string().trim().min(1).max(200);

const houseRule = z
  .strictObject({
    id: text,
    kind: z.enum(HOUSE_RULE_KINDS),
    value: text,
    sentence: z.string().trim().min(1).max(500),
    /** Switched off: kept, and not asked. */
    off: z.literal(true).optional(),
  })
  .superRefine((rule, context) => {
    const wrong = wrongRuleValue(rule);
    if (wrong !== null) context.addIssue({ code: 'custom', path: ['value'], message: wrong });
  });

export type SiteRules = readonly z.output<typeof houseRule>[];

/** The rules in the facts of a site as it is kept, those too that are switched off. */
export function rulesOfPlace(facts: Readonly<Record<string, unknown>>): SiteRules {
  return z.array(houseRule).parse(facts.house_rules ?? []);
}

/** What a site gives when it says nothing of crews and days. House practice, no source. */
const DEFAULTS = { shift_hours: 8, crews: 1, persons_per_crew: 2, move_minutes: 10, days: 1 } as const;

export const siteSchema = z
  .strictObject({
    name: text.optional(),
    sources_allowed: z
      .array(z.enum(POWER_SOURCES))
      .min(1)
      .max(POWER_SOURCES.length)
      .default([...POWER_SOURCES]),
    air_pressure: quantity('air_pressure'),
    air_flow: quantity('air_flow'),
    mains_voltage: z.number().min(12).max(1000).optional(),
    mains_plug: text.optional(),
    vehicle_access: z.boolean().optional(),
    anchors_allowed: z.array(text).max(20).optional(),
    zone: text
      .meta({ description: '0, 1, 2, 20, 21, 22, mine or none; what cannot be read is judged at its hardest.' })
      .optional(),
    gas_group: text.meta({ description: 'IIA, IIB, IIB+H2, IIC, IIIA, IIIB, IIIC or I.' }).optional(),
    temperature_class: text.meta({ description: 'T1 to T6, or a temperature such as T85 °C.' }).optional(),
    area_remark: z
      .string()
      .trim()
      .min(1)
      .max(500)
      .meta({ description: 'Anything else about the hazardous area; it is printed, never read.' })
      .optional(),
    enclosed: z.boolean().optional(),
    altitude: quantity('altitude'),
    temperature: quantity('temperature'),
    noise_limit: quantity('noise_limit'),
    shift_hours: z.number().min(1).max(16).default(DEFAULTS.shift_hours),
    crews: z.int().min(1).max(LIMITS.crews).default(DEFAULTS.crews),
    persons_per_crew: z.int().min(1).max(12).default(DEFAULTS.persons_per_crew),
    move_minutes: z.number().min(0).max(480).default(DEFAULTS.move_minutes),
    starts_on: z.string().refine(isIsoDate, 'is not a date in the form YYYY-MM-DD').optional(),
    days: z.int().min(1).max(LIMITS.hire_days).default(DEFAULTS.days),
    transport: z.enum(['road', 'air', 'sea']).default('road'),
    operated: z.boolean().default(false),
    house_rules: z.array(houseRule).max(100).default([]),
  })
  .meta({ id: 'Site', description: 'What holds for all lines of a site: sources, supplies, place, crews and days.' });

export type SiteJson = z.input<typeof siteSchema>;

const KEYS: readonly string[] = Object.keys(siteSchema.shape);

export function parseSite(json: unknown, defaults: { readonly startsOn: IsoDate }): Result<Site> {
  const parsed = siteSchema.safeParse(json);
  if (!parsed.success) {
    return failed({ code: 'site-unreadable', sentence: parsed.error.issues.map(issueSentence).join(' ') });
  }
  return ok(readSite(parsed.data, defaults.startsOn));
}

function issueSentence(issue: z.core.$ZodIssue): string {
  if (issue.code === 'unrecognized_keys' && issue.path.length === 0) {
    return issue.keys.map((key) => `Site: there is no “${key}”; did you mean “${nearestKey(key)}”?`).join(' ');
  }
  const place = issue.path.join('.');
  return `Site${place === '' ? '' : `, ${place}`}: ${issue.message.replace(/\.$/, '')}.`;
}

function nearestKey(key: string): string {
  const plain = key.toLowerCase().replace(/[^a-z]+/g, '_');
  return KEYS.reduce((best, name) => (distance(plain, name) < distance(plain, best) ? name : best), KEYS[0] ?? '');
}

/** Edit distance, less where one holds the other whole. */
function distance(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_unused, index) => index);
  for (let i = 1; i <= a.length; i += 1) {
    const current = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const change = (previous[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      current.push(Math.min(change, (previous[j] ?? 0) + 1, (current[j - 1] ?? 0) + 1));
    }
    previous = current;
  }
  const far = previous[b.length] ?? a.length;
  return a.length >= 4 && (b.includes(a) || a.includes(b)) ? far / 4 : far;
}

function readSite(site: z.output<typeof siteSchema>, startsOn: IsoDate): Site {
  const {
    name,
    mains_voltage,
    mains_plug,
    vehicle_access,
    anchors_allowed,
    zone,
    gas_group,
    temperature_class,
    area_remark,
    enclosed,
  } = site;
  return {
    ...(name === undefined ? {} : { name }),
    sourcesAllowed: [...new Set(site.sources_allowed)],
    ...readKnown(site, 'air_pressure', 'airPressure', 'Pa'),
    ...readKnown(site, 'air_flow', 'airFlow', 'm³/s'),
    ...(mains_voltage === undefined ? {} : { mainsVoltage: mains_voltage }),
    ...(mains_plug === undefined ? {} : { mainsPlug: mains_plug }),
    ...(vehicle_access === undefined ? {} : { vehicleAccess: vehicle_access }),
    ...(anchors_allowed === undefined ? {} : { anchorsAllowed: anchors_allowed }),
    ...(zone === undefined ? {} : { zone }),
    ...(gas_group === undefined ? {} : { gasGroup: gas_group }),
    ...(temperature_class === undefined ? {} : { temperatureClass: temperature_class }),
    ...(area_remark === undefined ? {} : { areaRemark: area_remark }),
    ...(enclosed === undefined ? {} : { enclosed }),
    ...readKnown(site, 'altitude', 'altitude', 'm'),
    ...readKnown(site, 'temperature', 'temperature', '°C'),
    ...readKnown(site, 'noise_limit', 'noiseLimit', 'dB'),
    shiftHours: site.shift_hours,
    crews: site.crews,
    personsPerCrew: site.persons_per_crew,
    moveMinutes: site.move_minutes,
    startsOn: site.starts_on ?? startsOn,
    days: site.days,
    transport: site.transport,
    operated: site.operated,
    houseRules: site.house_rules
      .filter((rule) => rule.off !== true)
      .map(({ id, kind, value, sentence }) => ({ id, kind, value, sentence })),
  };
}

function readKnown<Name extends string, U extends 'Pa' | 'm³/s' | 'm' | '°C' | 'dB'>(
  site: z.output<typeof siteSchema>,
  ...[key, name, unit]: readonly [key: QuantityKey, name: Name, unit: U]
): { readonly [K in Name]?: Known<U> } {
  const value = site[key];
  const entry: { [K in Name]?: Known<U> } = {};
  const { dimension, bareUnit } = QUANTITIES[key];
  const read = value === undefined ? null : parseQuantityRange({ text: String(value), dimension, bareUnit });
  if (read?.ok && DIMENSIONS[dimension] === unit) {
    entry[name] = known(unit, read.value, {
      basis: 'stated',
      source: `Stated for the site: ${key.replaceAll('_', ' ')} “${value}”.`,
    });
  }
  return entry;
}

/** The site in the keys and units that `parseSite` reads; reading it again gives the same site. */
export function siteToJson(site: Site): SiteJson {
  const { airPressure, airFlow, altitude, temperature, noiseLimit } = site;
  return {
    ...(site.name === undefined ? {} : { name: site.name }),
    sources_allowed: [...site.sourcesAllowed],
    ...writeKnown('air_pressure', airPressure),
    ...writeKnown('air_flow', airFlow),
    ...(site.mainsVoltage === undefined ? {} : { mains_voltage: site.mainsVoltage }),
    ...(site.mainsPlug === undefined ? {} : { mains_plug: site.mainsPlug }),
    ...(site.vehicleAccess === undefined ? {} : { vehicle_access: site.vehicleAccess }),
    ...(site.anchorsAllowed === undefined ? {} : { anchors_allowed: [...site.anchorsAllowed] }),
    ...(site.zone === undefined ? {} : { zone: site.zone }),
    ...(site.gasGroup === undefined ? {} : { gas_group: site.gasGroup }),
    ...(site.temperatureClass === undefined ? {} : { temperature_class: site.temperatureClass }),
    ...(site.areaRemark === undefined ? {} : { area_remark: site.areaRemark }),
    ...(site.enclosed === undefined ? {} : { enclosed: site.enclosed }),
    ...writeKnown('altitude', altitude),
    ...writeKnown('temperature', temperature),
    ...writeKnown('noise_limit', noiseLimit),
    shift_hours: site.shiftHours,
    crews: site.crews,
    persons_per_crew: site.personsPerCrew,
    move_minutes: site.moveMinutes,
    starts_on: site.startsOn,
    days: site.days,
    transport: site.transport,
    operated: site.operated,
    house_rules: site.houseRules.map((rule) => ({ ...rule })),
  };
}

function writeKnown<Key extends QuantityKey>(
  key: Key,
  value: { readonly low: number; readonly nominal: number; readonly high: number } | undefined,
): { readonly [K in Key]?: string } {
  const entry: { [K in Key]?: string } = {};
  const { dimension, bareUnit } = QUANTITIES[key];
  const unit = findUnit({ text: bareUnit, dimension });
  if (value === undefined || unit === undefined) return entry;
  const number = (si: number): string => String(Number(fromSi(unit, si).toPrecision(15)));
  entry[key] =
    value.low === value.high
      ? `${number(value.nominal)} ${bareUnit}`
      : `${number(value.low)} to ${number(value.high)} ${bareUnit}`;
  return entry;
}

/** Keys that belong to one job and not to the place where it is done. */
const JOB_KEYS: readonly string[] = ['starts_on', 'days', 'crews', 'operated'];

type SiteFacts = Readonly<Record<string, unknown>>;

/** What holds at the place for every job. */
export function factsOfPlace(json: SiteFacts): SiteFacts {
  return Object.fromEntries(Object.entries(json).filter(([key]) => !JOB_KEYS.includes(key)));
}

/** What belongs to this job alone. */
export function factsOfJob(json: SiteFacts): SiteFacts {
  return Object.fromEntries(Object.entries(json).filter(([key]) => JOB_KEYS.includes(key)));
}
