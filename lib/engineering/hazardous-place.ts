/*
 * What a list or site says of an explosive atmosphere: zone, gas or dust group, temperature class, in their usual spellings.
 * Invariant: North American classes and divisions are named for what they are and never turned into a zone, group or class silently.
 * Not here: whether a marked part may stand there (hazardous-marking.ts).
 * Read next: hazardous-marking.ts.
 */
import { TEMPERATURE_CLASSES, TEMPERATURE_CODES } from './temperature-classes.ts';

/** `0`, `1`, `2`, `20`, `21`, `22` after IEC 60079-10-1 and -10-2; `mine` for firedamp, group I. */
export const ZONE_NAMES = ['0', '1', '2', '20', '21', '22', 'mine'] as const;
export type ZoneName = (typeof ZONE_NAMES)[number];

/** Gas and dust groups of IEC 60079-0; IIB+H2 is IIB with hydrogen besides. */
export const HAZARD_GROUPS = ['I', 'IIA', 'IIB', 'IIB+H2', 'IIC', 'IIIA', 'IIIB', 'IIIC'] as const;
export type HazardGroup = (typeof HAZARD_GROUPS)[number];

export type ReadHazard<Value> =
  | { readonly kind: 'read'; readonly value: Value }
  | { readonly kind: 'none' }
  /** A class and division (NEC Articles 500 to 506, CSA): recognised, and asked about. */
  | { readonly kind: 'north american' }
  | { readonly kind: 'unreadable' };

const CLASS_LIMITS: Readonly<Record<string, number>> = Object.fromEntries([
  ...TEMPERATURE_CLASSES,
  ...TEMPERATURE_CODES,
]);

const NO_ZONE =
  /^(?:no|none|nil|nein|non|keine?|aucune?|ninguna?|nenhuma?|nessuna?|n\/?a|-|safe|ordinary|general purpose|un ?classified|not? classified|non ?class(?:ified|e)|non ?hazardous|not hazardous|no hazard|nicht explosionsgefahrdet|hors zone|no zone|zona segura)(?: (?:area|zone|location|place|bereich))?$/;
const NORTH_AMERICAN =
  /\bdiv(?:ision)?\b|\bdiv ?[12]|\bc[1-3]d[12]\b|\bclass (?:i{1,3}|1|2|3)\b|\bcl\.? ?(?:i{1,3}|1|2|3)\b|\bnec\b|\bcsa\b|\baex\b/;

/**
 * The zone that a text names.
 *
 * Formula: `1`, `zone 1`, `Z1`, `ATEX zone 1`, `gas zone 1`; `safe`, `none`, `non-hazardous` are none; firedamp mines are a place of their own
 *
 * @param text - Text of a list or site. [–]
 * @returns The zone, none, a North American class, or unreadable. [–]
 * @source IEC 60079-10-1 and 60079-10-2 (zones); NEC Articles 500 to 506 (classes and divisions), from memory.
 * @assumes Zones are spelt with the digits of the standard.
 * @example readZone('Z1') // => { kind: 'read', value: '1' }
 */
export function readZone(text: string): ReadHazard<ZoneName> {
  const plain = plainWords(text);
  if (plain === '' || NO_ZONE.test(plain)) return { kind: 'none' };
  if (NORTH_AMERICAN.test(plain)) return { kind: 'north american' };
  if (/\bmines?\b|\bmining\b|\bfiredamp\b|^(?:group |m)?(?:i|m1|m2)$/.test(plain))
    return { kind: 'read', value: 'mine' };
  const found =
    /^(?:(?:atex|ex|iec|gas|dust|hazardous|area) )*(?:(?:zone|zona|z) ?)?(0|1|2|20|21|22)(?: \(?(?:gas|dust|ex|atex)\)?)?$/.exec(
      plain,
    )?.[1];
  const value = ZONE_NAMES.find((name) => name === found);
  return value === undefined ? { kind: 'unreadable' } : { kind: 'read', value };
}

/**
 * The gas or dust group that a text names.
 *
 * Formula: I, IIA, IIB, IIB+H2, IIC, IIIA, IIIB, IIIC; a bare letter is not read, as the North American letters mean other gases
 *
 * @param text - Text of a list or site. [–]
 * @returns The group, none, a North American group, or unreadable. [–]
 * @source IEC 60079-0 (groups); NEC 500.6 (letters A to G, where A is acetylene and B hydrogen).
 * @assumes The digits are Roman, as in the standard.
 * @example readHazardGroup('II B + H2') // => { kind: 'read', value: 'IIB+H2' }
 */
export function readHazardGroup(text: string): ReadHazard<HazardGroup> {
  const plain = plainWords(text.replaceAll('₂', '2'));
  if (plain === '' || /^(?:none|no|n\/?a|-)$/.test(plain)) return { kind: 'none' };
  if (NORTH_AMERICAN.test(plain) || /^(?:groups? )[a-g](?:[ ,/&]+[a-g])*$/.test(plain))
    return { kind: 'north american' };
  const tight = plain
    .replace(/^(?:gas |dust |explosion )?(?:group )?/, '')
    .replace(/\s*(?:\+|plus|and) ?(?:h2|hydrogen)$/, '+h2')
    .replaceAll(' ', '')
    .toUpperCase();
  const value = HAZARD_GROUPS.find((name) => name === tight);
  return value === undefined ? { kind: 'unreadable' } : { kind: 'read', value };
}

/**
 * Highest surface temperature that a temperature class or a temperature stands for.
 *
 * Formula: T1 450, T2 300, T3 200, T4 135, T5 100, T6 85 °C; North American sub-classes by their own degrees; `T85 °C` is 85 °C
 *
 * @param text - Text of a list, site or plate. [–]
 * @returns Temperature, or null where the text is neither. [°C]
 * @source IEC 60079-0, table of temperature classes; NEC Article 500, temperature codes.
 * @assumes A bare number is no temperature.
 * @example surfaceTemperature('T3C') // => 160
 */
export function surfaceTemperature(text: string): number | null {
  const tidy = text
    .trim()
    .replace(/^(?:temperature |temp\.? |t-)?class /i, '')
    .replaceAll(' ', '')
    .toUpperCase();
  const degrees = /^T?(\d{2,3})(?:°|DEG|º)?C$/.exec(tidy)?.[1];
  return degrees === undefined ? (CLASS_LIMITS[tidy] ?? null) : Number(degrees);
}

function plainWords(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[-_–]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/^$|^ $/, '');
}
