/*
 * Data: sizes of a valve that a list does not give: stem, seat, travel, wheel, gearbox, by type and nominal size.
 * Invariant: shares and sizes come as low, nominal, high; what is a rule of thumb says so.
 * Not here: choosing a row for a line (lib/duty).
 * Read next: keyed-valves.ts.
 */
export type Spread = readonly [low: number, nominal: number, high: number];

/**
 * Least stem diameter of steel gate valves, class 150, in mm by NPS.
 * API Std 600, table of stem diameters: 2 to 6 in read in a secondary source; above from memory with low confidence.
 */
export const GATE_STEMS_MM: readonly (readonly [size_mm: number, stem_mm: number])[] = [
  [15, 10],
  [25, 14],
  [40, 17.5],
  [50, 19.05],
  [80, 22.23],
  [100, 25.4],
  [150, 28.58],
  [200, 31.75],
  [250, 34.93],
  [300, 38.1],
  [400, 42],
  [500, 48],
  [600, 54],
  [900, 70],
  [1200, 88],
  [2000, 130],
];
export const GATE_STEMS_STANDARD_UP_TO_MM = 152;

/** How much thicker a stem is in a higher class. Common practice, no source. */
export const STEM_GROWTH_BY_BAR: readonly (readonly [bar: number, factor: number])[] = [
  [20, 1],
  [52, 1.1],
  [105, 1.28],
  [155, 1.42],
  [260, 1.62],
  [430, 1.9],
];

/** Diameter of usual handwheels in mm by nominal size; spread −30 % to +35 %. Common practice, no source. */
export const WHEELS_MM: readonly (readonly [size_mm: number, wheel_mm: number])[] = [
  [15, 80],
  [25, 110],
  [50, 190],
  [80, 240],
  [100, 270],
  [150, 330],
  [200, 380],
  [250, 430],
  [300, 480],
  [400, 580],
  [500, 650],
  [600, 720],
  [1000, 850],
];

/** Total gear ratio of quarter-turn worm gearboxes by nominal size; half to double. Common practice, no source. */
export const WORM_RATIOS: readonly (readonly [size_mm: number, ratio: number])[] = [
  [100, 30],
  [200, 36],
  [350, 50],
  [500, 75],
  [700, 130],
  [1000, 300],
  [1600, 800],
  [2500, 1500],
];

/** Ratio of bevel and spur gears on gate valves. AWWA C500 gearing table (2:1 to 4:1), from memory with low confidence. */
export const MULTI_TURN_GEAR_RATIO: Spread = [2, 3, 4];

/** Efficiency of gearboxes, bearings included. Common practice, no source. */
export const GEAR_EFFICIENCY: Readonly<Record<'worm' | 'travelling nut' | 'bevel' | 'spur', Spread>> = {
  worm: [0.24, 0.3, 0.38],
  'travelling nut': [0.22, 0.3, 0.4],
  bevel: [0.85, 0.9, 0.95],
  spur: [0.88, 0.93, 0.97],
};
