/*
 * The list that a customer can download and fill in: every column, units in the headers, two rows as examples.
 * Invariant: the file imports as it is, without a problem.
 * Not here: the columns' help (columns.ts).
 * Read next: columns.ts.
 */
import { COLUMNS, type Column, columnSpec } from './columns.ts';
import { dimensionsOf } from './match-header.ts';

/** The unit that the template asks for, in the words of the trade. */
const UNITS: Readonly<Partial<Record<Column, string>>> = {
  size: 'mm',
  access_minutes: 'min',
  line_pressure: 'bar',
  differential_pressure: 'bar',
  temperature: '°C',
  stem_thrust: 'N',
  packing_load: 'N',
  starting_torque: 'N·m',
  running_torque: 'N·m',
  max_torque: 'N·m',
  output_torque: 'N·m',
  min_stroke_time: 's',
  max_input_speed: 'rpm',
  gear_efficiency: '%',
  wheel_dish: '°',
  misalignment: '°',
  depth_to_nut: 'm',
  reach: 'm',
  headroom: 'm',
  vehicle_distance: 'm',
  noise_limit: 'dB',
};

/** A gate valve with a handwheel above ground, and a buried one on a key. Invented. */
const EXAMPLES: readonly Readonly<Partial<Record<Column, string>>>[] = [
  {
    tag: 'V-101',
    location: 'Pump house, left bay',
    place_order: '1',
    access_minutes: '5',
    qty: '1',
    strokes: '2',
    valve_type: 'wedge gate',
    action: 'direct',
    size: '200',
    rating: 'PN 16',
    line_pressure: '6',
    differential_pressure: '2',
    flowing: 'still',
    medium: 'water',
    temperature: '12',
    age: '1994',
    last_operated: '2023',
    condition: 'free',
    position: 'open',
    normal_position: 'open',
    leave_at: 'open',
    bypass: 'no',
    locked: 'no',
    stem: 'rising through the wheel',
    stem_thread: 'Tr32x6',
    thread_starts: '1',
    thread_hand: 'right',
    stem_diameter: '32',
    travel: '215',
    driven_by: 'handwheel',
    wheel_diameter: '400',
    wheel_spokes: '5',
    wheel_dish: '0',
    wheel_material: 'cast iron',
    stem_protrusion: '60',
    protrusion_measured_at: 'closed',
    stem_cover: 'no',
    faces: 'up',
    reach: '0.6',
    clear_radius: '600',
    headroom: '2.4',
    standing_place: 'concrete floor',
    anchor: 'yoke',
    closes: 'clockwise',
    zone: 'none',
    enclosed: 'yes',
    service: 'potable',
    notes: 'Gland weeps a little',
  },
  {
    tag: 'SV-12',
    location: 'Mill Lane, verge',
    place_order: '2',
    access_minutes: '10',
    qty: '1',
    strokes: '2',
    valve_type: 'gate',
    size: '150',
    rating: 'PN 16',
    line_pressure: '5',
    medium: 'water',
    last_operated: '2019',
    condition: 'stiff',
    turns: '24',
    stem: 'non-rising',
    driven_by: 'key cap',
    nut_shape: 'tapered square',
    nut_size: '32',
    nut_wear: 'good',
    depth_to_nut: '1.2',
    surface_box: 'clear',
    surface: 'grass',
    vehicle_distance: '3',
    anchor: 'none',
    closes: 'clockwise',
    service: 'potable',
  },
];

export function templateCsv(): string {
  const rows = [
    COLUMNS.map(({ name }) => headerOf(name)),
    ...EXAMPLES.map((example) => COLUMNS.map(({ name }) => example[name] ?? '')),
  ];
  return `${rows.map((cells) => cells.map(quoteCell).join(',')).join('\r\n')}\r\n`;
}

function headerOf(column: Column): string {
  const { label } = columnSpec(column);
  const unit = UNITS[column] ?? (dimensionsOf(column).includes('length') ? 'mm' : undefined);
  return unit === undefined ? label : `${label} (${unit})`;
}

function quoteCell(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
