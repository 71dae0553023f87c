/*
 * One value from two sources, the list and an earlier visit: which is used, and both where they contradict each other.
 * Invariant: where they agree the better basis is used; where they do not, the range covers both and the list's stays the likely value.
 * Not here: which values a visit brings (lib/found).
 * Read next: visit-torque.ts.
 */
import { basisRank, type Known, worstBasis } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import { settle } from './sheet.ts';

export interface Chosen<U extends Unit> {
  readonly value: Known<U>;
  readonly from: 'list' | 'visit' | 'both';
}

export function chooseSource<U extends Unit>({
  listed,
  seen,
  slack,
}: {
  readonly listed: Known<U> | undefined;
  readonly seen: Known<U>;
  /** Ratio from which two values contradict each other. */
  readonly slack: number;
}): Chosen<U> {
  if (listed === undefined) return { value: seen, from: 'visit' };
  const apart = listed.low > seen.high * slack || listed.high < seen.low / slack;
  if (!apart)
    return basisRank(seen.basis) < basisRank(listed.basis)
      ? { value: seen, from: 'visit' }
      : { value: listed, from: 'list' };
  const value = settle(
    listed.unit,
    { low: Math.min(listed.low, seen.low), nominal: listed.nominal, high: Math.max(listed.high, seen.high) },
    { basis: worstBasis([listed.basis, seen.basis]), source: `Both are covered. ${listed.source} ${seen.source}` },
  );
  return { value, from: 'both' };
}
