'use client';

import { useRouter } from 'next/navigation';
import { useCallback, useEffect, useState, useSyncExternalStore, useTransition } from 'react';
import type { Said } from './said.tsx';
import { addScan, forgetScan, type NewScan, noScans, queuedScans, reread, subscribe } from './scan-queue.ts';
import { type Sending, sendScans } from './send-scans.ts';
import { useSound } from './use-sound.client.ts';

/** Waiting scans are tried again so often where the browser does not say that the line is back. */
const AGAIN_MS = 4_000;

/** The queue of one booking's screen: takes scans at once, sends them when the line is there, says and sounds what came of each. */
export function useScanQueue(booking: string) {
  const router = useRouter();
  const scans = useSyncExternalStore(subscribe, queuedScans, noScans);
  const { sound, isMuted, toggleSound } = useSound();
  const [said, setSaid] = useState<Said | null>(null);
  const [sending, setSending] = useState<Sending>('all sent');
  const [, startShowing] = useTransition();

  const flush = useCallback(async () => {
    let answered = 0;
    const came = await sendScans((scan) => {
      answered += 1;
      const good = scan.state === 'sent';
      sound(good ? 'good' : 'bad');
      setSaid({ tone: good ? 'good' : 'refusal', words: scan.sentence });
    });
    setSending(came);
    if (answered > 0) startShowing(() => router.refresh());
  }, [router, sound]);

  useEffect(() => {
    void flush();
    const again = window.setInterval(() => {
      if (queuedScans().some(({ state }) => state === 'waiting')) void flush();
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

  const add = useCallback(
    (scan: NewScan) => {
      addScan({ booking, scan });
      setSaid(null);
      void flush();
    },
    [booking, flush],
  );
  const mine = scans.filter((scan) => scan.booking === booking);
  return { scans: mine, add, forget: forgetScan, said, setSaid, sending, sound, isMuted, toggleSound };
}
