/*
 * Work of a stroke, what the store must give for it, and packs for a shift with cold and recharging.
 * Invariant: the work is the area under torque over angle; a colder pack never gives more.
 * Not here: which charger fits the place (kits).
 * Read next: stroke-time.ts, transport.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';
import {
  type Celsius,
  type Joules,
  joules,
  type NewtonMetres,
  type Ratio,
  ratio,
  type Seconds,
  type Turns,
  type Volts,
  type WattHours,
  wattHours,
} from '#lib/units/quantity.ts';
import { between, type Point } from './straight-lines.ts';

/** Torque at a place of the stroke; between two places it runs straight. */
export interface TorquePoint {
  readonly turn: Turns;
  readonly torque: NewtonMetres;
}

/**
 * Work of one stroke.
 *
 * Formula: W = ∫T dθ = Σ 2π·(N[k+1] − N[k])·(T[k] + T[k+1])/2
 *
 * @param profile - Torque at places of the stroke in rising order. [turn, N·m] range torque 0…1e6
 * @returns Work at the valve. [J]
 * @source Definition of work; areas of trapezia are exact for straight pieces.
 * @assumes Torque runs straight between two places.
 * @example strokeWork([{ turn: turns(0), torque: newtonMetres(100) }, { turn: turns(10), torque: newtonMetres(100) }]) // => 6283
 */
export function strokeWork(profile: readonly TorquePoint[]): Joules {
  let work = 0;
  for (const [index, point] of profile.entries()) {
    const before = profile[index - 1];
    if (before === undefined) continue;
    invariant(point.turn >= before.turn, 'The places of a torque profile come in rising order.');
    work += (2 * Math.PI * (point.turn - before.turn) * (point.torque + before.torque)) / 2;
  }
  return joules(work);
}

/**
 * Work of one stroke that starts hard and runs easier.
 *
 * Formula: W = 2π·(Ns·(T_start + T_run)/2 + (N − Ns)·T_run), with Ns = min(N, starting turns)
 *
 * @param starting - Torque at the first moment. [N·m] range 0…1e6
 * @param running - Torque once it moves. [N·m] range 0…1e6
 * @param turns - Turns of the stroke. [turn] range 0…5000
 * @param startingTurns - Turns over which the torque falls to running. [turn] range 0…10
 * @returns Work at the valve. [J]
 * @source Definition of work; the shape is common practice, no source.
 * @assumes The torque falls in a straight line over the starting turns.
 * @example breakawayWork({ starting: newtonMetres(200), running: newtonMetres(100), turns: turns(11), startingTurns: turns(2) }) // => 7540
 */
export function breakawayWork({
  starting,
  running,
  turns,
  startingTurns,
}: {
  readonly starting: NewtonMetres;
  readonly running: NewtonMetres;
  readonly turns: Turns;
  readonly startingTurns: Turns;
}): Joules {
  const first = Math.min(turns, startingTurns);
  return joules(2 * Math.PI * ((first * (starting + running)) / 2 + (turns - first) * running));
}

/**
 * Energy that a pack holds by its plate.
 *
 * Formula: E = U·Q
 *
 * @param voltage - Nominal voltage. [V] range 1…120
 * @param capacity_ah - Capacity in ampere-hours. [Ah] range 0.1…100
 * @returns Nominal energy. [Wh]
 * @source Definition; the declared value of the plate counts for transport.
 * @assumes Nominal voltage, as transport rules take it.
 * @example packEnergy({ voltage: volts(18), capacity_ah: 5 }) // => 90
 */
export function packEnergy({
  voltage,
  capacity_ah,
}: {
  readonly voltage: Volts;
  readonly capacity_ah: number;
}): WattHours {
  return wattHours(voltage * capacity_ah);
}

/**
 * Energy that a store must give for a work at the valve.
 *
 * Formula: E = W/(η1·η2·…)/3600
 *
 * @param work - Work at the valve. [J] range 0…1e9
 * @param efficiencies - Of every stage between store and valve: heads, gears, motor; take the lowest. [1] range above 0…1
 * @returns Energy drawn from the store. [Wh]
 * @source Definition of efficiency; stages in a row multiply: T. H. Wentzell, Machine Design, Example 13.6.
 * @assumes The efficiencies hold on average over the stroke.
 * @example drawnFromStore({ work: joules(360000), efficiencies: [ratio(0.8), ratio(0.5)] }) // => 250
 */
