'use client';

import { takeAwayPhoto } from '../../../_blocks/photo-queue.ts';
import { WHY } from '../../../_blocks/queue-panel.client.tsx';
import { type ScanQueue, useQueuedPhotos } from '../../../_blocks/use-scan-queue.client.tsx';

/** Photographs of a booking that are still on this device, and those that the house refused; nothing where all are sent. */
export function PhotoPanel({ queue }: { readonly queue: ScanQueue }) {
  const photos = useQueuedPhotos().filter(({ booking }) => booking === queue.screen);
  const waiting = photos.filter(({ state }) => state === 'waiting');
  if (photos.length === 0) return null;
  return (
    <section className="card scan-queue" aria-label="Photographs on this device">
      <h2>
        {waiting.length === 0
          ? 'Photographs refused'
          : `${waiting.length} ${waiting.length === 1 ? 'photograph waits' : 'photographs wait'} on this device`}{' '}
        {waiting.length > 0 && <span className="mark warning">{WHY[queue.sending]}</span>}
      </h2>
      <ul className="queued">
        {photos.map(({ key, serial, fileName, size, state, sentence }) => (
          <li key={key}>
            <span>
              <strong className="tag">{serial}</strong>{' '}
              {state === 'refused' ? <span className="mark refusal">refused</span> : null}{' '}
              {sentence === '' ? `${fileName}, ${Math.max(1, Math.round(size / 1024))} kB` : sentence}
            </span>
            {state === 'waiting' && <span className="mark warning">waiting</span>}
            <button
              type="button"
              className="quiet"
              aria-label={`Take the photograph of ${serial} away`}
              onClick={() => takeAwayPhoto(key)}
            >
              Take away
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
