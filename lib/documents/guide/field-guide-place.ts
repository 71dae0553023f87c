/*
 * Field guide: the place, its room and its hazards.
 * Invariant: one entry a column, in the order of the template.
 * Not here: the short help (lib/intake/columns-place.ts).
 * Read next: field-guide-site.ts.
 */
import { CAUTIONS, type GuideEntry } from './field-guide-entry.ts';

export const PLACE_GUIDE: readonly GuideEntry[] = [
  {
    field: 'depth_to_nut',
    widens: ['parts'],
    picture: 'depth',
    measure: [
      'Let a marked rod down until it stands on the nut, and read at the level one stands on.',
      'Say if there is water or mud above it.',
    ],
    caution: `${CAUTIONS.cover} ${CAUTIONS.traffic}`,
  },
  {
    field: 'misalignment',
    widens: ['parts'],
    picture: 'misalignment',
    measure: [
      'Put a key on the nut, hold a level upright beside it and read the angle between them.',
      'Or measure how far the key leans at the top: 9 cm in a metre is 5°.',
    ],
    caution: CAUTIONS.cover,
  },
  {
    field: 'surface_box',
    widens: ['parts', 'time'],
    picture: 'depth',
    measure: ['Open it. Say clear, full of silt, tilted, broken, or paved over, and the width inside.'],
    caution: `${CAUTIONS.cover} ${CAUTIONS.traffic}`,
  },
  {
    field: 'surface',
    widens: ['restraint'],
    measure: [
      'Say what lies round the box within two metres: asphalt, slabs, grass, gravel, grating, and whether it slopes.',
    ],
    caution: CAUTIONS.traffic,
  },
  {
    field: 'faces',
    widens: ['restraint', 'parts'],
    picture: 'faces',
    measure: ['Look along the stem from the valve to the wheel: which way does it point?'],
  },
  {
    field: 'reach',
    widens: ['parts', 'time'],
    picture: 'reach',
    measure: ['Tape from the place where both feet stand firm to the middle of the wheel or nut.'],
    caution: CAUTIONS.fall,
  },
  {
    field: 'clear_radius',
    widens: ['parts', 'restraint'],
    picture: 'clear-radius',
    measure: [
      'Tape from the stem outward to the nearest thing, at the height of the wheel, all the way round. Write the smallest.',
    ],
  },
  {
    field: 'headroom',
    widens: ['parts'],
    picture: 'headroom',
    measure: ['Tape straight up from the wheel or nut to the nearest thing above, stem fully out.'],
    caution: `${CAUTIONS.fall} A metal tape stays away from cables and live parts.`,
  },
  {
    field: 'standing_place',
    widens: ['restraint', 'time'],
    measure: ['Say what carries the operator: floor, grating, ladder, scaffold, boat. Say its height above ground.'],
    caution: CAUTIONS.fall,
  },
  {
    field: 'vehicle_distance',
    widens: ['restraint'],
    picture: 'vehicle',
    measure: ['Pace from the valve to the nearest place where a van may stand level with its brake on.'],
    caution: CAUTIONS.traffic,
  },
  {
    field: 'anchor',
    widens: ['restraint'],
    picture: 'anchor',
    measure: [
      'Look within 1.5 m for steelwork, a flange, a yoke or a pipe as thick as the valve’s own.',
      'Small pipe, handrail, cable tray and scaffold do not count; nor does anything hot or insulated.',
    ],
  },
  {
    field: 'zone',
    widens: ['place', 'power'],
    measure: ['Ask for the site’s zone drawing. It is never guessed from a smell or its absence.'],
    caution: CAUTIONS.zone,
  },
  {
    field: 'gas_group',
    widens: ['place', 'power'],
    measure: ['Read it off the zone drawing, or off the marking of the equipment that hangs there.'],
    caution: CAUTIONS.zone,
  },
  {
    field: 'temperature_class',
    widens: ['place', 'power'],
    measure: ['Read it off the zone drawing; for dust it is a temperature of the surface.'],
    caution: CAUTIONS.zone,
  },
  {
    field: 'enclosed',
    widens: ['place', 'power'],
    measure: ['Say yes for a room, a chamber, a pit deeper than one’s waist, a ship’s space.'],
    caution: 'Do not go in to find out: a confined space needs its permit, a gas test and somebody outside.',
  },
  {
    field: 'service',
    widens: ['place', 'parts'],
    measure: ['Ask what touches the medium and what must never reach it: grease, oil, dirt from the last job.'],
    caution: 'Oxygen and oil burn together. Toxic service is looked at from outside.',
  },
  {
    field: 'noise_limit',
    widens: ['power', 'place'],
    measure: ['Ask for the limit, where it holds and at which hours.'],
  },
  {
    field: 'notes',
    widens: ['paper'],
    measure: ['Write what a person should know who has never been there. Values with a unit are read out of the text.'],
  },
  {
    field: 'photo',
    widens: ['paper', 'time'],
    measure: [
      'One straight from above the wheel or nut with a rule beside it, one of the whole place from where one stands.',
    ],
    caution: CAUTIONS.zone,
  },
];
