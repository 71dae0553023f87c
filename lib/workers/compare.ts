/*
 * Compares a change in a worker thread of its own, which can be halted at any moment.
 * Invariant: the promise settles once: when all is compared, or with an error that says why not.
 * Not here: the comparing (../planning) and keeping the result (services).
 * Read next: compare-worker.ts, start-source-worker.ts.
 */
import { Worker } from 'node:worker_threads';
import type { ChangeCase, ChangedEnquiry } from '#lib/planning/compare-change.ts';
import type { CompareAnswer } from './compare-worker.ts';
import { startSourceWorker } from './start-source-worker.ts';

export interface CompareRun {
  readonly done: Promise<void>;
  readonly halt: () => void;
}

export function compareInWorker(cases: readonly ChangeCase[], onOne: (result: ChangedEnquiry) => void): CompareRun {
  const worker = startWorker();
  const done = new Promise<void>((resolve, reject) => {
    worker.on('message', (message: CompareAnswer) => {
      if (message.kind === 'one') onOne(message.result);
      if (message.kind === 'trouble') reject(new Error(message.trouble));
      if (message.kind === 'done') resolve();
      if (message.kind !== 'one') void worker.terminate();
    });
    worker.on('error', (error) => reject(error instanceof Error ? error : new Error(String(error))));
    worker.on('exit', () => reject(new Error('the trial was halted before it had an answer.')));
  });
  worker.postMessage(cases);
  return { done, halt: () => void worker.terminate() };
}

/** Next sets NEXT_RUNTIME and its bundler compiles the worker; elsewhere the TypeScript source is loaded as it is. */
function startWorker(): Worker {
  if (process.env.NEXT_RUNTIME === 'nodejs') return new Worker(new URL('./compare-worker.ts', import.meta.url));
  return startSourceWorker(new URL('./compare-worker.ts', import.meta.url));
}
