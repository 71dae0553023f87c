/*
 * Holding the marking of equipment for explosive atmospheres against zone, gas group and temperature class of a place.
 * Invariant: unmarked, unread or contradictory is refused in every zone; a place without a zone refuses nothing.
 * Not here: which parts of an assembly need a marking (rules), permits and the area's own classification.
 * Read next: hazardous-place.ts, plate-marking.ts, ../rules/.
 */
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { type HazardGroup, readHazardGroup, readZone, surfaceTemperature, type ZoneName } from './hazardous-place.ts';
import { type Marking, parsePlate } from './plate-marking.ts';

/** Zone, gas group and temperature class of a place; the last two may be unknown. */
export interface HazardousPlace {
  readonly zone: string;
  readonly gasGroup: string | null;
  readonly temperatureClass: string | null;
}

interface Demand {
  readonly zone: ZoneName;
  readonly letter: 'G' | 'D' | 'M';
  /** Category that may stand there at the least. */
  readonly category: number;
}

/** Zones and the lowest category that may stand in them: 2014/34/EU Annex I with 1999/92/EC; mines by the level that stays on in firedamp. */
const DEMANDS: Readonly<Record<ZoneName, Demand>> = {
  '0': { zone: '0', letter: 'G', category: 1 },
  '1': { zone: '1', letter: 'G', category: 2 },
  '2': { zone: '2', letter: 'G', category: 3 },
  '20': { zone: '20', letter: 'D', category: 1 },
  '21': { zone: '21', letter: 'D', category: 2 },
  '22': { zone: '22', letter: 'D', category: 3 },
  mine: { zone: 'mine', letter: 'M', category: 1 },
};

/** A group serves those before it in its row; bare `II` is all gas groups. IEC 60079-0. */
const GROUP_RANKS: Readonly<Record<string, number>> = {
  IIA: 1,
  IIB: 2,
  'IIB+H2': 3,
  IIC: 4,
  II: 4,
  IIIA: 1,
  IIIB: 2,
  IIIC: 3,
  I: 1,
};

const HARDEST_CLASS = { name: 'T6', value: 85 } as const;
/** Air that equipment is made for where its plate says nothing. [°C] IEC 60079-0. */
const USUAL_AIR = { low: -20, high: 40 } as const;

/**
 * Whether equipment with a marking may stand in a place.
 *
 * Formula: category ≤ zone's category, atmosphere alike, group at least the place's, surface temperature at most the place's
 *
 * @param marking - Marking as on the plate; null when unmarked. [–]
 * @param place - Zone (`none` where there is none), gas group and temperature class. [–]
 * @returns The marking that fits (null outside zones), or why the plate is refused. [–]
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
  const zone = readZone(place.zone);
  if (zone.kind === 'none') return ok(null);
  if (zone.kind === 'north american')
    return refuse(
      'zone-north-american',
      `“${place.zone}” is a North American class and division, which is not turned into a zone here (Division 1 takes in zone 0): nothing is passed for it; ask the site for its zone by IEC 60079-10.`,
    );
  if (zone.kind === 'unreadable')
    return refuse(
      'zone-unknown',
      `“${place.zone}” is not a zone that can be checked; ask what the area is classified as.`,
    );
  if (marking === null)
    return refuse('marking-missing', `Unmarked equipment is refused in ${zoneWords(zone.value)}, whatever drives it.`);
  const plate = parsePlate(marking);
  if (!plate.ok) return plate;
  const demand = DEMANDS[zone.value];
  const misfits = plate.value.map((one) => ({ one, misfit: misfit(one, place, demand) }));
  const fitting = misfits.find((each) => each.misfit === null);
  if (fitting !== undefined) return ok(fitting.one);
  const nearest = misfits.find(({ one }) => letterOf(one) === demand.letter) ?? misfits[0];
  return nearest?.misfit ?? ok(null);
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
 * Formula: the zone that the text names; none where it says safe, none or non-hazardous; else the text itself
 *
 * @param text - What the list or site says, e.g. `Zone 1`. [–]
 * @returns `0`, `1`, `2`, `20`, `21`, `22`, `mine`, the text itself when it is no zone that is known, or null without a zone. [–]
 * @source IEC 60079-10-1 and 60079-10-2.
 * @assumes One zone a text.
 * @example zoneName('Zone 1') // => '1'
 */
