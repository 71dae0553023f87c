/**
 * Scans of this browser that the house has not answered yet, kept over reloads and sent in the order they were made, each under a key of
 * its own: the house answers a key once, so a scan that was sent twice is done once.
 */
import type { WalkScanRequest, YardScanRequest } from '#lib/contracts/yard-scan.ts';

type WithoutKey<Scan> = Scan extends unknown ? Omit<Scan, 'key'> : never;
/** On a walk through the bays the house finds the booking that a piece is for. */
export type NewScan = WithoutKey<YardScanRequest | WalkScanRequest>;

export interface QueuedScan {
  readonly key: string;
  /** The booking it is sent for; on a walk the house finds it. */
  readonly booking: string;
  /** What the screen was about where it was made: a booking, or the walk of a day. */
  readonly screen: string;
  readonly scan: NewScan;
  readonly at: number;
  readonly state: 'waiting' | 'sent' | 'refused';
  /** It was sent at least once, so it may have arrived although no answer came. */
  readonly tried: boolean;
  /** What the house said. */
  readonly sentence: string;
}

/** What the house said to a scan or a photograph, for the screen where it was made. */
export interface HouseAnswer {
  readonly screen: string;
  readonly state: 'sent' | 'refused';
  readonly sentence: string;
}

const STORE = 'kitwright.scans';
/** Answered scans that stay to be looked at. */
const KEPT_ANSWERS = 30;

let known: readonly QueuedScan[] | undefined;
const listeners = new Set<() => void>();
const answerListeners = new Set<(answer: HouseAnswer) => void>();

export function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Told of every answer of the house as it comes. */
export function onAnswer(listener: (answer: HouseAnswer) => void): () => void {
  answerListeners.add(listener);
  return () => answerListeners.delete(listener);
}

export function queuedScans(): readonly QueuedScan[] {
  known ??= read();
  return known;
}

const NONE: readonly QueuedScan[] = [];
export function noScans(): readonly QueuedScan[] {
  return NONE;
}

export function addScan({ booking, screen, scan }: Pick<QueuedScan, 'booking' | 'screen' | 'scan'>): void {
  const added: QueuedScan = {
    key: newKey(),
    booking,
    screen,
    scan,
    at: Date.now(),
    state: 'waiting',
    tried: false,
    sentence: '',
  };
  write([...read(), added]);
}

export function markTried(key: string): void {
  write(read().map((one) => (one.key === key ? { ...one, tried: true } : one)));
}

export function answerScan(key: string, answer: Omit<HouseAnswer, 'screen'>): void {
  const before = read();
  write(before.map((one) => (one.key === key ? { ...one, ...answer } : one)));
  const answered = before.find((one) => one.key === key);
  if (answered) tellAnswer({ ...answer, screen: answered.screen });
}

export function tellAnswer(answer: HouseAnswer): void {
  for (const listener of answerListeners) listener(answer);
}

/** Takes a scan away: a refusal that was looked at, or one that is not to be sent after all. */
export function takeAwayScan(key: string): void {
  write(read().filter((one) => one.key !== key));
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
export function newKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