export function drawnFromStore({
  work,
  efficiencies,
}: {
  readonly work: Joules;
  readonly efficiencies: readonly Ratio[];
}): WattHours {
  const efficiency = efficiencies.reduce((product, one) => product * one, 1);
  invariant(efficiency > 0, 'A chain that loses everything draws without end.');
  return wattHours(work / efficiency / 3600);
}

/** Share of the nominal energy that a lithium-ion pack gives at a temperature of the pack; common practice, no source. */
const COLD_SHARE: readonly Point[] = [
  [-20, 0.5],
  [-10, 0.65],
  [0, 0.8],
  [10, 0.9],
  [20, 1],
];

/**
 * Share of its energy that a lithium-ion pack gives in the cold.
 *
 * Formula: straight lines between −20 °C: 0.50, −10 °C: 0.65, 0 °C: 0.80, 10 °C: 0.90, 20 °C: 1.00
 *
 * @param temperature - Temperature of the pack. [°C] range −40…60
 * @returns Share of the nominal energy; 0 below −20 °C, where it is not to be used. [1]
 * @source Common practice, no source; the pack's own data decide.
 * @assumes The pack is as cold as the air.
 * @example coldShare(celsius(-5)) // => 0.725
 */
export function coldShare(temperature: Celsius): Ratio {
  return temperature < -20 ? ratio(0) : ratio(between({ points: COLD_SHARE, x: temperature }));
}

/**
 * Packs that a shift takes when emptied packs are recharged meanwhile.
 *
 * Formula: least n for which a fresh pack is there at every change, changes evenly over the shift, chargers one pack at a time
 *
 * @param energyPerShift - Electrical energy the drive takes in the shift. [Wh] range 0…1e5
 * @param usablePerPack - Energy one pack really gives: nominal times usable and cold share. [Wh] range above 0
 * @param shift - Length of the shift. [s] range above 0
 * @param rechargeTime - Time to recharge one pack. [s] range above 0
 * @param chargers - Chargers in reach during the shift; 0 where there is no supply. [1] range 0…20
 * @returns Packs to bring, charged. [1]
 * @source Counting; even use over the shift is common practice, no source.
 * @assumes All packs are full at the start, and a pack goes on charge as soon as it is empty and a charger is free.
 * @example packsPerShift({ energyPerShift: wattHours(400), usablePerPack: wattHours(100), shift: seconds(28800), rechargeTime: seconds(5400), chargers: 1 }) // => 2
 */
export function packsPerShift({
  energyPerShift,
  usablePerPack,
  shift,
  rechargeTime,
  chargers,
}: {
  readonly energyPerShift: WattHours;
  readonly usablePerPack: WattHours;
  readonly shift: Seconds;
  readonly rechargeTime: Seconds;
  readonly chargers: number;
}): number {
  invariant(usablePerPack > 0, 'A pack that gives nothing is not counted; refuse it for the cold first.');
  const loads = Math.max(1, Math.ceil(energyPerShift / usablePerPack - 1e-9));
  if (chargers <= 0) return loads;
  for (let packs = 1; packs < loads; packs += 1) {
    if (lastsTheShift({ packs, loads, between: shift / loads, rechargeTime, chargers })) return packs;
  }
  return loads;
}

function lastsTheShift(rota: {
  readonly packs: number;
  readonly loads: number;
  readonly between: number;
  readonly rechargeTime: number;
  readonly chargers: number;
}): boolean {
  const chargerFreeAt = Array.from({ length: rota.chargers }, () => 0);
  const chargedAt: number[] = [];
  for (let change = 1; change < rota.loads; change += 1) {
    const now = change * rota.between;
    const next = chargerFreeAt.indexOf(Math.min(...chargerFreeAt));
    const done = Math.max(now, chargerFreeAt[next] ?? 0) + rota.rechargeTime;
    chargerFreeAt[next] = done;
    chargedAt.push(done);
    const fresh = rota.packs - 1 + chargedAt.filter((at) => at <= now).length;
    if (fresh < change) return false;
  }
  return true;
}
