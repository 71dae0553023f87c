/*
 * The spread of a line's duty by chance, as it is asked for and answered.
 * Invariant: quantities carry their unit in the key; the interval's ends stand beside the percentiles.
 * Not here: drawing it (../duty/line-spread.ts).
 * Read next: ../services/lines/spread-duty.ts.
 */
import { z } from 'zod';
import { LIMITS } from '#lib/kernel/limits.ts';

export const spreadQuerySchema = z
  .object({ runs: z.coerce.number().int().min(100).max(LIMITS.spread_runs).default(2000) })
  .meta({ id: 'SpreadQuery', description: 'How often what is not known is drawn.' });

const percentiles = z.object({ p5: z.number(), p50: z.number(), p95: z.number() });

const spread = percentiles.extend({
  low: z.number().describe('Lower end of the interval: no draw lies below.'),
  high: z.number().describe('Upper end of the interval: no draw lies above.'),
});

const eachWay = z.object({ opening: spread, closing: spread });

export const lineSpreadSchema = z
  .object({
    runs: z.number().int(),
    seed: z.number().int(),
    torque_start_nm: eachWay,
    torque_run_nm: eachWay,
    never_exceed_nm: eachWay,
    turns: spread,
    worse_direction: z.enum(['opening', 'closing']),
    starts_below_ceiling: z
      .number()
      .min(0)
      .max(1)
      .describe('Share of the draws in which the valve starts, either way, below what it must never see.'),
    main: z
      .object({
        name: z.string(),
        picks: z.boolean().describe('It says which of several cases holds and has no size of its own.'),
        low: z.number(),
        nominal: z.number(),
        high: z.number(),
        unit: z.string(),
        basis: z.string(),
        source: z.string(),
        share_of_variance: z.number(),
        torque_start_if_known_nm: percentiles,
      })
      .nullable()
      .describe('The input that the spread of the starting torque in the worse direction hangs on most.'),
  })
  .meta({ id: 'LineSpread', description: 'Percentiles of what a valve needs, by seeded draws within its ranges.' });
