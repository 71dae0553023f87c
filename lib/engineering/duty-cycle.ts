/*
 * Running and resting: how long work takes when a drive must rest after a continuous run.
 * Invariant: elapsed time is never less than the running time; no rest follows the last run.
 * Not here: the drive's torque limit for a continuous run (rules).
 * Read next: stroke-time.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';
import { type Seconds, seconds } from '#lib/units/quantity.ts';

/**
 * Time that running takes with the rests it asks for.
 *
 * Formula: t = t_run + r·(⌈t_run/t_cont⌉ − 1)
 *
 * @param running - Time the drive turns. [s] range 0…1e6
 * @param continuousRun - Longest run without a rest. [s] range above 0
 * @param restAfterRun - Rest after such a run. [s] range 0…1e5
 * @returns Time elapsed to the end of the last run. [s]
 * @source Counting; the limit and the rest are the drive's data.
 * @assumes The drive starts cold, and moving between valves is not counted as rest.
 * @example timeWithRests({ running: seconds(700), continuousRun: seconds(300), restAfterRun: seconds(600) }) // => 1900
 */
export function timeWithRests({
  running,
  continuousRun,
  restAfterRun,
}: {
  readonly running: Seconds;
  readonly continuousRun: Seconds;
  readonly restAfterRun: Seconds;
}): Seconds {
  invariant(continuousRun > 0, 'A drive runs for some time before it rests.');
  const rests = Math.max(0, Math.ceil(running / continuousRun - 1e-9) - 1);
  return seconds(running + rests * restAfterRun);
}
