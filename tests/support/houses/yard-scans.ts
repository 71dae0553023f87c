/** Scans as a screen of the yard sends them, each under a key of its own. */
import type { YardScanRequest } from '#lib/contracts/yard-scan.ts';
import type { Result } from '#lib/kernel/result.ts';
import { finishPicking } from '#lib/services/yard/picking/finish-picking.ts';
import { openPicking, type PickingView } from '#lib/services/yard/picking/open-picking.ts';
import { recordChainTried, recordTorqueTest } from '#lib/services/yard/picking/record-check.ts';
import type { ScanAnswer } from '#lib/services/yard/picking/scan-work.ts';
import { takeScan } from '#lib/services/yard/take-scan.ts';
import { granted } from '../granted.ts';
import type { BookedJob } from './booked-job.ts';

type WithoutKey<Scan> = Scan extends unknown ? Omit<Scan, 'key'> : never;

let made = 0;

export function scanned(job: BookedJob, scan: WithoutKey<YardScanRequest>): Result<ScanAnswer> {
  made += 1;
  return takeScan(job.context, { number: job.number, scan: { ...scan, key: `test-key-${made}` } });
}

export function picking({ context, number }: BookedJob): PickingView {
  return granted(openPicking(context, number));
}

/** Scans and counts everything that is booked. */
export function pickAll(job: BookedJob): void {
  for (const { kind, code, count } of picking(job).lines)
    granted(
      kind === 'unit'
        ? scanned(job, { kind: 'pick', code })
        : scanned(job, { kind: 'count', code: `MODEL:${code}`, count }),
    );
}

/** Tries every chain and tests every machine; each limiter reads what it was set to. */
export function checkAll({ context, number }: BookedJob): void {
  const { chains, tests } = picking({ context, number });
  for (const { id } of chains) granted(recordChainTried(context, { number, id }));
  for (const { serial, limiter } of tests) {
    const set_nm = limiter === null ? null : limiter.highest;
    granted(recordTorqueTest(context, { number, serial, set_nm, measured_nm: set_nm ?? 40, instrument: 'Bench 7' }));
  }
}

/** A job that is picked, tried and tested. */
export function pickedJob(job: BookedJob): BookedJob {
  pickAll(job);
  checkAll(job);
  granted(finishPicking(job.context, { number: job.number }));
  return job;
}
