/*
 * What a browser may send of deliveries, returns, work orders and charges.
 * Invariant: texts and counts are bounded; hours have at most two decimals, money is whole minor units.
 * Not here: what is allowed (lib/services/yard).
 * Read next: ../services/yard/out/, ../services/yard/back/.
 */
import { z } from 'zod';
import { toMinor } from '#lib/money/money.ts';

const words = z.string().trim().max(500, 'has more than 500 characters');
const name = z.string().trim().max(120, 'has more than 120 characters');
const scan = z.string().max(200);
const count = z.int().min(0).max(100_000);
const minor = z.int().min(-1_000_000_000).max(1_000_000_000);
const hours = z
  .number()
  .min(0)
  .max(1000)
  .refine((value) => Math.abs(value * 100 - Math.round(value * 100)) < 1e-6, 'has more than two decimals');
const runHours = z.number().min(0).max(200_000);

/** As in lib/stock: written out here because contracts know no stock. */
const TRANSPORTS = ['road', 'air', 'sea'] as const;
const CONTAMINATIONS = ['none', 'water', 'sewage', 'product', 'unknown'] as const;
const CONDITIONS = ['good', 'dirty', 'damaged', 'missing'] as const;
const WORK_KINDS = ['wash', 'cleaning', 'inspection', 'repair', 'calibration'] as const;

export const beginDeliverySchema = z.strictObject({ transport: z.enum(TRANSPORTS) });
export const loadScanSchema = z.strictObject({ scan });
export const takeOffSchema = z.strictObject({ serial: name });
export const loadCountSchema = z.strictObject({ model: name, count });

const point = z.tuple([z.number(), z.number()]);
export const leavingSchema = z.strictObject({
  checks: z.array(name).max(50),
  loadedBy: name,
  vehicle: name,
  instructedBy: name,
  instruction: z.array(words).max(50),
  handedTo: name,
  signature: z.discriminatedUnion('how', [
    z.strictObject({ how: z.literal('typed'), name }),
    z.strictObject({ how: z.literal('drawn'), name, strokes: z.array(z.array(point).max(6001)).max(201) }),
  ]),
});
export const whySchema = z.strictObject({ why: words });

export const declarationSchema = z.strictObject({
  depot: name,
  broughtBy: name,
  contamination: z.enum(CONTAMINATIONS),
  note: words,
});

export const pieceSeenSchema = z.strictObject({
  scan,
  condition: z.enum(CONDITIONS),
  runHours: runHours.nullable(),
  missingParts: words,
  note: words,
  sawOverload: z.boolean(),
  repairHours: hours,
  repairPartsMinor: minor.nonnegative(),
});

export const countBackSchema = z.strictObject({ model: name, back: count, unused: count });

export const workByHandSchema = z.strictObject({ scan, kind: z.enum(WORK_KINDS), reason: words });
export const workEndSchema = z.strictObject({
  result: z.enum(['fit', 'repair', 'retired']),
  done: words,
  hours,
  partsMinor: minor.nonnegative(),
  dueOn: z.string().nullable(),
});

export const causeSchema = z.strictObject({
  about: name,
  cause: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('not known') }),
    z.strictObject({ kind: z.literal('covered') }),
    z.strictObject({ kind: z.literal('left out'), words }),
  ]),
});

export const chargeWordSchema = z.strictObject({
  key: name,
  proposedMinor: minor,
  decision: z
    .discriminatedUnion('kind', [
      z.strictObject({ kind: z.literal('approved') }),
      z.strictObject({ kind: z.literal('changed'), net_minor: minor.transform(toMinor), reason: words }),
      z.strictObject({ kind: z.literal('struck'), reason: words }),
    ])
    .nullable(),
});

export const photoRemovedSchema = z.strictObject({ removed: z.enum(['yes', 'no']) });
