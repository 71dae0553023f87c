/*
 * The inputs of one line that its duty follows from, each with what is taken for it now: what a what-if can change.
 * Invariant: every input is a column of the list; what is taken now carries its basis and source.
 * Not here: working a changed value out (what-if.ts) and saving it (edit-cells.ts).
 * Read next: what-if.ts.
 */
import type { Duty } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import { type Column, columnSpec } from '#lib/intake/columns.ts';
import { listChoices } from '#lib/intake/list-choices.ts';
import { type Fact, type Known, known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';

type Taken = Known<Unit> | Fact<unknown> | undefined;

export interface LineInput {
  readonly column: Column;
  readonly label: string;
  readonly help: string;
  readonly example: string;
  /** The words of a choice; empty where anything may be typed. */
  readonly choices: readonly string[];
  /** The number that is taken now; null where the input is no number or nothing is taken. */
  readonly now: Known<Unit> | null;
  /** What is taken now, in words, for inputs that are no numbers. */
  readonly said: string | null;
  /** Ends of a slider in the unit of `now`; null where dragging makes no sense. */
  readonly slider: { readonly low: number; readonly high: number } | null;
}

/** How an input is found on the line, and under which step of the calculation its stand-in is. */
interface Place {
  readonly at: (line: ScheduleLine) => Taken;
  readonly step?: string;
}

const PLACES: ReadonlyMap<Column, Place> = new Map<Column, Place>([
  ['differential_pressure', { at: ({ process }) => process.differentialPressure, step: 'differential-pressure' }],
  ['line_pressure', { at: ({ process }) => process.linePressure, step: 'line-pressure' }],
  ['size', { at: ({ size }) => size, step: 'size' }],
  ['valve_type', { at: ({ valveType }) => valveType }],
  ['rating', { at: ({ rating }) => rating }],
  ['condition', { at: ({ state }) => state.condition }],
  ['last_operated', { at: ({ state }) => state.lastOperated }],
  ['age', { at: ({ state }) => state.age }],
  ['stem', { at: ({ stem }) => stem.kind }],
  ['stem_thread', { at: ({ stem }) => threadOf(stem.thread) }],
  ['thread_starts', { at: ({ stem }) => stem.threadStarts }],
  ['stem_diameter', { at: ({ stem }) => stem.diameter, step: 'stem-diameter' }],
  ['stem_material', { at: ({ stem }) => stem.material }],
  ['thread_friction', { at: ({ stem }) => stem.threadFriction, step: 'thread-torque-opening/friction' }],
  ['collar_friction', { at: ({ stem }) => stem.collarFriction, step: 'collar-torque-opening/friction' }],
  ['collar_mean_diameter', { at: ({ stem }) => stem.collarMeanDiameter, step: 'collar-torque-opening/diameter' }],
  ['collar_bearing', { at: ({ stem }) => stem.collarBearing }],
  ['valve_factor', { at: ({ stem }) => stem.valveFactor, step: 'valve-factor' }],
  ['packing_load', { at: ({ stem }) => stem.packingLoad, step: 'packing-load' }],
  ['stem_thrust', { at: ({ stem }) => stem.thrust, step: 'thrust-opening' }],
  ['seat_diameter', { at: ({ stem }) => stem.seatDiameter, step: 'seat-diameter' }],
  ['travel', { at: ({ stem }) => stem.travel, step: 'travel' }],
  ['turns', { at: ({ torque }) => torque.turns }],
  ['starting_torque', { at: ({ torque }) => torque.starting }],
  ['running_torque', { at: ({ torque }) => torque.running }],
  ['max_torque', { at: ({ torque }) => torque.max }],
  ['min_stroke_time', { at: ({ torque }) => torque.minStrokeTime, step: 'min-stroke-time' }],
  ['max_input_speed', { at: ({ torque }) => torque.maxInputSpeed }],
  ['gearbox', { at: ({ torque }) => torque.gearbox }],
  ['gear_ratio', { at: ({ torque }) => torque.gearRatio, step: 'gear-ratio' }],
  ['gear_efficiency', { at: ({ torque }) => torque.gearEfficiency, step: 'gear-efficiency' }],
  ['output_torque', { at: ({ torque }) => torque.outputTorque, step: 'shaft-torque' }],
  ['flange', { at: ({ torque }) => torque.flange }],
  ['closes', { at: ({ torque }) => torque.closes }],
  ['driven_by', { at: ({ interface: grip }) => grip.drivenBy }],
  ['wheel_diameter', { at: ({ interface: grip }) => grip.wheelDiameter }],
  ['wheel_spokes', { at: ({ interface: grip }) => grip.wheelSpokes }],
  ['nut_size', { at: ({ interface: grip }) => grip.nut?.acrossFlats }],
  ['nut_shape', { at: ({ interface: grip }) => grip.nutShape }],
  ['spindle_size', { at: ({ interface: grip }) => grip.spindleSize, step: 'spindle-size' }],
  ['spindle_length', { at: ({ interface: grip }) => grip.spindleLength }],
  ['flowing', { at: ({ process }) => process.flowing }],
  ['medium', { at: ({ process }) => process.medium }],
  ['temperature', { at: ({ process }) => process.temperature }],
]);

export function lineInputs({ line, duty }: { readonly line: ScheduleLine; readonly duty: Duty }): readonly LineInput[] {
  return [...PLACES].map(([column, place]) => {
    const { label, help, example } = columnSpec(column);
    const given = place.at(line);
    const now = given === undefined ? fromDuty({ column, place, duty }) : isNumber(given) ? given : null;
    return {
      column,
      label,
      help,
      example,
      choices: listChoices(column),
      now,
      said: given === undefined || isNumber(given) ? null : String(given.value),
      slider: now === null ? null : sliderOf(now),
    };
  });
}

/** Whether the line holds a value for a column, as it was read. */
export function isTaken(line: ScheduleLine, column: Column): boolean {
  return PLACES.get(column)?.at(line) !== undefined;
}

function threadOf(thread: ScheduleLine['stem']['thread']): Fact<string> | undefined {
  return thread && { value: thread.value.designation, basis: thread.basis, source: thread.source };
}

function isNumber(taken: Known<Unit> | Fact<unknown>): taken is Known<Unit> {
  return 'nominal' in taken;
}

/** What stands in where the line says nothing: a step of the calculation, or an input of one. */
function fromDuty({
  column,
  place,
  duty,
}: {
  readonly column: Column;
  readonly place: Place;
  readonly duty: Duty;
}): Known<Unit> | null {
  if (column === 'turns') return duty.turns;
  if (column === 'starting_torque') return duty.opening.starting;
  if (column === 'running_torque') return duty.opening.running;
  if (column === 'max_torque') return duty.opening.neverExceed.torque;
  if (column === 'max_input_speed') return duty.maxInputSpeed;
  if (column === 'wheel_diameter') return duty.grip.wheelDiameter ?? null;
  const [id, input] = (place.step ?? '').split('/');
  const step = duty.steps.find((candidate) => candidate.id === id);
  if (step === undefined) return null;
  if (input === undefined) return step.result;
  const found = step.inputs.find(({ name }) => name.includes(input));
  return found === undefined ? null : known(found.unit, found, { basis: found.basis, source: found.source });
}

/** A given value may be tried from a third to three times; a range half as much again beyond its ends. */
const BEYOND_VALUE = 3;
const BEYOND_RANGE = 1.5;

function sliderOf(now: Known<Unit>): LineInput['slider'] {
  if (now.low <= 0 || now.unit === '°C') return null;
  const beyond = now.low === now.high ? BEYOND_VALUE : BEYOND_RANGE;
  const most = now.unit === '1' && now.high < 1 ? 1 : Number.POSITIVE_INFINITY;
  return { low: now.low / beyond, high: Math.min(most, now.high * beyond) };
}
