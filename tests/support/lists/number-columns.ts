import type { PLAUSIBLE } from '#lib/duty/plausible-values.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';

/** A line with one number only, by the column that it comes from; written apart from the code that it tests. */
const PLACES: Readonly<Record<keyof typeof PLAUSIBLE, readonly string[]>> = {
  size: ['size'],
  line_pressure: ['process', 'linePressure'],
  differential_pressure: ['process', 'differentialPressure'],
  temperature: ['process', 'temperature'],
  pipe_length: ['process', 'pipeLength'],
  flow_velocity: ['process', 'flowVelocity'],
  access_minutes: ['place', 'accessTime'],
  stem_diameter: ['stem', 'diameter'],
  thread_friction: ['stem', 'threadFriction'],
  collar_friction: ['stem', 'collarFriction'],
  collar_mean_diameter: ['stem', 'collarMeanDiameter'],
  stem_thrust: ['stem', 'thrust'],
  packing_load: ['stem', 'packingLoad'],
  seat_diameter: ['stem', 'seatDiameter'],
  travel: ['stem', 'travel'],
  valve_factor: ['stem', 'valveFactor'],
  turns: ['torque', 'turns'],
  starting_torque: ['torque', 'starting'],
  running_torque: ['torque', 'running'],
  max_torque: ['torque', 'max'],
  min_stroke_time: ['torque', 'minStrokeTime'],
  max_input_speed: ['torque', 'maxInputSpeed'],
  gear_ratio: ['torque', 'gearRatio'],
  gear_efficiency: ['torque', 'gearEfficiency'],
  output_torque: ['torque', 'outputTorque'],
  wheel_diameter: ['interface', 'wheelDiameter'],
  wheel_dish: ['interface', 'wheelDish'],
  stem_protrusion: ['interface', 'stemProtrusion'],
  nut_size: ['interface', 'nut', 'acrossFlats'],
  spindle_size: ['interface', 'spindleSize'],
  spindle_length: ['interface', 'spindleLength'],
  depth_to_nut: ['place', 'depthToNut'],
  misalignment: ['place', 'misalignment'],
  reach: ['place', 'reach'],
  clear_radius: ['place', 'clearRadius'],
  headroom: ['place', 'headroom'],
  vehicle_distance: ['place', 'vehicleDistance'],
  noise_limit: ['place', 'noiseLimit'],
};

export const NUMBER_COLUMNS = Object.keys(PLACES) as readonly (keyof typeof PLAUSIBLE)[];

export function withNumber(column: keyof typeof PLAUSIBLE, value: Known<Unit>): Partial<ScheduleLine> {
  const inside = PLACES[column].toReversed().reduce<unknown>((rest, key) => ({ [key]: rest }), value);
  return inside as Partial<ScheduleLine>;
}
