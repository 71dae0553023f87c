/*
 * Seeded pseudo-random numbers for simulation and generated cases (mulberry32).
 * Invariant: the same seed gives the same sequence on every machine.
 * Not here: secrets; never use this for tokens.
 * Read next: ../duty/.
 */
export type Random = () => number;

/** Uniform numbers in [0, 1). Source: mulberry32, public-domain generator by T. Ettinger, from memory. */
export function seededRandom(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
