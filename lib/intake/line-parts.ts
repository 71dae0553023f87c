/*
 * Reads the groups of a line: process, state, stem, torque, what is gripped, place.
 * Invariant: a value that is missing or refused is absent from its group, never undefined and never a default.
 * Not here: tag, size and type (read-line.ts).
 * Read next: read-line.ts.
 */
import { type HazardColumn, hazardQuestion } from '#lib/duty/hazard-questions.ts';
import type {
  LineInterface,
  LinePlace,
  LineProcess,
  LineState,
  LineStem,
  LineTorque,
} from '#lib/duty/schedule-line.ts';
import { type Fact, fact } from '#lib/units/known-value.ts';
import { type CellContext, cellText, originOf, report } from './cell-context.ts';
import {
  CLOSES_WORDS,
  COLLAR_WORDS,
  CONDITION_WORDS,
  DRIVEN_BY_WORDS,
  FACES_WORDS,
  FLOWING_WORDS,
  GEARBOX_WORDS,
  MEASURED_AT_WORDS,
  NORMAL_POSITION_WORDS,
  NUT_SHAPE_WORDS,
  NUT_WEAR_WORDS,
  SERVICE_WORDS,
  STEM_WORDS,
  THREAD_HAND_WORDS,
} from './choice-words.ts';
import { quoted } from './plain-text.ts';
import { readChoice, readCount, readQuantity, readRatio, readText, readYears, readYesNo } from './read-cell.ts';
import { readNut } from './read-nut.ts';
import type { Remark } from './read-remark.ts';
import { type ReadThread, readThread } from './read-thread.ts';

/** A key with its value, or nothing: an absent fact has no key. */
export function given<Key extends string, Value>(key: Key, value: Value | undefined): { readonly [K in Key]?: Value } {
  const entry: { [K in Key]?: Value } = {};
  if (value !== undefined) entry[key] = value;
  return entry;
}

export function readProcess(context: CellContext): LineProcess {
  return {
    ...given('linePressure', readQuantity(context, 'line_pressure', 'Pa')),
    ...given('differentialPressure', readQuantity(context, 'differential_pressure', 'Pa')),
    ...given('flowing', readChoice(context, 'flowing', FLOWING_WORDS)),
    ...given('medium', readText(context, 'medium')),
    ...given('temperature', readQuantity(context, 'temperature', '°C')),
    ...given('service', readChoice(context, 'service', SERVICE_WORDS)),
  };
}

export function readState(context: CellContext, remark: Remark | null): LineState {
  return {
    ...given('age', readYears(context, 'age')),
    ...given('lastOperated', readYears(context, 'last_operated')),
    ...given('condition', readChoice(context, 'condition', CONDITION_WORDS) ?? fromRemark(remark, remark?.condition)),
    ...given('position', readText(context, 'position')),
    ...given('normalPosition', readChoice(context, 'normal_position', NORMAL_POSITION_WORDS)),
    ...given('leaveAt', readText(context, 'leave_at')),
    ...given('bypass', readYesNo(context, 'bypass')),
    ...given('locked', readYesNo(context, 'locked')),
  };
}

export function readStem(context: CellContext): LineStem {
  const thread = readThread(context);
  const starts = readCount(context, 'thread_starts');
  const hand = readChoice(context, 'thread_hand', THREAD_HAND_WORDS);
  if (thread !== undefined) compareThread({ context, thread, starts: starts?.value, hand: hand?.value });
  return {
    ...given('kind', readChoice(context, 'stem', STEM_WORDS)),
    ...given('thread', thread?.thread),
    ...given('threadStarts', starts),
    ...given(
      'threadHand',
      hand ?? (thread?.hand === 'left' ? fact('left' as const, originOf(context, 'stem_thread')) : undefined),
    ),
    ...given('diameter', readQuantity(context, 'stem_diameter', 'm')),
    ...given('material', readText(context, 'stem_material')),
    ...given('threadFriction', readQuantity(context, 'thread_friction', '1')),
    ...given('collarFriction', readQuantity(context, 'collar_friction', '1')),
    ...given('collarMeanDiameter', readQuantity(context, 'collar_mean_diameter', 'm')),
    ...given('collarBearing', readChoice(context, 'collar_bearing', COLLAR_WORDS)),
    ...given('thrust', readQuantity(context, 'stem_thrust', 'N')),
    ...given('packingLoad', readQuantity(context, 'packing_load', 'N')),
    ...given('seatDiameter', readQuantity(context, 'seat_diameter', 'm')),
    ...given('travel', readQuantity(context, 'travel', 'm')),
    ...given('valveFactor', readQuantity(context, 'valve_factor', '1')),
  };
}

function compareThread(parts: {
  readonly context: CellContext;
  readonly thread: ReadThread;
  readonly starts: number | undefined;
  readonly hand: 'right' | 'left' | undefined;
}): void {
  const { context, thread, starts, hand } = parts;
  const designated = thread.thread.value.starts;
  const text = quoted(context.cells.stem_thread ?? '');
  if (designated !== undefined && starts !== undefined && designated !== starts) {
    report(context, {
      code: 'thread-starts-conflict',
      column: 'thread_starts',
      sentence: `Stem thread ${text} has ${designated} start${designated === 1 ? '' : 's'}, the column says ${starts}; both are shown and the turns are not sure.`,
      remedy: 'Count the thread ends at the end of the stem.',
    });
  }
  if (thread.hand === 'left' && hand === 'right') {
    report(context, {
      code: 'thread-hand-conflict',
      column: 'thread_hand',
      sentence: `Stem thread ${text} is left-handed, the column says right; the column is taken and the direction is to be tried slowly.`,
      remedy: 'Look at the slope of the thread.',
    });
  }
}

