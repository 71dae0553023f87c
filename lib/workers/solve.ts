/*
 * Works an enquiry out, or tries it under other terms, in a worker thread of its own, which can be halted at any moment.
 * Invariant: the promise settles once: with a result, or with an error that says why there is none; a worker that dies by itself is started anew once.
 * Not here: the working (../planning) and keeping the result (services).
 * Read next: solve-worker.ts, start-source-worker.ts.
 */
import { Worker } from 'node:worker_threads';
import type { CaseFigures, CasesInput } from '#lib/planning/try-cases.ts';
import type { PlanProgress, WorkedOut, WorkOutInput } from '#lib/planning/worked-out.ts';
import type { SolveAnswer, SolveJob, SolveOrder } from './solve-worker.ts';
import { startSourceWorker } from './start-source-worker.ts';

export interface SolveRun<Value> {
  readonly done: Promise<Value>;
  /** Asks for the best so far; the run then ends by itself, or is ended when it does not. */
  readonly halt: () => void;
  /** Ends it at once, with nothing. */
  readonly drop: () => void;
}

export interface SolveWatch {
  readonly onNote?: (note: string) => void;
  readonly onProgress?: (progress: PlanProgress) => void;
  readonly onCase?: (figures: CaseFigures) => void;
}

/** A halted run answers between two steps of the search; one that does not is ended. */
const HALT_GRACE_MS = 30_000;

export function solveInWorker(input: WorkOutInput, watch: SolveWatch): SolveRun<WorkedOut> {
  return run({ kind: 'plan', input }, { watch, read: (told) => (told.kind === 'plan done' ? told.result : undefined) });
}

export function tryInWorker(input: CasesInput, watch: SolveWatch): SolveRun<readonly CaseFigures[]> {
  return run(
    { kind: 'cases', input },
    { watch, read: (told) => (told.kind === 'cases done' ? told.result : undefined) },
  );
}

interface Reading<Value> {
  readonly watch: SolveWatch;
  readonly read: (told: SolveAnswer) => Value | undefined;
}

/** Starts that a job gets: a worker may die of memory or of an abort that its own code could not catch. */
const STARTS = 2;

function run<Value>(job: SolveJob, reading: Reading<Value>): SolveRun<Value> {
  const halt = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT);
  let worker: Worker | undefined;
  let isDropped = false;
  let grace: NodeJS.Timeout | undefined;
  const drop = (): void => {
    isDropped = true;
    void worker?.terminate();
  };
  const done = new Promise<Value>((resolve, reject) => {
    const start = (startsLeft: number): void => {
      const now = startWorker();
      worker = now;
      let isSettled = false;
      const settle = (end: () => void): void => {
        if (isSettled) return;
        isSettled = true;
        clearTimeout(grace);
        end();
        void now.terminate();
      };
      const died = (why: Error): void =>
        settle(() => {
          if (isDropped || startsLeft <= 1) reject(why);
          else start(startsLeft - 1);
        });
      now.on('message', (told: SolveAnswer) => {
        tell(reading.watch, told);
        if (told.kind === 'trouble') settle(() => reject(new Error(told.trouble)));
        const value = reading.read(told);
        if (value !== undefined) settle(() => resolve(value));
      });
      now.on('error', (error) => died(error instanceof Error ? error : new Error(String(error))));
      now.on('exit', () => died(new Error('planning was halted before it had an answer.')));
      now.postMessage({ job, halt } satisfies SolveOrder);
    };
    start(STARTS);
  });
  return {
    done,
    drop,
    halt: () => {
      Atomics.store(new Int32Array(halt), 0, 1);
      grace = setTimeout(drop, HALT_GRACE_MS);
      grace.unref();
    },
  };
}

function tell(watch: SolveWatch, told: SolveAnswer): void {
  if (told.kind === 'note') watch.onNote?.(told.note);
  if (told.kind === 'progress') watch.onProgress?.(told.progress);
  if (told.kind === 'case') watch.onCase?.(told.figures);
}

/** Next sets NEXT_RUNTIME and its bundler compiles the worker; elsewhere the TypeScript source is loaded as it is. */
function startWorker(): Worker {
  if (process.env.NEXT_RUNTIME === 'nodejs') return new Worker(new URL('./solve-worker.ts', import.meta.url));
  return startSourceWorker(new URL('./solve-worker.ts', import.meta.url));
}
