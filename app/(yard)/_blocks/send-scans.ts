import { askHouse, type Sending } from './ask-house.ts';
import { sendPhotos } from './photo-queue.ts';
import { answerScan, markTried, type QueuedScan, queuedScans, reread } from './scan-queue.ts';

let running: Promise<Sending> | undefined;

/**
 * Goes through the waiting scans one by one, the oldest first, then photographs; one round at a time, over all windows of this browser.
 * A scan that was made while a round was ending is not in it, so whoever waited for that round goes another.
 */
export async function sendScans(): Promise<Sending> {
  for (;;) {
    running ??= alone(sendAll).finally(() => {
      running = undefined;
    });
    const sending = await running;
    if (sending !== 'all sent' || !queuedScans().some(({ state }) => state === 'waiting')) return sending;
  }
}

async function alone(work: () => Promise<Sending>): Promise<Sending> {
  if (!('locks' in navigator) || navigator.locks === undefined) return work();
  return navigator.locks.request('kitwright.scans', work);
}

async function sendAll(): Promise<Sending> {
  reread();
  for (;;) {
    const next = queuedScans().find(({ state }) => state === 'waiting');
    if (next === undefined) return sendPhotos();
    if (!navigator.onLine) return 'no connection';
    markTried(next.key);
    const answer = await sendOne(next);
    if (typeof answer === 'string') return answer;
    answerScan(next.key, answer);
  }
}

function sendOne({ key, booking, scan }: QueuedScan) {
  const path =
    scan.kind === 'walk' ? '/api/v1/yard/walks/scans' : `/api/v1/yard/bookings/${encodeURIComponent(booking)}/scans`;
  return askHouse(path, {
    body: JSON.stringify({ ...scan, key }),
    headers: { 'content-type': 'application/json' },
  });
}
