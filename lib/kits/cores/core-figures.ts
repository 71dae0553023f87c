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
import type { DriveModel, HeadModel, Model } from '#lib/equipment/model.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import type { ChainLimiter, CoreDirection, CoreFigures, LineFacts } from '#lib/rules/facts.ts';
import { isStiff, jointAngle, seatsOf } from '#lib/rules/ways-of-working.ts';
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
import { headFactor, highestStall, underHeadFactor } from '../chain/chain-limits.ts';
import { allowedSetting, ceilingOf, LIMITER_MARGIN, limiterSettings } from '../chain/limiter-settings.ts';
import { type SupplyShare, supplyShare } from '../chain/supply-share.ts';
import { strokesEachWay } from '../chain/visit-time.ts';
import type { Frame } from './frames.ts';

export interface CoreInput {
  readonly facts: LineFacts;
  readonly frame: Frame;
  readonly gearIndex: number;
  /** `needed`: limiter no higher than the line asks; a number: up to what every part and the valve allow. */
  readonly limiterUpTo: 'needed' | NewtonMetres;
}

/** What many cores of one line share; for one line and one `limiterUpTo` only. */
export interface CoreMemo {
  /** For each head the first that has its ratio and efficiency: heads of one kind give the same figures. */
  readonly kinds: Map<HeadModel, HeadModel>;
  readonly kindsByFacts: Map<string, HeadModel>;
  /** By drive and kind of head, gear by gear. */
  readonly meshes: Map<DriveModel, Map<HeadModel, Mesh[]>>;
  /** By limiter, or drive where it is built in, and then by kind of head. */
  readonly limiters: Map<Model, Map<HeadModel | 'any head', LimiterAt>>;
  readonly supply: Map<DriveModel, SupplyShare>;
  visit: Visit | null;
}

/** What the line alone gives. */
interface Visit {
  readonly energy: CoreFigures['energyPerVisit'];
  readonly neverExceed: NewtonMetres;
  readonly isNeverGuessed: boolean;
  readonly wanted: Readonly<Record<Direction, number>>;
  readonly toAndFro: number;
}

/** What drive, gear and head give, whatever limits them. */
interface Mesh {
  /** Figures by what limits them. */
  readonly figures: Map<LimiterAt | null, CoreFigures>;
  readonly factor: Range<'1'>;
  readonly stallAtValve: NewtonMetres;
  readonly stallAtDrive: NewtonMetres;
  readonly sureAtValve: NewtonMetres;
  readonly limiterRequired: boolean;
  readonly inputSpeed: RevolutionsPerMinute;
  readonly supplyShare: number;
  readonly start: number;
  readonly opening: MeshWay;
  readonly closing: MeshWay;
  readonly runTime: Seconds;
}

type MeshWay = Pick<CoreDirection, 'fastest' | 'speed' | 'strokeTime'>;

/** A limiter where it sits, and how far each direction lets it go. */
interface LimiterAt {
  readonly limiter: ChainLimiter;
  readonly opening: LimiterReach;
  readonly closing: LimiterReach;
}

interface LimiterReach {
  readonly ceiling: CoreDirection['ceiling'];
  /** What never-exceed alone would allow on the limiter's scale. */
  readonly allowed: number;
}

export const newCoreMemo = (): CoreMemo => ({
  kinds: new Map(),
  kindsByFacts: new Map(),
  meshes: new Map(),
  limiters: new Map(),
  supply: new Map(),
  visit: null,
});

/** One and the same object for drive, gear, kind of head and limiter, so that what looks at them alone is asked once. */
export function coreFigures(input: CoreInput, memo: CoreMemo = newCoreMemo()): CoreFigures {
  memo.visit ??= visitOf(input.facts);
  const { visit } = memo;
  const mesh = meshOf(input, { memo, visit });
  return sharedFigures({ input, mesh, visit, at: limiterAt(input, { memo, factor: mesh.factor }) });
}

/** The same as if nothing limited the chain, for rules that look at drive, gear and head alone. */
export function unlimitedFigures(input: CoreInput, memo: CoreMemo): CoreFigures {
  memo.visit ??= visitOf(input.facts);
  const { visit } = memo;
  return sharedFigures({ input, mesh: meshOf(input, { memo, visit }), visit, at: null });
}

