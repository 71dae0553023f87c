'use client';

import type { QueuedScan } from './scan-queue.ts';
import type { Sending } from './send-scans.ts';

interface QueuePanelProps {
  readonly scans: readonly QueuedScan[];
  readonly sending: Sending;
  readonly onForget: (key: string) => void;
}

const DID = { pick: 'pick', count: 'count', undo: 'put back', pack: 'pack', unpack: 'take out' } as const;

/** What waits to be sent and what was refused, scan by scan; nothing where all is well. */
export function QueuePanel({ scans, sending, onForget }: QueuePanelProps) {
  const waiting = scans.filter(({ state }) => state === 'waiting');
  const refused = scans.filter(({ state }) => state === 'refused');
  if (waiting.length === 0 && refused.length === 0) return null;
  return (
    <section className="card scan-queue" aria-label="Scans">
      {waiting.length > 0 && (
        <>
          <h2>
            {waiting.length} {waiting.length === 1 ? 'scan waits' : 'scans wait'}{' '}
            <span className="mark warning">{WHY[sending]}</span>
          </h2>
          <ul className="queued">
            {waiting.map(({ key, scan }) => (
              <li key={key}>
                <strong className="tag">{scan.code}</strong> {DID[scan.kind]}{' '}
                <span className="mark warning">waiting</span>
              </li>
            ))}
          </ul>
        </>
      )}
      {refused.length > 0 && (
        <>
          <h2>Refused</h2>
          <ul className="queued">
            {refused.map(({ key, scan, sentence }) => (
              <li key={key}>
                <span>
                  <strong className="tag">{scan.code}</strong> <span className="mark refusal">refused</span> {sentence}
                </span>
                <button type="button" className="quiet" onClick={() => onForget(key)} aria-label={`Seen: ${scan.code}`}>
                  Seen
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

const WHY: Readonly<Record<Sending, string>> = {
  'all sent': 'being sent',
  'no connection': 'no connection: sent when the line is back',
  'sign in': 'sign in again, then they are sent',
};
