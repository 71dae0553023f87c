/*
 * Tables for lifting: frequency and coupling multipliers, and the screening filter by zone.
 * Invariant: rows of the frequency table come in rising order.
 * Not here: how they are used (lifting.ts).
 * Read next: lifting.ts.
 */
/** Columns: up to 1 h below and from 75 cm, up to 2 h, up to 8 h. DHHS (NIOSH) 94-110, Rev. 9/2021, Table 5; partly from memory. */
export const FREQUENCY_MULTIPLIERS: readonly (readonly [perMinute: number, ...columns: readonly number[]])[] = [
  [0.2, 1, 1, 0.95, 0.95, 0.85, 0.85],
  [0.5, 0.97, 0.97, 0.92, 0.92, 0.81, 0.81],
  [1, 0.94, 0.94, 0.88, 0.88, 0.75, 0.75],
  [2, 0.91, 0.91, 0.84, 0.84, 0.65, 0.65],
  [3, 0.88, 0.88, 0.79, 0.79, 0.55, 0.55],
  [4, 0.84, 0.84, 0.72, 0.72, 0.45, 0.45],
  [5, 0.8, 0.8, 0.6, 0.6, 0.35, 0.35],
  [6, 0.75, 0.75, 0.5, 0.5, 0.27, 0.27],
  [7, 0.7, 0.7, 0.42, 0.42, 0.22, 0.22],
  [8, 0.6, 0.6, 0.35, 0.35, 0.18, 0.18],
  [9, 0.52, 0.52, 0.3, 0.3, 0, 0.15],
  [10, 0.45, 0.45, 0.26, 0.26, 0, 0.13],
  [11, 0.41, 0.41, 0, 0.23, 0, 0],
  [12, 0.37, 0.37, 0, 0.21, 0, 0],
  [13, 0, 0.34, 0, 0, 0, 0],
  [14, 0, 0.31, 0, 0, 0, 0],
  [15, 0, 0.28, 0, 0, 0, 0],
];

/** Below and from 75 cm. DHHS (NIOSH) 94-110, Table 7; the fair split confirmed elsewhere, the rest from memory. */
export const COUPLING_MULTIPLIERS = { good: [1, 1], fair: [0.95, 1], poor: [0.9, 0.9] } as const;

/**
 * Masses in kg below which no detailed assessment is asked for, up to about 30 lifts an hour.
 * Health and Safety Executive, L23 and INDG143; a filter, not a legal limit.
 */
export const LIFTING_FILTER = {
  'shoulder and above': { men: { close: 10, far: 5 }, women: { close: 7, far: 3 } },
  'shoulder to elbow': { men: { close: 20, far: 10 }, women: { close: 13, far: 7 } },
  'elbow to knuckle': { men: { close: 25, far: 15 }, women: { close: 16, far: 10 } },
  'knuckle to mid lower leg': { men: { close: 20, far: 10 }, women: { close: 13, far: 7 } },
  'below mid lower leg': { men: { close: 10, far: 5 }, women: { close: 7, far: 3 } },
} as const;

/** Up to so many lifts a minute, that share of the filter's mass; gaps of the guidance take the harder row. HSE L23, read in a training reproduction. */
export const FILTER_SHARES: readonly (readonly [perMinute: number, share: number])[] = [
  [0.5, 1],
  [2, 0.7],
  [8, 0.5],
  [Number.POSITIVE_INFINITY, 0.2],
];

/** What the revised equation does not speak of. DHHS (NIOSH) 94-110, Rev. 9/2021, section 1.3; the last where one of its multipliers is 0. */
export const OUTSIDE_LIFTING_EQUATION = {
  oneHanded: 'one-handed',
  long: 'more than eight hours of lifting',
  posture: 'seated or kneeling',
  cramped: 'a cramped or enclosed place',
  unstable: 'an unstable load',
  carrying: 'carried more than a step or two',
  shovelling: 'shovelled or wheeled in a barrow',
  fast: 'faster than about 0.75 m/s',
  footing: 'poor or unsteady footing',
  temperature: 'outside 19 to 26 °C',
  team: 'lifted by two or more persons',
  pace: 'beyond the reach, height or pace that it allows any mass for',
} as const;

/** °C within which the revised equation speaks. DHHS (NIOSH) 94-110, Rev. 9/2021, section 1.3. */
export const TEMPERATE = { low: 19, high: 26 } as const;
