import { once } from 'node:events';
import { expect, it } from 'vitest';
import { startSourceWorker } from '#lib/workers/start-source-worker.ts';

it('a worker written in TypeScript starts from its source and knows the module map', async () => {
  const worker = startSourceWorker(new URL('../../support/plans/echo-worker.ts', import.meta.url));
  try {
    worker.postMessage('valve');
    expect(await once(worker, 'message')).toEqual([{ ok: true, value: 'valve' }]);
  } finally {
    await worker.terminate();
  }
});
