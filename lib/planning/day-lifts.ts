/*
 * Lifts of one crew's day as screening figures: the heaviest piece against the filter at two heights, and the lifting equation where it speaks.
 * Invariant: what the equation does not speak of is counted with the reason, never given a number.
 * Not here: cases (packing) and what is to be said of lifts (day-findings.ts).
 * Read next: crew-days.ts.
 */
import type { Site } from '#lib/duty/site.ts';
import { filterMass, filterShare, type LiftingIndex, liftingIndex } from '#lib/engineering/lifting.ts';
import { OUTSIDE_LIFTING_EQUATION, TEMPERATE } from '#lib/engineering/lifting-tables.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { DayEquation, DayLifts } from '#lib/equipment/crew-day.ts';
import type { Model } from '#lib/equipment/model.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import { degrees, type Kilograms, kilograms, metres, type Seconds } from '#lib/units/quantity.ts';
import type { CrewPortion } from './crew-portions.ts';

type Models = ReadonlyMap<string, Model>;

interface Lifting {
  readonly day: readonly CrewPortion[];
  readonly time: Seconds;
  readonly site: Site;
  readonly models: Models;
}

export function dayLifts(lifting: Lifting): DayLifts {
  const { day, time, models } = lifting;
  const count = day.reduce((sum, { qty, assembly }) => sum + qty * liftsAtValve(assembly, models), 0);
  const pace = (60 * count) / time;
  const share = filterShare(pace);
  const filter = (zone: 'below mid lower leg' | 'elbow to knuckle'): Kilograms =>
    kilograms(share * filterMass({ zone, reach: 'close', persons: 'women' }));
  return {
    count,
    ...heaviestOf(day, models),
    filter: { fromGround: filter('below mid lower leg'), atWaist: filter('elbow to knuckle') },
    equation: equationOf(lifting, pace),
  };
}

/** Drive, head, restraint, options, shafts and one adapter, each put on and taken off. */
function liftsAtValve({ parts }: Assembly, models: Models): number {
  const mass = (number: string): number => models.get(number)?.mass ?? 0;
  const adapter = Math.max(0, ...parts.adapters.map(mass));
  const others = [parts.drive, parts.head, parts.restraint, ...parts.options, ...parts.extensions].map(mass);
  return 2 * [adapter, ...others].filter((one) => one > WORKING_CONSTANTS.countedLift).length;
}

function heaviestOf(day: readonly CrewPortion[], models: Models): Pick<DayLifts, 'heaviest' | 'number'> {
  let heaviest: Pick<DayLifts, 'heaviest' | 'number'> = { heaviest: kilograms(0), number: '' };
  for (const { parts } of day.map(({ assembly }) => assembly)) {
    for (const number of numbersOf(parts)) {
      const mass = models.get(number)?.mass ?? kilograms(0);
      if (mass > heaviest.heaviest) heaviest = { heaviest: mass, number };
    }
  }
  return heaviest;
}

function numbersOf(parts: Assembly['parts']): readonly string[] {
  return [
    parts.drive,
    parts.head,
    parts.restraint,
    ...parts.options,
    ...parts.extensions,
    ...(parts.adapterExtensions ?? []).flat(),
    ...parts.adapters,
    ...parts.accessories.map(({ number }) => number),
  ];
}

function equationOf({ day, time, site, models }: Lifting, perMinute: number): DayEquation {
  const { reach, from, to } = WORKING_CONSTANTS.lift;
  const refused = new Map<string, number>();
  let worst: LiftingIndex | null = null;
  let valves = 0;
  for (const portion of day) {
    const { heaviest } = heaviestOf([portion], models);
    const outside = outsideReasons({ portion, site, mass: heaviest, time });
    const found = liftingIndex({
      mass: heaviest,
      lift: {
        horizontal: reach,
        vertical: from,
        travel: metres(to - from),
        twist: degrees(0),
        perMinute,
        duration: time,
        coupling: 'fair',
        outside,
      },
      destination: { horizontal: reach, vertical: to },
    });
    if (found.ok) {
      valves += portion.qty;
      if (worst === null || found.value.index > worst.index) worst = found.value;
    } else {
      const why = outside[0] ?? OUTSIDE_LIFTING_EQUATION.pace;
      refused.set(why, (refused.get(why) ?? 0) + portion.qty);
    }
  }
  return { valves, worst, refused: [...refused].map(([why, count]) => ({ why, valves: count })) };
}

const UNSTEADY = /ladder|scaffold|rope|basket|harness|slope/i;
const KNEELING = /kneel|crawl|sit|lying/i;
const NO_HEAVIER_FOR_ONE = WORKING_CONSTANTS.onePersonLift;

function outsideReasons(at: {
  readonly portion: CrewPortion;
  readonly site: Site;
  readonly mass: Kilograms;
  readonly time: Seconds;
}): readonly string[] {
  const { portion, site, mass, time } = at;
  const { place } = portion.line;
  const says = OUTSIDE_LIFTING_EQUATION;
  const { temperature } = site;
  const standing = place.standingPlace?.value ?? '';
  const far = (place.vehicleDistance?.high ?? 0) > WORKING_CONSTANTS.carried || site.vehicleAccess === false;
  const low = (place.headroom?.low ?? WORKING_CONSTANTS.standing) < WORKING_CONSTANTS.standing;
  const outdoors = temperature !== undefined && (temperature.low < TEMPERATE.low || temperature.high > TEMPERATE.high);
  const reasons: readonly (readonly [boolean, string])[] = [
    [mass > NO_HEAVIER_FOR_ONE, says.team],
    [(place.enclosed?.value ?? site.enclosed ?? false) || low, says.cramped],
    [KNEELING.test(standing), says.posture],
    [UNSTEADY.test(standing), says.footing],
    [far, says.carrying],
    [outdoors, says.temperature],
    [time > 8 * 3600, says.long],
  ];
  return reasons.flatMap(([holds, why]) => (holds ? [why] : []));
}
