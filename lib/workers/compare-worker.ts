/*
 * Worker entry that compares a change enquiry by enquiry, so that nobody waits while it is tried.
 * Invariant: one job a worker; it ends with a result or a sentence.
 * Not here: starting and halting it (compare.ts).
 * Read next: compare.ts, ../planning/compare-change.ts.
 */
import { parentPort } from 'node:worker_threads';
import { type ChangeCase, type ChangedEnquiry, compareChange } from '#lib/planning/compare-change.ts';

export type CompareAnswer =
  | { readonly kind: 'one'; readonly result: ChangedEnquiry }
  | { readonly kind: 'done' }
  | { readonly kind: 'trouble'; readonly trouble: string };

parentPort?.once('message', (cases: readonly ChangeCase[]) => {
  const say = (message: CompareAnswer): void => parentPort?.postMessage(message);
  try {
    for (const one of cases) say({ kind: 'one', result: compareChange(one) });
    say({ kind: 'done' });
  } catch (error) {
    say({ kind: 'trouble', trouble: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
});
