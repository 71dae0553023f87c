/*
 * Data: diameter and medium pitch of trapezoidal threads, in millimetres.
 * Invariant: rows rise by diameter.
 * Not here: the rules that give mean and root diameters (thread-geometry.ts).
 * Read next: thread-geometry.ts.
 */

/** ISO 2902, medium series: from this diameter on, this pitch. Rows above 60 mm from memory. */
export const TRAPEZOIDAL_MEDIUM_PITCHES: readonly (readonly [diameter_mm: number, pitch_mm: number])[] = [
  [10, 2],
  [12, 3],
  [16, 4],
  [22, 5],
  [30, 6],
  [38, 7],
  [46, 8],
  [55, 9],
  [65, 10],
  [85, 12],
  [110, 12],
  [120, 14],
  [150, 16],
  [190, 18],
];
