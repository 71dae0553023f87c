/*
 * Works out the limiter's marks, speeds, stroke times and directions of an assembly a second time, each way.
 * Invariant: no mark may bring more to the valve than never-exceed (low), error and overshoot included; the unseating mark never closes.
 * Not here: figures of the whole assembly (check-figures.ts).
 * Read next: check-figures.ts.
 */

import { DIRECTIONS, type Direction } from '#lib/duty/duty.ts';
import { HOUSE_CONSTANTS } from '#lib/duty/house-constants.ts';
import type { LimiterSetting } from '#lib/equipment/assembly.ts';
import type { PlacedLimiter, Subject } from './chain.ts';
import { atMost, type Discrepancy, holds, same } from './discrepancy.ts';

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

function checkPurposes(subject: Subject, direction: Direction): readonly Discrepancy[] {
  const { unseat, run, seat } = subject.assembly[direction];
  const limited = subject.chain.limiter !== null && subject.assembly.figures.limiterRequired;
  return [
    ...holds(direction === 'opening' ? seat === null : unseat === null, {
      code: 'assembly-mark-purpose',
      sentence:
        direction === 'opening'
          ? 'There is a mark to seat while opening.'
          : 'The unseating mark would be used to close.',
      expected: 'none',
      found: (direction === 'opening' ? seat : unseat)?.ceiling ?? 'none',
    }),
    ...holds(!limited || (run !== null && (direction === 'closing' || unseat !== null)), {
      code: 'assembly-mark-missing',
      sentence: `A limiter is required and ${direction} has no mark for it.`,
      expected: direction === 'opening' ? 'marks to unseat and to run' : 'a mark to run',
      found: run === null ? 'none to run' : 'none to unseat',
    }),
  ];
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
