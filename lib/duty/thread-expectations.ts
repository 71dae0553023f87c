/*
 * What is usual for stem, collar, spindle, torque, gear ratio and time by the line's other values.
 * Invariant: an expectation stands only where all that it rests on is given.
 * Not here: what follows from the size (size-expectations.ts).
 * Read next: size-expectations.ts.
 */
import { type Expectation, expect } from './expectation.ts';
import type { ScheduleLine } from './schedule-line.ts';

const REST = { basis: 'common practice, no source', widens: false } as const;

export function threadExpectations(line: ScheduleLine): readonly Expectation[] {
  return [...stemExpectations(line), ...torqueExpectations(line), ...reachExpectations(line)];
}

function stemExpectations({ stem }: ScheduleLine): readonly Expectation[] {
  const thread = stem.thread;
  const around = stem.diameter?.nominal ?? thread?.value.majorDiameter_m;
  const collar =
    around === undefined
      ? []
      : expect('collar_mean_diameter', stem.collarMeanDiameter, {
          ...REST,
          usual: [0.9 * around, 4 * around],
          against: 'for this stem',
          about: ['stem_diameter'],
        });
  if (thread === undefined) return collar;
  const major = thread.value.majorDiameter_m;
  return [
    ...collar,
    ...expect('stem_diameter', stem.diameter, {
      ...REST,
      usual: [0.9 * major, 1.5 * major],
      against: `for the thread ${thread.value.designation}`,
      about: ['stem_thread'],
    }),
  ];
}

/** A valve that runs needs no more than to start; a worm gear has a ratio of its own. */
function torqueExpectations({ torque }: ScheduleLine): readonly Expectation[] {
  const { starting, running, gearbox } = torque;
  const runs =
    starting === undefined
      ? []
      : expect('running_torque', running, {
          ...REST,
          usual: [0, starting.high],
          against: 'above the starting torque given',
          about: ['starting_torque'],
        });
  return gearbox?.value === 'worm'
    ? [
        ...runs,
        ...expect('gear_ratio', torque.gearRatio, {
          ...REST,
          usual: [8, 8000],
          against: 'for a worm gearbox',
          about: ['gearbox'],
        }),
      ]
    : runs;
}

/** A spindle ends where one turns it, which is not far above the depth to the nut. */
function reachExpectations({ interface: grip, place }: ScheduleLine): readonly Expectation[] {
  const depth = place.depthToNut;
  if (depth === undefined || grip.spindleLength === undefined) return [];
  return expect('spindle_length', grip.spindleLength, {
    ...REST,
    usual: [0, depth.high + 15],
    against: 'for the depth given',
    about: ['depth_to_nut'],
  });
}
