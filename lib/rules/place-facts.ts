/*
 * The place of one valve: what the line says, else what the site says, else what is assumed and said to be so.
 * Invariant: every assumed fact is listed in `assumed`, and a note is made of it.
 * Not here: judging the place (place.ts, restraint.ts).
 * Read next: place.ts.
 */
import type { Duty } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Site } from '#lib/duty/site.ts';
import { zoneName } from '#lib/engineering/hazardous-marking.ts';

export type Anchor = 'structure' | 'large pipe' | 'flange' | 'yoke' | 'none' | 'forbidden' | 'other' | 'unknown';

export interface Place {
  /** `0`, `1`, `2`, `20`, `21`, `22`, another name of a hazardous area, or null for none. */
  readonly zone: string | null;
  readonly gasGroup: string | null;
  readonly temperatureClass: string | null;
  readonly enclosed: boolean;
  readonly noiseLimit_db: number | null;
  readonly faces: 'up' | 'side' | 'down';
  readonly anchor: Anchor;
  readonly anchorText: string;
  readonly anchorsAllowed: readonly string[] | null;
  /** Distance from valve to vehicle: a number, `near` where the site lets vehicles in and the line says nothing, or `none`. */
  readonly vehicle_m: number | 'near' | 'none';
  readonly surface: string;
  readonly headroom_m: number;
  readonly clearRadius_m: number;
  readonly service: string;
  /** Sentences for what nobody said. */
  readonly assumed: readonly string[];
}

/** Words for what must not take a reaction, whatever else is said beside them; pipes are small by word, or by a size up to DN 80 or 3 inches. */
const FORBIDDEN_ANCHORS: readonly RegExp[] = [
  /hand ?rail|guard ?rail|railing|fence|tray|scaffold|conduit|cables?\b|ladder|instrument/i,
  /small[ -]?bore|small\b.*\b(bore|pipes?|lines?)/i,
  /\b(plastic|pvc|hdpe|copper|asbestos|lagged|insulated) pipe/i,
  /\bdn ?([1-7]?\d|80)\b.*pipe|pipe.*\bdn ?([1-7]?\d|80)\b/i,
  /\b[1-3] ?(in|inch|")(?=\W|$).*pipe|pipe.*\b[1-3] ?(in|inch|")(?=\W|$)/i,
];

export function placeOf({
  line,
  duty,
  site,
}: {
  readonly line: ScheduleLine;
  readonly duty: Duty;
  readonly site: Site;
}): Place {
  const { place } = line;
  const assumed: string[] = [];
  const zoneText = place.zone?.value ?? site.zone;
  if (zoneText === undefined) assumed.push('No zone is given: the place is taken as not hazardous.');
  const enclosed = place.enclosed?.value ?? site.enclosed;
  if (enclosed === undefined) assumed.push('Nothing is said of the place being enclosed: open air is assumed.');
  const anchor = anchorOf(place.anchor?.value);
  if (anchor === 'unknown') assumed.push('Nothing is said of an anchor: look for one before the visit.');
  if (place.faces === undefined && duty.grip.kind === 'wheel') {
    assumed.push('Nothing is said of which way the wheel faces: up is assumed.');
  }
  return {
    zone: zoneText === undefined ? null : zoneName(zoneText),
    gasGroup: place.gasGroup?.value ?? site.gasGroup ?? null,
    temperatureClass: place.temperatureClass?.value ?? site.temperatureClass ?? null,
    enclosed: enclosed ?? false,
    noiseLimit_db: place.noiseLimit?.low ?? site.noiseLimit?.low ?? null,
    faces: place.faces?.value ?? 'up',
    anchor,
    anchorText: place.anchor?.value ?? 'not stated',
    anchorsAllowed: site.anchorsAllowed ?? null,
    vehicle_m: vehicleOf({ line, site }),
    surface: (place.surface?.value ?? '').toLowerCase(),
    headroom_m: place.headroom?.low ?? Number.POSITIVE_INFINITY,
    clearRadius_m: place.clearRadius?.low ?? Number.POSITIVE_INFINITY,
    service: line.process.service?.value ?? 'other',
    assumed,
  };
}

function vehicleOf({ line, site }: { readonly line: ScheduleLine; readonly site: Site }): Place['vehicle_m'] {
  const distance = line.place.vehicleDistance?.high;
  if (distance !== undefined) return site.vehicleAccess === false ? 'none' : distance;
  return site.vehicleAccess === true ? 'near' : 'none';
}

function anchorOf(text: string | undefined): Anchor {
  if (text === undefined || text.trim() === '') return 'unknown';
  const plain = text.trim().toLowerCase();
  if (/^(none|no|nothing)/.test(plain)) return 'none';
  if (FORBIDDEN_ANCHORS.some((words) => words.test(plain))) return 'forbidden';
  if (/yoke/.test(plain)) return 'yoke';
  if (/structur|steel|beam|column|wall|concrete|foundation|bollard/.test(plain)) return 'structure';
  if (/pipe/.test(plain)) return 'large pipe';
  if (/flange/.test(plain)) return 'flange';
  return 'other';
}