export function readTorque(context: CellContext): LineTorque {
  return {
    ...given('turns', readQuantity(context, 'turns', 'turn')),
    ...given('starting', readQuantity(context, 'starting_torque', 'N·m')),
    ...given('running', readQuantity(context, 'running_torque', 'N·m')),
    ...given('max', readQuantity(context, 'max_torque', 'N·m')),
    ...given('minStrokeTime', readQuantity(context, 'min_stroke_time', 's')),
    ...given('maxInputSpeed', readQuantity(context, 'max_input_speed', '1/min')),
    ...given('gearbox', readGearbox(context)),
    ...given('gearRatio', readRatio(context, 'gear_ratio')),
    ...given('gearEfficiency', readQuantity(context, 'gear_efficiency', '1')),
    ...given('outputTorque', readQuantity(context, 'output_torque', 'N·m')),
    ...given('endStops', readText(context, 'end_stops')),
    ...given('flange', readText(context, 'flange')),
    ...given('closes', readChoice(context, 'closes', CLOSES_WORDS)),
  };
}

/** `none` and `no` say that there is no gearbox; that is a fact with no value here. */
function readGearbox(context: CellContext): LineTorque['gearbox'] {
  const text = cellText(context, 'gearbox');
  return text !== undefined && /^(?:no|none|nil|without|0|false|direct)$/i.test(text)
    ? undefined
    : readChoice(context, 'gearbox', GEARBOX_WORDS);
}

export function readInterface(context: CellContext, remark: Remark | null): LineInterface {
  const missingWheel: LineInterface['drivenBy'] =
    remark?.wheelMissing === undefined
      ? undefined
      : fact('square', {
          basis: 'assumed',
          source: `The remark ${quoted(remark.text)} says that the wheel is missing; the square of the stem is assumed to be what is left.`,
        });
  return {
    ...given('drivenBy', readChoice(context, 'driven_by', DRIVEN_BY_WORDS) ?? missingWheel),
    ...given('wheelDiameter', readQuantity(context, 'wheel_diameter', 'm')),
    ...given('wheelSpokes', readCount(context, 'wheel_spokes')),
    ...given('wheelDish', readQuantity(context, 'wheel_dish', '°')),
    ...given('wheelMaterial', readText(context, 'wheel_material')),
    ...given('stemProtrusion', readQuantity(context, 'stem_protrusion', 'm')),
    ...given('protrusionMeasuredAt', readChoice(context, 'protrusion_measured_at', MEASURED_AT_WORDS)),
    ...given('stemCover', readYesNo(context, 'stem_cover')),
    ...given('nut', readNut(context)),
    ...given('nutShape', readChoice(context, 'nut_shape', NUT_SHAPE_WORDS)),
    ...given('nutWear', readChoice(context, 'nut_wear', NUT_WEAR_WORDS)),
    ...given('spindleSize', readQuantity(context, 'spindle_size', 'm')),
    ...given('spindleLength', readQuantity(context, 'spindle_length', 'm')),
  };
}

export function readPlace(context: CellContext, remark: Remark | null): LinePlace {
  const access = readQuantity(context, 'access_minutes', 's');
  return {
    ...given('location', cellText(context, 'location')),
    ...given('placeOrder', readCount(context, 'place_order')?.value),
    ...given('accessTime', access),
    ...given('depthToNut', readQuantity(context, 'depth_to_nut', 'm')),
    ...given('misalignment', readQuantity(context, 'misalignment', '°')),
    ...given('surfaceBox', readText(context, 'surface_box') ?? fromRemark(remark, remark?.surfaceBox)),
    ...given('surface', readText(context, 'surface') ?? fromRemark(remark, remark?.surface)),
    ...given('faces', readChoice(context, 'faces', FACES_WORDS)),
    ...given('reach', readQuantity(context, 'reach', 'm')),
    ...given('clearRadius', readQuantity(context, 'clear_radius', 'm')),
    ...given('headroom', readQuantity(context, 'headroom', 'm')),
    ...given('standingPlace', readText(context, 'standing_place')),
    ...given('vehicleDistance', readQuantity(context, 'vehicle_distance', 'm')),
    ...given('anchor', readText(context, 'anchor')),
    ...given('zone', readHazard(context, 'zone')),
    ...given('gasGroup', readHazard(context, 'gas_group')),
    ...given('temperatureClass', readHazard(context, 'temperature_class')),
    ...given('enclosed', readYesNo(context, 'enclosed')),
    ...given('noiseLimit', readQuantity(context, 'noise_limit', 'dB')),
  };
}

/** The text stays as it is; what cannot be read is asked about here and again beside the duty. */
function readHazard(context: CellContext, column: HazardColumn): Fact<string> | undefined {
  const text = readText(context, column);
  const question = text === undefined ? null : hazardQuestion(column, text.value);
  if (question !== null) report(context, { code: 'place-unreadable', column, ...question });
  return text;
}

function fromRemark<Value>(remark: Remark | null, value: Value | undefined): Fact<Value> | undefined {
  return remark === null || value === undefined
    ? undefined
    : fact(value, { basis: 'stated', source: `Read from the remark ${quoted(remark.text)}.` });
}
