/*
 * Pressure surge when a flow is shut off.
 * Invariant: never more than the full ρ·a·Δv; a shorter closure never gives less.
 * Not here: column separation, branches and pumps: an estimate that warns, not a surge study.
 * Read next: ../duty/speed-limits.ts.
 */
import {
  type Metres,
  type MetresPerSecond,
  type Pascals,
  pascals,
  type Seconds,
  seconds,
} from '#lib/units/quantity.ts';

/** Density of water; Machinery's Handbook. [kg/m³] */
const WATER_DENSITY = 1000;

/**
 * Time in which a pressure wave runs to the end of a pipe and back.
 *
 * Formula: t = 2·L/a
 *
 * @param length - Length of the pipe to the next open water. [m] range 0…1e5
 * @param waveSpeed - Speed of the wave in the pipe. [m/s] range 100…1500
 * @returns Critical time: any quicker closure gives the full surge. [s]
 * @source Joukowsky's theory of water hammer; e.g. Wylie & Streeter, Fluid Transients, from memory.
 * @assumes One pipe of one kind.
 * @example criticalClosureTime({ length: metres(1200), waveSpeed: metresPerSecond(1000) }) // => 2.4
 */
export function criticalClosureTime({
  length,
  waveSpeed,
}: {
  readonly length: Metres;
  readonly waveSpeed: MetresPerSecond;
}): Seconds {
  return seconds((2 * length) / waveSpeed);
}

/**
 * Full surge of a quick closure.
 *
 * Formula: Δp = ρ·a·Δv
 *
 * @param waveSpeed - Speed of the wave in the pipe. [m/s] range 100…1500
 * @param velocity - Velocity that is stopped. [m/s] range 0…20
 * @returns Rise of pressure. [Pa]
 * @source Joukowsky's equation.
 * @assumes Water; closure within the critical time.
 * @example fullSurge({ waveSpeed: metresPerSecond(1000), velocity: metresPerSecond(1.5) }) // => 1500000
 */
export function fullSurge({
  waveSpeed,
  velocity,
}: {
  readonly waveSpeed: MetresPerSecond;
  readonly velocity: MetresPerSecond;
}): Pascals {
  return pascals(WATER_DENSITY * waveSpeed * velocity);
}

/**
 * Surge of a closure, quick or slow.
 *
 * Formula: t ≤ 2L/a: Δp = ρ·a·Δv; t > 2L/a: Δp = 2·ρ·L·Δv/t
 *
 * @param length - Length of the pipe to the next open water. [m] range 0…1e5
 * @param waveSpeed - Speed of the wave in the pipe. [m/s] range 100…1500
 * @param velocity - Velocity that is stopped. [m/s] range 0…20
 * @param closure - Effective closing time: the last part of the stroke does most of it. [s] range 0…1e5
 * @returns Rise of pressure. [Pa]
 * @source Joukowsky's equation; slow closure by Michaud's formula.
 * @assumes Water; the velocity falls evenly over the effective time.
 * @example closureSurge({ length: metres(1200), waveSpeed: metresPerSecond(1000), velocity: metresPerSecond(1.5), closure: seconds(12) }) // => 300000
 */
export function closureSurge({
  length,
  waveSpeed,
  velocity,
  closure,
}: {
  readonly length: Metres;
  readonly waveSpeed: MetresPerSecond;
  readonly velocity: MetresPerSecond;
  readonly closure: Seconds;
}): Pascals {
  if (closure <= criticalClosureTime({ length, waveSpeed })) return fullSurge({ waveSpeed, velocity });
  return pascals((2 * WATER_DENSITY * length * velocity) / closure);
}

/**
 * Shortest effective closing time that keeps a surge within a limit.
 *
 * Formula: ρ·a·Δv ≤ Δp: 0; else t = 2·ρ·L·Δv/Δp
 *
 * @param length - Length of the pipe to the next open water. [m] range 0…1e5
 * @param waveSpeed - Speed of the wave in the pipe. [m/s] range 100…1500
 * @param velocity - Velocity that is stopped. [m/s] range 0…20
 * @param highestSurge - Rise of pressure allowed. [Pa] range 1e3…1e7
 * @returns Effective closing time. [s]
 * @source Michaud's formula solved for the time.
 * @assumes Water; the velocity falls evenly over the effective time.
 * @example shortestClosure({ length: metres(1200), waveSpeed: metresPerSecond(1000), velocity: metresPerSecond(1.5), highestSurge: bar(3) }) // => 12
 */
export function shortestClosure({
  length,
  waveSpeed,
  velocity,
  highestSurge,
}: {
  readonly length: Metres;
  readonly waveSpeed: MetresPerSecond;
  readonly velocity: MetresPerSecond;
  readonly highestSurge: Pascals;
}): Seconds {
  if (fullSurge({ waveSpeed, velocity }) <= highestSurge) return seconds(0);
  return seconds((2 * WATER_DENSITY * length * velocity) / highestSurge);
}
