/*
 * Works an enquiry out in a worker thread of its own, which can be halted at any moment.
 * Invariant: the promise settles once: with the result, or with an error that says why there is none.
 * Not here: the working (../planning) and keeping the result (services).
 * Read next: solve-worker.ts, start-source-worker.ts.
 */
import { Worker } from 'node:worker_threads';
import type { WorkedOut, WorkOutInput } from '#lib/planning/worked-out.ts';
import type { SolveAnswer } from './solve-worker.ts';
import { startSourceWorker } from './start-source-worker.ts';

export interface SolveRun {
  readonly done: Promise<WorkedOut>;
  readonly halt: () => void;
}

export function solveInWorker(input: WorkOutInput, onNote: (note: string) => void): SolveRun {
  const worker = startWorker();
  const done = new Promise<WorkedOut>((resolve, reject) => {
    worker.on('message', (message: SolveAnswer) => {
      if (message.kind === 'note') onNote(message.note);
      if (message.kind === 'trouble') reject(new Error(message.trouble));
      if (message.kind === 'done') resolve(message.result);
      if (message.kind !== 'note') void worker.terminate();
    });
    worker.on('error', (error) => reject(error instanceof Error ? error : new Error(String(error))));
    worker.on('exit', () => reject(new Error('planning was halted before it had an answer.')));
  });
  worker.postMessage(input);
  return { done, halt: () => void worker.terminate() };
}

/** Next sets NEXT_RUNTIME and its bundler compiles the worker; elsewhere the TypeScript source is loaded as it is. */
function startWorker(): Worker {
  if (process.env.NEXT_RUNTIME === 'nodejs') return new Worker(new URL('./solve-worker.ts', import.meta.url));
  return startSourceWorker(new URL('./solve-worker.ts', import.meta.url));
}
