'use client';

import Link from 'next/link';
import { usePathname } from 'next/navigation';
import { useCallback, useState, useSyncExternalStore } from 'react';
import type { Sending } from './ask-house.ts';
import { WHY } from './queue-panel.client.tsx';
import { noScans, type QueuedScan, queuedScans, subscribe } from './scan-queue.ts';
import { sendScans } from './send-scans.ts';
import { useQueuedPhotos, useSending } from './use-scan-queue.client.tsx';

interface Left {
  readonly screen: string;
  readonly href: string;
  readonly waiting: number;
  readonly refused: number;
}

/** On every screen of the yard: what other screens left in this browser, waiting or refused; it is sent from here too. */
export function QueueLamp() {
  const here = decodeURIComponent(usePathname().split('/').at(-1) ?? '');
  const scans = useSyncExternalStore(subscribe, queuedScans, noScans);
  const photos = useQueuedPhotos();
  const [sending, setSending] = useState<Sending>('all sent');
  const flush = useCallback(async () => setSending(await sendScans()), []);
  useSending(flush);
  const left = [
    ...scans.map(({ screen, state, scan }) => ({ screen, state, href: placeOf({ screen, scan }) })),
    ...photos.map(({ booking, state }) => ({ screen: booking, state, href: `/yard/back/${booking}` })),
  ].filter(({ screen, state }) => state !== 'sent' && screen !== here && !(isWalk(screen) && here === 'walk'));
  const screens = [...new Set(left.map(({ screen }) => screen))].map((screen): Left => {
    const its = left.filter((one) => one.screen === screen);
    const waiting = its.filter(({ state }) => state === 'waiting').length;
    return { screen, href: its[0]?.href ?? '/yard', waiting, refused: its.length - waiting };
  });
  return (
    <div role="status" className="queue-lamp">
      {screens.map(({ screen, href, waiting, refused }) => (
        <p key={screen} className={refused > 0 ? 'notice refusal' : 'notice warning'}>
          <Link className="tag" href={href}>
            {screen}
          </Link>{' '}
          {[
            waiting > 0 ? `${waiting} to send (${WHY[sending]})` : '',
            refused > 0 ? `${refused} refused, look why` : '',
          ]
            .filter((part) => part !== '')
            .join(', ')}
        </p>
      ))}
    </div>
  );
}

function isWalk(screen: string): boolean {
  return screen.startsWith('walk ');
}

function placeOf({ screen, scan }: Pick<QueuedScan, 'screen' | 'scan'>): string {
  if (isWalk(screen)) return `/yard/walk?${new URLSearchParams({ day: screen.split(' ')[1] ?? '' })}`;
  switch (scan.kind) {
    case 'pack':
    case 'unpack':
      return `/yard/pack/${screen}`;
    case 'load':
    case 'take off':
    case 'count on':
      return `/yard/out/${screen}`;
    case 'look':
    case 'check in':
    case 'count back':
      return `/yard/back/${screen}`;
    default:
      return `/yard/pick/${screen}`;
  }
}
