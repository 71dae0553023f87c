import { checkedPlan } from '../checked.ts';
import { plausibleCase } from './fleet-cases.ts';

export interface MemoryAfter {
  readonly solves: number;
  /** Of the whole process, the WebAssembly heap included. [MB] */
  readonly rss_mb: number;
  readonly heap_mb: number;
}

/** Plans small problems one after the other and tells the memory after as many as each mark says, in rising order. */
export async function memoryOver(marks: readonly number[]): Promise<readonly MemoryAfter[]> {
  const told: MemoryAfter[] = [];
  for (let solve = 1; solve <= Math.max(0, ...marks); solve += 1) {
    const problem = plausibleCase({ seed: solve % 40, classes: 3, items: 7, crews: 1, most: 5, load: 1.1 });
    await checkedPlan({ ...problem, preference: 'cost', budget: { seconds: 20, nodes: 200 } });
    if (marks.includes(solve)) told.push(now(solve));
  }
  return told;
}

function now(solves: number): MemoryAfter {
  globalThis.gc?.();
  const { rss, heapUsed } = process.memoryUsage();
  return { solves, rss_mb: Math.round(rss / 1e6), heap_mb: Math.round(heapUsed / 1e6) };
}

export function tellMemory(told: readonly MemoryAfter[]): string {
  return told.map(({ solves, rss_mb, heap_mb }) => `${solves} plans: ${rss_mb} MB, heap ${heap_mb} MB`).join('; ');
}
