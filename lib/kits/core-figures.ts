/*
 * Torque, speed and time of one drive, gear, limiter and head on one line, as an interval along the chain.
 * Invariant: what must be reached is worked out with the lowest factor, what must not be passed with the highest.
 * Not here: adapters, restraints and whether any rule objects.
 * Read next: supply-share.ts, search-class.ts.
 */

import type { Direction, DirectionDuty } from '#lib/duty/duty.ts';
import { yearsIdle } from '#lib/duty/years-idle.ts';
import { chainFactor } from '#lib/engineering/chain-torque.ts';
import { timeWithRests } from '#lib/engineering/duty-cycle.ts';
import { breakawayWork } from '#lib/engineering/energy.ts';
import { highestTorque } from '#lib/engineering/reaction.ts';
import { strokeTime } from '#lib/engineering/stroke-time.ts';
import { scaleGear, speedAtTorque } from '#lib/engineering/torque-speed.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import type { ChainLimiter, CoreDirection, CoreFigures, LineFacts } from '#lib/rules/facts.ts';
import type { Range } from '#lib/units/known-value.ts';
import {
  joules,
  type NewtonMetres,
  newtonMetres,
  perMinute,
  type RevolutionsPerMinute,
  ratio,
  type Seconds,
  seconds,
  type Turns,
} from '#lib/units/quantity.ts';
import type { Frame } from './frames.ts';
import { allowedSetting, ceilingOf, LIMITER_MARGIN, limiterSettings } from './limiter-settings.ts';
import { type SupplyShare, supplyShare } from './supply-share.ts';

export interface CoreInput {
  readonly facts: LineFacts;
  readonly frame: Frame;
  readonly gearIndex: number;
  /** `needed`: limiter no higher than the line asks; a number: up to what every part and the valve allow. */
  readonly limiterUpTo: 'needed' | NewtonMetres;
}

/** What many cores of one line share; for one line and one `limiterUpTo` only. */
export interface CoreMemo {
  readonly limits: Map<string, LimiterReach>;
  readonly supply: Map<string, SupplyShare>;
  energy: CoreFigures['energyPerVisit'] | null;
}

interface LimiterReach {
  readonly ceiling: CoreDirection['ceiling'];
  /** What never-exceed alone would allow on the limiter's scale. */
  readonly allowed: number;
}

export const newCoreMemo = (): CoreMemo => ({ limits: new Map(), supply: new Map(), energy: null });

export function coreFigures(input: CoreInput, memo: CoreMemo = newCoreMemo()): CoreFigures {
  const { facts, frame } = input;
  const { drive, head } = frame;
  const gear = drive.facts.gears[input.gearIndex];
  invariant(gear !== undefined, `Drive ${drive.number} has no gear ${input.gearIndex}.`);
  const stage = { ratio: head.facts.ratio, efficiency: head.facts.efficiency };
  const factor = chainFactor([stage]);
  const supply = memo.supply.get(drive.number) ?? supplyShare({ drive, site: facts.site });
  memo.supply.set(drive.number, supply);
  memo.energy ??= visitEnergy(facts);
  const stallAtDrive = newtonMetres(Math.max(...drive.facts.gears.map((one) => one.stallTorque)));
  const stallAtValve = newtonMetres(stallAtDrive * factor.high);
  const limiter = limiterInChain(frame, factor);
  const way = (direction: Direction): CoreDirection =>
    directionFigures({ input, memo, direction, duty: facts.duty[direction], factor, supply, stallAtValve, limiter });
  const opening = way('opening');
  const closing = way('closing');
  const nevers = [facts.duty.opening.neverExceed.torque, facts.duty.closing.neverExceed.torque];
  const neverExceed = newtonMetres(Math.min(...nevers.map((never) => never.low)));
  return {
    totalRatio: head.facts.ratio,
    factor,
    stallAtValve,
    stallAtDrive,
    sureAtValve: newtonMetres(gear.ratedTorque * supply.torque * factor.low),
    highestAtValve: newtonMetres(Math.max(opening.highest, closing.highest)),
    neverExceed,
    limiterRequired:
      stallAtValve > neverExceed ||
      nevers.some((never) => never.basis === 'rule of thumb' || never.basis === 'assumed'),
    limiter,
    inputSpeed: gear.freeSpeed,
    opening,
    closing,
    energyPerVisit: memo.energy,
    runTime: runTime({ facts, opening, closing }),
    supplyShare: supply.pressure,
  };
}

