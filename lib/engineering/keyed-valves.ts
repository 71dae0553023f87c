/*
 * Data: hydrants, stop taps and plugs on a key by size rules.
 * Invariant: every row is a range with its source; low ≤ nominal ≤ high.
 * Not here: gate valves on a key: they are screw-driven (stem-thrust.ts).
 * Read next: nut-sizes.ts.
 */
export interface KeyedRow {
  readonly upToSize_mm: number;
  readonly turns: readonly [low: number, nominal: number, high: number];
  readonly running_nm: readonly [low: number, nominal: number, high: number];
  readonly neverExceed_nm: readonly [low: number, nominal: number, high: number];
  readonly source: string;
}

/** Torque to run and turns of hydrants. Common practice, no source; the ceiling stays below the 200 lbf·ft (271 N·m) that AWWA C502 tests, from memory. */
export const HYDRANTS: readonly KeyedRow[] = [
  {
    upToSize_mm: 85,
    turns: [6, 12, 20],
    running_nm: [10, 22, 45],
    neverExceed_nm: [120, 180, 271],
    source: 'Size rule for hydrants up to DN 80; common practice, no source.',
  },
  {
    upToSize_mm: 400,
    turns: [8, 15, 25],
    running_nm: [14, 30, 60],
    neverExceed_nm: [150, 210, 271],
    source: 'Size rule for hydrants from DN 100; common practice, no source.',
  },
];

/** Stop taps: 3.5 turns from Essex & Suffolk Water, stop valve operations page; main ferrule 13 turns. Torque common practice, no source. */
export const STOP_TAPS: readonly KeyedRow[] = [
  {
    upToSize_mm: 27,
    turns: [2.5, 3.5, 13],
    running_nm: [1.5, 4, 8],
    neverExceed_nm: [22, 30, 45],
    source:
      'Size rule for stop taps up to DN 25; turns from a water company’s stop-valve page, torque common practice, no source.',
  },
  {
    upToSize_mm: 400,
    turns: [3, 6, 13],
    running_nm: [3, 8, 16],
    neverExceed_nm: [40, 55, 80],
    source: 'Size rule for stop taps above DN 25; common practice, no source.',
  },
];
