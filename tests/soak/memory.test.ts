import { expect, it } from 'vitest';
import { startSourceWorker } from '#lib/workers/start-source-worker.ts';
import { type MemoryAfter, tellMemory } from '#tests/support/plans/solver-memory.ts';

it('memory stays bounded over a thousand plans in one worker', async () => {
  const worker = startSourceWorker(new URL('../support/plans/memory-worker.ts', import.meta.url));
  const told = await new Promise<readonly MemoryAfter[]>((resolve, reject) => {
    worker.on('message', resolve);
    worker.on('error', reject);
    worker.postMessage([100, 500, 1000]);
  });
  await worker.terminate();
  console.info(`memory: ${tellMemory(told)}`);
  expect(told).toHaveLength(3);
  const [early] = told;
  const late = told.at(-1);
  expect((late?.rss_mb ?? Number.NaN) - (early?.rss_mb ?? Number.NaN)).toBeLessThan(150);
  expect((late?.heap_mb ?? Number.NaN) - (early?.heap_mb ?? Number.NaN)).toBeLessThan(60);
});
