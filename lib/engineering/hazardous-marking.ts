/*
 * Marking of equipment for explosive atmospheres: reading it and holding it against zone, gas group and temperature class.
 * Invariant: unmarked, unread or contradictory is refused in every zone; a place without a zone refuses nothing.
 * Not here: which parts of an assembly need a marking (rules), permits and the area's own classification.
 * Read next: ../rules/.
 */
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { TEMPERATURE_CLASSES, TEMPERATURE_CODES } from './temperature-classes.ts';

export interface Marking {
  readonly group: 'I' | 'II';
  readonly category: 'M1' | 'M2' | '1' | '2' | '3';
  readonly atmosphere: 'G' | 'D' | null;
  /** Types of protection, e.g. `db`, `h`. */
  readonly protections: readonly string[];
  /** `IIA`, `IIB`, `IIC`, `IIIA` …, or `II` for all gas groups. */
  readonly subgroup: string;
  /** `T4`, or `T135°C` for dust. */
  readonly temperature: string | null;
  readonly level: string | null;
  /** Special conditions apply. */
  readonly special: boolean;
  /** Marked by rules that are no longer current: `EEx`, or letters c, b, k instead of h. */
  readonly old: boolean;
}

/** Zone, gas group and temperature class of a place; the last two may be unknown. */
export interface HazardousPlace {
  readonly zone: string;
  readonly gasGroup: string | null;
  readonly temperatureClass: string | null;
}

/** After 2014/34/EU Annex II 1.0.5, IEC 60079-0 clause 29 and ISO 80079-36 clause 11; from memory. */
const GRAMMAR =
  /^(I|II) (M1|M2|1|2|3) ?(G|D)?(?: \/?)? ?(EEx|Ex) ((?:[a-z]{1,3} )+)(I|II[ABC]?|III[ABC])(?: (T[1-6]|T ?\d{2,3} ?°C))?(?: (Ma|Mb|Ga|Gb|Gc|Da|Db|Dc))?(?: (X|U))?$/;

/** Zones and the lowest category that may stand in them: 2014/34/EU Annex I with 1999/92/EC. */
const ZONES: Readonly<Record<string, { readonly atmosphere: 'G' | 'D'; readonly category: number }>> = {
  '0': { atmosphere: 'G', category: 1 },
  '1': { atmosphere: 'G', category: 2 },
  '2': { atmosphere: 'G', category: 3 },
  '20': { atmosphere: 'D', category: 1 },
  '21': { atmosphere: 'D', category: 2 },
  '22': { atmosphere: 'D', category: 3 },
};

const LEVEL_OF_CATEGORY: Readonly<Record<string, string>> = { '1': 'a', '2': 'b', '3': 'c', M1: 'a', M2: 'b' };

/** Types of protection that a plate may name: IEC 60079-0 and ISO 80079-36 with the older letters; from memory. */
const PROTECTIONS: ReadonlySet<string> = new Set(
  'b c d da db dc e eb ec h i ia ib ic k m ma mb mc n o ob oc p px pxb py pyb pz pzc q qb s sa sb sc t ta tb tc'.split(
    ' ',
  ),
);

const CLASS_LIMITS: Readonly<Record<string, number>> = Object.fromEntries([
  ...TEMPERATURE_CLASSES,
  ...TEMPERATURE_CODES,
]);
const HARDEST_CLASS = 'T6';
/** What a bare letter is taken as: NEC 500.6 has acetylene in A and hydrogen in B, IEC 60079-20-1 has both in IIC; from memory. */
const HARDEST_GAS = 'IIC';

/**
 * Reads the marking on a plate.
 *
 * Formula: group, category, atmosphere, Ex, protections, subgroup, temperature, level, X
 *
 * @param text - Marking as on the plate, e.g. `II 2 G Ex db IIB T4 Gb`. [–]
 * @returns Its parts, or why it cannot be read or contradicts itself. [–]
 * @source 2014/34/EU Annex II 1.0.5; IEC 60079-0 clause 29; ISO 80079-36 clause 11.
 * @assumes One marking a text; a second one for dust is read apart.
 * @example parseMarking('II 2 G Ex db IIB T4 Gc').ok // => false
 */
