/*
 * What can be told of a unit in its history, one word a kind.
 * Invariant: a kind is never renamed: what was written stays readable.
 * Not here: writing it down (lib/services/stock).
 * Read next: unit.ts.
 */
export const UNIT_EVENTS = [
  'added',
  'changed',
  'moved',
  'state',
  'inspection',
  'calibration',
  'run hours',
  'found',
  'missing',
  'sent',
  'arrived',
  'out',
  'back',
] as const;
export type UnitEventKind = (typeof UNIT_EVENTS)[number];
