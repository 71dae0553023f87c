/*
 * Field guide: what the drive takes hold of.
 * Invariant: one entry a column, in the order of the template.
 * Not here: the short help (lib/intake/columns-drive.ts).
 * Read next: field-guide-place.ts.
 */
import { CAUTIONS, type GuideEntry } from './field-guide-entry.ts';

export const DRIVE_GUIDE: readonly GuideEntry[] = [
  {
    field: 'driven_by',
    widens: ['parts'],
    picture: 'driven-by',
    measure: [
      'Look what a person would turn, and take a photo straight from above it.',
      'A wheel on an electric or air actuator is its hand drive: say actuator.',
    ],
    caution: CAUTIONS.energy,
  },
  {
    field: 'wheel_diameter',
    widens: ['parts', 'never'],
    picture: 'wheel-diameter',
    measure: [
      'Tape across the whole wheel through the middle, outside of the rim to outside of the rim.',
      'Turn the tape by a right angle and measure again: a bent rim shows.',
    ],
    caution: CAUTIONS.pinch,
  },
  {
    field: 'wheel_spokes',
    widens: ['parts'],
    picture: 'wheel-spokes',
    measure: ['Count the spokes from rim to hub. A solid disc is 0.'],
  },
  {
    field: 'wheel_dish',
    widens: ['parts'],
    picture: 'wheel-dish',
    measure: [
      'Lay a straight edge across the rim and measure down to the hub.',
      'That depth over half the wheel’s diameter is the slope: a tenth is 6°, a fifth 11°.',
    ],
  },
  {
    field: 'wheel_material',
    widens: ['never'],
    measure: [
      'Grey, rough and thick with a seam: cast iron. Thin tube or pressed sheet: steel. Light and soft: aluminium.',
      'In doubt write cast iron.',
    ],
  },
  {
    field: 'stem_protrusion',
    widens: ['parts'],
    picture: 'stem-protrusion',
    measure: [
      'Stand a rule on the hub beside the stem and read to its end, cover off.',
      'Write beside it whether the valve was open or closed.',
    ],
    caution: CAUTIONS.stem,
  },
  {
    field: 'protrusion_measured_at',
    widens: ['parts'],
    picture: 'open-closed',
    measure: [
      'Write where the valve stood when the rule was on the hub: open or closed.',
      'In between, count turns to the end you know and write it in the notes.',
    ],
    caution: CAUTIONS.move,
  },
  {
    field: 'stem_cover',
    widens: ['parts', 'time'],
    picture: 'stem-cover',
    measure: ['Look for a tube or an indicator over the stem. Say how it is held, and its height and width.'],
  },
  {
    field: 'nut_size',
    widens: ['parts', 'never'],
    picture: 'nut-flats',
    measure: [
      'Caliper across two parallel flats, at the top and at the base.',
      'At the bottom of a box: press clay or a paper cup over it on a rod and measure the print.',
    ],
    caution: CAUTIONS.cover,
  },
  {
    field: 'nut_shape',
    widens: ['parts'],
    picture: 'nut-shapes',
    measure: [
      'Count the corners: four, five or six.',
      'Four corners, wider at the base than at the top: tapered square.',
    ],
  },
  {
    field: 'nut_wear',
    widens: ['parts', 'never'],
    picture: 'nut-wear',
    measure: ['Sharp corners: good. Corners gone by less than a tenth of the flat: worn. More: rounded.'],
  },
  {
    field: 'spindle_size',
    widens: ['never', 'parts'],
    picture: 'spindle',
    measure: ['Caliper across the square bar, or the diameter of a round one, at its thinnest place.'],
    caution: CAUTIONS.cover,
  },
  {
    field: 'spindle_length',
    widens: ['parts'],
    picture: 'spindle',
    measure: ['From the cap that is turned down to the valve. Say if there are bearings or joints between.'],
    caution: CAUTIONS.cover,
  },
];
