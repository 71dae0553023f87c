/*
 * The thousand-point sum of a load on the road.
 * Invariant: a load above the limit is never called within it.
 * Not here: goods that special provisions take out of the sum (dangerous-goods.ts).
 * Read next: dangerous-goods.ts.
 */
export interface TransportItem {
  /** ADR transport category. Lithium batteries and petrol are in category 2. */
  readonly category: 1 | 2 | 3 | 4;
  /** kg gross for articles, litres for liquids. */
  readonly quantity: number;
}

/** Source: ADR 1.1.3.6.3 and 1.1.3.6.4. */
const FACTORS: Readonly<Record<TransportItem['category'], number>> = { 1: 50, 2: 3, 3: 1, 4: 0 };
const LIMIT = 1000;

export function transportPoints(items: readonly TransportItem[]): {
  readonly points: number;
  readonly within: boolean;
} {
  const points = items.reduce((sum, { category, quantity }) => sum + FACTORS[category] * quantity, 0);
  return { points, within: points <= LIMIT };
}
