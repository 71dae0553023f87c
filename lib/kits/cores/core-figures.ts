/*
 * Torque, speed and time of one drive, gear, limiter and head on one line, as an interval along the chain.
 * Invariant: what must be reached is worked out with the lowest factor, what must not be passed with the highest.
 * Not here: adapters, restraints and whether any rule objects.
 * Read next: ../chain/supply-share.ts, ../search-class.ts.
 */

import type { Direction, DirectionDuty } from '#lib/duty/duty.ts';
import { breakawayWork } from '#lib/engineering/energy.ts';
import { highestTorque } from '#lib/engineering/reaction.ts';
import { strokeTime } from '#lib/engineering/stroke-time.ts';
import { scaleGear, speedAtTorque } from '#lib/engineering/torque-speed.ts';
import { jointSpeeds } from '#lib/engineering/universal-joint.ts';
import type { Gear } from '#lib/equipment/drive.ts';
import type { HeadModel } from '#lib/equipment/model.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import type { ChainLimiter, CoreDirection, CoreFigures, LineFacts } from '#lib/rules/facts.ts';
import { isStiff, jointAngle } from '#lib/rules/ways-of-working.ts';
import type { Range } from '#lib/units/known-value.ts';
import {
  type Degrees,
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
import { headFactor, highestStall } from '../chain/chain-limits.ts';
import { LIMITER_MARGIN } from '../chain/limiter-settings.ts';
import { supplyShare } from '../chain/supply-share.ts';
import { strokesEachWay } from '../chain/visit-time.ts';
import {
  type CoreInput,
  type CoreMemo,
  kindOf,
  type LimiterAt,
  type Mesh,
  type MeshWay,
  newCoreMemo,
  type Visit,
} from './core-memo.ts';
import { limiterAt, surely } from './limiter-at.ts';

/** One and the same object for drive, gear, kind of head and limiter, so that what looks at them alone is asked once. */
export function coreFigures(input: CoreInput, memo: CoreMemo = newCoreMemo()): CoreFigures {
  const mesh = meshFor(input, memo);
  return figuresFrom({ input, mesh, visit: visitFor(input, memo), at: limiterFor(input, { memo, mesh }) });
}

/** The same as if nothing limited the chain, for rules that look at drive, gear and head alone. */
export function unlimitedFigures(input: CoreInput, memo: CoreMemo): CoreFigures {
  return figuresFrom({ input, mesh: meshFor(input, memo), visit: visitFor(input, memo), at: null });
}

/** What figures follow from. */
export interface FiguresFrom {
  readonly input: CoreInput;
  readonly visit: Visit;
  readonly mesh: Mesh;
  readonly at: LimiterAt | null;
}

export function visitFor({ facts }: CoreInput, memo: CoreMemo): Visit {
  memo.visit ??= visitOf(facts);
  return memo.visit;
}

export function meshFor(input: CoreInput, memo: CoreMemo): Mesh {
  return meshOf(input, { memo, visit: visitFor(input, memo) });
}

export function limiterFor(input: CoreInput, at: { readonly memo: CoreMemo; readonly mesh: Mesh }): LimiterAt | null {
  return limiterAt(input, { memo: at.memo, factor: at.mesh.factor });
}

export function figuresFrom(from: FiguresFrom): CoreFigures {
  const { figures } = from.mesh;
  const known = figures.get(from.at) ?? figuresAt(from);
  figures.set(from.at, known);
  return known;
}

/** How far the torque falls short of what the line asks for, the worse way, as a share below one. */
export function shortfallFrom(from: FiguresFrom): number {
  const missing = Math.max(missingIn(from, 'opening'), missingIn(from, 'closing'), 0);
  return missing / (missing + from.mesh.sureAtValve + 1);
}

const missingIn = (from: FiguresFrom, way: Direction): number => neededIn(from, way) - sureIn(from, way);

function figuresAt(from: FiguresFrom): CoreFigures {
  const { input, mesh, visit, at } = from;
  const opening = directionFigures(from, 'opening');
  const closing = directionFigures(from, 'closing');
  return {
    totalRatio: input.frame.head.facts.ratio,
    factor: mesh.factor,
    stallAtValve: mesh.stallAtValve,
    stallAtDrive: mesh.stallAtDrive,
    sureAtValve: mesh.sureAtValve,
    highestAtValve: newtonMetres(Math.max(opening.highest, closing.highest)),
    neverExceed: visit.neverExceed,
    limiterRequired: mesh.limiterRequired,
    limiter: at?.limiter ?? null,
    inputSpeed: mesh.inputSpeed,
    opening,
    closing,
    energyPerVisit: visit.energy,
    runTime: mesh.runTime,
    supplyShare: mesh.supplyShare,
  };
}

function visitOf(facts: LineFacts): Visit {
  const { opening, closing } = facts.duty;
  const nevers = [opening.neverExceed.torque, closing.neverExceed.torque];
  const wanted = ({ starting }: DirectionDuty): number => Math.min(starting.high, starting.nominal * LIMITER_MARGIN);
  return {
    energy: visitEnergy(facts),
    neverExceed: newtonMetres(Math.min(...nevers.map((never) => never.low))),
    isNeverGuessed: nevers.some((never) => never.basis === 'rule of thumb' || never.basis === 'assumed'),
    wanted: { opening: wanted(opening), closing: wanted(closing) },
    toAndFro: isStiff(facts) ? WORKING_CONSTANTS.toAndFro : 1,
  };
}

/** The mesh of a frame in one gear, worked out once a line and kind of head. */
function meshOf(input: CoreInput, at: { readonly memo: CoreMemo; readonly visit: Visit }): Mesh {
  const { drive } = input.frame;
  const kind = kindOf(input.frame.head, at.memo);
  const ofDrive = at.memo.meshes.get(drive) ?? new Map<HeadModel, Mesh[]>();
  const gears = ofDrive.get(kind) ?? [];
  if (gears.length === 0) at.memo.meshes.set(drive, ofDrive.set(kind, gears));
  const mesh = gears[input.gearIndex] ?? makeMesh(input, at);
  gears[input.gearIndex] = mesh;
  return mesh;
}

function makeMesh(
  { facts, frame, gearIndex }: CoreInput,
  { memo, visit }: { readonly memo: CoreMemo; readonly visit: Visit },
): Mesh {
  const { drive, head } = frame;
  const gear = drive.facts.gears[gearIndex];
  invariant(gear !== undefined, `Drive ${drive.number} has no gear ${gearIndex}.`);
  const supply = memo.supply.get(drive) ?? supplyShare({ drive, site: facts.site });
  memo.supply.set(drive, supply);
  const factor = headFactor(head, facts);
  const stallAtDrive = highestStall(drive, supply);
  const stallAtValve = newtonMetres(stallAtDrive * factor.high);
  const full = supply.torque === 1 && supply.speed === 1;
  const real = full ? gear : scaleGear({ gear, torqueFactor: supply.torque, speedFactor: supply.speed });
  const { highest } = supply;
  const strongest = scaleGear({ gear, torqueFactor: highest.torque, speedFactor: highest.speed });
  const way = (duty: DirectionDuty): MeshWay => {
    const speeds = speedsOf({ strongest, real, factor, total: head.facts.ratio, duty, angle: jointAngle(facts) });
    return { ...speeds, strokeTime: strokeTimes({ facts, toAndFro: visit.toAndFro, ...speeds }) };
  };
  const opening = way(facts.duty.opening);
  const closing = way(facts.duty.closing);
  return {
    figures: new Map(),
    factor,
    stallAtValve,
    stallAtDrive,
    sureAtValve: newtonMetres(gear.ratedTorque * supply.torque * factor.low),
    limiterRequired: stallAtValve > visit.neverExceed || visit.isNeverGuessed,
    inputSpeed: perMinute(gear.freeSpeed * highest.speed),
    supplyShare: supply.pressure,
    start: gear.stallTorque * WORKING_CONSTANTS.startShare * supply.torque * factor.low,
    opening,
    closing,
    runTime: runTime({ facts, opening, closing }),
  };
}

/** What limits one way, or null: a limiter may limit opening alone. */
function limiterIn({ at }: FiguresFrom, way: Direction): LimiterAt | null {
  return at === null || (way === 'closing' && !at.limiter.bothDirections) ? null : at;
}

function sureIn(from: FiguresFrom, way: Direction): number {
  const at = limiterIn(from, way);
  return at === null ? from.mesh.start : Math.min(from.mesh.start, surely(at.limiter, at[way].ceiling ?? 0));
}

function neededIn(from: FiguresFrom, way: Direction): number {
  const at = limiterIn(from, way);
  const wanted = from.visit.wanted[way];
  return Math.min(
    wanted,
    at === null ? from.input.facts.duty[way].neverExceed.torque.low : surely(at.limiter, at[way].allowed()),
  );
}

function directionFigures(from: FiguresFrom, way: Direction): CoreDirection {
  const { mesh } = from;
  const { stallAtValve } = mesh;
  const at = limiterIn(from, way);
  const ceiling = at === null ? null : at[way].ceiling;
  const { fastest, speed, strokeTime: times } = mesh[way];
  return {
    ceiling,
    highest: at === null || ceiling === null ? stallAtValve : limitedTo(at.limiter, { stallAtValve, ceiling }),
    sure: newtonMetres(sureIn(from, way)),
    needed: newtonMetres(neededIn(from, way)),
    fastest,
    speed,
    strokeTime: times,
  };
}

function limitedTo(
  { error, overshoot, factor }: ChainLimiter,
  { stallAtValve, ceiling }: { readonly stallAtValve: NewtonMetres; readonly ceiling: NewtonMetres },
): NewtonMetres {
  return highestTorque({ stallAtValve, limiter: { ceiling, error, overshoot, factorHigh: factor.high } });
}

function speedsOf(at: {
  /** At the highest supply. */
  readonly strongest: Gear;
  /** What the supply leaves of it. */
  readonly real: Gear;
  readonly angle: Degrees;
  readonly factor: Range<'1'>;
  readonly total: number;
  readonly duty: DirectionDuty;
}): { readonly fastest: RevolutionsPerMinute; readonly speed: RevolutionsPerMinute } {
  const { strongest, real, factor, total, duty } = at;
  const middle = (factor.low + factor.high) / 2;
  const mean = speedAtTorque({ gear: strongest, torque: newtonMetres(duty.running.low / factor.high) }) / total;
  const fastest = jointSpeeds({ inputSpeed: perMinute(mean), angle: at.angle }).high;
  const speed = speedAtTorque({ gear: real, torque: newtonMetres(duty.running.nominal / middle) }) / total;
  return { fastest, speed: perMinute(speed) };
}

function strokeTimes(at: {
  readonly facts: LineFacts;
  readonly toAndFro: number;
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
  const low = time(turns.low, at.fastest, 1);
  return { low, high: seconds(Math.max(low, time(turns.high, at.speed, at.toAndFro))) };
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

function runTime(at: { readonly facts: LineFacts; readonly opening: MeshWay; readonly closing: MeshWay }): Seconds {
  const { turns, strokes } = at.facts.duty;
  const one = (way: MeshWay): number => (turns.nominal * 60) / Math.max(WORKING_CONSTANTS.crawl, way.speed);
  const { both, odd } = strokesEachWay(strokes);
  return seconds(both * (one(at.opening) + one(at.closing)) + odd * Math.max(one(at.opening), one(at.closing)));
}
