import { expect, it } from 'vitest';
import { memoryOver, tellMemory } from '#tests/support/plans/solver-memory.ts';

it('memory does not grow with the number of plans (a sample; the thousand are in the soak)', async () => {
  const told = await memoryOver([20, 100]);
  console.info(`memory: ${tellMemory(told)}`);
  const [early, late] = told;
  // Undisposed models would leave some 75 kB each, garbage not yet collected comes and goes.
  expect((late?.rss_mb ?? 0) - (early?.rss_mb ?? 0)).toBeLessThan(150);
}, 90_000);
