/*
 * What kind of valve a line speaks of, and what is taken where it does not say: type, setting, what turns it, how its stem moves.
 * Invariant: what is taken without being said has basis `assumed` and says by which cue.
 * Not here: sizes and loads (valve-sizes.ts).
 * Read next: valve-sizes.ts.
 */
import { type Fact, fact } from '#lib/units/known-value.ts';
import { isHazardous } from './hazard-questions.ts';
import type { DrivenBy, ScheduleLine, StemKind, ValveType } from './schedule-line.ts';
import type { Site } from './site.ts';
import { yearsAgo, yearsIdle } from './years-idle.ts';

export type Family = 'gate' | 'globe' | 'squeeze' | 'penstock' | 'quarter turn' | 'keyed';

export interface ValveCharacter {
  readonly type: ValveType;
  readonly family: Family;
  readonly setting: 'waterworks' | 'plant';
  readonly geared: boolean;
  readonly buried: boolean;
  readonly drivenBy: Fact<DrivenBy>;
  readonly stemKind: Fact<StemKind>;
  /** Years since it was put in, where the line says so. */
  readonly age: number | null;
  /** Years since it was last moved, where the line says so. */
  readonly idle: number | null;
}

const FAMILIES: Readonly<Record<ValveType, Family>> = {
  gate: 'gate',
  'wedge gate': 'gate',
  'flexible wedge gate': 'gate',
  'double disc gate': 'gate',
  'parallel slide gate': 'gate',
  'knife gate': 'gate',
  globe: 'globe',
  penstock: 'penstock',
  diaphragm: 'squeeze',
  pinch: 'squeeze',
  butterfly: 'quarter turn',
  ball: 'quarter turn',
  plug: 'quarter turn',
  hydrant: 'keyed',
  'stop tap': 'keyed',
  unknown: 'gate',
};

export function characterise({ line, site }: { readonly line: ScheduleLine; readonly site: Site }): ValveCharacter {
  const type = line.valveType?.value ?? 'unknown';
  const family = FAMILIES[type];
  const setting = settingOf({ line, site, type });
  const buried = isBuried(line);
  const geared =
    line.torque.gearbox !== undefined || isGearDrive(line) || (family === 'quarter turn' && !isBareQuarterTurn(line));
  const drivenBy = line.interface.drivenBy ?? guessDrive({ line, setting, buried, geared, family });
  const stemKind = line.stem.kind ?? guessStem({ line, setting, family, type, drivenBy: drivenBy.value });
  return {
    type,
    family,
    setting,
    geared,
    buried,
    drivenBy,
    stemKind,
    age: yearsAgo(line.state.age, site),
    idle: yearsIdle({ line, site }),
  };
}

function isGearDrive(line: ScheduleLine): boolean {
  const drive = line.interface.drivenBy?.value;
  return (
    drive === 'gearbox wheel' ||
    drive === 'gearbox nut' ||
    (line.torque.gearRatio !== undefined && line.torque.gearRatio.nominal > 1)
  );
}

/** A small quarter-turn valve on a lever, square or key has no gearbox. */
function isBareQuarterTurn(line: ScheduleLine): boolean {
  const drive = line.interface.drivenBy?.value;
  if (drive === 'square' || drive === 'key cap') return true;
  const turns = line.torque.turns?.nominal;
  return turns !== undefined && turns <= 1;
}

