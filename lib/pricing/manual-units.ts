/*
 * Units in which a line written by hand is counted.
 * Invariant: each has its code of UN/ECE Recommendation 20 where the quotation is written as XML.
 * Not here: what such a line costs (manual-line.ts).
 * Read next: manual-line.ts.
 */
export const MANUAL_UNITS = [
  'piece',
  'set',
  'hour',
  'day',
  'person',
  'kilometre',
  'kilogram',
  'litre',
  'metre',
  'lump sum',
] as const;
export type ManualUnit = (typeof MANUAL_UNITS)[number];
