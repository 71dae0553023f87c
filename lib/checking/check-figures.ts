/*
 * Works out every figure of an assembly a second time: torques, speeds, times, pull, work, masses, chance, and its identity.
 * Invariant: own arithmetic from models, duty and site; what the assembly says is only compared, save its limiter marks, which check-settings.ts holds.
 * Not here: limiter and counter required (check-chain.ts), marks and directions to select (check-settings.ts).
 * Read next: strokes.ts, supply.ts.
 */
import { DIRECTIONS, type Direction } from '#lib/duty/duty.ts';
import { chanceAtMost } from '#lib/engineering/chance.ts';
import type { Subject } from './chain.ts';
import { atMost, type Compared, type Discrepancy, holds, same } from './discrepancy.ts';
import { highestAtValve, stallAtValve } from './highest-torque.ts';
import { pullOf } from './pull.ts';
import { setUpTimeOf } from './set-up-time.ts';
import { piecesOf, speedByLength } from './shaft-figures.ts';
import { speedsOf, strokeTimesOf, visitTimeOf, visitWorkOf } from './strokes.ts';
import { sureStart, sureWhileRunning } from './sure-torque.ts';

export function checkFigures(subject: Subject): readonly Discrepancy[] {
  return [
    ...[...torques(subject), ...pull(subject), ...times(subject), ...pieces(subject)].flatMap(same),
    ...DIRECTIONS.flatMap((direction) => checkWay(subject, direction)),
    ...checkChance(subject),
    ...checkIdentity(subject),
  ];
}

function torques(subject: Subject): readonly Compared[] {
  const { chain, assembly } = subject;
  const { figures } = assembly;
  return [
    {
      code: 'assembly-stall-at-valve',
      what: 'Stall torque at the valve',
      expected: stallAtValve(subject),
      found: figures.stallAtValve,
    },
    {
      code: 'assembly-highest-at-valve',
      what: 'The highest torque at the valve',
      expected: highestAtValve(subject),
      found: figures.highestAtValve,
    },
    {
      code: 'assembly-sure-at-valve',
      what: 'The torque that the chain surely gives',
      expected: sureWhileRunning(subject),
      found: figures.sureAtValve,
    },
    {
      code: 'assembly-total-ratio',
      what: 'The total ratio',
      expected: chain.head.facts.ratio,
      found: figures.totalRatio,
    },
  ];
}

function pull(subject: Subject): readonly Compared[] {
  const { figures } = subject.assembly;
  const { force, sideLoad } = pullOf(subject);
  return [
    {
      code: 'assembly-reaction-force',
      what: 'The pull in the restraint',
      expected: force,
      found: figures.reactionForce,
    },
    { code: 'assembly-side-load', what: 'The side load on the stem', expected: sideLoad, found: figures.sideLoad },
  ];
}

function times(subject: Subject): readonly Compared[] {
  const { assembly } = subject;
  const setUp = setUpTimeOf(subject);
  return [
    { code: 'assembly-set-up-time', what: 'The set-up time', expected: setUp, found: assembly.figures.setUpTime },
    {
      code: 'assembly-time-per-valve',
      what: 'The time at a valve',
      expected: setUp + Math.round(visitTimeOf(subject)),
      found: assembly.figures.timePerValve,
    },
    {
      code: 'assembly-energy',
      what: 'The work of a visit',
      expected: visitWorkOf(subject),
      found: assembly.figures.energyPerVisit,
    },
  ];
}

/** A model that stands in several chains of a covering set is carried once. */
function pieces({ chain, assembly }: Subject): readonly Compared[] {
  const behind = chain.links.flatMap((link) => link.extensions);
  const parts = new Map(
    [chain.drive, chain.head, chain.restraint, ...chain.options, ...chain.adapters, ...chain.extensions, ...behind].map(
      (model) => [model.number, model.mass],
    ),
  );
  const accessories = chain.accessories.map(({ model, count }) => ({ each: model.mass, all: model.mass * count }));
  const mass = [...parts.values(), ...accessories.map(({ all }) => all)].reduce((sum, one) => sum + one, 0);
  const heaviest = Math.max(...parts.values(), ...accessories.map(({ each }) => each));
  return [
    { code: 'assembly-mass', what: 'The mass', expected: mass, found: assembly.figures.mass },
    {
      code: 'assembly-heaviest-piece',
      what: 'The heaviest piece',
      expected: heaviest,
      found: assembly.figures.heaviestPiece,
    },
  ];
}

function checkWay(subject: Subject, direction: Direction): readonly Discrepancy[] {
  const settings = subject.assembly[direction];
  const { duty } = subject.lineDuty;
  const shafts = subject.chain.links.map(piecesOf).filter((pieces) => pieces.length > 0);
  const { fastest, speed } = speedsOf(subject, direction);
  const stroke = strokeTimesOf(subject, direction);
  return [
    ...same({ code: 'assembly-speed', what: `The speed while ${direction}`, expected: speed, found: settings.speed }),
    ...same({
      code: 'assembly-stroke-time',
      what: `The shortest stroke while ${direction}`,
      expected: stroke.low,
      found: settings.strokeTime.low,
    }),
    ...same({
      code: 'assembly-stroke-time',
      what: `The longest stroke while ${direction}`,
      expected: stroke.high,
      found: settings.strokeTime.high,
    }),
    ...atMost({
      code: 'assembly-too-fast',
      what: `The highest speed while ${direction} in 1/min`,
      expected: duty.maxInputSpeed.nominal,
      found: fastest,
    }),
    ...atMost({
      code: 'assembly-shaft-whirl',
      what: `The speed while ${direction} against what shafts and key allow by their length, in 1/min`,
      expected: Math.min(Number.POSITIVE_INFINITY, ...shafts.map(speedByLength)),
      found: fastest,
    }),
    ...atMost({
      code: 'assembly-stroke-too-short',
      what: `The shortest stroke permitted, against what ${direction} takes at the least, in s`,
      expected: stroke.low,
      found: duty.minStrokeTime?.nominal ?? 0,
    }),
  ];
}

function checkChance(subject: Subject): readonly Discrepancy[] {
  const { chance } = subject.assembly.figures;
  const [one, other] = DIRECTIONS.map((direction) =>
    chanceAtMost({ value: subject.lineDuty.duty[direction].starting, limit: sureStart(subject, direction) }),
  );
  return [
    ...holds(chance >= 0 && chance <= 1, {
      code: 'assembly-chance-range',
      sentence: 'The chance of the first visit is not from 0 to 1.',
      expected: '0 to 1',
      found: chance,
    }),
    ...same({
      code: 'assembly-chance',
      what: 'The chance of the first visit',
      expected: Math.min(one ?? 0, other ?? 0),
      found: chance,
    }),
  ];
}

/** The id names the gear and every part, no more and no less. */
function checkIdentity({ assembly }: Subject): readonly Discrepancy[] {
  const { parts } = assembly;
  const links = parts.adapters.flatMap((adapter, index) => [
    ...(parts.adapterExtensions?.[index] ?? parts.extensions),
    adapter,
  ]);
  const counted = parts.accessories.map(({ number, count }) => `${number}${count > 1 ? `*${count}` : ''}`);
  const named = [`${parts.drive}:${parts.gear}`, parts.head, ...parts.options, ...links, parts.restraint, ...counted];
  const [expected, found] = [named, assembly.id.split('+')].map((words) => words.toSorted().join(' '));
  return holds(expected === found, {
    code: 'assembly-identity',
    sentence: `The assembly is called ${assembly.id}, and those are not its parts.`,
    expected: named.join('+'),
    found: assembly.id,
  });
}