function settingOf({
  line,
  site,
  type,
}: {
  readonly line: ScheduleLine;
  readonly site: Site;
  readonly type: ValveType;
}): 'waterworks' | 'plant' {
  const rating = line.rating?.value ?? '';
  const service = line.process.service?.value;
  if (type === 'hydrant' || type === 'stop tap' || type === 'penstock') return 'waterworks';
  if (service === 'potable' || service === 'sewage' || isBuried(line)) return 'waterworks';
  if (service === 'oxygen' || service === 'toxic' || isHazardous({ line, site })) return 'plant';
  if (/class|#|\bcl\b/i.test(rating) && !/\b(125|250)\b/.test(rating)) return 'plant';
  if (/\d\s*K\b|\bK\s*\d/i.test(rating)) return 'plant';
  const medium = line.process.medium?.value ?? '';
  if (/steam|oil|gas|fuel|naphtha|crude|acid|caustic|ammonia|hydrogen|condensate|cargo|ballast/i.test(medium))
    return 'plant';
  if ((line.process.temperature?.nominal ?? 0) > 70) return 'plant';
  const kind = line.stem.kind?.value;
  return kind === 'rising through the wheel' && !/water/i.test(medium) && !/PN/i.test(rating) ? 'plant' : 'waterworks';
}

export function isBuried(line: ScheduleLine): boolean {
  if (line.place.depthToNut !== undefined || line.place.surfaceBox !== undefined) return true;
  const text = `${line.place.location ?? ''} ${line.notes ?? ''} ${line.place.surface?.value ?? ''}`;
  return /buried|not visible|invisible|covered|under(ground| the road)|surface box|street box|valve box/i.test(text);
}

interface Cues {
  readonly line: ScheduleLine;
  readonly setting: 'waterworks' | 'plant';
  readonly family: Family;
}

function guessDrive({
  line,
  setting,
  buried,
  geared,
  family,
}: Cues & { readonly buried: boolean; readonly geared: boolean }): Fact<DrivenBy> {
  const grip = line.interface;
  const assumed = (drive: DrivenBy, why: string): Fact<DrivenBy> =>
    fact(drive, { basis: 'assumed', source: `Taken as driven by a ${drive}: ${why}.` });
  if (grip.wheelDiameter !== undefined || grip.wheelSpokes !== undefined)
    return assumed(geared ? 'gearbox wheel' : 'handwheel', 'the list gives a wheel');
  if (grip.nut !== undefined || grip.nutShape !== undefined)
    return assumed(geared ? 'gearbox nut' : 'nut', 'the list gives a nut');
  if (grip.spindleSize !== undefined || grip.spindleLength !== undefined)
    return assumed('extension spindle', 'the list gives a spindle');
  if (geared)
    return buried
      ? assumed('gearbox nut', 'the valve is buried and geared')
      : assumed('gearbox wheel', 'geared valves above ground have a wheel');
  if (family === 'keyed') return assumed('square', 'hydrants and stop taps are turned on a key');
  if (buried) return assumed('nut', 'the valve is buried or not visible');
  if (family === 'penstock') return assumed('handwheel', 'penstocks above water have a wheel or pillar');
  if (setting === 'waterworks' && family === 'gate')
    return assumed('nut', 'waterworks valves are usually turned on a key');
  return assumed('handwheel', 'valves of this kind usually have a handwheel');
}

function guessStem({
  line,
  setting,
  family,
  type,
  drivenBy,
}: Cues & { readonly type: ValveType; readonly drivenBy: DrivenBy }): Fact<StemKind> {
  const assumed = (kind: StemKind, why: string): Fact<StemKind> =>
    fact(kind, { basis: 'assumed', source: `Taken as ${kind}: ${why}.` });
  if (line.interface.stemProtrusion !== undefined)
    return assumed('rising through the wheel', 'the list gives a protrusion');
  const onNut =
    drivenBy === 'nut' || drivenBy === 'key cap' || drivenBy === 'square' || drivenBy === 'extension spindle';
  if (onNut) return assumed('non-rising', 'valves on a nut or key have a non-rising stem');
  if (family === 'globe')
    return assumed('rising with the wheel', 'most globe valves turn and lift their stem together');
  if (family === 'gate' && setting === 'waterworks' && type !== 'knife gate')
    return assumed('non-rising', 'waterworks gates usually have a non-rising stem');
  return assumed(
    'rising through the wheel',
    'gates, penstocks and clamping valves in plants usually lift their stem through the wheel',
  );
}
