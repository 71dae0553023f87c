/*
 * What a field guide says of one field beside its short help: how to measure it step by step, what grows wider, what can hurt.
 * Invariant: a measure that asks somebody to move, open or reach a valve carries its caution.
 * Not here: labels, the short help and what stands in (lib/intake/columns.ts), the drawings (field-pictures.ts).
 * Read next: field-guide.ts.
 */
import type { FieldPictureName } from './field-pictures.ts';

/** What grows wider, or is planned against the worst, while the field is blank. */
export const WIDENED = {
  torque: 'the torque to start and to run',
  turns: 'the turns, and with them the time',
  never: 'the torque that must never be passed',
  speed: 'the speed and the stroke time',
  parts: 'the parts that go along, and the price',
  restraint: 'what takes the reaction',
  power: 'the choice of power source',
  time: 'the hours of the crew',
  place: 'what may be used at the place',
  paper: 'what the site sheet can tell the crew',
} as const;
export type Widened = keyof typeof WIDENED;

export interface GuideEntry {
  readonly field: string;
  readonly widens: readonly Widened[];
  /** In the order in which it is done. */
  readonly measure: readonly string[];
  readonly caution?: string;
  readonly picture?: FieldPictureName;
}

/** A field that is no column of a list brings its own label and short help. */
export interface LabelledEntry extends GuideEntry {
  readonly label: string;
  readonly help: string;
  readonly unknown: string;
}

/** Cautions that several fields share; local rules and the maker's data come first. */
export const CAUTIONS = {
  move: 'Move nothing before whoever runs the line says so and knows what happens if the valve does not shut again.',
  pinch: 'Keep hands off wheel, spokes and stem while anybody or anything can turn them.',
  stem: 'Keep face and hands out of line with the stem: under pressure it can come out.',
  pressure: 'Never loosen gland, plug or gauge to see the pressure. Read what is fitted, or ask.',
  cover:
    'Lift covers with a lifter, feet clear, and fence the opening. Gas and bad air come before measuring: no head below ground without a test and somebody above.',
  fall: 'Measure from a safe standing place. What needs a ladder or a harness needs the site’s leave first.',
  traffic: 'In a road, traffic protection comes before the tape.',
  hot: 'It may be hot, cold or coated: feel with the back of a gloved hand first, never with the palm.',
  zone: 'Inside a hazardous area only what is marked for it may come along: no phone, no ordinary lamp or meter.',
  locked: 'A lock or tag is another person’s life: it is never moved, also not to look behind it.',
  energy: 'An actuator can start by itself: its energy is isolated and locked before anybody touches its hand drive.',
} as const;
