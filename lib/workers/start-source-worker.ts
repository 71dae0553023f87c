/*
 * Starts a worker thread from its TypeScript source, where no bundler has compiled it: command line and tests.
 * Invariant: the worker sees the same module map and the same loader as the thread that started it.
 * Not here: workers of the web application; its bundler compiles those and finds them by `new Worker(new URL(…))`.
 * Read next: the worker entries beside this file.
 */
import { Worker } from 'node:worker_threads';

/** A worker's entry cannot be TypeScript itself, so a line of JavaScript registers the loader and imports it. */
export function startSourceWorker(entry: URL): Worker {
  const loader = import.meta.resolve('tsx/esm/api');
  const boot = `import(${JSON.stringify(loader)}).then(({ register }) => { register(); return import(${JSON.stringify(entry.href)}); })`;
  return new Worker(boot, { eval: true, execArgv: [] });
}
