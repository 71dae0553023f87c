/*
 * The one measurement that would narrow a line's answer most, found by trying each of them.
 * Invariant: a measurement is tried as if it read the likely value; the one after which start, ceiling and turns are narrowest wins.
 * Not here: how wide is too wide (rules).
 * Read next: assess-duty.ts.
 */
import type { Step } from '#lib/units/calculation-step.ts';
import { type Known, known, type Origin } from '#lib/units/known-value.ts';
import { quantity, type Unit } from '#lib/units/quantity.ts';
import type { Duty } from './duty.ts';
import type { ScheduleLine } from './schedule-line.ts';

/** The part of a duty whose width is compared. */
export type Narrowness = Pick<Duty, 'opening' | 'closing' | 'turns'>;

interface Candidate {
  readonly sentence: string;
  /** The line as if this had been measured; null where it is known already or does not apply. */
  readonly apply: (line: ScheduleLine, likely: (id: string) => Known<Unit> | null) => ScheduleLine | null;
}

/** Below this nothing is worth a trip. */
const LEAST_GAIN = 0.02;
const ASK_FOR_CEILING = 'Ask the maker or the owner for the highest torque that the valve may see.';
const MEASURED: Origin = { basis: 'measured', source: 'Tried out: as if it had been measured.' };

export function measureFirst({
  line,
  duty,
  steps,
  tryOut,
}: {
  readonly line: ScheduleLine;
  readonly duty: Narrowness;
  readonly steps: readonly Step[];
  readonly tryOut: (line: ScheduleLine) => Narrowness;
}): string | null {
  const byId = new Map(steps.map((step) => [step.id, step.result]));
  const likely = (id: string): Known<Unit> | null => byId.get(id) ?? null;
  const now = width(duty);
  let best: { readonly gain: number; readonly sentence: string } | null = typeDoubt({ line, duty, tryOut });
  for (const { sentence, apply } of CANDIDATES) {
    const tried = apply(line, likely);
    if (tried === null) continue;
    const gain = now - width(tryOut(tried));
    if (gain > LEAST_GAIN && (best === null || gain > best.gain)) best = { gain, sentence };
  }
  const ceiling = ceilingGain({ line, duty });
  return ceiling > LEAST_GAIN && ceiling > (best?.gain ?? 0) ? ASK_FOR_CEILING : (best?.sentence ?? null);
}

/** A stated highest torque at the likely ceiling would cut the range of the ceiling off there. */
function ceilingGain({ line, duty }: { readonly line: ScheduleLine; readonly duty: Narrowness }): number {
  if (line.torque.max !== undefined) return 0;
  const { low, nominal, high } = duty.opening.neverExceed.torque;
  return span({ low, high }) - span({ low, high: nominal });
}

/** An unknown kind of valve: how much wider the answer is when the other common kinds are covered too. */
function typeDoubt({
  line,
  duty,
  tryOut,
}: {
  readonly line: ScheduleLine;
  readonly duty: Narrowness;
  readonly tryOut: (line: ScheduleLine) => Narrowness;
}): { readonly gain: number; readonly sentence: string } | null {
  if (line.valveType !== undefined && line.valveType.value !== 'unknown') return null;
  const others = (['globe', 'butterfly'] as const).map((type) =>
    tryOut({ ...line, valveType: { value: type, ...MEASURED } }),
  );
  const over = (pick: (one: Narrowness) => { readonly low: number; readonly high: number }): number => {
    const ranges = [duty, ...others].map(pick);
    return (
      span({ low: Math.min(...ranges.map(({ low }) => low)), high: Math.max(...ranges.map(({ high }) => high)) }) -
      span(pick(duty))
    );
  };
  const gain =
    over((one) => one.opening.starting) +
    over((one) => one.closing.starting) +
    over((one) => one.opening.neverExceed.torque) +
    over((one) => one.turns);
  return gain > LEAST_GAIN
    ? { gain, sentence: 'Ask what kind of valve it is: gate, globe, butterfly or another.' }
    : null;
}

function span({ low, high }: { readonly low: number; readonly high: number }): number {
  return Math.log(Math.max(high, 0.5) / Math.max(low, 0.5));
}

/** Width of the answer in powers of e: both starts, the ceiling and the turns. */
function width(duty: Narrowness): number {
  return (
    span(duty.opening.starting) + span(duty.closing.starting) + span(duty.opening.neverExceed.torque) + span(duty.turns)
  );
}

function exact<U extends Unit>(unit: U, value: Known<Unit>): Known<U> {
  const at = quantity<U>(value.nominal);
  return known(unit, { low: at, nominal: at, high: at }, MEASURED);
}

const CANDIDATES: readonly Candidate[] = [
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
