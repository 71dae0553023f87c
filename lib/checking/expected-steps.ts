/*
 * The steps that the calculation sheet of an assembly must show: which they are, with what numbers, on what basis.
 * Invariant: every number comes from models, duty, site and the house's figures through this checker's own arithmetic.
 * Not here: the words of a step (kits) and comparing (check-steps.ts).
 * Read next: check-steps.ts.
 */
import { DIRECTIONS, type Direction } from '#lib/duty/duty.ts';
import { HOUSE_CONSTANTS } from '#lib/duty/house-constants.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import { type Basis, worstBasis } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import type { Subject } from './chain.ts';
import { highestAtValve, stallAtValve } from './highest-torque.ts';
import type { Purpose } from './limiter-marks.ts';
import { pullOf } from './pull.ts';
import { setUpTimeOf } from './set-up-time.ts';
import { speedsOf, strokeTimesOf, toAndFro, visitTimeOf, visitWorkOf } from './strokes.ts';
import { supplyOf } from './supply.ts';
import { sureWhileRunning } from './sure-torque.ts';

export interface Figure {
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
  readonly unit: Unit;
  readonly basis: Basis;
  /** Where a value of the duty comes from; of the house's own figures only the words may vary. */
  readonly source?: string;
}

export interface ExpectedStep {
  readonly id: string;
  readonly inputs: Readonly<Record<string, Figure>>;
  readonly result: Figure;
}

const PURPOSES: readonly Purpose[] = ['unseat', 'run', 'seat'];

export function expectedSteps(subject: Subject): readonly ExpectedStep[] {
  return [
    ...torqueSteps(subject),
    ...DIRECTIONS.flatMap((direction) => PURPOSES.flatMap((purpose) => limiterStep(subject, { direction, purpose }))),
    ...DIRECTIONS.map((direction) => speedStep(subject, direction)),
    ...DIRECTIONS.map((direction) => timeStep(subject, direction)),
    reactionStep(subject),
    energyStep(subject),
    visitStep(subject),
  ];
}

const plate = (value: number, unit: Unit = '1'): Figure => just(value, { unit, basis: 'stated' });
const practice = (value: number, unit: Unit = '1'): Figure => just(value, { unit, basis: 'rule of thumb' });
const computed = (value: number, unit: Unit = '1'): Figure => just(value, { unit, basis: 'computed' });

function just(value: number, kind: Pick<Figure, 'unit' | 'basis'>): Figure {
  return { low: value, nominal: value, high: value, ...kind };
}

function ratioOf({ low, high }: { readonly low: number; readonly high: number }): Figure {
  return { low, nominal: (low + high) / 2, high, unit: '1', basis: 'stated' };
}

/** What comes out is computed, unless what went in was no better than practice or a guess. */
function outOf(bases: readonly Basis[]): Basis {
  const worst = worstBasis(bases);
  return worst === 'rule of thumb' || worst === 'assumed' ? worst : 'computed';
}

function torqueSteps(subject: Subject): readonly ExpectedStep[] {
  const { drive, gear, factor } = subject.chain;
  const k = ratioOf(factor);
  const stall = Math.max(...drive.facts.gears.map((one) => one.stallTorque));
  return [
    {
      id: 'stall-at-valve',
      inputs: { T_stall: plate(stall, 'N·m'), k },
      result: computed(stallAtValve(subject), 'N·m'),
    },
    {
      id: 'sure-at-valve',
      inputs: { T_rated: plate(gear.ratedTorque, 'N·m'), s: computed(supplyOf(subject).torque), k },
      result: computed(sureWhileRunning(subject), 'N·m'),
    },
  ];
}

