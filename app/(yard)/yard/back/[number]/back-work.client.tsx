'use client';

import type { BackView, ReturnView } from '#lib/services/yard/back/open-back.ts';
import { QueuePanel } from '../../../_blocks/queue-panel.client.tsx';
import { useScanQueue } from '../../../_blocks/use-scan-queue.client.tsx';
import { BackCheck } from './back-check.client.tsx';
import { BackCounted } from './back-counted.client.tsx';
import { BackIn } from './back-in.client.tsx';
import { PhotoPanel } from './photo-panel.client.tsx';

interface WorkProps {
  readonly view: BackView;
  /** The return that takes pieces in; absent before one was begun. */
  readonly current: ReturnView | undefined;
  readonly isOver: boolean;
}

/** Everything of a return that goes through the queue: check-in, counts, photographs, and what of them still waits. */
export function BackWork({ view, current, isOver }: WorkProps) {
  const queue = useScanQueue(view.number);
  return (
    <>
      {isOver || current === undefined ? null : (
        <BackCheck current={current} awaited={view.awaited} currency={view.currency} queue={queue} />
      )}
      <QueuePanel queue={queue} />
      <PhotoPanel queue={queue} />
      {view.hasEnded || current === undefined ? null : (
        <BackCounted current={current} counted={view.counted} queue={queue} />
      )}
      <BackIn returns={view.returns} queue={queue} />
    </>
  );
}
