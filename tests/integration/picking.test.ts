import { describe, it } from 'vitest';
import { openPacking } from '#lib/services/yard/packing/open-packing.ts';
import { openPicking } from '#lib/services/yard/picking/open-picking.ts';
import { AIR_JOB, bookedJob } from '#tests/support/booked-job.ts';
import { granted } from '#tests/support/granted.ts';

describe('x', () => {
  it('y', async () => {
    const { context, number } = await bookedJob();
    console.info(JSON.stringify(granted(openPicking(context, number)), null, 1));
    console.info(JSON.stringify(granted(openPacking(context, number)), null, 1).slice(0, 3000));
    const air = await bookedJob(AIR_JOB);
    console.info(JSON.stringify(granted(openPicking(air.context, air.number)), null, 1).slice(0, 4000));
  });
});
