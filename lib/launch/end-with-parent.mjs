/*
 * Preloaded into the server process: ends it when the launcher that started it is gone, even when that was killed outright.
 * Invariant: acts only in the main thread of a process that was started with a channel to its parent.
 * Not here: signals that can be caught (processes.mjs passes them on).
 * Read next: start.mjs.
 */
import { isMainThread } from 'node:worker_threads';

if (isMainThread && process.channel !== undefined) process.on('disconnect', () => process.exit(143));
