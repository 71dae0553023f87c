/*
 * What the rules are asked about an assembly, from figures that this checker works out itself.
 * Invariant: no figure is taken from the assembly, save its limiter marks, which check-settings.ts holds against the checker's own.
 * Not here: asking the rules (check-findings.ts).
 * Read next: check-findings.ts.
 */
import type { Direction } from '#lib/duty/duty.ts';
import { HOUSE_CONSTANTS } from '#lib/duty/house-constants.ts';
import type { CoreDirection, CoreFigures, WholeFacts } from '#lib/rules/facts.ts';
import { placeOf } from '#lib/rules/place-facts.ts';
import { joules, newtonMetres, newtons, perMinute, ratio, seconds } from '#lib/units/quantity.ts';
import type { Subject } from './chain.ts';
import { highestAtValve, highestIn, needsLimiter, settingsOf, stallAtDrive, stallAtValve } from './highest-torque.ts';
import { allowedByValve, limitsWhile } from './limiter-marks.ts';
import { pullOf } from './pull.ts';
import { poweredTimeOf, speedsOf, strokeTimesOf, visitWorkOf } from './strokes.ts';
import { supplyOf } from './supply.ts';
import { sureStart, sureWhileRunning } from './sure-torque.ts';

export function wholeFacts(subject: Subject): WholeFacts {
  const { chain, lineDuty, site } = subject;
  const { line, duty } = lineDuty;
  const pull = pullOf(subject);
  return {
    line,
    duty,
    site,
    place: placeOf({ line, duty, site }),
    core: {
      drive: chain.drive,
      gear: chain.gear,
      gearIndex: subject.assembly.parts.gear,
      limiter: chain.options.find((option) => option.facts.kind === 'torque limiter') ?? null,
      head: chain.head,
      counter: chain.counter,
      figures: figuresOf(subject),
    },
    links: chain.links,
    restraint: chain.restraint,
    secondChain: chain.accessories.find(({ model }) => model.facts.kind === 'second chain')?.model ?? null,
    reaction: {
      arm_m: chain.restraint.facts.arm.low,
      force: newtons(pull.force),
      sideLoad: newtons(pull.sideLoad),
    },
  };
}

function figuresOf(subject: Subject): CoreFigures {
  const { chain } = subject;
  const { opening, closing } = subject.lineDuty.duty;
  const factor = { low: ratio(chain.factor.low), high: ratio(chain.factor.high) };
  return {
    totalRatio: chain.head.facts.ratio,
    factor,
    stallAtValve: newtonMetres(stallAtValve(subject)),
    stallAtDrive: newtonMetres(stallAtDrive(subject)),
    sureAtValve: newtonMetres(sureWhileRunning(subject)),
    highestAtValve: newtonMetres(highestAtValve(subject)),
    neverExceed: newtonMetres(Math.min(opening.neverExceed.torque.low, closing.neverExceed.torque.low)),
    limiterRequired: needsLimiter(subject),
    limiter: limiterOf(subject),
    inputSpeed: perMinute(chain.gear.freeSpeed * supplyOf(subject).highest.speed),
    opening: wayOf(subject, 'opening'),
    closing: wayOf(subject, 'closing'),
    energyPerVisit: joules(visitWorkOf(subject)),
    runTime: seconds(poweredTimeOf(subject)),
    supplyShare: supplyOf(subject).pressure,
  };
}

function limiterOf({ chain }: Subject): CoreFigures['limiter'] {
  if (chain.limiter === null) return null;
  const { factor } = chain.limiter;
  return { ...chain.limiter, factor: { low: ratio(factor.low), high: ratio(factor.high) } };
}

function wayOf(subject: Subject, direction: Direction): CoreDirection {
  const { limiter } = subject.chain;
  const { starting, neverExceed } = subject.lineDuty.duty[direction];
  const limits = limiter !== null && limitsWhile(limiter, direction);
  const ceilings = settingsOf(subject, direction).map((setting) => setting.ceiling);
  const { fastest, speed } = speedsOf(subject, direction);
  const stroke = strokeTimesOf(subject, direction);
  /** What must be reached: all of the range, or the likeliest with the margin, and no more than the valve stands. */
  const wanted = Math.min(starting.high, starting.nominal * HOUSE_CONSTANTS.limiterMargin.nominal);
  const reachable = limits
    ? allowedByValve(subject, direction) * (1 - limiter.error) * limiter.factor.low
    : neverExceed.torque.low;
  return {
    ceiling: limits && ceilings.length > 0 ? newtonMetres(Math.max(...ceilings)) : null,
    highest: newtonMetres(highestIn(subject, direction)),
    sure: newtonMetres(sureStart(subject, direction)),
    needed: newtonMetres(Math.min(wanted, reachable)),
    fastest: perMinute(fastest),
    speed: perMinute(speed),
    strokeTime: { low: seconds(stroke.low), high: seconds(stroke.high) },
  };
}
