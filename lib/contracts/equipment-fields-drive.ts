/*
 * Fields of drives: gears, output, handles, limits of use, power source, built-in limiter.
 * Invariant: paths are those of the schema in equipment-drive.ts; a test holds the two against each other.
 * Not here: fields that every model has (equipment-fields-base.ts).
 * Read next: equipment-fields.ts.
 */
import { DUTY_CLASSES } from '#lib/equipment/drive.ts';
import { MOST_GEARS } from './equipment-drive.ts';
import { type EquipmentField, fieldGroup } from './equipment-field.ts';

const machine = fieldGroup('Machine');
const people = fieldGroup('People and limits of use');
const source = fieldGroup('Power source');
const KIND = 'facts.power.kind';
const battery = fieldGroup('Power source', { when: { path: KIND, values: ['battery'] } });
const air = fieldGroup('Power source', { when: { path: KIND, values: ['air'] } });
const petrol = fieldGroup('Power source', { when: { path: KIND, values: ['petrol'] } });
const limiter = fieldGroup('Built-in limiter', { optional: true });

function gearFields(index: number): readonly EquipmentField[] {
  const gear = fieldGroup('Gears', { optional: index > 0 });
  const at = (key: string) => `facts.gears.${index}.${key}`;
  const named = (words: string) => `gear ${index + 1} ${words}`;
  return [
    gear.text([at('name'), named('name'), 'What is written at the lever: low, high.']),
    gear.number(
      [
        at('stall_torque_nm'),
        named('stall torque'),
        'Highest torque at the output with a full pack or the highest air pressure. Restraints are chosen by it.',
      ],
      { unit: 'N·m', range: [0.1, 50_000] },
    ),
    gear.number(
      [
        at('rated_torque_nm'),
        named('rated torque'),
        'Torque it may run at for its continuous run. Never above the stall torque.',
      ],
      { unit: 'N·m', range: [0.1, 50_000] },
    ),
    gear.number([at('free_speed_rpm'), named('free speed'), 'Speed of the output without load.'], {
      unit: '1/min',
      range: [0.1, 20_000],
    }),
    gear.special(
      'curve',
      [
        at('curve'),
        named('curve'),
        'Measured points, torque @ speed, divided by ;. It runs from 0 @ free speed to stall torque @ 0. Empty means a straight line.',
      ],
      { unit: 'N·m @ 1/min', optional: true },
    ),
  ];
}

