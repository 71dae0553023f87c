/*
 * Asks a long-lived worker thread what is worth asking about a valve; the orders wait in one line.
 * Invariant: at most so many wait at once, more are refused at once; a worker that dies fails those that wait and is started anew.
 * Not here: the asking itself (../questions).
 * Read next: ask-worker.ts.
 */
import { Worker } from 'node:worker_threads';
import type { Asking } from '#lib/questions/next-question.ts';
import type { AskAnswer, AskJob, AskOrder } from './ask-worker.ts';
import { startSourceWorker } from './start-source-worker.ts';

/** A worker answers about one a second; who would wait longer than this is told to come back. */
const MOST_WAITING = 20;

interface Waiting {
  readonly resolve: (asking: Asking) => void;
  readonly reject: (why: Error) => void;
}

interface Asker {
  readonly worker: Worker;
  readonly waiting: Map<number, Waiting>;
  next: number;
}

declare global {
  var kitwrightAsker: Asker | undefined;
}

/** Null where too many wait already. */
export function askInWorker(job: AskJob): Promise<Asking> | null {
  globalThis.kitwrightAsker ??= newAsker();
  const asker = globalThis.kitwrightAsker;
  if (asker.waiting.size >= MOST_WAITING) return null;
  asker.next += 1;
  const id = asker.next;
  const { worker, waiting } = asker;
  return new Promise((resolve, reject) => {
    waiting.set(id, { resolve, reject });
    // It keeps the process only while somebody waits.
    worker.ref();
    worker.postMessage({ id, job } satisfies AskOrder);
  });
}

function newAsker(): Asker {
  const worker = startWorker();
  const waiting = new Map<number, Waiting>();
  worker.on('message', (answer: AskAnswer) => {
    const one = waiting.get(answer.id);
    waiting.delete(answer.id);
    if (waiting.size === 0) worker.unref();
    if (answer.kind === 'asked') one?.resolve(answer.asking);
    else one?.reject(new Error(answer.trouble));
  });
  const died = (why: Error): void => {
    globalThis.kitwrightAsker = undefined;
    for (const { reject } of waiting.values()) reject(why);
    waiting.clear();
  };
  worker.on('error', (error) => died(error instanceof Error ? error : new Error(String(error))));
  worker.on('exit', () => died(new Error('the worker that asks has ended.')));
  worker.unref();
  return { worker, waiting, next: 0 };
}

/** Next sets NEXT_RUNTIME and its bundler compiles the worker; elsewhere the TypeScript source is loaded as it is. */
function startWorker(): Worker {
  if (process.env.NEXT_RUNTIME === 'nodejs') return new Worker(new URL('./ask-worker.ts', import.meta.url));
  return startSourceWorker(new URL('./ask-worker.ts', import.meta.url));
}
