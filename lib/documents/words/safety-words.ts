/*
 * The safety words of every paper (design section 12), in the places where they matter.
 * Invariant: nothing is worded as an approval; local codes, the valve maker's data and competent persons decide.
 * Not here: findings of a single line (rules, duty).
 * Read next: ../papers/quote-paper.ts, ../papers/site-paper.ts.
 */
export const GENERAL_CAUTIONS: readonly string[] = [
  'All torques, turns and times are estimates from the list until they are measured at the valve.',
  'Local codes, the valve maker’s data and licensed or competent persons decide whether and how a valve may be operated. This paper does not approve the work.',
  'Isolation, permits to work, confined-space, hazardous-area and traffic rules of the place come first.',
  'Know before you start what you will do if the valve breaks or will not shut.',
  'No powered drive is held by hand alone: the restraint named here, or one agreed with us, is always fitted.',
];

export const AT_THE_VALVE: readonly string[] = [
  'Start low, raise the limiter step by step, never past the ceiling.',
  'After a stall release the lever slowly and reverse to relieve the wind-up before touching the chain.',
  'Keep hands, clothing and other people out of the turning parts and out of the line of the stem.',
  'Old and corroded is weaker than any table: if something bends, cracks or squeals, stop and report.',
  'The unseating setting is never used to close.',
];

export const METHOD_STEPS: readonly string[] = [
  'Agree with whoever owns the valve that it may be moved, which way and how far; check locks, tags and permits.',
  'Look: wheel or nut sound, stem straight and clean, packing dry, nothing in the way of the stem or the arm.',
  'Open the by-pass first where there is one. Equalise; where heat or trapped pressure may bind the valve, vent or warm it, do not force it.',
  'Try by hand, both ways, within a person’s force. Note the position found.',
  'Fit adapter, head, restraint and drive in this order; take up the slack of the restraint before power.',
  'Set the limiter to its start value for the direction; set the counter to zero at the closed end where it can be reached.',
  'Run with short pulls first. Stiff valve: to and fro, a little farther each time.',
  'Stop under power short of both ends; make the last turns by hand. Never back-seat under power.',
  'Write down position as left, turns, highest limiter setting used and every defect. Restore locks and tags.',
];

/** What happens when an assumed value is wrong, by what it is. */
export const IF_WRONG = {
  wheel: 'The adapter carried may not grip; the next size has to be sent.',
  nut: 'The socket may not fit; another has to be sent.',
  depth: 'The key may be too short or too long to work with.',
  turns: 'The work takes longer or shorter; count from the closed end and do not trust the figure.',
  torque:
    'The valve may need more than the limiter’s ceiling and then does not move, or needs less and is at risk if the limiter starts too high.',
  never: 'The valve may be weaker than thought: start low and stop at the first sign of yielding.',
  speed: 'Closing faster than the pipeline allows can cause a pressure surge.',
  stem: 'A stem that rises through the wheel needs an open-centre head; a closed one would be forced off.',
} as const;
