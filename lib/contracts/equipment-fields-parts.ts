/*
 * Fields of heads, adapters and extensions.
 * Invariant: paths are those of the schemas in equipment-parts.ts; a test holds the two against each other.
 * Not here: restraints, options and accessories (equipment-fields-supports.ts).
 * Read next: equipment-fields.ts.
 */
import { type EquipmentField, fieldGroup } from './equipment-field.ts';
import { ADAPTER_KINDS, HEAD_KINDS } from './equipment-parts.ts';

const part = fieldGroup('Part');
const size = fieldGroup('Sizes');
const RATING = 'Highest torque that may pass, at its own output.';

export const HEAD_FIELDS: readonly EquipmentField[] = [
  part.choice(['facts.kind', 'kind', 'An open-centre head has a bore that a rising stem can pass.'], {
    of: HEAD_KINDS,
  }),
  part.coupling(['facts.input', 'input coupling', 'Where the drive goes in.']),
  part.coupling(['facts.output', 'output coupling', 'Where extension, limiter or adapter goes on.']),
  part.number(['facts.ratio', 'ratio', 'Turns of the input for one turn of the output; it multiplies the torque.'], {
    unit: '1',
    range: [0.1, 200],
  }),
  part.number(
    [
      'facts.efficiency.low',
      'efficiency, lowest',
      'Worn or cold. Lower ends are used where the valve must surely move.',
    ],
    { unit: '1', range: [0.1, 1] },
  ),
  part.number(
    ['facts.efficiency.high', 'efficiency, highest', 'New and warm. Higher ends are used where nothing may break.'],
    { unit: '1', range: [0.1, 1] },
  ),
  part.flag(['facts.reverses', 'reverses', 'The output turns against the input.']),
  part.number(['facts.torque_rating_nm', 'torque rating', RATING], { unit: 'N·m', range: [0.1, 100_000] }),
  part.number(['facts.max_input_speed_rpm', 'highest input speed', 'The drive may not turn it faster.'], {
    unit: '1/min',
    range: [1, 20_000],
  }),
  size.number(['facts.bore_mm', 'bore', 'Through bore; an open-centre head has one. Empty where nothing can pass.'], {
    unit: 'mm',
    range: [1, 500],
    optional: true,
  }),
  size.number(
    ['facts.bore_depth_mm', 'bore depth', 'How much stem fits above the wheel; empty where it is open at the top.'],
    { unit: 'mm', range: [1, 5000], optional: true },
  ),
  size.number(['facts.swing_radius_mm', 'swing radius', 'Room that it needs around the valve’s axis.'], {
    unit: 'mm',
    range: [1, 2000],
  }),
  size.number(['facts.height_mm', 'height', 'From its output to its top, without the drive.'], {
    unit: 'mm',
    range: [1, 2000],
  }),
];

const grip = fieldGroup('Wheel side', { optional: true });
const nut = fieldGroup('Nut side', { optional: true });

