/*
 * Dangerous goods in a kit: lithium packs by watt-hours, drained petrol machines, fuel; texts with their source.
 * Invariant: a text is a screening for the yard, never a declaration; unknown energy is treated as regulated.
 * Not here: which case a piece goes into (packing), and the sender's own duties under the rules in force.
 * Read next: energy.ts.
 */
import type { Litres, WattHours } from '#lib/units/quantity.ts';

export type TransportMode = 'road' | 'air' | 'sea';
export type LithiumPacking = 'alone' | 'with equipment' | 'in equipment';

export interface GoodsLine {
  readonly unNumber: string;
  readonly name: string;
  readonly hazardClass: string;
  readonly route: 'small batteries' | 'fully regulated' | 'not subject when drained' | 'regulated' | 'none';
  readonly sentence: string;
  readonly source: string;
}

/** Special provision 188: battery not above 100 Wh, cell not above 20 Wh. */
const SMALL_BATTERY_WH = 100;

/**
 * How a lithium-ion pack travels.
 *
 * Formula: ≤ 100 Wh: special provision 188 possible; above: fully regulated, class 9
 *
 * @param energy - Declared energy of one pack. [Wh] range 0…5000
 * @param packing - Alone, with the equipment, or in it. [–]
 * @param mode - Road, air or sea. [–]
 * @returns UN number, name, class, route and a sentence for the packing list. [–]
 * @source ADR 3.3.1 special provision 188; ADR Table A (UN 3480, UN 3481); IATA packing instructions 965 to 967.
 * @assumes Sound packs, tested to UN 38.3; damaged ones never travel this way.
 * @example lithiumGoods({ energy: wattHours(108), packing: 'alone', mode: 'road' }).route // => 'fully regulated'
 */
export function lithiumGoods({
  energy,
  packing,
  mode,
}: {
  readonly energy: WattHours;
  readonly packing: LithiumPacking;
  readonly mode: TransportMode;
}): GoodsLine {
  const unNumber = packing === 'alone' ? 'UN 3480' : 'UN 3481';
  const small = energy <= SMALL_BATTERY_WH && mode !== 'air';
  return {
    unNumber,
    name: lithiumName(packing),
    hazardClass: '9',
    route: small ? 'small batteries' : 'fully regulated',
    sentence: lithiumSentence({ energy, packing, mode, small }),
    source:
      mode === 'air'
        ? 'IATA Dangerous Goods Regulations, packing instructions 965 to 967 (from memory)'
        : 'ADR/IMDG special provision 188 and Table A',
  };
}

/**
 * How a petrol machine travels.
 *
 * Formula: drained and unable to run: not subject; else UN 3528, class 3
 *
 * @param tank - `drained` or `fuel in tank`. [–]
 * @returns UN number, name, class, route and a sentence for the packing list. [–]
 * @source ADR special provision 363; 49 CFR 173.220 lets 500 ml stay in a closed tank.
 * @assumes No other dangerous goods in the machine.
 * @example petrolMachineGoods('drained').route // => 'not subject when drained'
 */
export function petrolMachineGoods(tank: 'drained' | 'fuel in tank'): GoodsLine {
  const drained = tank === 'drained';
  return {
    unNumber: 'UN 3528',
    name: 'ENGINE, INTERNAL COMBUSTION, FLAMMABLE LIQUID POWERED',
    hazardClass: '3',
    route: drained ? 'not subject when drained' : 'regulated',
    sentence: drained
      ? 'Petrol machine: tank and carburettor drained and closed before loading; then no dangerous goods by road.'
      : 'Petrol machine with fuel in its tank: drain it before loading; it is not loaded like this.',
    source: 'ADR special provision 363',
  };
}

/**
 * How fuel travels.
 *
 * Formula: UN 1203, class 3, packing group II; delivered to a customer it is no ancillary carriage
 *
 * @param volume - Fuel in all cans. [l] range 0…1000
 * @returns UN number, name, class, route and a sentence for the packing list. [–]
 * @source ADR Table A and 1.1.3.6 (transport category 2: 333 l); ADR 1.1.3.1(c) does not cover delivery.
 * @assumes Approved cans; fuel is never in the case of the machine.
 * @example petrolGoods(litres(10)).unNumber // => 'UN 1203'
 */
export function petrolGoods(volume: Litres): GoodsLine {
  return {
    unNumber: 'UN 1203',
    name: 'PETROL',
    hazardClass: '3',
    route: 'regulated',
    sentence: `UN 1203 PETROL, 3, II, (D/E), ${volume} l in approved cans, apart from the machine. Bought near the site it need not travel at all.`,
    source: 'ADR Table A, 1.1.3.6 and 1.1.3.1(c)',
  };
}

/** Points a unit of quantity (kg or l), by transport category: ADR 1.1.3.6.4. */
const POINTS_PER_UNIT = { '1': 50, '2': 3, '3': 1, '4': 0 } as const;
export const ADR_POINT_LIMIT = 1000;

/**
 * Points of a load towards the limit of the partial exemption by road.
 *
 * Formula: Σ q·f, f = 50, 3, 1, 0 for transport categories 1 to 4
 *
 * @param goods - Quantity (kg or l) and transport category of each. [kg, l] range 0…1e5
 * @returns Points; the exemption holds up to 1000. [1]
 * @source ADR 1.1.3.6.
 * @assumes Nothing of category 0 on board.
 * @example adrPoints([{ category: '2', quantity: 40 }, { category: '2', quantity: 25 }]) // => 195
 */
export function adrPoints(
  goods: readonly { readonly category: keyof typeof POINTS_PER_UNIT; readonly quantity: number }[],
): number {
  return goods.reduce((points, { category, quantity }) => points + POINTS_PER_UNIT[category] * quantity, 0);
}

function lithiumName(packing: LithiumPacking): string {
  if (packing === 'alone') return 'LITHIUM ION BATTERIES';
  return packing === 'in equipment'
    ? 'LITHIUM ION BATTERIES CONTAINED IN EQUIPMENT'
    : 'LITHIUM ION BATTERIES PACKED WITH EQUIPMENT';
}

function lithiumSentence(goods: {
  readonly energy: WattHours;
  readonly packing: LithiumPacking;
  readonly mode: TransportMode;
  readonly small: boolean;
}): string {
  const each = `${Math.round(goods.energy * 10) / 10} Wh each`;
  if (goods.mode === 'air') {
    const charge = 'charged to no more than 30 %';
    return goods.packing === 'alone'
      ? `Lithium-ion packs alone, ${each}: cargo aircraft only, ${charge}, by a trained sender.`
      : `Lithium-ion packs with equipment, ${each}: ${charge}, by a trained sender.`;
  }
  return goods.small
    ? `Lithium-ion packs, ${each}, not above 100 Wh: small-battery provision, watt-hours marked, terminals covered, lithium battery mark on the case.`
    : `Lithium-ion packs, ${each}, above 100 Wh: class 9, label 9A, approved packaging and transport document.`;
}
