/*
 * Runs work in a transaction that is taken back where the work says so, and answers what it found all the same.
 * Invariant: only the sign that was given here is caught; every other error goes on.
 * Not here: drizzle's own rollback, whose error cannot be known again in a bundled server: there the package is loaded twice.
 * Read next: client.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';

class TakenBack extends Error {}

/** `run` opens the transaction; the work answers with what it found and whether that is kept. */
export function keepOrTakeBack<Tx, Answer>(
  run: (within: (tx: Tx) => void) => void,
  work: (tx: Tx) => { readonly answer: Answer; readonly outcome: 'kept' | 'taken back' },
): Answer {
  const sign = new TakenBack('The transaction is taken back.');
  let found: { readonly answer: Answer } | undefined;
  try {
    run((tx) => {
      const came = work(tx);
      found = came;
      if (came.outcome === 'taken back') throw sign;
    });
  } catch (error) {
    if (error !== sign) throw error;
  }
  invariant(found, 'Work in a transaction has an answer.');
  return found.answer;
}
