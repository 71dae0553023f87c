/*
 * What a screen of the yard sends for each scan: a key of its own, and what was done.
 * Invariant: the key is made up by the sender and stays with the scan until it is answered.
 * Not here: what a code means (lib/stock/scan-code.ts).
 * Read next: ../services/yard/picking/take-scan.ts.
 */
import { z } from 'zod';

const key = z.string().regex(/^[A-Za-z0-9-]{8,64}$/, 'a key of 8 to 64 letters, figures and hyphens');
const code = z.string().trim().min(1).max(80);

export const yardScanRequest = z.discriminatedUnion('kind', [
  z.strictObject({ key, kind: z.literal('pick'), code }),
  z.strictObject({ key, kind: z.literal('count'), code, count: z.number().int().min(0).max(100_000) }),
  z.strictObject({ key, kind: z.literal('undo'), code }),
  z.strictObject({ key, kind: z.literal('pack'), code, case: z.number().int().min(1).max(999).nullable() }),
  z.strictObject({ key, kind: z.literal('unpack'), code }),
]);
export type YardScanRequest = z.output<typeof yardScanRequest>;

export const chainTriedRequest = z.strictObject({ id: z.string().min(1).max(200) });

export const torqueTestRequest = z.strictObject({
  serial: z.string().trim().min(1).max(40),
  set_nm: z.number().positive().max(1_000_000).nullable(),
  measured_nm: z.number().max(1_000_000),
  instrument: z.string().trim().max(80),
});
export type TorqueTestRequest = z.output<typeof torqueTestRequest>;

export const caseRequest = z.strictObject({
  name: z.string().trim().min(1).max(120),
  crew: z.number().int().min(1).max(100),
});
