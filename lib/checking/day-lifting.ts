/*
 * Lifts of a crew's day worked out a second time: how many, the heaviest, the filter, and the lifting equation written out for the lift that is assumed.
 * Invariant: own arithmetic; only the published tables and the house's assumed lift are shared.
 * Not here: comparing (check-crew-days.ts).
 * Read next: check-crew-days.ts.
 */
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Site } from '#lib/duty/site.ts';
import { FREQUENCY_MULTIPLIERS, LIFTING_FILTER, OUTSIDE_LIFTING_EQUATION } from '#lib/engineering/lifting-tables.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { CrewDay } from '#lib/equipment/crew-day.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import type { DayFacts } from './day-strain.ts';

interface Lifted {
  readonly qty: number;
  readonly line: ScheduleLine;
  readonly counted: number;
  readonly heaviest: number;
}

export interface ExpectedLifts {
  readonly count: number;
  readonly heaviest: number;
  readonly fromGround: number;
  readonly atWaist: number;
  readonly valves: number;
  readonly limit: number | null;
  readonly index: number | null;
  /** `3 × an unstable load`, sorted. */
  readonly refused: readonly string[];
}

export function liftingOf(facts: DayFacts, day: CrewDay, time: number): ExpectedLifts {
  const lifted = day.work.flatMap((work) => {
    const line = facts.lineOf.get(work.tag);
    const assembly = facts.outcome.assemblies[work.assembly];
    return line && assembly ? [{ qty: work.qty, line, ...massesOf(facts, assembly) }] : [];
  });
  const count = lifted.reduce((sum, one) => sum + 2 * one.qty * one.counted, 0);
  const perMinute = count / (time / 60);
  const share = perMinute > 8 ? 0.2 : perMinute > 2 ? 0.5 : perMinute > 0.5 ? 0.7 : 1;
  const rest = equationOf({ facts, lifted, time, perMinute });
  return {
    count,
    heaviest: Math.max(0, ...lifted.map(({ heaviest }) => heaviest)),
    fromGround: share * LIFTING_FILTER['below mid lower leg'].women.close,
    atWaist: share * LIFTING_FILTER['elbow to knuckle'].women.close,
    ...rest,
  };
}

function massesOf({ modelOf }: DayFacts, { parts }: Assembly) {
  const masses = (numbers: readonly string[]) => numbers.map((number) => modelOf.get(number)?.mass ?? 0);
  const adapters = masses(parts.adapters);
  const chain = masses([parts.drive, parts.head, ...parts.extensions, parts.restraint, ...parts.options]);
  const rest = masses([...(parts.adapterExtensions ?? []).flat(), ...parts.accessories.map(({ number }) => number)]);
  const counts = [...chain, Math.max(0, ...adapters)].filter((mass) => mass > WORKING_CONSTANTS.countedLift);
  return { counted: counts.length, heaviest: Math.max(...adapters, ...chain, ...rest) };
}

function equationOf(asked: {
  readonly facts: DayFacts;
  readonly lifted: readonly Lifted[];
  readonly time: number;
  readonly perMinute: number;
}) {
  const { facts, lifted, time, perMinute } = asked;
  const limit = limitOf(perMinute, time);
  const reasons = new Map<string, number>();
  let [valves, heaviest] = [0, 0];
  for (const one of lifted) {
    const why = whyNot({ ...one, site: facts.site, time }) ?? (limit > 0 ? null : OUTSIDE_LIFTING_EQUATION.pace);
    if (why === null) {
      valves += one.qty;
      heaviest = Math.max(heaviest, one.heaviest);
    } else reasons.set(why, (reasons.get(why) ?? 0) + one.qty);
  }
  const refused = [...reasons].map(([why, count]) => `${count} × ${why}`).toSorted();
  return valves === 0
    ? { valves, limit: null, index: null, refused }
    : { valves, limit, index: heaviest / limit, refused };
}

/** Hands 40 cm before the ankles from 20 cm to 1 m, no twist, fair grip: 23 · HM · VM · DM · CM, times the frequency. */
function limitOf(perMinute: number, time: number): number {
  const { reach, from, to } = WORKING_CONSTANTS.lift;
  const place = (height: number, grip: number): number => (1 - 0.3 * Math.abs(height - 0.75)) * grip;
  const ends = Math.min(place(from, 0.95), place(to, 1));
  return 23 * (0.25 / reach) * ends * (0.82 + 0.045 / (to - from)) * frequency(perMinute, time);
}

function frequency(perMinute: number, time: number): number {
  const column = time <= 3600 ? 1 : time <= 7200 ? 3 : 5;
  if (perMinute > 15) return 0;
  const above = FREQUENCY_MULTIPLIERS.find(([rate]) => rate >= perMinute) ?? [0.2];
  const below = FREQUENCY_MULTIPLIERS.findLast(([rate]) => rate <= perMinute) ?? above;
  const [high, low] = [above[column] ?? 0, below[column] ?? 0];
  if (above[0] === below[0]) return low;
  return low + ((high - low) * (perMinute - below[0])) / (above[0] - below[0]);
}

/** The first reason, in the order in which the plan asks them. */
function whyNot(at: Lifted & { readonly site: Site; readonly time: number }): string | null {
  const { line, site, heaviest, time } = at;
  const { place } = line;
  const stands = place.standingPlace?.value.toLowerCase() ?? '';
  const says = OUTSIDE_LIFTING_EQUATION;
  if (heaviest > WORKING_CONSTANTS.onePersonLift) return says.team;
  if (place.enclosed?.value ?? site.enclosed) return says.cramped;
  if (place.headroom !== undefined && place.headroom.low < WORKING_CONSTANTS.standing) return says.cramped;
  if (['kneel', 'crawl', 'sit', 'lying'].some((word) => stands.includes(word))) return says.posture;
  if (['ladder', 'scaffold', 'rope', 'basket', 'harness', 'slope'].some((word) => stands.includes(word)))
    return says.footing;
  if (site.vehicleAccess === false) return says.carrying;
  if (place.vehicleDistance !== undefined && place.vehicleDistance.high > WORKING_CONSTANTS.carried)
    return says.carrying;
  const { temperature } = site;
  if (temperature !== undefined && (temperature.low < 19 || temperature.high > 26)) return says.temperature;
  return time > 8 * 3600 ? says.long : null;
}
