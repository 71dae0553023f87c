'use client';

import { useRouter } from 'next/navigation';
import { type RefObject, useCallback, useEffect, useRef, useState, useSyncExternalStore, useTransition } from 'react';
import type { Sending } from './ask-house.ts';
import { noPhotos, queuedPhotos, readPhotosOnce, subscribeToPhotos } from './photo-queue.ts';
import type { Said } from './said.tsx';
import {
  addScan,
  type NewScan,
  noScans,
  onAnswer,
  type QueuedScan,
  queuedScans,
  reread,
  subscribe,
  takeAwayScan,
} from './scan-queue.ts';
import { sendScans } from './send-scans.ts';
import { useSound } from './use-sound.client.ts';

/** Waiting scans are tried again so often where the browser does not say that the line is back. */
const AGAIN_MS = 4_000;

/** The queue of one screen, about a booking or a walk: takes scans at once, sends them when the line is there, says and sounds what came of each. */
export function useScanQueue(screen: string) {
  const scans = useSyncExternalStore(subscribe, queuedScans, noScans);
  const { sound, isMuted, toggleSound } = useSound();
  const [said, setSaid] = useState<Said | null>(null);
  const [sending, setSending] = useState<Sending>('all sent');
  const [sendings, setSendings] = useState(0);
  const answered = useRef(0);

  const flush = useCallback(async () => {
    setSending(await sendScans());
    setSendings((count) => count + 1);
  }, []);
  useShowing(answered, sendings);

  useEffect(
    () =>
      onAnswer((scan) => {
        if (scan.screen !== screen) return;
        answered.current += 1;
        const isGood = scan.state === 'sent';
        sound(isGood ? 'good' : 'bad');
        setSaid({ tone: isGood ? 'good' : 'refusal', words: scan.sentence });
      }),
    [screen, sound],
  );
  useSending(flush);

  const add = useCallback(
    (scan: NewScan, booking = screen) => {
      addScan({ booking, screen, scan });
      setSaid(null);
      void flush();
    },
    [screen, flush],
  );
  const takeAway = useCallback(({ key, state, tried, scan: { code } }: QueuedScan) => {
    takeAwayScan(key);
    setSaid(state === 'waiting' ? { tone: 'warning', words: tellTaken({ code, tried }) } : null);
  }, []);
  const mine = scans.filter((scan) => scan.screen === screen);
  return { screen, scans: mine, add, takeAway, said, setSaid, sending, flush, sound, isMuted, toggleSound };
}

/** Shows the state of the house again when answers came; answers that come while it is being fetched are shown by one more turn, after it. */
function useShowing(answered: RefObject<number>, sendings: number): void {
  const router = useRouter();
  const [isShowing, startShowing] = useTransition();
  // biome-ignore lint/correctness/useExhaustiveDependencies: every round of sending asks again whether there is something new to show.
  useEffect(() => {
    if (isShowing || answered.current === 0) return;
    answered.current = 0;
    startShowing(() => router.refresh());
  }, [isShowing, sendings, answered, router]);
}

export type ScanQueue = ReturnType<typeof useScanQueue>;

function tellTaken({ code, tried }: { readonly code: string; readonly tried: boolean }): string {
  return tried
    ? `${code} is not sent again. An answer is missing: if it had arrived already, the list shows it.`
    : `${code} is taken away. Nothing of it was sent.`;
}

/** Photographs of this device that wait or were refused. */
export function useQueuedPhotos() {
  return useSyncExternalStore(subscribeToPhotos, queuedPhotos, noPhotos);
}

/** Scans of a booking that wait in this browser, whichever screen they were made on. */
export function useWaitingScans(booking: string): readonly QueuedScan[] {
  const scans = useSyncExternalStore(subscribe, queuedScans, noScans);
  return scans.filter((scan) => scan.booking === booking && scan.state === 'waiting');
}

/** Sends when the screen opens, when the line is back, and every few seconds while something waits. */
export function useSending(flush: () => Promise<void>): void {
  useEffect(() => {
    void flush();
    const again = window.setInterval(() => {
      readPhotosOnce();
      const all = [...queuedScans(), ...queuedPhotos()];
      if (all.some(({ state }) => state === 'waiting')) void flush();
    }, AGAIN_MS);
    const back = () => void flush();
    window.addEventListener('online', back);
    window.addEventListener('storage', reread);
    return () => {
      window.clearInterval(again);
      window.removeEventListener('online', back);
      window.removeEventListener('storage', reread);
    };
  }, [flush]);
}
