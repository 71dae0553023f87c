'use client';

import { keepPhoto } from '../../../_blocks/photo-queue.ts';
import type { ScanQueue } from '../../../_blocks/use-scan-queue.client.tsx';

interface TakeProps {
  readonly serial: string;
  readonly queue: Pick<ScanQueue, 'screen' | 'flush' | 'setSaid' | 'sound'>;
}

/** Takes photographs of a piece: kept on this device at once, sent when the line is there. */
export function TakePhoto({ serial, queue }: TakeProps) {
  const take = async (files: readonly File[]) => {
    for (const file of files) {
      const trouble = await keepPhoto({ booking: queue.screen, serial, file });
      if (trouble !== null) {
        queue.sound('bad');
        queue.setSaid({ tone: 'refusal', words: trouble });
        return;
      }
    }
    void queue.flush();
  };
  return (
    <label className="button">
      Photograph
      <input
        className="unseen"
        type="file"
        accept="image/jpeg,image/png,image/webp"
        capture="environment"
        aria-label={`Photograph of ${serial}`}
        onChange={(event) => {
          const files = [...(event.currentTarget.files ?? [])];
          event.currentTarget.value = '';
          void take(files);
        }}
      />
    </label>
  );
}