/** Strokes of a visit each way; the first one opens or closes alike, and an odd one is counted as the slower. */
export function strokesEachWay(strokes: number): { readonly both: number; readonly odd: number } {
  return { both: Math.floor(strokes / 2), odd: strokes % 2 };
}

/** Time of all strokes of a visit with slow ends, to and fro and rests. */
export function visitStrokeTime({
  facts,
  figures,
  continuousRun,
  restAfterRun,
}: {
  readonly facts: LineFacts;
  readonly figures: CoreFigures;
  readonly continuousRun: Seconds;
  readonly restAfterRun: Seconds;
}): Seconds {
  const nominal = (way: CoreDirection): number => (way.strokeTime.low + way.strokeTime.high) / 2;
  const { both, odd } = strokesEachWay(facts.duty.strokes);
  const opening = nominal(figures.opening);
  const closing = nominal(figures.closing);
  const running = seconds(both * (opening + closing) + odd * Math.max(opening, closing));
  return timeWithRests({ running, continuousRun, restAfterRun });
}

function limiterInChain(frame: Frame, factor: Range<'1'>): ChainLimiter | null {
  const built = frame.drive.facts.limiter;
  if (frame.limiter === null) return built === null ? null : { ...built, factor, number: frame.drive.number };
  const { lowest, highest, error, overshoot, step, bothDirections, sits } = frame.limiter.facts;
  invariant(
    lowest !== undefined && highest !== undefined && error !== undefined && step !== undefined,
    `Limiter ${frame.limiter.number} lacks its range, error or step.`,
  );
  const after = sits === 'after drive' ? factor : { low: ratio(1), high: ratio(1) };
  return {
    lowest,
    highest,
    error,
    overshoot: overshoot ?? newtonMetres(0),
    step,
    bothDirections: bothDirections ?? false,
    factor: after,
    number: frame.limiter.number,
  };
}

interface WayInput {
  readonly input: CoreInput;
  readonly memo: CoreMemo;
  readonly direction: Direction;
  readonly duty: DirectionDuty;
  readonly factor: Range<'1'>;
  readonly supply: SupplyShare;
  readonly stallAtValve: CoreFigures['stallAtValve'];
  readonly limiter: ChainLimiter | null;
}

function directionFigures(way: WayInput): CoreDirection {
  const { duty, factor, supply, stallAtValve, limiter } = way;
  const gear = way.input.frame.drive.facts.gears[way.input.gearIndex];
  invariant(gear !== undefined, 'A core has a gear.');
  const start = gear.stallTorque * WORKING_CONSTANTS.startShare * supply.torque * factor.low;
  const wanted = Math.min(duty.starting.high, duty.starting.nominal * LIMITER_MARGIN);
  const speeds = speedsOf(way);
  const times = strokeTimes({ facts: way.input.facts, ...speeds });
  if (limiter === null || (way.direction === 'closing' && !limiter.bothDirections)) {
    return {
      ceiling: null,
      highest: stallAtValve,
      sure: newtonMetres(start),
      needed: newtonMetres(Math.min(wanted, duty.neverExceed.torque.low)),
      ...speeds,
      strokeTime: times,
    };
  }
  const { ceiling, allowed } = limiterReach(way, limiter);
  const highest =
    ceiling === null
      ? stallAtValve
      : highestTorque({
          stallAtValve,
          limiter: { ceiling, error: limiter.error, overshoot: limiter.overshoot, factorHigh: limiter.factor.high },
        });
  return {
    ceiling,
    highest,
    sure: newtonMetres(Math.min(start, surely(limiter, ceiling ?? 0))),
    needed: newtonMetres(Math.min(wanted, surely(limiter, allowed))),
    ...speeds,
    strokeTime: times,
  };
}

