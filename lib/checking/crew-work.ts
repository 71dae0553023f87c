/*
 * The work of one crew as its needs are worked out from it, and counts of models.
 * Invariant: plain data; the same work gives the same needs.
 * Not here: working the needs out (crew-needs.ts).
 * Read next: crew-needs.ts, power-needs.ts.
 */
import type { Site } from '#lib/duty/site.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { Model } from '#lib/equipment/model.ts';

export type Counts = ReadonlyMap<string, number>;

/** One drive's or assembly's share of a crew's work. */
export interface CrewPiece {
  readonly assembly: Assembly;
  readonly qty: number;
  /** Oxygen service: nothing with oil in it may come near. */
  readonly oxygen: boolean;
}

export interface CrewNeedsInput {
  readonly pieces: readonly CrewPiece[];
  /** All the crew's work with moving and access, in seconds. */
  readonly time: number;
  /** How many of a model the crew really has with it; a charger that it goes without recharges nothing. */
  readonly has: (number: string) => number;
  readonly site: Site;
  readonly models: readonly Model[];
}
