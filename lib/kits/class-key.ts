/*
 * The key that lines with equal needs share, so that they are solved once.
 * Invariant: lines with equal keys have equal choices; what only names or counts a line is left out.
 * Not here: the search.
 * Read next: find-choices.ts.
 */
import type { Duty } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';

/** Fields that name, count, explain or order a line; of process, stem and torque only what rules hear is kept. */
const LEFT_OUT: ReadonlySet<string> = new Set([
  'tag',
  'qty',
  'source',
  'steps',
  'findings',
  'leftOut',
  'bounds',
  'measureFirst',
  'measureFirstEffect',
  'location',
  'placeOrder',
  'notes',
  'photo',
  'visits',
]);

/** What notes say matters only as far as a rule hears it. */
const HEARD_IN_NOTES = [/bent (stem|spindle)|(stem|spindle) (is )?bent/i, /spinner|crank handle|knob/i] as const;

export function classKey(line: ScheduleLine, duty: Duty): string {
  const { process, stem, torque, ...rest } = line;
  const kept = {
    duty,
    line: rest,
    heard: [process.service?.value, stem.kind?.value, torque.gearbox?.value],
    inNotes: HEARD_IN_NOTES.map((pattern) => pattern.test(line.notes ?? '')),
  };
  return JSON.stringify(kept, (key, value: unknown) => (LEFT_OUT.has(key) ? undefined : value));
}

/** A short stable name for a key (FNV-1a, 64 bits; the constants are the algorithm's own). */
export function shortName(key: string): string {
  let hash = 0xcbf29ce484222325n;
  for (let index = 0; index < key.length; index += 1) {
    hash = BigInt.asUintN(64, (hash ^ BigInt(key.charCodeAt(index))) * 0x100000001b3n);
  }
  return `c-${hash.toString(36)}`;
}
