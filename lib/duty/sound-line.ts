/*
 * Sets aside values of a line that cannot be meant: not a number, below nought, or beyond any valve.
 * Invariant: what is left of a line never makes a formula fail; every value set aside has a finding.
 * Not here: units and wording of cells (intake).
 * Read next: valve-character.ts.
 */
import type { Finding } from '#lib/kernel/finding.ts';
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import type { ScheduleLine } from './schedule-line.ts';

type Limits = readonly [low: number, high: number];

const PROCESS: Readonly<Record<string, Limits>> = {
  linePressure: [0, 1e8],
  differentialPressure: [0, 1e8],
  temperature: [-273, 1200],
  pipeLength: [0, 1e6],
  flowVelocity: [0, 30],
};
const STEM: Readonly<Record<string, Limits>> = {
  diameter: [0.003, 0.5],
  threadFriction: [0, 0.6],
  collarFriction: [0, 0.6],
  collarMeanDiameter: [0, 1],
  thrust: [-1e7, 1e7],
  packingLoad: [0, 1e6],
  seatDiameter: [0.003, 6],
  travel: [0.001, 12],
  valveFactor: [0, 2],
};
const TORQUE: Readonly<Record<string, Limits>> = {
  turns: [0.05, 1e5],
  starting: [0, 1e6],
  running: [0, 1e6],
  max: [0.1, 1e6],
  minStrokeTime: [0, 1e6],
  maxInputSpeed: [0.01, 1e4],
  gearRatio: [0.05, 1e5],
  gearEfficiency: [0.02, 1],
  outputTorque: [0, 1e7],
};
const GRIP: Readonly<Record<string, Limits>> = {
  wheelDiameter: [0.03, 4],
  wheelDish: [0, 89],
  stemProtrusion: [0, 12],
  spindleSize: [0.005, 0.3],
  spindleLength: [0, 60],
};
const PLACE: Readonly<Record<string, Limits>> = {
  depthToNut: [0, 60],
  misalignment: [0, 90],
  reach: [0, 200],
  clearRadius: [0, 200],
  headroom: [0, 200],
  vehicleDistance: [0, 1e5],
};
const SIZE: Limits = [0.003, 6];

export function soundLine(line: ScheduleLine): { readonly line: ScheduleLine; readonly findings: readonly Finding[] } {
  const findings: Finding[] = [];
  const refuse = (field: string): void => {
    findings.push({
      id: 'value-set-aside',
      severity: 'warning',
      about: [field],
      sentence: `The value given for ${spoken(field)} cannot be meant and was set aside; the tables are used instead. Check it.`,
      source: 'house rule',
    });
  };
  const sound: ScheduleLine = {
    ...line,
    qty: whole(line.qty, 1),
    strokes: whole(line.strokes, 2),
    process: sift(line.process, PROCESS, refuse),
    stem: soundThread(sift(line.stem, STEM, refuse), refuse),
    torque: sift(line.torque, TORQUE, refuse),
    interface: soundNut(sift(line.interface, GRIP, refuse), refuse),
    place: sift(line.place, PLACE, refuse),
  };
  if (line.size === undefined || isSound(line.size, SIZE)) return { line: sound, findings };
  refuse('size');
  const { size: _size, ...rest } = sound;
  return { line: rest, findings };
}

function isSound(value: Known<Unit>, [low, high]: Limits): boolean {
  return value.low <= value.nominal && value.nominal <= value.high && value.low >= low && value.high <= high;
}

function isKnown(value: unknown): value is Known<Unit> {
  return typeof value === 'object' && value !== null && 'nominal' in value;
}

function sift<Part extends object>(
  part: Part,
  limits: Readonly<Record<string, Limits>>,
  refuse: (field: string) => void,
): Part {
  let sound = part;
  for (const [field, value] of Object.entries(part)) {
    const limit = limits[field];
    if (limit === undefined || !isKnown(value) || isSound(value, limit)) continue;
    refuse(field);
    sound = without(sound, field);
  }
  return sound;
}

function without<Part extends object>(part: Part, field: string): Part {
  const copy = { ...part };
  Reflect.deleteProperty(copy, field);
  return copy;
}

function soundThread(stem: ScheduleLine['stem'], refuse: (field: string) => void): ScheduleLine['stem'] {
  let sound = stem;
  const size = stem.thread?.value;
  if (
    size !== undefined &&
    !(size.pitch_m > 0.0003 && size.majorDiameter_m > 2 * size.pitch_m && size.majorDiameter_m <= 0.5)
  ) {
    refuse('thread');
    sound = without(sound, 'thread');
  } else if (
    size?.starts !== undefined &&
    !(isStarts(size.starts) && size.starts * size.pitch_m < size.majorDiameter_m)
  ) {
    refuse('thread');
    sound = without(sound, 'thread');
  }
  if (stem.threadStarts !== undefined && !isStarts(stem.threadStarts.value)) {
    refuse('threadStarts');
    sound = without(sound, 'threadStarts');
  }
  return sound;
}

function soundNut(grip: ScheduleLine['interface'], refuse: (field: string) => void): ScheduleLine['interface'] {
  if (grip.nut === undefined || isSound(grip.nut.acrossFlats, [0.004, 0.2])) return grip;
  refuse('nut');
  return without(grip, 'nut');
}

function isStarts(starts: number): boolean {
  return Number.isInteger(starts) && starts >= 1 && starts <= 8;
}

function whole(value: number, fallback: number): number {
  return Number.isFinite(value) && value >= 1 ? Math.floor(value) : fallback;
}

function spoken(field: string): string {
  return field.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}
