/*
 * Fields of restraints, options and accessories.
 * Invariant: paths are those of the schemas in equipment-supports.ts; a test holds the two against each other.
 * Not here: heads, adapters and extensions (equipment-fields-parts.ts).
 * Read next: equipment-fields.ts.
 */
import { RESTRAINT_KINDS } from '#lib/equipment/parts.ts';
import { type EquipmentField, fieldGroup } from './equipment-field.ts';
import { HEAD_KINDS } from './equipment-parts.ts';
import { ACCESSORY_KINDS, SITE_NEEDS } from './equipment-supports.ts';

const part = fieldGroup('Part');
const hold = fieldGroup('How it holds');
const plate = fieldGroup('Ground plate', { optional: true, when: { path: 'facts.kind', values: ['ground plate'] } });

export const RESTRAINT_FIELDS: readonly EquipmentField[] = [
  part.choice(['facts.kind', 'kind', 'What takes the reaction.'], { of: RESTRAINT_KINDS }),
  part.number(['facts.torque_rating_nm', 'torque rating', 'It must cover the highest stall torque at the valve.'], {
    unit: 'N·m',
    range: [0.1, 100_000],
  }),
  part.number(['facts.force_rating_n', 'force rating', 'Highest pull or push at its anchor.'], {
    unit: 'N',
    range: [1, 500_000],
  }),
  part.number(
    [
      'facts.arm_mm.low',
      'arm, shortest',
      'From the valve’s axis to where it pulls or pushes; the shortest arm gives the highest force.',
    ],
    { unit: 'mm', range: [10, 6000] },
  ),
  part.number(['facts.arm_mm.high', 'arm, longest', 'From the valve’s axis to where it pulls or pushes.'], {
    unit: 'mm',
    range: [10, 6000],
  }),
  part.number(['facts.set_up_time_min', 'set-up time', 'To set up at one valve and take off again.'], {
    unit: 'min',
    range: [0.1, 240],
  }),
  part.choices(['facts.head_kinds', 'fits heads', 'Kinds of head that it mounts on.'], { of: HEAD_KINDS }),
  hold.choice(['facts.directions', 'directions', 'A chain or a strap holds one way only.'], {
    of: ['one way', 'both ways'],
  }),
  hold.flag(['facts.follows_travel', 'follows the travel', 'Goes with a wheel that rises with its stem.']),
  hold.choice(['facts.side_load', 'side load', 'A single anchor pushes the stem sideways; a balanced one does not.'], {
    of: ['single anchor', 'balanced'],
  }),
  hold.choices(['facts.facings', 'wheel may face', 'Ways in which the wheel may face.'], {
    of: ['up', 'side', 'down'],
  }),
  hold.choices(['facts.needs', 'needs on site', 'Any one of those named is enough.'], { of: SITE_NEEDS }),
  hold.number(['facts.reach_mm', 'reach', 'Farthest from the valve to what takes the reaction.'], {
    unit: 'mm',
    range: [1, 20_000],
  }),
  plate.number(
    ['facts.weight_on_plate_kg', 'weight on the plate', 'Least mass that surely stands on it, people included.'],
    { unit: 'kg', range: [1, 2000] },
  ),
  plate.number(['facts.plate_side_mm', 'side of the plate', 'Side of its square.'], { unit: 'mm', range: [50, 3000] }),
];

const limiter = fieldGroup('Torque limiter', {
  optional: true,
  when: { path: 'facts.kind', values: ['torque limiter'] },
});
const counter = fieldGroup('Turns counter', {
  optional: true,
  when: { path: 'facts.kind', values: ['turns counter'] },
});
const where = fieldGroup('Where it sits');

export const OPTION_FIELDS: readonly EquipmentField[] = [
  part.choice(['facts.kind', 'kind', 'What it does.'], { of: ['turns counter', 'torque limiter'] }),
  where.choice(['facts.sits', 'sits', 'Between drive and head, between head and adapter, or clipped on.'], {
    of: ['after drive', 'after head', 'clip-on'],
  }),
  where.coupling(['facts.input', 'input coupling', 'Towards the drive; empty where it clips on.'], { optional: true }),
  where.coupling(['facts.output', 'output coupling', 'Towards the valve; empty where it clips on.'], {
    optional: true,
  }),
  where.number(['facts.bore_mm', 'bore', 'A stem may pass through it; empty where none can.'], {
    unit: 'mm',
    range: [1, 500],
    optional: true,
  }),
  where.number(['facts.set_up_time_s', 'set-up time', 'To put on and set at one valve.'], {
    unit: 's',
    range: [1, 7200],
  }),
  where.flag(['facts.electronic', 'electronic', 'Has a circuit, and therefore needs a marking of its own in a zone.']),
  limiter.number(['facts.lowest_nm', 'lowest', 'Lowest mark of its scale, where it sits.'], {
    unit: 'N·m',
    range: [0.1, 100_000],
  }),
  limiter.number(['facts.highest_nm', 'highest', 'Highest mark of its scale.'], { unit: 'N·m', range: [0.1, 100_000] }),
  limiter.number(['facts.error', 'error', 'How far it may be off either way, as a share: 0.1 is ten per cent.'], {
    unit: '1',
    range: [0, 0.5],
  }),
  limiter.number(['facts.overshoot_nm', 'overshoot', 'Torque that still comes after it trips.'], {
    unit: 'N·m',
    range: [0, 5000],
  }),
  limiter.number(['facts.step_nm', 'step', 'From one mark to the next.'], { unit: 'N·m', range: [0.01, 5000] }),
  limiter.flag(['facts.both_directions', 'both directions', 'Limits whichever way it turns.']),
  counter.count(['facts.highest_turns', 'highest turns', 'How far it counts.'], { range: [1, 1_000_000] }),
];

const fit = fieldGroup('What it fits');

export const ACCESSORY_FIELDS: readonly EquipmentField[] = [
  fit.choice(['facts.kind', 'kind', 'What it is.'], { of: ACCESSORY_KINDS }),
  fit.texts(['facts.fits', 'fits', 'Numbers of the models that it fits, divided by ;. Empty where its facts decide.'], {
    optional: true,
  }),
  fit.number(['facts.mains_voltage_v', 'mains voltage', 'Of a charger.'], {
    unit: 'V',
    range: [10, 1000],
    optional: true,
  }),
  fit.text(['facts.mains_plug', 'mains plug', 'Of a charger, in the words that sites use for theirs.'], {
    optional: true,
  }),
  fit.number(['facts.hose_bore_mm', 'hose bore', 'Of a hose or what goes into one.'], {
    unit: 'mm',
    range: [2, 100],
    optional: true,
  }),
  fit.number(['facts.hose_length_m', 'hose length', 'Of a hose.'], { unit: 'm', range: [0.1, 500], optional: true }),
  fit.flag(['facts.sale_item', 'sale item', 'Sold, not hired; unused ones come back for a credit.']),
];
