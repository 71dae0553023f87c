/*
 * Data: what each number of a line can be (`possible`) and what it usually is (`usual`), in SI, by column of the list.
 * Invariant: usual lies inside possible; beyond possible a value is set aside, between the two it is kept and asked about.
 * Not here: what suits this size of valve (unlikely-values.ts).
 * Read next: sound-line.ts.
 */
import type { Unit } from '#lib/units/quantity.ts';

export type Limits = readonly [low: number, high: number];

export interface Plausible {
  /** The column's name on screens. */
  readonly label: string;
  readonly unit: Unit;
  readonly possible: Limits;
  readonly usual: Limits;
}

/** Ends are wide: they catch slips of unit and digit. Common practice, no source, where no standard is named. */
export const PLAUSIBLE = {
  // ISO 6708 names sizes to DN 4000; valves turned by hand or tool end near DN 3000.
  size: row('Size', 'm', [0.003, 6], [0.008, 3]),
  // ASME B16.34: the highest class (4500) ends at 766 bar when cold; hydraulic and test valves go to 1000 bar.
  line_pressure: row('Line pressure', 'Pa', [0, 1e8], [0, 7.7e7]),
  differential_pressure: row('Differential pressure', 'Pa', [0, 1e8], [0, 7.7e7]),
  // From liquid helium to the end of the tables of ASME B16.34 (816 °C; from memory); beyond 650 °C few valves exist.
  temperature: row('Temperature', '°C', [-273, 1200], [-200, 650]),
  pipe_length: row('Pipe length', 'm', [0, 1e6], [0, 2e5]),
  flow_velocity: row('Flow velocity', 'm/s', [0, 30], [0, 12]),
  access_minutes: row('Access time', 's', [0, 1e6], [0, 28_800]),
  stem_diameter: row('Stem diameter', 'm', [0.003, 0.5], [0.004, 0.4]),
  thread_friction: row('Thread friction', '1', [0, 0.6], [0.02, 0.4]),
  collar_friction: row('Collar friction', '1', [0, 0.6], [0.001, 0.4]),
  collar_mean_diameter: row('Collar diameter', 'm', [0, 1], [0.005, 0.6]),
  stem_thrust: row('Stem thrust', 'N', [-1e7, 1e7], [1, 5e6]),
  packing_load: row('Packing load', 'N', [0, 1e6], [0, 2e5]),
  seat_diameter: row('Seat bore', 'm', [0.003, 6], [0.005, 4]),
  travel: row('Travel', 'm', [0.001, 12], [0.002, 10]),
  valve_factor: row('Valve factor', '1', [0, 2], [0.05, 1.2]),
  turns: row('Turns', 'turn', [0.05, 1e5], [0.2, 5000]),
  starting_torque: row('Starting torque', 'N·m', [0, 1e6], [0.1, 50_000]),
  running_torque: row('Running torque', 'N·m', [0, 1e6], [0.1, 50_000]),
  max_torque: row('Highest torque allowed', 'N·m', [0.1, 1e6], [0.5, 50_000]),
  min_stroke_time: row('Shortest stroke time', 's', [0, 1e6], [1, 86_400]),
  max_input_speed: row('Highest input speed', '1/min', [0.01, 1e4], [0.5, 1000]),
  gear_ratio: row('Gear ratio', '1', [0.05, 1e5], [1, 10_000]),
  gear_efficiency: row('Gear efficiency', '1', [0.02, 1], [0.05, 1]),
  output_torque: row('Output torque', 'N·m', [0, 1e7], [0.5, 2e6]),
  wheel_diameter: row('Wheel diameter', 'm', [0.03, 4], [0.05, 1.6]),
  wheel_dish: row('Wheel dish', '°', [0, 89], [0, 60]),
  stem_protrusion: row('Stem protrusion', 'm', [0, 12], [0, 10]),
  nut_size: row('Nut size', 'm', [0.004, 0.2], [0.006, 0.15]),
  spindle_size: row('Spindle size', 'm', [0.005, 0.3], [0.008, 0.2]),
  spindle_length: row('Spindle length', 'm', [0, 60], [0.05, 30]),
  depth_to_nut: row('Depth to nut', 'm', [0, 60], [0, 15]),
  misalignment: row('Misalignment', '°', [0, 90], [0, 90]),
  reach: row('Reach', 'm', [0, 200], [0, 15]),
  clear_radius: row('Clear radius', 'm', [0, 200], [0.02, 20]),
  headroom: row('Headroom', 'm', [0, 200], [0.02, 100]),
  vehicle_distance: row('Vehicle distance', 'm', [0, 1e5], [0, 5000]),
  noise_limit: row('Noise limit', 'dB', [0, 200], [30, 140]),
} as const satisfies Readonly<Record<string, Plausible>>;

export type NumberColumn = keyof typeof PLAUSIBLE;

/** Whole numbers of a line. */
export const PLAUSIBLE_COUNTS = {
  qty: { label: 'Quantity', possible: [1, 1000] },
  strokes: { label: 'Strokes a visit', possible: [1, 1000] },
  place_order: { label: 'Working order', possible: [0, 1e6] },
  thread_starts: { label: 'Thread starts', possible: [1, 8] },
  wheel_spokes: { label: 'Wheel spokes', possible: [0, 16] },
} as const satisfies Readonly<Record<string, { readonly label: string; readonly possible: Limits }>>;

export type CountColumn = keyof typeof PLAUSIBLE_COUNTS;

export function isNumberColumn(column: string): column is NumberColumn {
  return Object.hasOwn(PLAUSIBLE, column);
}

/** The usual range of a column, as the reading of cells wants it. */
export function usualRange(column: NumberColumn): { readonly low: number; readonly high: number } {
  const [low, high] = PLAUSIBLE[column].usual;
  return { low, high };
}

function row(label: string, unit: Unit, possible: Limits, usual: Limits): Plausible {
  return { label, unit, possible, usual };
}
