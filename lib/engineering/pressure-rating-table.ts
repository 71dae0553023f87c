/*
 * Data: working pressure of carbon-steel valves by class and temperature.
 * Invariant: rows rise by temperature; columns follow RATING_CLASSES.
 * Not here: other material groups; iron and bronze valves.
 * Read next: pressure-rating.ts.
 */
export const RATING_CLASSES: readonly number[] = [150, 300, 600, 900, 1500, 2500];

/** ASME B16.34 table 2-1.1A, group 1.1, bar gauge by °C. Rows to 300 °C read, rows above from memory. */
export const GROUP_1_1_RATINGS: readonly (readonly [
  celsius: number,
  bars: readonly [number, number, number, number, number, number],
])[] = [
  [38, [19.6, 51.1, 102.1, 153.2, 255.3, 425.5]],
  [50, [19.2, 50.1, 100.2, 150.4, 250.6, 417.7]],
  [100, [17.7, 46.6, 93.2, 139.8, 233.0, 388.3]],
  [150, [15.8, 45.1, 90.2, 135.2, 225.4, 375.6]],
  [200, [13.8, 43.8, 87.6, 131.4, 219.0, 365.0]],
  [250, [12.1, 41.9, 83.9, 125.8, 209.7, 349.5]],
  [300, [10.2, 39.8, 79.6, 119.5, 199.1, 331.8]],
  [325, [9.3, 38.7, 77.4, 116.1, 193.6, 322.6]],
  [350, [8.4, 37.6, 75.1, 112.7, 187.8, 313.0]],
  [375, [7.4, 36.4, 72.7, 109.1, 181.8, 303.1]],
  [400, [6.5, 34.7, 69.4, 104.2, 173.6, 289.3]],
  [425, [5.5, 28.8, 57.5, 86.3, 143.8, 239.7]],
];
