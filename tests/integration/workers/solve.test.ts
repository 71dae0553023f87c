import { describe, expect, it, vi } from 'vitest';
import { awaitPlan, planState, readPlan, startPlan } from '#lib/services/plans/plan-enquiry.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';

const lives = { started: 0, diesAt: [1] };

/** The real worker; those that are named die at once, as one does that runs out of memory. */
vi.mock('#lib/workers/start-source-worker.ts', async (original) => {
  const real = await original<typeof import('#lib/workers/start-source-worker.ts')>();
  return {
    startSourceWorker: (entry: URL) => {
      lives.started += 1;
      const worker = real.startSourceWorker(entry);
      if (lives.diesAt.includes(lives.started)) void worker.terminate();
      return worker;
    },
  };
});

describe('a worker that dies while it plans', () => {
  it('is started anew, and the request is answered', async () => {
    const context = await demoHouseContext();
    lives.started = 0;
    lives.diesAt = [1];
    granted(startPlan(context, 7));
    expect(granted(await awaitPlan(context, 7))).toMatchObject({ kind: 'ready', current: true });
    expect(lives.started).toBe(2);
    expect(readPlan(context, 7)?.plans).toHaveLength(4);
  });

  it('a second time is told, and does not go on for ever', async () => {
    const context = await demoHouseContext();
    lives.started = 0;
    lives.diesAt = [1, 2];
    granted(startPlan(context, 7));
    await awaitPlan(context, 7);
    const state = granted(planState(context, 7));
    expect(state).toMatchObject({ kind: 'failed' });
    expect(lives.started).toBe(2);
  });
});