export function parseMarking(text: string): Result<Marking> {
  const tidy = text
    .replace(/[⟨⟩⬡]|\bCE\b/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  const found = GRAMMAR.exec(tidy);
  if (found === null) {
    return failed({
      code: 'marking-unreadable',
      sentence: `The marking “${text}” cannot be read; it counts as unmarked.`,
    });
  }
  const [, group, category, atmosphere, prefix, codes, subgroup, temperature, level, suffix] = found;
  const protections = (codes ?? '').trim().split(' ');
  const strange = protections.filter((code) => !PROTECTIONS.has(code));
  if (strange.length > 0) {
    return failed({
      code: 'marking-unreadable',
      sentence: `The marking “${text}” names no type of protection that is known (${strange.join(', ')}); it counts as unmarked.`,
    });
  }
  const marking: Marking = {
    group: group === 'I' ? 'I' : 'II',
    category: readCategory(category),
    atmosphere: atmosphere === 'G' || atmosphere === 'D' ? atmosphere : null,
    protections,
    subgroup: subgroup ?? '',
    temperature: temperature?.replaceAll(' ', '') ?? null,
    level: level ?? null,
    special: suffix === 'X',
    old: prefix === 'EEx' || level === undefined || protections.some((code) => ['c', 'b', 'k'].includes(code)),
  };
  return contradiction(marking, text) ?? ok(marking);
}

/**
 * Whether equipment with a marking may stand in a place.
 *
 * Formula: category ≤ zone's category, atmosphere alike, group at least the place's, surface temperature at most the place's
 *
 * @param marking - Marking as on the plate; null when unmarked. [–]
 * @param place - Zone (`none` where there is none), gas group and temperature class. [–]
 * @returns The marking's parts (null outside zones), or why it is refused. [–]
 * @source 1999/92/EC Annex II B; IEC 60079-14; ISO 80079-36 for non-electrical equipment, air motors included.
 * @assumes Air between −20 and +40 °C; a place whose group or class is not known or cannot be read is taken at its hardest, IIC or IIIC and T6 (85 °C).
 * @example suitsPlace({ marking: 'II 2 G Ex h IIC T4 Gb', place: { zone: '1', gasGroup: 'IIC', temperatureClass: 'T2' } }).ok // => true
 */
export function suitsPlace({
  marking,
  place,
}: {
  readonly marking: string | null;
  readonly place: HazardousPlace;
}): Result<Marking | null> {
  const name = zoneName(place.zone);
  if (name === null) return ok(null);
  const zone = ZONES[name];
  if (zone === undefined)
    return refuse(
      'zone-unknown',
      `“${place.zone}” is not a zone that can be checked; ask what the area is classified as.`,
    );
  if (marking === null)
    return refuse('marking-missing', `Unmarked equipment is refused in zone ${name}, whatever drives it.`);
  const parsed = parseMarking(marking);
  if (!parsed.ok) return parsed;
  return misfit(parsed.value, { ...place, zone: name }, zone) ?? ok(parsed.value);
}

/**
 * Gas group and surface temperature that a gas zone asks for.
 *
 * Formula: as stated; what is not stated or cannot be read at its hardest, IIC and 85 °C
 *
 * @param place - Gas group and temperature class as stated. [–]
 * @returns Group, and the highest surface temperature in °C. [°C]
 * @source IEC 60079-14; NEC 500.6 for letters without II.
 * @assumes A gas zone, not a dust zone.
 * @example demandsOf({ gasGroup: 'IIB', temperatureClass: 'T3' }) // => { gasGroup: 'IIB', surface_c: 200 }
 */
export function demandsOf(place: Omit<HazardousPlace, 'zone'>): {
  readonly gasGroup: string;
  readonly surface_c: number;
} {
  return {
    gasGroup: demandedGroup(place.gasGroup, 'G').value,
    surface_c: demandedSurface(place.temperatureClass).value,
  };
}

/**
 * Name of a zone out of a list's or site's text.
 *
 * Formula: the number in it; empty, `none`, `safe`, `unclassified` mean no zone
 *
 * @param text - What the list or site says, e.g. `Zone 1`. [–]
 * @returns `0`, `1`, `2`, `20`, `21`, `22`, the text itself when it is no zone that is known, or null without a zone. [–]
 * @source Definition.
 * @assumes One zone a text.
 * @example zoneName('Zone 1') // => '1'
 */
export function zoneName(text: string): string | null {
  const tidy = text.trim().toLowerCase();
  if (['', 'none', 'no', 'safe', 'safe area', 'unclassified', 'non-hazardous', 'n/a'].includes(tidy)) return null;
  return /^(?:(?:atex|ex|gas|dust)\s*)?(?:zone|z)?\s*(0|1|2|20|21|22)$/.exec(tidy)?.[1] ?? text.trim();
}

function readCategory(text: string | undefined): Marking['category'] {
  if (text === 'M1' || text === 'M2' || text === '1' || text === '2') return text;
  return '3';
}

function contradiction(marking: Marking, text: string): Result<Marking> | null {
  const wanted = LEVEL_OF_CATEGORY[marking.category];
  const letter = marking.group === 'I' ? 'M' : marking.atmosphere;
  const levelFits = marking.level === null || wanted === undefined || marking.level === `${letter}${wanted}`;
  const dust = marking.subgroup.startsWith('III');
  const groupFits =
    (marking.group === 'I') === (marking.subgroup === 'I') &&
    (marking.atmosphere === null || dust === (marking.atmosphere === 'D'));
  if (levelFits && groupFits) return null;
  return failed({
    code: 'marking-contradictory',
    sentence: `The marking “${text}” contradicts itself (category ${marking.category}${marking.atmosphere ?? ''}, level ${marking.level ?? 'none'}, group ${marking.subgroup}); it counts as unmarked.`,
  });
}

function misfit(
  marking: Marking,
  place: HazardousPlace,
  zone: { readonly atmosphere: 'G' | 'D'; readonly category: number },
): Result<Marking | null> | null {
  const category = Number(marking.category);
  if (marking.group !== 'II' || marking.atmosphere !== zone.atmosphere || !(category <= zone.category)) {
    return refuse(
      'marking-category',
      `Marked ${marking.category}${marking.atmosphere ?? ''}; zone ${place.zone} asks for category ${zone.category}${zone.atmosphere} or better.`,
    );
  }
  const group = demandedGroup(place.gasGroup, zone.atmosphere);
  if (rankOfGroup(marking.subgroup) < rankOfGroup(group.value)) {
    return refuse('marking-gas-group', `Marked ${marking.subgroup}; the place asks for ${group.value}${group.why}.`);
  }
  const hottest = demandedSurface(place.temperatureClass);
  if ((surfaceOf(marking.temperature) ?? Number.POSITIVE_INFINITY) > hottest.value) {
    return refuse(
      'marking-temperature-class',
      `Marked ${marking.temperature ?? 'without a temperature class'}; the place asks for ${hottest.name}${hottest.why}.`,
    );
  }
  return null;
}

/** What the place asks for; unknown or unreadable is the hardest, and says so. */
function demandedGroup(text: string | null, atmosphere: 'G' | 'D'): { readonly value: string; readonly why: string } {
  const group = atmosphere === 'D' ? 'III' : 'II';
  const name = atmosphere === 'D' ? 'dust group' : 'gas group';
  if (text === null) return { value: `${group}C`, why: `, taken because its ${name} is not known` };
  const read = new RegExp(`^(?:(?:gas|dust) )?(?:group )?(${group})?([ABC])$`, 'i').exec(text.trim());
  const letter = read?.[2]?.toUpperCase();
  if (letter !== undefined && (read?.[1] !== undefined || atmosphere === 'D'))
    return { value: `${group}${letter}`, why: '' };
  if (letter !== undefined)
    return {
      value: HARDEST_GAS,
      why: `, taken because “${text}” may be a North American group, where A and B are the hardest`,
    };
  return { value: `${group}C`, why: `, taken because “${text}” is no ${name} that can be read` };
}

function demandedSurface(text: string | null) {
  const hardest = { name: HARDEST_CLASS, value: CLASS_LIMITS[HARDEST_CLASS] ?? 0 };
  if (text === null) return { ...hardest, why: ', taken because its class is not known' };
  const value = surfaceOf(text);
  if (value !== null) return { name: text.trim(), value, why: '' };
  return { ...hardest, why: `, taken because “${text}” is no temperature class that can be read` };
}

/** A < B < C within gas or dust; bare `II` covers all gas groups. */
function rankOfGroup(group: string): number {
  return group === 'II' ? 3 : ' ABC'.indexOf(group.slice(-1));
}

/** Highest surface temperature in °C of a class (`T4`) or of a temperature (`T135°C`); null when it says neither. */
function surfaceOf(text: string | null): number | null {
  const tidy = (text ?? '').replaceAll(' ', '').toUpperCase();
  const degrees = /^T?(\d{2,3})°?C$/.exec(tidy)?.[1];
  return degrees === undefined ? (CLASS_LIMITS[tidy] ?? null) : Number(degrees);
}

function refuse(code: string, sentence: string): Result<Marking | null> {
  return failed({ code, sentence });
}