function sharedFigures(from: Omit<WayInput, 'direction'>): CoreFigures {
  const { figures } = from.mesh;
  const known = figures.get(from.at) ?? figuresAt(from);
  figures.set(from.at, known);
  return known;
}

function kindOf(head: HeadModel, memo: CoreMemo): HeadModel {
  const known = memo.kinds.get(head);
  if (known !== undefined) return known;
  const { ratio: step, efficiency } = head.facts;
  const key = `${step} ${efficiency.low} ${efficiency.high}`;
  const kind = memo.kindsByFacts.get(key) ?? head;
  memo.kindsByFacts.set(key, kind);
  memo.kinds.set(head, kind);
  return kind;
}

function figuresAt({ input, mesh, visit, at }: Omit<WayInput, 'direction'>): CoreFigures {
  const opening = directionFigures({ direction: 'opening', input, mesh, visit, at });
  const closing = directionFigures({ direction: 'closing', input, mesh, visit, at });
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

/** The limiter of a frame, built in or not, worked out once a line for where it sits. */
function limiterAt(
  input: CoreInput,
  { memo, factor }: { readonly memo: CoreMemo; readonly factor: Range<'1'> },
): LimiterAt | null {
  const { drive, limiter: option } = input.frame;
  if (option === null && drive.facts.limiter === null) return null;
  const owner = option ?? drive;
  const ofOwner = memo.limiters.get(owner) ?? new Map<HeadModel | 'any head', LimiterAt>();
  if (ofOwner.size === 0) memo.limiters.set(owner, ofOwner);
  const where = option?.facts.sits === 'after head' ? 'any head' : kindOf(input.frame.head, memo);
  const known = ofOwner.get(where);
  if (known !== undefined) return known;
  const limiter = limiterInChain(input, factor);
  if (limiter === null) return null;
  const reach = (direction: Direction): LimiterReach => {
    const { facts, limiterUpTo: upTo } = input;
    const ask = { limiter, duty: facts.duty[direction], direction, upTo, seats: seatsOf(facts) };
    return { ceiling: ceilingOf(limiterSettings(ask)), allowed: allowedSetting(ask) };
  };
  const made = { limiter, opening: reach('opening'), closing: reach('closing') };
  ofOwner.set(where, made);
  return made;
}

function limiterInChain({ facts, frame }: CoreInput, factor: Range<'1'>): ChainLimiter | null {
  const built = frame.drive.facts.limiter;
  if (frame.limiter === null) return built === null ? null : { ...built, factor, number: frame.drive.number };
  const { lowest, highest, error, overshoot, step, bothDirections, sits } = frame.limiter.facts;
  invariant(
    lowest !== undefined && highest !== undefined && error !== undefined && step !== undefined,
    `Limiter ${frame.limiter.number} lacks its range, error or step.`,
  );
  const after = sits === 'after drive' ? factor : underHeadFactor(facts);
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
  readonly direction: Direction;
  readonly input: CoreInput;
  readonly mesh: Mesh;
  readonly visit: Visit;
  readonly at: LimiterAt | null;
}

function directionFigures({ direction, input, mesh, visit, at }: WayInput): CoreDirection {
  const { fastest, speed, strokeTime: times } = mesh[direction];
  const wanted = visit.wanted[direction];
  if (at === null || (direction === 'closing' && !at.limiter.bothDirections)) {
    return {
      ceiling: null,
      highest: mesh.stallAtValve,
      sure: newtonMetres(mesh.start),
      needed: newtonMetres(Math.min(wanted, input.facts.duty[direction].neverExceed.torque.low)),
      fastest,
      speed,
      strokeTime: times,
    };
  }
  const { limiter } = at;
  const { ceiling, allowed } = at[direction];
  const highest =
    ceiling === null
      ? mesh.stallAtValve
      : highestTorque({
          stallAtValve: mesh.stallAtValve,
          limiter: { ceiling, error: limiter.error, overshoot: limiter.overshoot, factorHigh: limiter.factor.high },
        });
  return {
    ceiling,
    highest,
    sure: newtonMetres(Math.min(mesh.start, surely(limiter, ceiling ?? 0))),
    needed: newtonMetres(Math.min(wanted, surely(limiter, allowed))),
    fastest,
    speed,
    strokeTime: times,
  };
}

/** Torque at the valve up to which a limiter surely lets the chain turn. */
function surely(limiter: ChainLimiter, setting: number): number {
  return setting * (1 - limiter.error) * limiter.factor.low;
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
