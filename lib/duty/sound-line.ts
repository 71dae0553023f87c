/*
 * Judges every number of a line by itself: what cannot be meant is set aside, what is unusual is kept and asked about.
 * Invariant: what is left of a line never makes a formula fail; every value set aside has a finding with its column, value and range.
 * Not here: what suits this size of valve (unlikely-values.ts); units and wording of cells (intake).
 * Read next: plausible-values.ts, unlikely-values.ts.
 */
import type { Finding } from '#lib/kernel/finding.ts';
import { formatQuantity, inUsUnits } from '#lib/units/format-quantity.ts';
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import { figure } from '#lib/units/say-figure.ts';
import { type Limits, type NumberColumn, PLAUSIBLE } from './plausible-values.ts';
import type { LineInterface, LinePlace, LineProcess, LineStem, LineTorque, ScheduleLine } from './schedule-line.ts';
import { soundCounts, wholeOr } from './sound-counts.ts';
import { without } from './without.ts';

/** Fields of a part that hold a quantity, each with its column; a field that is missing here does not compile. */
type Columns<Part> = Readonly<Record<QuantityField<Part>, NumberColumn>>;
type QuantityField<Part> = {
  [Field in keyof Part]-?: NonNullable<Part[Field]> extends Known<Unit> ? Field : never;
}[keyof Part];

const PROCESS: Columns<LineProcess> = {
  linePressure: 'line_pressure',
  differentialPressure: 'differential_pressure',
  temperature: 'temperature',
  pipeLength: 'pipe_length',
  flowVelocity: 'flow_velocity',
};
const STEM: Columns<LineStem> = {
  diameter: 'stem_diameter',
  threadFriction: 'thread_friction',
  collarFriction: 'collar_friction',
  collarMeanDiameter: 'collar_mean_diameter',
  thrust: 'stem_thrust',
  packingLoad: 'packing_load',
  seatDiameter: 'seat_diameter',
  travel: 'travel',
  valveFactor: 'valve_factor',
};
const TORQUE: Columns<LineTorque> = {
  turns: 'turns',
  starting: 'starting_torque',
  running: 'running_torque',
  max: 'max_torque',
  minStrokeTime: 'min_stroke_time',
  maxInputSpeed: 'max_input_speed',
  gearRatio: 'gear_ratio',
  gearEfficiency: 'gear_efficiency',
  outputTorque: 'output_torque',
};
const GRIP: Columns<LineInterface> = {
  wheelDiameter: 'wheel_diameter',
  wheelDish: 'wheel_dish',
  stemProtrusion: 'stem_protrusion',
  spindleSize: 'spindle_size',
  spindleLength: 'spindle_length',
};
const PLACE: Columns<LinePlace> = {
  accessTime: 'access_minutes',
  depthToNut: 'depth_to_nut',
  misalignment: 'misalignment',
  reach: 'reach',
  clearRadius: 'clear_radius',
  headroom: 'headroom',
  vehicleDistance: 'vehicle_distance',
  noiseLimit: 'noise_limit',
};

export function soundLine(line: ScheduleLine): { readonly line: ScheduleLine; readonly findings: readonly Finding[] } {
  const findings: Finding[] = (line.leftOut ?? []).map(({ column, sentence }) => setAside(column, sentence));
  const sift = <Part extends object>(part: Part, columns: Readonly<Record<string, NumberColumn>>): Part =>
    siftPart({ part, columns, findings });
  const sound = soundCounts({
    line: {
      ...line,
      qty: wholeOr(line.qty, 1),
      strokes: wholeOr(line.strokes, 2),
      process: sift(line.process, PROCESS),
      stem: soundThread(sift(line.stem, STEM), findings),
      torque: sift(line.torque, TORQUE),
      interface: soundNut(sift(line.interface, GRIP), findings),
      place: sift(line.place, PLACE),
    },
    given: line,
    findings,
  });
  if (line.size === undefined || judge(line.size, 'size', findings)) return { line: sound, findings };
  return { line: without(sound, 'size'), findings };
}