export function zoneName(text: string): string | null {
  const zone = readZone(text);
  if (zone.kind === 'none') return null;
  return zone.kind === 'read' ? zone.value : text.trim();
}

function zoneWords(zone: ZoneName): string {
  return zone === 'mine' ? 'a mine with firedamp' : `zone ${zone}`;
}

function letterOf(marking: Marking): 'G' | 'D' | 'M' | null {
  return marking.group === 'I' ? 'M' : marking.atmosphere;
}

function misfit(marking: Marking, place: HazardousPlace, demand: Demand): Result<Marking | null> | null {
  const category = Number(marking.category.replace('M', ''));
  if (letterOf(marking) !== demand.letter || !(category <= demand.category)) {
    const asked = demand.letter === 'M' ? 'M1' : `${demand.category}${demand.letter}`;
    return refuse(
      'marking-category',
      `Marked ${marking.category}${marking.atmosphere ?? ''}; ${zoneWords(demand.zone)} asks for category ${asked}${asked === 'M1' ? '' : ' or better'}.`,
    );
  }
  const ambient = marking.ambient;
  if (ambient !== null && (ambient.low > USUAL_AIR.low || ambient.high < USUAL_AIR.high)) {
    return refuse(
      'marking-ambient',
      `Marked for air from ${ambient.low} to ${ambient.high} °C only; the place may have ${USUAL_AIR.low} to ${USUAL_AIR.high} °C.`,
    );
  }
  if (demand.letter === 'M') return null;
  return groupMisfit(marking, place, demand.letter) ?? heatMisfit(marking, place);
}

function groupMisfit(marking: Marking, place: HazardousPlace, letter: 'G' | 'D'): Result<Marking | null> | null {
  const group = demandedGroup(place.gasGroup, letter);
  return rankOf(marking.subgroup) < rankOf(group.value)
    ? refuse('marking-gas-group', `Marked ${marking.subgroup}; the place asks for ${group.value}${group.why}.`)
    : null;
}

function heatMisfit(marking: Marking, place: HazardousPlace): Result<Marking | null> | null {
  const hottest = demandedSurface(place.temperatureClass);
  const own = marking.temperature === null ? null : surfaceTemperature(marking.temperature);
  return own === null || own > hottest.value
    ? refuse(
        'marking-temperature-class',
        `Marked ${marking.temperature ?? 'without a temperature class'}; the place asks for ${hottest.name}${hottest.why}.`,
      )
    : null;
}

function rankOf(group: string): number {
  return GROUP_RANKS[group] ?? 0;
}

/** What the place asks for; unknown or unreadable is the hardest, and says so. */
function demandedGroup(text: string | null, letter: 'G' | 'D'): { readonly value: HazardGroup; readonly why: string } {
  const hardest = letter === 'D' ? 'IIIC' : 'IIC';
  const name = letter === 'D' ? 'dust group' : 'gas group';
  if (text === null) return { value: hardest, why: `, taken because its ${name} is not known` };
  const bare = /^(?:(?:gas|dust) )?(?:group )?([ABC])$/i.exec(text.trim())?.[1]?.toUpperCase();
  if (bare !== undefined && letter === 'G')
    return {
      value: hardest,
      why: `, taken because “${text}” may be a North American group, where A and B are the hardest`,
    };
  const read = readHazardGroup(bare === undefined ? text : `III${bare}`);
  const isDust = read.kind === 'read' && read.value.startsWith('III');
  if (read.kind === 'read' && read.value !== 'I' && isDust === (letter === 'D')) return { value: read.value, why: '' };
  if (read.kind === 'north american')
    return { value: hardest, why: `, taken because “${text}” is a North American group and no ${name} here` };
  return { value: hardest, why: `, taken because “${text}” is no ${name} that can be read` };
}

function demandedSurface(text: string | null): { readonly name: string; readonly value: number; readonly why: string } {
  if (text === null) return { ...HARDEST_CLASS, why: ', taken because its class is not known' };
  const value = surfaceTemperature(text);
  if (value !== null) return { name: text.trim(), value, why: '' };
  return { ...HARDEST_CLASS, why: `, taken because “${text}” is no temperature class that can be read` };
}

function refuse(code: string, sentence: string): Result<Marking | null> {
  return failed({ code, sentence });
}
