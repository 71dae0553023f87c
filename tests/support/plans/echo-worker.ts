import { parentPort } from 'node:worker_threads';
import { ok } from '#lib/kernel/result.ts';

parentPort?.on('message', (message: unknown) => parentPort?.postMessage(ok(message)));
