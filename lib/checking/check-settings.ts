/*
 * Works out the limiter's marks and the directions to select of an assembly a second time, each way.
 * Invariant: no mark may bring more to the valve than never-exceed (low), error and overshoot included; the unseating mark never closes.
 * Not here: figures of the whole assembly (check-figures.ts).
 * Read next: check-figures.ts.
 */

import { DIRECTIONS, type Direction } from '#lib/duty/duty.ts';
import { HOUSE_CONSTANTS } from '#lib/duty/house-constants.ts';
import type { LimiterSetting } from '#lib/equipment/assembly.ts';
import type { PlacedLimiter, Subject } from './chain.ts';
import { atMost, type Discrepancy, holds, same } from './discrepancy.ts';
import { marksOf } from './limiter-marks.ts';

/** Slack of a mark that lies on a step. */
const WHOLE = 1e-6;
const PURPOSES = ['unseat', 'run', 'seat'] as const;

export function checkSettings(subject: Subject): readonly Discrepancy[] {
  return DIRECTIONS.flatMap((direction) => [
    ...checkMarks(subject, direction),
    ...checkPurposes(subject, direction),
    ...checkSelect(subject, direction),
  ]);
}

function checkMarks(subject: Subject, direction: Direction): readonly Discrepancy[] {
  const { limiter } = subject.chain;
  return PURPOSES.flatMap((purpose) => {
    const setting = subject.assembly[direction][purpose];
    if (setting === null) return [];
    const name = `${purpose}, ${direction}`;
    if (limiter === null) {
      return holds(false, {
        code: 'assembly-mark-without-limiter',
        sentence: `There is a limiter mark (${name}) and no limiter.`,
        expected: 'none',
        found: setting.ceiling,
      });
    }
    return checkOneMark({ subject, direction, setting, limiter, name });
  });
}

function checkOneMark(mark: {
  readonly subject: Subject;
  readonly direction: Direction;
  readonly setting: LimiterSetting;
  readonly limiter: PlacedLimiter;
  readonly name: string;
}): readonly Discrepancy[] {
  const { setting, limiter, name } = mark;
  const duty = mark.subject.lineDuty.duty[mark.direction];
  const worst = (setting.ceiling * (1 + limiter.error) + limiter.overshoot) * limiter.factor.high;
  const sure = setting.ceiling * (1 - limiter.error) * limiter.factor.low;
  /** Once it moves only the running torque is asked for when opening; closing asks for the whole of that direction. */
  const wanted = mark.name === 'run, opening' ? duty.running : duty.starting;
  const needed = wanted.high * HOUSE_CONSTANTS.limiterMargin.nominal;
  const onStep = (value: number) => Math.abs(value / limiter.step - Math.round(value / limiter.step)) < WHOLE;
  const onScale = (value: number) => value >= limiter.lowest - WHOLE && value <= limiter.highest + WHOLE;
  return [
    ...same({ code: 'assembly-mark-step', what: `The step (${name})`, expected: limiter.step, found: setting.step }),
    ...holds(
      [setting.start, setting.ceiling].every((value) => onStep(value) && onScale(value)),
      {
        code: 'assembly-mark-off-scale',
        sentence: `A mark (${name}) is not on the scale of ${limiter.number}.`,
        expected: `whole steps of ${limiter.step} from ${limiter.lowest} to ${limiter.highest}`,
        found: `${setting.start} and ${setting.ceiling}`,
      },
    ),
    ...atMost({
      code: 'assembly-mark-start',
      what: `The start (${name})`,
      expected: setting.ceiling,
      found: setting.start,
    }),
    ...atMost({
      code: 'assembly-mark-unsafe',
      what: `What the ceiling (${name}) can bring to the valve in N·m`,
      expected: duty.neverExceed.torque.low,
      found: worst,
    }),
    ...same({
      code: 'assembly-mark-at-valve',
      what: `The start at the valve (${name})`,
      expected: setting.start * limiter.factor.high,
      found: setting.atValve.start,
    }),
    ...same({
      code: 'assembly-mark-at-valve',
      what: `The ceiling at the valve (${name})`,
      expected: setting.ceiling * limiter.factor.high,
      found: setting.atValve.ceiling,
    }),
    ...holds(setting.coversStarting === sure >= needed || Math.abs(sure - needed) <= WHOLE * needed, {
      code: 'assembly-mark-covers',
      sentence: `At the ceiling (${name}) the limiter surely gives ${sure} N·m, and ${needed} N·m are needed with the margin.`,
      expected: String(sure >= needed),
      found: String(setting.coversStarting),
    }),
  ];
}

/** The marks must be there, and be the ones that this checker works out, no more and no less. */
function checkPurposes(subject: Subject, direction: Direction): readonly Discrepancy[] {
  return PURPOSES.flatMap((purpose) => {
    const expected = marksOf(subject, { direction, purpose });
    const found = subject.assembly[direction][purpose];
    const name = `${purpose}, ${direction}`;
    if (expected === null && found === null) return [];
    if (expected === null || found === null) {
      return holds(false, {
        code: found === null ? 'assembly-mark-missing' : 'assembly-mark-purpose',
        sentence:
          found === null
            ? `There is no mark (${name}), and the limiter has one.`
            : `There is a mark (${name}) that may not be.`,
        expected: expected?.ceiling ?? 'none',
        found: found?.ceiling ?? 'none',
      });
    }
    return [
      ...same({
        code: 'assembly-mark-value',
        what: `The start (${name})`,
        expected: expected.start,
        found: found.start,
      }),
      ...same({
        code: 'assembly-mark-value',
        what: `The ceiling (${name})`,
        expected: expected.ceiling,
        found: found.ceiling,
      }),
    ];
  });
}

function checkSelect(subject: Subject, direction: Direction): readonly Discrepancy[] {
  const { closes } = subject.lineDuty.duty;
  const wheelClockwise = (closes === 'clockwise') === (direction === 'closing');
  const toolClockwise = wheelClockwise !== subject.chain.head.facts.reverses;
  const known = toolClockwise ? 'clockwise' : 'anticlockwise';
  const expected = closes === 'unknown' ? 'try gently first: direction unknown' : known;
  const { select } = subject.assembly[direction];
  return holds(select === expected, {
    code: 'assembly-direction',
    sentence: `For ${direction} one selects ${expected}, not ${select}.`,
    expected,
    found: select,
  });
}
