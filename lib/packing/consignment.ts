/*
 * A whole consignment on the road: does the small-load exemption of ADR hold.
 * Invariant: packs under special provision 188 are left out, all others are counted with the mass of the piece they travel in.
 * Not here: sea and air, where the exemption does not exist.
 * Read next: transport-points.ts.
 */
import type { PackedCase } from './pack-cases.ts';
import { transportPoints } from './transport-points.ts';

export interface Consignment {
  readonly points: number;
  readonly within: boolean;
  readonly sentence: string;
}

export type ConsignedCase = Pick<PackedCase, 'pieces' | 'dangerousGoods'>;

export function consignmentOf(cases: readonly ConsignedCase[]): Consignment {
  const counted = cases
    .filter(({ dangerousGoods }) => dangerousGoods.some(({ id, route }) => id === 'lithium' && route === 'full'))
    .flatMap(({ pieces }) => pieces.filter(({ lithium }) => lithium !== null));
  const kg = Math.ceil(counted.reduce((sum, { mass }) => sum + mass, 0));
  const { points, within } = transportPoints([{ category: 2, quantity: kg }]);
  if (points === 0)
    return { points, within, sentence: 'No goods that count for the thousand-point sum of ADR 1.1.3.6.' };
  const head = `${kg} kg of lithium packs with their equipment in transport category 2 make ${points} of 1000 points (ADR 1.1.3.6)`;
  return {
    points,
    within,
    sentence: within
      ? `${head}: no orange plates and no dangerous-goods driver; extinguisher, instructed driver and transport document stay.`
      : `${head}: above the limit, the load goes in full compliance with ADR or in two vehicles.`,
  };
}
