/*
 * Data: highest surface temperature of a temperature class.
 * Invariant: the six classes stand from the hottest to the coldest.
 * Not here: reading a class out of a text (hazardous-marking.ts).
 * Read next: hazardous-marking.ts.
 */
/** IEC 60079-0, table of temperature classes, °C. */
export const TEMPERATURE_CLASSES: readonly (readonly [name: string, highest_c: number])[] = [
  ['T1', 450],
  ['T2', 300],
  ['T3', 200],
  ['T4', 135],
  ['T5', 100],
  ['T6', 85],
];

/** NEC Article 500, codes between the classes as North American lists write them, °C; T3A from memory. */
export const TEMPERATURE_CODES: readonly (readonly [name: string, highest_c: number])[] = [
  ['T2A', 280],
  ['T2B', 260],
  ['T2C', 230],
  ['T2D', 215],
  ['T3A', 180],
  ['T3B', 165],
  ['T3C', 160],
  ['T4A', 120],
];
