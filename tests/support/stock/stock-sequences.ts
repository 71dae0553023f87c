/*
 * Runs random sequences of a house's work against the reference model and says how many, and what was done in them.
 */
import fc from 'fast-check';
import {
  book,
  cancel,
  checkIn,
  close,
  comeBack,
  confirm,
  leave,
  lose,
  release,
  tally,
  wait,
} from './stock-commands.ts';
import { smallHouse, startOf } from './stock-house.ts';
import { extend, late, swap } from './stock-longer-commands.ts';
import { arrive, hands, send, stocktake } from './stock-yard-commands.ts';

const ONCE = [confirm, lose, cancel, release, checkIn, checkIn, close, wait, send, arrive, stocktake, hands];
const OFTEN = [
  book,
  book,
  book,
  leave,
  leave,
  leave,
  leave,
  comeBack,
  comeBack,
  extend,
  extend,
  late,
  late,
  swap,
  swap,
];
const EVERYTHING = [...ONCE, ...OFTEN];

export async function runSequences({
  runs,
  seed,
  most,
}: {
  readonly runs: number;
  readonly seed: number;
  readonly most: number;
}): Promise<string> {
  const start = await smallHouse();
  let steps = 0;
  tally.clear();
  fc.assert(
    fc.property(fc.commands(EVERYTHING, { maxCommands: most, size: 'max' }), (commands) => {
      const { model, real } = startOf(start);
      steps += [...commands].length;
      fc.modelRun(() => ({ model, real }), commands);
      real.context().database.raw.close();
    }),
    { seed, numRuns: runs },
  );
  const done = [...tally].toSorted(([a], [b]) => (a < b ? -1 : 1)).map(([what, many]) => `${what} ${many}`);
  return `${runs} sequences of ${steps} commands; ${done.join(', ')}`;
}