function limiterStep(
  subject: Subject,
  { direction, purpose }: { readonly direction: Direction; readonly purpose: Purpose },
): readonly ExpectedStep[] {
  const setting = subject.assembly[direction][purpose];
  const { limiter } = subject.chain;
  if (setting === null || limiter === null) return [];
  const { starting, running, neverExceed } = subject.lineDuty.duty[direction];
  const wanted = direction === 'opening' && purpose === 'run' ? running : starting;
  const least = {
    unseat: starting.low,
    run: direction === 'opening' ? running.low : Math.min(running.low, starting.low),
    seat: running.low,
  }[purpose];
  return [
    {
      id: `limiter-${purpose}-${direction}`,
      inputs: {
        T: wanted,
        T_0: computed(least, 'N·m'),
        T_never: neverExceed.torque,
        m: practice(HOUSE_CONSTANTS.limiterMargin.nominal),
        e: plate(limiter.error),
        o: plate(limiter.overshoot, 'N·m'),
        k: ratioOf(limiter.factor),
      },
      result: {
        low: setting.start,
        nominal: setting.start,
        high: setting.ceiling,
        unit: 'N·m',
        basis: outOf([wanted.basis, neverExceed.torque.basis]),
      },
    },
  ];
}

function speedStep(subject: Subject, direction: Direction): ExpectedStep {
  const { gear, head, factor } = subject.chain;
  const { running } = subject.lineDuty.duty[direction];
  return {
    id: `speed-${direction}`,
    inputs: {
      T_run: running,
      n0: plate(gear.freeSpeed, '1/min'),
      Ts: plate(gear.stallTorque, 'N·m'),
      i: plate(head.facts.ratio),
      k: ratioOf(factor),
    },
    result: { ...speedRange(subject, direction), basis: outOf([running.basis]) },
  };
}

function speedRange(subject: Subject, direction: Direction): Figure {
  const { fastest, speed } = speedsOf(subject, direction);
  const slowest = Math.min(speed, fastest);
  return { low: slowest, nominal: slowest, high: fastest, unit: '1/min', basis: 'computed' };
}

function timeStep(subject: Subject, direction: Direction): ExpectedStep {
  const { turns } = subject.lineDuty.duty;
  const { low, high } = strokeTimesOf(subject, direction);
  return {
    id: `stroke-time-${direction}`,
    inputs: {
      N: turns,
      n: speedRange(subject, direction),
      f: practice(toAndFro(subject)),
      Ns: practice(WORKING_CONSTANTS.slowTurns, 'turn'),
      ns: practice(WORKING_CONSTANTS.slowSpeed, '1/min'),
      t0: practice(WORKING_CONSTANTS.startTime, 's'),
    },
    result: { low, nominal: (low + high) / 2, high, unit: 's', basis: outOf([turns.basis]) },
  };
}

function reactionStep(subject: Subject): ExpectedStep {
  return {
    id: 'reaction-force',
    inputs: {
      T: computed(highestAtValve(subject), 'N·m'),
      a: plate(subject.chain.restraint.facts.arm.low, 'm'),
      β: practice(WORKING_CONSTANTS.pullAngle, '°'),
      c: practice(WORKING_CONSTANTS.shock),
    },
    result: practice(pullOf(subject).force, 'N'),
  };
}

function energyStep(subject: Subject): ExpectedStep {
  const { opening, closing, turns, strokes } = subject.lineDuty.duty;
  const torques = {
    T_start: opening.starting,
    T_run: opening.running,
    'T_start′': closing.starting,
    'T_run′': closing.running,
  };
  return {
    id: 'energy-per-visit',
    inputs: {
      N: turns,
      ...torques,
      f: practice(toAndFro(subject)),
      Ns: practice(WORKING_CONSTANTS.startingTurns, 'turn'),
      strokes: plate(strokes),
    },
    result: just(visitWorkOf(subject), {
      unit: 'J',
      basis: outOf([turns, ...Object.values(torques)].map(({ basis }) => basis)),
    }),
  };
}

function visitStep(subject: Subject): ExpectedStep {
  const setUp = setUpTimeOf(subject);
  const strokes = Math.round(visitTimeOf(subject));
  return {
    id: 'time-per-valve',
    inputs: { 'set-up': practice(setUp, 's'), strokes: computed(strokes, 's') },
    result: just(setUp + strokes, { unit: 's', basis: outOf([subject.lineDuty.duty.turns.basis]) }),
  };
}
