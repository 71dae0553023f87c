import { expect, it } from 'vitest';
import { memoryOver, tellMemory } from '#tests/support/solver-memory.ts';

it('memory stays bounded over a thousand plans', async () => {
  const told = await memoryOver({ first: 200, all: 1000 });
  console.info(`memory: ${tellMemory(told)}`);
  const [early, late] = told;
  expect((late?.rss_mb ?? 0) - (early?.rss_mb ?? 0)).toBeLessThan(150);
});
