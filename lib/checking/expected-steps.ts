/*
 * The steps that the calculation sheet of an assembly must show: which they are, with what numbers, on what basis.
 * Invariant: every number comes from models, duty, site and the house's figures through this checker's own arithmetic.
 * Not here: the words of a step (kits) and comparing (check-steps.ts).
 * Read next: check-steps.ts.
 */
import { DIRECTIONS, type Direction } from '#lib/duty/duty.ts';
import { HOUSE_CONSTANTS } from '#lib/duty/house-constants.ts';
import type { Gear } from '#lib/equipment/drive.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import type { Subject } from './chain.ts';
import { holdingSteps } from './expected-holding.ts';
import { shaftSteps } from './expected-shafts.ts';
import { packSteps, supplyFigures, supplySteps } from './expected-supply.ts';
import { computed, type ExpectedStep, type Figure, just, outOf, plate, practice, ratioOf } from './figure.ts';
import { stallAtValve } from './highest-torque.ts';
import type { Purpose } from './limiter-marks.ts';
import { setUpTimeOf } from './set-up-time.ts';
import { speedsOf, strokeTimesOf, toAndFro, visitTimeOf, visitWorkOf } from './strokes.ts';
import { supplyOf } from './supply.ts';
import { sureWhileRunning } from './sure-torque.ts';

const PURPOSES: readonly Purpose[] = ['unseat', 'run', 'seat'];

export function expectedSteps(subject: Subject): readonly ExpectedStep[] {
  return [
    chainStep(subject),
    ...supplySteps(subject),
    ...torqueSteps(subject),
    ...DIRECTIONS.flatMap((direction) => PURPOSES.flatMap((purpose) => limiterStep(subject, { direction, purpose }))),
    ...DIRECTIONS.map((direction) => speedStep(subject, direction)),
    ...DIRECTIONS.map((direction) => timeStep(subject, direction)),
    restsStep(subject),
    ...holdingSteps(subject),
    ...shaftSteps(subject),
    energyStep(subject),
    ...packSteps(subject),
    visitStep(subject),
  ];
}

function chainStep({ chain }: Subject): ExpectedStep {
  const { ratio, efficiency } = chain.head.facts;
  const angle = (Math.acos(chain.ripple) * 180) / Math.PI;
  return {
    id: 'chain-factor',
    inputs: {
      i: plate(ratio),
      η: ratioOf(efficiency),
      ...(chain.ripple === 1 ? {} : { α: computed(angle, '°') }),
    },
    result: { ...ratioOf(chain.factor), basis: 'computed' },
  };
}

function torqueSteps(subject: Subject): readonly ExpectedStep[] {
  const { drive, gear, factor } = subject.chain;
  const k = ratioOf(factor);
  const { h_T } = supplyFigures(subject);
  const beyond: ExpectedStep['inputs'] = h_T === undefined ? {} : { h_T };
  const stall = Math.max(...drive.facts.gears.map((one) => one.stallTorque));
  return [
    {
      id: 'stall-at-valve',
      inputs: { T_stall: plate(stall, 'N·m'), ...beyond, k },
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
      ...curvePoints(gear),
      ...supplyFigures(subject),
    },
    result: { ...speedRange(subject, direction), basis: outOf([running.basis]) },
  };
}

function curvePoints({ curve, stallTorque }: Gear): ExpectedStep['inputs'] {
  const between = (curve ?? []).filter(({ torque }) => torque > 0 && torque < stallTorque);
  return Object.fromEntries(
    between.flatMap(({ torque, speed }, index) => [
      [`T${index + 1}`, plate(torque, 'N·m')],
      [`n${index + 1}`, plate(speed, '1/min')],
    ]),
  );
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

function restsStep(subject: Subject): ExpectedStep {
  const { continuousRun, restAfterRun } = subject.chain.drive.facts;
  const { strokes, turns } = subject.lineDuty.duty;
  const [opening, closing] = DIRECTIONS.map((direction) => {
    const { low, high } = strokeTimesOf(subject, direction);
    return computed((low + high) / 2, 's');
  });
  return {
    id: 'strokes-with-rests',
    inputs: {
      ...(opening === undefined || closing === undefined ? {} : { t_o: opening, t_s: closing }),
      b: plate((strokes - (strokes % 2)) / 2),
      o: plate(strokes % 2),
      t_c: plate(continuousRun, 's'),
      r: plate(restAfterRun, 's'),
    },
    result: just(Math.round(visitTimeOf(subject)), { unit: 's', basis: outOf([turns.basis]) }),
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