export const DRIVE_FIELDS: readonly EquipmentField[] = [
  machine.choice(['facts.duty_class', 'duty class', 'A band of output torque of the house’s own choosing.'], {
    of: DUTY_CLASSES,
  }),
  machine.coupling(['facts.output', 'output coupling', 'Form, size and half of the coupling that the head is put on.']),
  machine.flag(['facts.reversible', 'reversible', 'Turns both ways.']),
  machine.flag(['facts.hold_to_run', 'hold to run', 'Stops when the hand lets go.']),
  ...Array.from({ length: MOST_GEARS }, (_unused, index) => gearFields(index)).flat(),
  people.number(['facts.continuous_run_min', 'continuous run', 'Longest run at rated torque before a rest.'], {
    unit: 'min',
    range: [0.5, 1440],
  }),
  people.number(['facts.rest_after_run_min', 'rest after run', 'Rest that the maker asks for after that run.'], {
    unit: 'min',
    range: [0, 1440],
  }),
  people.number(['facts.sound_pressure_db', 'sound pressure', 'Declared A-weighted sound pressure at the operator.'], {
    unit: 'dB',
    range: [40, 140],
  }),
  people.number(
    ['facts.vibration_m_s2', 'vibration', 'Declared hand-arm vibration at the handle, the sum of three axes.'],
    { unit: 'm/s²', range: [0, 60] },
  ),
  people.number(
    ['facts.lowest_temperature_c', 'lowest temperature', 'Lowest temperature of the place at which it may work.'],
    { unit: '°C', range: [-60, 40] },
  ),
  people.number(
    ['facts.highest_temperature_c', 'highest temperature', 'Highest temperature of the place at which it may work.'],
    { unit: '°C', range: [0, 90] },
  ),
  people.number(['facts.highest_altitude_m', 'highest altitude', 'Highest altitude at which it may work.'], {
    unit: 'm',
    range: [1, 9000],
  }),
  source.choice([KIND, 'power source', 'What turns it.'], { of: ['battery', 'air', 'petrol'] }),
  battery.number(['facts.power.voltage_v', 'voltage', 'Nominal voltage of the pack.'], { unit: 'V', range: [3, 400] }),
  battery.number(['facts.power.capacity_ah', 'capacity', 'Capacity of one pack.'], { unit: 'Ah', range: [0.1, 200] }),
  battery.count(['facts.power.packs_included', 'packs included', 'Packs that come with the drive.'], {
    range: [1, 12],
  }),
  battery.text(['facts.power.pack_number', 'number of the pack', 'House number of the spare pack that fits: S-151.']),
  battery.number(
    ['facts.power.efficiency', 'efficiency', 'Share of the pack’s energy that reaches the output, 0 to 1.'],
    { unit: '1', range: [0.05, 1] },
  ),
  battery.number(['facts.power.recharge_time_min', 'recharge time', 'From empty to full on its own charger.'], {
    unit: 'min',
    range: [5, 1440],
  }),
  air.number(
    ['facts.power.rated_pressure_bar', 'rated pressure', 'Gauge pressure at the tool for which the gears are stated.'],
    { unit: 'bar', range: [1, 40] },
  ),
  air.number(['facts.power.lowest_pressure_bar', 'lowest pressure', 'Lowest gauge pressure at which it works.'], {
    unit: 'bar',
    range: [0.5, 40],
  }),
  air.number(['facts.power.highest_pressure_bar', 'highest pressure', 'Highest gauge pressure that it bears.'], {
    unit: 'bar',
    range: [1, 40],
  }),
  air.number(['facts.power.consumption_l_min', 'air consumption', 'Free air at rated pressure and free speed.'], {
    unit: 'l/min',
    range: [10, 100_000],
  }),
  air.number(['facts.power.hose_bore_mm', 'hose bore', 'Bore of the hose that it needs.'], {
    unit: 'mm',
    range: [4, 80],
  }),
  petrol.number(['facts.power.tank_l', 'tank', 'Fuel that the tank holds.'], { unit: 'l', range: [0.1, 60] }),
  petrol.number(['facts.power.litres_per_hour', 'fuel per hour', 'Fuel used in an hour at rated power, in litres.'], {
    unit: 'l',
    range: [0.05, 60],
  }),
  petrol.number(['facts.power.rated_power_w', 'rated power', 'Rated power of the engine at sea level.'], {
    unit: 'W',
    range: [100, 60_000],
  }),
  limiter.number(
    [
      'facts.limiter.lowest_nm',
      'limiter lowest',
      'Lowest mark of its scale, at the drive’s output. Empty where the drive has no limiter.',
    ],
    { unit: 'N·m', range: [0.1, 50_000] },
  ),
  limiter.number(['facts.limiter.highest_nm', 'limiter highest', 'Highest mark of its scale.'], {
    unit: 'N·m',
    range: [0.1, 50_000],
  }),
  limiter.number(
    ['facts.limiter.error', 'limiter error', 'How far it may be off either way, as a share: 0.1 is ten per cent.'],
    { unit: '1', range: [0, 0.5] },
  ),
  limiter.number(['facts.limiter.overshoot_nm', 'limiter overshoot', 'Torque that still comes after it trips.'], {
    unit: 'N·m',
    range: [0, 5000],
  }),
  limiter.number(['facts.limiter.step_nm', 'limiter step', 'From one mark to the next.'], {
    unit: 'N·m',
    range: [0.01, 5000],
  }),
  limiter.flag(['facts.limiter.both_directions', 'limiter both directions', 'Limits whichever way it turns.']),
];
