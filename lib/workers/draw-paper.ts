/*
 * Draws a paper or a sheet of labels in a worker thread that is shared by the whole process and started at first use.
 * Invariant: one worker at a time; it never keeps the process alive by itself; when it dies every waiting paper fails and the next call starts anew.
 * Not here: drawing (pdf).
 * Read next: paper-worker.ts, start-source-worker.ts.
 */
import { Worker } from 'node:worker_threads';
import type { CaseLabelSheet } from '#lib/documents/labels/case-label.ts';
import type { LabelSheet } from '#lib/documents/labels/label-sheet.ts';
import type { Paper } from '#lib/documents/papers/paper.ts';
import type { Drawable, PaperAnswer, PaperRequest } from './paper-worker.ts';
import { startSourceWorker } from './start-source-worker.ts';

interface Waiting {
  readonly resolve: (bytes: Uint8Array) => void;
  readonly reject: (error: Error) => void;
}

interface Studio {
  readonly worker: Worker;
  readonly waiting: Map<number, Waiting>;
}

let studio: Studio | null = null;
let lastId = 0;

export function drawPaper(paper: Paper): Promise<Uint8Array> {
  return draw({ paper });
}

export function drawLabels(labels: LabelSheet): Promise<Uint8Array> {
  return draw({ labels });
}

export function drawCaseLabels(caseLabels: CaseLabelSheet): Promise<Uint8Array> {
  return draw({ caseLabels });
}

function draw(drawable: Drawable): Promise<Uint8Array> {
  studio ??= openStudio();
  const { worker, waiting } = studio;
  lastId += 1;
  const id = lastId;
  return new Promise((resolve, reject) => {
    waiting.set(id, { resolve, reject });
    worker.ref();
    worker.postMessage({ id, ...drawable } satisfies PaperRequest);
  });
}

/** Next sets NEXT_RUNTIME and its bundler compiles the worker; elsewhere the TypeScript source is loaded as it is. */
function startWorker(): Worker {
  if (process.env.NEXT_RUNTIME === 'nodejs') return new Worker(new URL('./paper-worker.ts', import.meta.url));
  return startSourceWorker(new URL('./paper-worker.ts', import.meta.url));
}

function openStudio(): Studio {
  const worker = startWorker();
  const waiting = new Map<number, Waiting>();
  worker.on('message', (answer: PaperAnswer) => {
    const asked = waiting.get(answer.id);
    waiting.delete(answer.id);
    if (waiting.size === 0) worker.unref();
    if ('bytes' in answer) asked?.resolve(answer.bytes);
    else asked?.reject(new Error(`The paper could not be drawn: ${answer.trouble}`));
  });
  const close = (why: string) => {
    if (studio?.worker === worker) studio = null;
    for (const asked of waiting.values()) asked.reject(new Error(`The paper could not be drawn: ${why}`));
    waiting.clear();
  };
  worker.on('error', (error) => close(error instanceof Error ? error.message : String(error)));
  worker.on('exit', (code) => close(`its worker ended with code ${code}.`));
  return { worker, waiting };
}
