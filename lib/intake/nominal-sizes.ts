/*
 * Nominal sizes: DN, NPS with its DN, and outside diameters of pipe that lists give in their place.
 * Invariant: lengths in millimetres; DN values are the ones of ISO 6708.
 * Not here: reading a text (read-size.ts).
 * Read next: read-size.ts.
 */
/** ISO 6708:1995, preferred DN values, with DN 8 to DN 4000 as pipework uses them. */
export const DN_SIZES: readonly number[] = [
  10, 15, 20, 25, 32, 40, 50, 60, 65, 80, 90, 100, 125, 150, 200, 250, 300, 350, 400, 450, 500, 550, 600, 650, 700, 750,
  800, 850, 900, 950, 1000, 1050, 1100, 1150, 1200, 1300, 1350, 1400, 1500, 1600, 1650, 1800, 2000, 2100, 2200, 2400,
  2600, 2800, 3000,
];

/** Sizes of inch-made waterworks valves that are called by rounded millimetres (3, 7, 9, 15 … in). Common practice, no source. */
export const CUSTOMARY_MM_SIZES: readonly number[] = [75, 175, 225, 375, 525, 675, 825];

/** NPS and its DN. ASME B36.10M and ISO 6708. */
export const NPS_TO_DN: readonly (readonly [nps: number, dn: number])[] = [
  [0.375, 10],
  [0.5, 15],
  [0.75, 20],
  [1, 25],
  [1.25, 32],
  [1.5, 40],
  [2, 50],
  [2.5, 65],
  [3, 80],
  [3.5, 90],
  [4, 100],
  [5, 125],
  [6, 150],
  [8, 200],
  [10, 250],
  [12, 300],
  [14, 350],
  [16, 400],
  [18, 450],
  [20, 500],
  [22, 550],
  [24, 600],
  [26, 650],
  [28, 700],
  [30, 750],
  [32, 800],
  [34, 850],
  [36, 900],
  [38, 950],
  [40, 1000],
  [42, 1050],
  [44, 1100],
  [46, 1150],
  [48, 1200],
  [52, 1300],
  [54, 1350],
  [56, 1400],
  [60, 1500],
  [64, 1600],
  [66, 1650],
  [72, 1800],
  [80, 2000],
  [84, 2100],
  [88, 2200],
  [96, 2400],
];

/**
 * Outside diameter of pipe and the DN of the valve that usually sits in it.
 * Plastic: ISO 161-1 outside diameters with the DN of ISO 4427 practice. Steel: ISO 4200 / ASME B36.10M.
 */
export const OUTSIDE_DIAMETERS: readonly (readonly [outside: number, dn: number, what: 'plastic' | 'steel'])[] = [
  [63, 50, 'plastic'],
  [110, 100, 'plastic'],
  [140, 125, 'plastic'],
  [160, 150, 'plastic'],
  [180, 150, 'plastic'],
  [280, 250, 'plastic'],
  [315, 300, 'plastic'],
  [355, 350, 'plastic'],
  [560, 500, 'plastic'],
  [630, 600, 'plastic'],
  [710, 700, 'plastic'],
  [60.3, 50, 'steel'],
  [73, 65, 'steel'],
  [76.1, 65, 'steel'],
  [88.9, 80, 'steel'],
  [114.3, 100, 'steel'],
  [139.7, 125, 'steel'],
  [141.3, 125, 'steel'],
  [168.3, 150, 'steel'],
  [219.1, 200, 'steel'],
  [273, 250, 'steel'],
  [273.1, 250, 'steel'],
  [323.9, 300, 'steel'],
  [355.6, 350, 'steel'],
  [406.4, 400, 'steel'],
  [457, 450, 'steel'],
  [508, 500, 'steel'],
];

const MM: ReadonlySet<number> = new Set([...DN_SIZES, ...CUSTOMARY_MM_SIZES]);

export function isNominalMm(value: number): boolean {
  return MM.has(value);
}

/** DN of a size in inches; inches beyond the table at 25 mm each. */
export function dnOfInches(inches: number): number {
  const found = NPS_TO_DN.find(([nps]) => Math.abs(nps - inches) < 0.02);
  return found?.[1] ?? Math.round(inches) * 25;
}

export function isNps(inches: number): boolean {
  return NPS_TO_DN.some(([nps]) => Math.abs(nps - inches) < 0.02);
}

export function nearestNominal(value: number): number {
  return DN_SIZES.reduce((best, size) => (Math.abs(size - value) < Math.abs(best - value) ? size : best), 50);
}

/** A bare number as millimetres or inches: below 15 it can only be inches, and 16, 18, 24, 30 … are no DN. */
export function isBareInches(value: number): boolean {
  return value > 0 && isNps(value) && (value < 15 || (value <= 96 && !MM.has(value)));
}
