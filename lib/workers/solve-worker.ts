/*
 * Worker entry that works an enquiry out, so that a long plan freezes nobody.
 * Invariant: one job a worker; it ends with a result or a sentence.
 * Not here: starting and halting it (solve.ts).
 * Read next: solve.ts, ../planning/work-out.ts.
 */
import { parentPort } from 'node:worker_threads';
import { workOut } from '#lib/planning/work-out.ts';
import type { WorkedOut, WorkOutInput } from '#lib/planning/worked-out.ts';

export type SolveAnswer =
  | { readonly kind: 'note'; readonly note: string }
  | { readonly kind: 'done'; readonly result: WorkedOut }
  | { readonly kind: 'trouble'; readonly trouble: string };

parentPort?.once('message', (input: WorkOutInput) => {
  void answer(input);
});

async function answer(input: WorkOutInput): Promise<void> {
  const say = (message: SolveAnswer): void => parentPort?.postMessage(message);
  try {
    say({ kind: 'done', result: await workOut(input, (note) => say({ kind: 'note', note })) });
  } catch (error) {
    say({ kind: 'trouble', trouble: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
}
