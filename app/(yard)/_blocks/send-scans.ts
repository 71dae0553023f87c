import { answerScan, type QueuedScan, queuedScans, reread } from './scan-queue.ts';

/** What came of going through the queue: everything answered, or why it stopped. */
export type Sending = 'all sent' | 'no connection' | 'sign in';

let running: Promise<Sending> | undefined;

/** Goes through the waiting scans one by one, the oldest first; one round at a time, over all windows of this browser. */
export function sendScans(onAnswer: (scan: QueuedScan) => void): Promise<Sending> {
  running ??= alone(() => sendAll(onAnswer)).finally(() => {
    running = undefined;
  });
  return running;
}

async function alone(work: () => Promise<Sending>): Promise<Sending> {
  if (!('locks' in navigator) || navigator.locks === undefined) return work();
  return navigator.locks.request('kitwright.scans', work);
}

async function sendAll(onAnswer: (scan: QueuedScan) => void): Promise<Sending> {
  reread();
  for (;;) {
    const next = queuedScans().find(({ state }) => state === 'waiting');
    if (next === undefined) return 'all sent';
    const answer = await sendOne(next);
    if (typeof answer === 'string') return answer;
    answerScan(next.key, answer);
    onAnswer({ ...next, ...answer });
  }
}

/** Statuses at which nothing was decided: the scan is sent again later. */
const NOT_NOW = [408, 425, 429];

async function sendOne({ key, booking, scan }: QueuedScan): Promise<Pick<QueuedScan, 'state' | 'sentence'> | Sending> {
  try {
    const response = await fetch(`/api/v1/yard/bookings/${encodeURIComponent(booking)}/scans`, {
      method: 'POST',
      body: JSON.stringify({ ...scan, key }),
      headers: { 'content-type': 'application/json' },
    });
    if (response.status === 401) return 'sign in';
    if (response.status >= 500 || NOT_NOW.includes(response.status)) return 'no connection';
    const answer: unknown = await response.json();
    return { state: response.ok ? 'sent' : 'refused', sentence: sentenceOf(answer) };
  } catch {
    return 'no connection';
  }
}

function sentenceOf(answer: unknown): string {
  if (answer === null || typeof answer !== 'object') return '';
  if ('sentence' in answer && typeof answer.sentence === 'string') return answer.sentence;
  return 'title' in answer && typeof answer.title === 'string' ? answer.title : 'Refused without a reason.';
}
