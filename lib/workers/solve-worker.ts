/*
 * Worker entry that works an enquiry out, or tries it under other terms, so that a long run freezes nobody.
 * Invariant: one job a worker; it ends with a result or a sentence; the flag shared with the starter asks it to stop with what it has.
 * Not here: starting and halting it (solve.ts).
 * Read next: solve.ts, ../planning/work-out.ts, ../planning/try-cases.ts.
 */
import { parentPort } from 'node:worker_threads';
import { type CaseFigures, type CasesInput, tryCases } from '#lib/planning/try-cases.ts';
import { type Watch, workOut } from '#lib/planning/work-out.ts';
import type { PlanProgress, WorkedOut, WorkOutInput } from '#lib/planning/worked-out.ts';

export type SolveJob =
  | { readonly kind: 'plan'; readonly input: WorkOutInput }
  | { readonly kind: 'cases'; readonly input: CasesInput };

export interface SolveOrder {
  readonly job: SolveJob;
  /** One number; not zero asks to stop. */
  readonly halt: SharedArrayBuffer;
}

export type SolveAnswer =
  | { readonly kind: 'note'; readonly note: string }
  | { readonly kind: 'progress'; readonly progress: PlanProgress }
  | { readonly kind: 'case'; readonly figures: CaseFigures }
  | { readonly kind: 'plan done'; readonly result: WorkedOut }
  | { readonly kind: 'cases done'; readonly result: readonly CaseFigures[] }
  | { readonly kind: 'trouble'; readonly trouble: string };

/** Improvements between two reports are left out: nobody reads faster. */
const REPORT_EVERY_MS = 150;

parentPort?.once('message', (order: SolveOrder) => {
  void answer(order);
});

async function answer({ job, halt }: SolveOrder): Promise<void> {
  const say = (message: SolveAnswer): void => parentPort?.postMessage(message);
  const flag = new Int32Array(halt);
  let told = 0;
  const watch: Watch = {
    onNote: (note) => say({ kind: 'note', note }),
    onProgress: (progress) => {
      if (performance.now() - told < REPORT_EVERY_MS) return;
      told = performance.now();
      say({ kind: 'progress', progress });
    },
    isHalted: () => Atomics.load(flag, 0) !== 0,
  };
  try {
    if (job.kind === 'plan') say({ kind: 'plan done', result: await workOut(job.input, watch) });
    else {
      const onCase = (figures: CaseFigures): void => say({ kind: 'case', figures });
      say({ kind: 'cases done', result: await tryCases(job.input, { ...watch, onCase }) });
    }
  } catch (error) {
    say({ kind: 'trouble', trouble: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
}
