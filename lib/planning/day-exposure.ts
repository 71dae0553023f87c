/*
 * Trigger time, hand-arm vibration and noise of one crew's day, with the steps by which they were worked out.
 * Invariant: more trigger time never lowers a figure, and sharing the drive never raises one; every figure has its step.
 * Not here: lifts (day-lifts.ts) and what is to be said of limits (day-findings.ts).
 * Read next: crew-days.ts.
 */
import { dailyNoise } from '#lib/engineering/noise.ts';
import { dailyVibration, vibrationPoints } from '#lib/engineering/vibration.ts';
import type { CrewDay, DayVibration } from '#lib/equipment/crew-day.ts';
import type { DriveModel } from '#lib/equipment/model.ts';
import type { Step, StepInput } from '#lib/units/calculation-step.ts';
import { type Basis, type Known, known, worstBasis } from '#lib/units/known-value.ts';
import { seconds, type Unit } from '#lib/units/quantity.ts';
import type { CrewPortion, Trigger } from './crew-portions.ts';

type Ends = 'low' | 'nominal' | 'high';
const WORKED_OUT = 'Worked out from the values named.';
const DECLARED = 'Declared by the maker; measured values decide';
const PRACTICE = 'Common practice, no source';

/** How long each drive is held on the day. */
interface DriveTime {
  readonly drive: DriveModel;
  readonly trigger: Trigger;
}

interface Exposed {
  readonly drives: readonly DriveTime[];
  readonly basis: Basis;
}

export type DayExposure = Pick<CrewDay, 'trigger' | 'alone' | 'turns' | 'noise' | 'steps'>;

export function dayExposure(day: readonly CrewPortion[], personsPerCrew: number): DayExposure {
  const drives = driveTimes(day);
  const basis = worstBasis(day.map(({ duty }) => duty.turns.basis));
  const exposed = { drives, basis: basis === 'rule of thumb' || basis === 'assumed' ? basis : 'computed' } as const;
  const trigger = over({ unit: 's', exposed, of: (end) => sum(drives.map((one) => one.trigger[end])) });
  const alone = vibrationOf(exposed, 1);
  const persons = Math.floor(personsPerCrew);
  const turns = persons > 1 ? { ...vibrationOf(exposed, persons), persons } : null;
  const noise = over({
    unit: 'dB',
    exposed,
    of: (end) => dailyNoise(drives.map((one) => ({ level: one.drive.facts.soundPressure, time: one.trigger[end] }))),
  });
  const steps = [
    triggerStep(day, trigger),
    vibrationStep({ exposed, persons: 1, found: alone }),
    pointsStep(alone),
    ...(turns === null ? [] : [vibrationStep({ exposed, persons, found: turns })]),
    noiseStep(exposed, noise),
  ];
  return { trigger, alone, turns, noise, steps };
}

function driveTimes(day: readonly CrewPortion[]): readonly DriveTime[] {
  const numbers = [...new Set(day.map(({ drive }) => drive.number))];
  return numbers.flatMap((number) => {
    const with_ = day.filter(({ drive }) => drive.number === number);
    const total = (end: Ends) => seconds(sum(with_.map(({ qty, trigger }) => qty * trigger[end])));
    const drive = with_[0]?.drive;
    return drive ? [{ drive, trigger: { low: total('low'), nominal: total('nominal'), high: total('high') } }] : [];
  });
}

function vibrationOf(exposed: Exposed, persons: number): DayVibration {
  const at = (end: Ends) =>
    exposed.drives.map(({ drive, trigger }) => ({
      vibration: drive.facts.vibration,
      time: seconds(trigger[end] / persons),
    }));
  return {
    exposure: over({ unit: 'm/s²', exposed, of: (end) => dailyVibration(at(end)) }),
    points: vibrationPoints(at('nominal')),
  };
}

function over<U extends Unit>({
  unit,
  exposed,
  of,
}: {
  readonly unit: U;
  readonly exposed: Exposed;
  readonly of: (end: Ends) => number;
}): Known<U> {
  const range = { low: of('low'), nominal: of('nominal'), high: of('high') };
  return known(unit, range, { basis: exposed.basis, source: WORKED_OUT });
}