export const ADAPTER_FIELDS: readonly EquipmentField[] = [
  part.choice(['facts.kind', 'kind', 'The first four grip a wheel, the last two a nut.'], { of: ADAPTER_KINDS }),
  part.coupling(['facts.input', 'input coupling', 'Where head or extension goes in.']),
  part.number(['facts.torque_rating_nm', 'torque rating', RATING], { unit: 'N·m', range: [0.1, 100_000] }),
  part.choice(['facts.retention', 'retention', 'How it stays on.'], { of: ['none', 'clamped', 'pinned', 'bolted'] }),
  part.number(['facts.fitting_time_s', 'fitting time', 'To fit at one valve and take off again.'], {
    unit: 's',
    range: [1, 7200],
  }),
  part.flag(['facts.takes_extension', 'takes an extension', 'An extension may go between it and the head.']),
  part.flag(['facts.stays_on_wheel', 'stays on the wheel', 'Bolted once, and left there.']),
  part.flag(['facts.holds_sideways', 'holds sideways', 'Works where the wheel faces sideways or down.']),
  size.number(['facts.height_mm', 'height', 'From wheel or nut to its coupling.'], { unit: 'mm', range: [1, 5000] }),
  size.number(['facts.bore_mm', 'bore', 'A stem may pass through it; empty where none can.'], {
    unit: 'mm',
    range: [1, 500],
    optional: true,
  }),
  grip.number(
    [
      'facts.wheel.diameter_mm.low',
      'wheel diameter, smallest',
      'Outside of the rim. Fill in the wheel side or the sockets, not both.',
    ],
    { unit: 'mm', range: [20, 3000] },
  ),
  grip.number(['facts.wheel.diameter_mm.high', 'wheel diameter, largest', 'Outside of the rim.'], {
    unit: 'mm',
    range: [20, 3000],
  }),
  grip.count(['facts.wheel.spokes.low', 'spokes, fewest', 'Of the wheels that it grips.'], { range: [1, 24] }),
  grip.count(['facts.wheel.spokes.high', 'spokes, most', 'Of the wheels that it grips.'], { range: [1, 24] }),
  grip.number(
    ['facts.wheel.dish_up_to_deg', 'dish up to', 'Slope of the spokes against the rim’s plane that it still grips.'],
    { unit: '°', range: [0, 60] },
  ),
  grip.number(['facts.wheel.rim_up_to_mm', 'rim up to', 'Thickness of spoke or rim that its gripping pieces take.'], {
    unit: 'mm',
    range: [1, 200],
  }),
  nut.special(
    'sockets',
    [
      'facts.sockets',
      'sockets',
      'Shape, size across flats / slack; several divided by ;. Slack is how much smaller the nut may be: square 32 / 2; hexagon 46 / 1.5',
    ],
    { unit: 'mm' },
  ),
  nut.number(['facts.length_mm.low', 'key length, shortest', 'Valve keys only, working height included.'], {
    unit: 'mm',
    range: [50, 12_000],
  }),
  nut.number(['facts.length_mm.high', 'key length, longest', 'The same as the shortest where it does not telescope.'], {
    unit: 'mm',
    range: [50, 12_000],
  }),
  nut.number(
    [
      'facts.section_mm.outer',
      'shaft outside',
      'Diameter of the key’s shaft at its thinnest, steel. Empty where nobody stated it.',
    ],
    { unit: 'mm', range: [5, 300] },
  ),
  nut.number(['facts.section_mm.inner', 'shaft inside', 'Bore of a tube there; 0 when solid.'], {
    unit: 'mm',
    range: [0, 300],
  }),
];

const joint = fieldGroup('Joint', { optional: true, when: { path: 'facts.kind', values: ['universal joint'] } });

export const EXTENSION_FIELDS: readonly EquipmentField[] = [
  part.choice(['facts.kind', 'kind', 'A shaft reaches; a joint turns a corner.'], {
    of: ['extension shaft', 'universal joint'],
  }),
  part.coupling(['facts.input', 'input coupling', 'Towards the drive.']),
  part.coupling(['facts.output', 'output coupling', 'Towards the valve.']),
  part.number(['facts.torque_rating_nm', 'torque rating', RATING], { unit: 'N·m', range: [0.1, 100_000] }),
  part.number(['facts.max_speed_rpm', 'highest speed', 'It may not turn faster.'], {
    unit: '1/min',
    range: [1, 20_000],
  }),
  size.number(['facts.length_mm.low', 'length, shortest', 'From coupling to coupling.'], {
    unit: 'mm',
    range: [5, 12_000],
  }),
  size.number(['facts.length_mm.high', 'length, longest', 'The same as the shortest where it does not telescope.'], {
    unit: 'mm',
    range: [5, 12_000],
  }),
  size.number(['facts.bore_mm', 'bore', 'Of a tube that a rising stem may pass; empty where it is solid.'], {
    unit: 'mm',
    range: [1, 500],
    optional: true,
  }),
  size.number(
    [
      'facts.section_mm.outer',
      'shaft outside',
      'Diameter at its thinnest, steel. Empty where nobody stated it, and for joints.',
    ],
    { unit: 'mm', range: [5, 300], optional: true },
  ),
  size.number(['facts.section_mm.inner', 'shaft inside', 'Bore of a tube there; 0 when solid.'], {
    unit: 'mm',
    range: [0, 300],
    optional: true,
  }),
  joint.number(['facts.highest_angle_deg', 'highest angle', 'Steepest angle that it turns at.'], {
    unit: '°',
    range: [1, 60],
  }),
  joint.count(['facts.joints', 'joints in one piece', 'Two in one piece are in phase as they come.'], {
    range: [1, 2],
  }),
];
