/*
 * What a screen of the yard sends for each scan: a key of its own, and what was done.
 * Invariant: the key is made up by the sender and stays with the scan until it is answered.
 * Not here: what a code means (lib/stock/scan-code.ts).
 * Read next: ../services/yard/take-scan.ts.
 */
import { z } from 'zod';
import { pieceSeenSchema } from './yard-moves.ts';

const key = z.string().regex(/^[A-Za-z0-9-]{8,64}$/, 'a key of 8 to 64 letters, figures and hyphens');
const code = z.string().trim().min(1).max(80);
const id = z.int().min(1);
const count = z.int().min(0).max(100_000);

export const yardScanRequest = z.discriminatedUnion('kind', [
  z.strictObject({ key, kind: z.literal('pick'), code }),
  z.strictObject({ key, kind: z.literal('count'), code, count }),
  z.strictObject({ key, kind: z.literal('undo'), code }),
  z.strictObject({ key, kind: z.literal('pack'), code, case: z.number().int().min(1).max(999).nullable() }),
  z.strictObject({ key, kind: z.literal('unpack'), code }),
  z.strictObject({ key, kind: z.literal('load'), code, delivery: id }),
  z.strictObject({ key, kind: z.literal('take off'), code, delivery: id }),
  z.strictObject({ key, kind: z.literal('count on'), code, delivery: id, count }),
  z.strictObject({ key, kind: z.literal('look'), code, return: id }),
  z.strictObject({ key, kind: z.literal('check in'), code, return: id, seen: pieceSeenSchema.omit({ scan: true }) }),
  z.strictObject({ key, kind: z.literal('count back'), code, return: id, back: count, unused: count }),
]);
export type YardScanRequest = z.output<typeof yardScanRequest>;

/** A scan on the walk of a day: the house finds the booking that the piece is for. */
export const walkScanRequest = z.strictObject({
  key,
  kind: z.literal('walk'),
  code,
  day: z.string().regex(/^\d{4}-\d{2}-\d{2}$/, 'a day as 2026-03-16'),
});
export type WalkScanRequest = z.output<typeof walkScanRequest>;

/** What goes with a photograph of a piece that came back. */
export const photoRequest = z.strictObject({ key, serial: z.string().trim().min(1).max(40) });

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
