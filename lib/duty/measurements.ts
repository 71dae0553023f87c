/*
 * What may be measured or asked at a valve, and the line as if it had been.
 * Invariant: a measurement that is on the list already, or does not apply, is not offered.
 * Not here: which of them narrows the answer most (measure-first.ts).
 * Read next: measure-first.ts.
 */
import { type Known, known, type Origin } from '#lib/units/known-value.ts';
import { quantity, type Unit } from '#lib/units/quantity.ts';
import type { ScheduleLine } from './schedule-line.ts';

export interface Measurement {
  readonly sentence: string;
  /** The line as if this had been measured; null where it is known already or does not apply. */
  readonly apply: (line: ScheduleLine, likely: (id: string) => Known<Unit> | null) => ScheduleLine | null;
}

export const MEASURED: Origin = { basis: 'measured', source: 'Tried out: as if it had been measured.' };

export const MEASUREMENTS: readonly Measurement[] = [
  {
    sentence: 'Ask for the nominal size: it is cast on the body.',
    apply: (line, likely) => {
      const size = likely('size');
      return line.size !== undefined || size === null ? null : { ...line, size: exact('m', size) };
    },
  },
  {
    sentence: 'Read the pressure on both sides of the valve: the difference drives the torque.',
    apply: (line, likely) => {
      const pressure = likely('differential-pressure') ?? likely('line-pressure');
      return line.process.differentialPressure !== undefined || pressure === null
        ? null
        : {
            ...line,
            process: {
              ...line.process,
              differentialPressure: exact('Pa', pressure),
              linePressure: line.process.linePressure ?? exact('Pa', pressure),
            },
          };
    },
  },
  {
    sentence: 'Measure the stem’s diameter and the lead of its thread (travel in one turn).',
    apply: (line, likely) => {
      const diameter = line.stem.diameter ?? likely('stem-diameter');
      const lead = likely('lead');
      if (line.stem.thread !== undefined || diameter === null || lead === null) return null;
      const thread = {
        form: 'trapezoidal',
        majorDiameter_m: diameter.nominal,
        pitch_m: lead.nominal,
        designation: 'tried',
      } as const;
      return {
        ...line,
        stem: { ...line.stem, diameter: exact('m', diameter), thread: { value: thread, ...MEASURED } },
      };
    },
  },
  {
    sentence: 'Ask when it was last moved and whether it turns freely.',
    apply: (line) =>
      line.state.condition === undefined
        ? {
            ...line,
            state: {
              ...line.state,
              condition: { value: 'free', ...MEASURED },
              lastOperated: line.state.lastOperated ?? { value: 1, ...MEASURED },
            },
          }
        : null,
  },
  {
    sentence: 'Count the turns of a full stroke.',
    apply: (line, likely) => {
      const turns = likely('turns-of-the-input') ?? likely('turns-by-size-rule') ?? likely('turns-of-the-stem');
      return line.torque.turns !== undefined || turns === null
        ? null
        : { ...line, torque: { ...line.torque, turns: exact('turn', turns) } };
    },
  },
  {
    sentence: 'Read the gearbox’s nameplate: kind, ratio and efficiency.',
    apply: (line, likely) => {
      const ratio = likely('gear-ratio');
      const efficiency = likely('gear-efficiency');
      if (ratio === null && efficiency === null) return null;
      return {
        ...line,
        torque: {
          ...line.torque,
          ...(ratio === null ? {} : { gearRatio: exact('1', ratio) }),
          ...(efficiency === null ? {} : { gearEfficiency: exact('1', efficiency) }),
        },
      };
    },
  },
  {
    sentence: 'Ask the valve’s maker for its shaft torque.',
    apply: (line, likely) => {
      const torque = likely('shaft-torque');
      return line.torque.outputTorque !== undefined || torque === null
        ? null
        : { ...line, torque: { ...line.torque, outputTorque: exact('N·m', torque) } };
    },
  },
];

function exact<U extends Unit>(unit: U, value: Known<Unit>): Known<U> {
  const at = quantity<U>(value.nominal);
  return known(unit, { low: at, nominal: at, high: at }, MEASURED);
}