function limiterReach({ input, memo, direction, duty }: WayInput, limiter: ChainLimiter): LimiterReach {
  const key = `${direction} ${limiter.number} ${limiter.factor.high === 1 ? '' : input.frame.head.number}`;
  const known = memo.limits.get(key);
  if (known !== undefined) return known;
  const ask = { limiter, duty, direction, upTo: input.limiterUpTo };
  const reach = { ceiling: ceilingOf(limiterSettings(ask)), allowed: allowedSetting(ask) };
  memo.limits.set(key, reach);
  return reach;
}

/** Torque at the valve up to which a limiter surely lets the chain turn. */
function surely(limiter: ChainLimiter, setting: number): number {
  return setting * (1 - limiter.error) * limiter.factor.low;
}

function speedsOf(way: WayInput): { readonly fastest: RevolutionsPerMinute; readonly speed: RevolutionsPerMinute } {
  const { duty, factor, supply, input } = way;
  const gear = input.frame.drive.facts.gears[input.gearIndex];
  invariant(gear !== undefined, 'A core has a gear.');
  const { ratio: total } = input.frame.head.facts;
  const full = supply.torque === 1 && supply.speed === 1;
  const real = full ? gear : scaleGear({ gear, torqueFactor: supply.torque, speedFactor: supply.speed });
  const middle = (factor.low + factor.high) / 2;
  const fastest = speedAtTorque({ gear, torque: newtonMetres(duty.running.low / factor.high) }) / total;
  const speed = speedAtTorque({ gear: real, torque: newtonMetres(duty.running.nominal / middle) }) / total;
  return { fastest: perMinute(fastest), speed: perMinute(speed) };
}

export function isStiff(facts: LineFacts): boolean {
  return facts.line.state.condition?.value === 'stiff' || (yearsIdle(facts) ?? 0) > WORKING_CONSTANTS.stiffAfterYears;
}

function strokeTimes(at: {
  readonly facts: LineFacts;
  readonly fastest: RevolutionsPerMinute;
  readonly speed: RevolutionsPerMinute;
}): Range<'s'> {
  const time = (turns: Turns, speed: number, toAndFro: number): Seconds =>
    strokeTime({
      turns,
      speed: perMinute(Math.max(WORKING_CONSTANTS.crawl, speed)),
      slowTurns: WORKING_CONSTANTS.slowTurns,
      slowSpeed: WORKING_CONSTANTS.slowSpeed,
      startTime: WORKING_CONSTANTS.startTime,
      toAndFro: ratio(toAndFro),
    });
  const { turns } = at.facts.duty;
  const stiff = isStiff(at.facts) ? WORKING_CONSTANTS.toAndFro : 1;
  const low = time(turns.low, at.fastest, 1);
  return { low, high: seconds(Math.max(low, time(turns.high, at.speed, stiff))) };
}

function visitEnergy(facts: LineFacts): CoreFigures['energyPerVisit'] {
  const { opening, closing, turns, strokes } = facts.duty;
  const work = (way: DirectionDuty): number =>
    breakawayWork({
      starting: way.starting.high,
      running: way.running.high,
      turns: turns.high,
      startingTurns: WORKING_CONSTANTS.startingTurns,
    });
  const { both, odd } = strokesEachWay(strokes);
  const stiff = isStiff(facts) ? WORKING_CONSTANTS.toAndFro : 1;
  return joules(stiff * (both * (work(opening) + work(closing)) + odd * Math.max(work(opening), work(closing))));
}

function runTime(at: {
  readonly facts: LineFacts;
  readonly opening: CoreDirection;
  readonly closing: CoreDirection;
}): Seconds {
  const { turns, strokes } = at.facts.duty;
  const one = (way: CoreDirection): number => (turns.nominal * 60) / Math.max(WORKING_CONSTANTS.crawl, way.speed);
  const { both, odd } = strokesEachWay(strokes);
  return seconds(both * (one(at.opening) + one(at.closing)) + odd * Math.max(one(at.opening), one(at.closing)));
}
