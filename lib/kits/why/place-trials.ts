/*
 * Changes of the place around a valve that are worth trying: a vehicle, a structure, more room.
 * Invariant: distances are numbers that the search confirms.
 * Not here: changes of the valve, the torque and the site (repair-trials.ts).
 * Read next: repair-trials.ts.
 */
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Site } from '#lib/duty/site.ts';
import type { LineFacts } from '#lib/rules/facts.ts';
import { sayLength } from '#lib/rules/say-number.ts';
import { exactly } from '#lib/units/known-value.ts';
import type { ClassQuestion } from '../search-class.ts';
import { cell, siteValue } from './repair-step.ts';
import { changed, fixed, leastThat, TRIED, type Trial } from './trial.ts';

/** No clear room beyond these helps any equipment. House practice, no source. */
const WIDEST_RADIUS = 2;
const MOST_HEADROOM = 3;
const ROOM_STEP = 0.05;

export function placeTrials({ facts, stock }: ClassQuestion): readonly Trial[] {
  const { line, site } = facts;
  const { clearRadius, headroom } = line.place;
  const reaches = stock.restraints.filter((one) => one.facts.needs.includes('vehicle')).map((one) => one.facts.reach);
  return [
    ...(reaches.length > 0 ? [vehicleTrial(Math.max(...reaches))] : []),
    structureTrial(site.anchorsAllowed),
    ...(clearRadius === undefined
      ? []
      : [
          roomTrial({
            column: 'clear_radius',
            name: 'a clear radius',
            low: clearRadius.low,
            high: WIDEST_RADIUS,
            place: (value) => ({ clearRadius: exactly('m', value, TRIED) }),
          }),
        ]),
    ...(headroom === undefined
      ? []
      : [
          roomTrial({
            column: 'headroom',
            name: 'a headroom',
            low: headroom.low,
            high: MOST_HEADROOM,
            place: (value) => ({ headroom: exactly('m', value, TRIED) }),
          }),
        ]),
  ];
}

function placed(at: LineFacts, place: Partial<ScheduleLine['place']>, site: Partial<Site> = {}): LineFacts {
  return changed(at, {
    line: { ...at.line, place: { ...at.line.place, ...place } },
    site: { ...at.site, ...site },
  });
}

function vehicleTrial(reach: number): Trial {
  const clause = `a vehicle may stand within ${sayLength(reach)} of the valve`;
  return fixed({
    id: 'vehicle-near',
    sentence: `It can be served if ${clause}.`,
    clause,
    to: (at) => placed(at, { vehicleDistance: exactly('m', reach, TRIED) }, { vehicleAccess: true }),
    steps: [cell('vehicle_distance', `${Number(reach.toFixed(3))} m`), siteValue('vehicle_access', true)],
  });
}

function structureTrial(allowed: Site['anchorsAllowed']): Trial {
  const clause = 'a structure to take the reaction stands near and may be used';
  const anchors = allowed === undefined ? undefined : [...allowed, 'structure'];
  return fixed({
    id: 'structure-near',
    sentence: `It can be served if ${clause}.`,
    clause,
    to: (at) =>
      placed(
        at,
        { anchor: { value: 'structure', ...TRIED } },
        anchors === undefined ? {} : { anchorsAllowed: anchors },
      ),
    steps: [
      cell('anchor', 'structure'),
      ...(anchors === undefined ? [] : [siteValue('anchors_allowed', [...new Set(anchors)])]),
    ],
  });
}

function roomTrial(room: {
  readonly column: string;
  readonly name: string;
  readonly low: number;
  readonly high: number;
  readonly place: (value: number) => Partial<ScheduleLine['place']>;
}): Trial {
  const { low, high } = room;
  return {
    id: room.column,
    find: (works) => leastThat({ low, high, step: ROOM_STEP, works }),
    widest: high,
    at: (value) => ({
      to: (at) => placed(at, room.place(value)),
      sentence: `It can be served with ${room.name} of ${sayLength(value)}.`,
      clause: `there is ${room.name} of ${sayLength(value)}`,
      steps: [cell(room.column, `${Number(value.toFixed(3))} m`)],
    }),
  };
}