function siftPart<Part extends object>({
  part,
  columns,
  findings,
}: {
  readonly part: Part;
  readonly columns: Readonly<Record<string, NumberColumn>>;
  readonly findings: Finding[];
}): Part {
  let sound = part;
  for (const [field, value] of Object.entries(part)) {
    const column = columns[field];
    if (column === undefined || !isKnown(value) || judge(value, column, findings)) continue;
    sound = without(sound, field);
  }
  return sound;
}

function isKnown(value: unknown): value is Known<Unit> {
  return typeof value === 'object' && value !== null && 'nominal' in value;
}

/** Whether the value stays; says so where it does not, and asks where it is unusual. */
function judge(value: Known<Unit>, column: NumberColumn, findings: Finding[]): boolean {
  const { label, unit, possible, usual } = PLAUSIBLE[column];
  const given = `${label} ${spoken(value, unit)}`;
  if (!isWithin(value, possible)) {
    findings.push(
      setAside(
        column,
        `${given} cannot be meant: plausible is ${rangeText(usual, unit)}. It is set aside and the usual values stand in; check the number and its unit.`,
      ),
    );
    return false;
  }
  if (!isWithin(value, usual)) {
    findings.push({
      id: 'value-unlikely',
      severity: 'warning',
      about: [column],
      sentence: `${given} is outside what is usual (${rangeText(usual, unit)}): is it meant so? It is kept as it stands; check the number and its unit.`,
      source: 'common practice, no source',
    });
  }
  return true;
}

function setAside(column: string, sentence: string): Finding {
  return { id: 'value-set-aside', severity: 'warning', about: [column], sentence, source: 'house rule' };
}

function isWithin(value: Known<Unit>, [low, high]: Limits): boolean {
  return value.low <= value.nominal && value.nominal <= value.high && value.low >= low && value.high <= high;
}

/** The value as it was given, also where it is no number or upside down. */
function spoken(value: Known<Unit>, unit: Unit): string {
  const ends = [value.low, value.nominal, value.high].map((end) => endText(end, unit));
  const [low, nominal, high] = ends;
  if (low === high && nominal === low) return String(low);
  if (value.low <= value.nominal && value.nominal <= value.high) return `${low} to ${high}`;
  return `${ends.join(', ')} (low, likely, high)`;
}

function endText(end: number, unit: Unit): string {
  if (Number.isNaN(end)) return '“not a number”';
  if (!Number.isFinite(end)) return end > 0 ? '“infinite”' : '“minus infinite”';
  return figure({ si: formatQuantity({ value: end, unit, system: 'si' }), us: inUsUnits(unit, end) });
}

function rangeText([low, high]: Limits, unit: Unit): string {
  const si = [low, high].map((value) => formatQuantity({ value, unit, system: 'si' })).join(' to ');
  return figure({ si, us: inUsUnits(unit, low, high) });
}

/** A thread whose turns would meet is none: the pitch of a stem is well below half its diameter. */
function soundThread(stem: LineStem, findings: Finding[]): LineStem {
  const { thread } = stem;
  if (thread === undefined) return stem;
  const { pitch_m: pitch, majorDiameter_m: major, starts } = thread.value;
  const sized = pitch > 0.0003 && major > 2 * pitch && major <= 0.5;
  const started =
    starts === undefined || (Number.isInteger(starts) && starts >= 1 && starts <= 8 && starts * pitch < major);
  if (sized && started) return stem;
  const said = `${endText(major, 'm')} × ${endText(pitch, 'm')}${starts === undefined ? '' : `, ${starts} starts`}`;
  findings.push(
    setAside(
      'stem_thread',
      `Stem thread ${said} cannot be meant: plausible is a diameter of 6 to 400 mm, a pitch of 1 mm to half the diameter, and 1 to 8 starts whose lead is below the diameter. It is set aside and the usual threads stand in; measure ten threads and count the starts.`,
    ),
  );
  return without(stem, 'thread');
}

function soundNut(grip: LineInterface, findings: Finding[]): LineInterface {
  const nut = grip.nut;
  if (nut === undefined) return grip;
  if (!judge(nut.acrossFlats, 'nut_size', findings)) return without(grip, 'nut');
  const base = nut.acrossFlatsAtBase;
  return base === undefined || judge(base, 'nut_size', findings)
    ? grip
    : { ...grip, nut: { acrossFlats: nut.acrossFlats } };
}
