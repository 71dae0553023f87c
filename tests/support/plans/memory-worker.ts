import { parentPort } from 'node:worker_threads';
import { memoryOver } from './solver-memory.ts';

parentPort?.on('message', (marks: readonly number[]) => {
  void memoryOver(marks).then((told) => parentPort?.postMessage(told));
});
