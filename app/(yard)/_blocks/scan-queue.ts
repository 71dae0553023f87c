/**
 * Scans of this browser that the house has not answered yet, kept over reloads and sent in the order they were made, each under a key of
 * its own: the house answers a key once, so a scan that was sent twice is done once.
 */
import type { YardScanRequest } from '#lib/contracts/yard-scan.ts';

type WithoutKey<Scan> = Scan extends unknown ? Omit<Scan, 'key'> : never;
export type NewScan = WithoutKey<YardScanRequest>;

export interface QueuedScan {
  readonly key: string;
  readonly booking: string;
  readonly scan: NewScan;
  readonly at: number;
  readonly state: 'waiting' | 'sent' | 'refused';
  /** What the house said. */
  readonly sentence: string;
}

const STORE = 'kitwright.scans';
/** Answered scans that stay to be looked at. */
const KEPT_ANSWERS = 30;

let known: readonly QueuedScan[] | undefined;
const listeners = new Set<() => void>();

export function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export function queuedScans(): readonly QueuedScan[] {
  known ??= read();
  return known;
}

const NONE: readonly QueuedScan[] = [];
export function noScans(): readonly QueuedScan[] {
  return NONE;
}

export function addScan({ booking, scan }: { readonly booking: string; readonly scan: NewScan }): void {
  const added: QueuedScan = { key: newKey(), booking, scan, at: Date.now(), state: 'waiting', sentence: '' };
  write([...read(), added]);
}

export function answerScan(key: string, answer: Pick<QueuedScan, 'state' | 'sentence'>): void {
  write(read().map((one) => (one.key === key ? { ...one, ...answer } : one)));
}

/** Takes away what was looked at; what still waits stays. */
export function forgetScan(key: string): void {
  write(read().filter((one) => one.key !== key || one.state === 'waiting'));
}

/** Another window of this browser wrote. */
export function reread(): void {
  known = read();
  tell();
}

function read(): readonly QueuedScan[] {
  try {
    const kept: unknown = JSON.parse(window.localStorage.getItem(STORE) ?? '[]');
    return Array.isArray(kept) ? kept.filter(isQueued) : [];
  } catch {
    return known ?? [];
  }
}

function write(scans: readonly QueuedScan[]): void {
  const answered = scans.filter(({ state }) => state !== 'waiting');
  const old = new Set(answered.slice(0, Math.max(0, answered.length - KEPT_ANSWERS)).map(({ key }) => key));
  known = scans.filter(({ key }) => !old.has(key));
  try {
    window.localStorage.setItem(STORE, JSON.stringify(known));
  } catch {
    // A browser that keeps nothing still has them until it is closed.
  }
  tell();
}

function tell(): void {
  for (const listener of listeners) listener();
}

function isQueued(one: unknown): one is QueuedScan {
  return one !== null && typeof one === 'object' && 'key' in one && 'booking' in one && 'scan' in one && 'state' in one;
}

/** Also where the page came over plain HTTP, where a browser has no randomUUID. */
function newKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