function triggerStep(day: readonly CrewPortion[], trigger: Known<'s'>): Step {
  const keys = [...new Set(day.map(({ key }) => key))];
  const inputs = keys.flatMap((key, index) => {
    const with_ = day.filter((one) => one.key === key);
    const first = with_[0];
    if (first === undefined) return [];
    const name = `${first.line.tag} and what is done like it`;
    const count = sum(with_.map(({ qty }) => qty));
    return [
      input({ symbol: `n${index + 1}`, name: `Valves: ${name}`, unit: '1', range: just(count), source: 'The plan' }),
      input({
        symbol: `t${index + 1}`,
        name: `Powered strokes of a visit: ${name}`,
        unit: 's',
        range: first.trigger,
        source: 'Stroke times of the assembly',
      }),
    ];
  });
  return {
    id: 'crew-day-trigger',
    name: 'Trigger time of the day',
    formula: 't = Σ n·t_visit; a visit is its strokes both ways, with to and fro and slow ends',
    inputs,
    result: trigger,
    source: PRACTICE,
  };
}

function vibrationStep(at: {
  readonly exposed: Exposed;
  readonly persons: number;
  readonly found: DayVibration;
}): Step {
  const { exposed, persons, found } = at;
  return {
    id: persons === 1 ? 'crew-day-vibration' : 'crew-day-vibration-in-turns',
    name: persons === 1 ? 'A(8), one person holds the drive' : `A(8), ${persons} persons take equal turns`,
    formula: persons === 1 ? 'A(8) = √(Σ a²·t/T8), T8 = 8 h' : 'A(8) = √(Σ a²·t/(P·T8)), T8 = 8 h',
    inputs: [
      ...exposed.drives.flatMap(({ drive, trigger }, index) => [
        input({
          symbol: `a${index + 1}`,
          name: `Vibration of ${drive.name} ${drive.number}`,
          unit: 'm/s²',
          range: just(drive.facts.vibration),
          source: DECLARED,
        }),
        timeInput(drive, index, trigger),
      ]),
      ...(persons === 1
        ? []
        : [input({ symbol: 'P', name: 'Persons of the crew', unit: '1', range: just(persons), source: 'The site' })]),
    ],
    result: found.exposure,
    source: 'Directive 2002/44/EC, Annex A.1 (ISO 5349-1)',
  };
}

function pointsStep({ exposure, points }: DayVibration): Step {
  return {
    id: 'crew-day-points',
    name: 'Vibration points, one person holds the drive',
    formula: 'n = 100·(A(8)/2.5)²',
    inputs: [
      input({ symbol: 'A(8)', name: 'A(8)', unit: 'm/s²', range: just(exposure.nominal), source: 'The step of A(8)' }),
    ],
    result: known('1', just(points), { basis: exposure.basis, source: WORKED_OUT }),
    source: 'Health and Safety Executive, hand-arm vibration ready reckoner',
  };
}

function noiseStep({ drives }: Exposed, noise: Known<'dB'>): Step {
  return {
    id: 'crew-day-noise',
    name: 'L_EX,8h of everyone near the drive, without hearing protection',
    formula: 'L_EX,8h = 10·lg(Σ t·10^(L/10)/T8), T8 = 8 h; the rest of the day quiet',
    inputs: drives.flatMap(({ drive, trigger }, index) => [
      input({
        symbol: `L${index + 1}`,
        name: `Level at the ear of ${drive.name} ${drive.number}`,
        unit: 'dB',
        range: just(drive.facts.soundPressure),
        source: DECLARED,
      }),
      timeInput(drive, index, trigger),
    ]),
    result: noise,
    source: 'Directive 2003/10/EC; Control of Noise at Work Regulations 2005, Schedule 1',
  };
}

function timeInput(drive: DriveModel, index: number, range: Trigger): StepInput {
  const name = `Trigger time of ${drive.number}`;
  return input({ symbol: `t${index + 1}`, name, unit: 's', range, source: 'The step of the trigger time' });
}

function input(of: {
  readonly symbol: string;
  readonly name: string;
  readonly unit: Unit;
  readonly range: { readonly low: number; readonly nominal: number; readonly high: number };
  readonly source: string;
}): StepInput {
  const { range, source, ...rest } = of;
  const { low, nominal, high } = range;
  return { ...rest, low, nominal, high, basis: source === DECLARED ? 'stated' : 'computed', source };
}

const just = (value: number) => ({ low: value, nominal: value, high: value });
const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
