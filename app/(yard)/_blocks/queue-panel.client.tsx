'use client';

import { ShownMoment } from '#app/_ui/shown-forms.client.tsx';
import type { Sending } from './ask-house.ts';
import type { QueuedScan } from './scan-queue.ts';
import type { ScanQueue } from './use-scan-queue.client.tsx';

const DID: Readonly<Record<QueuedScan['scan']['kind'], string>> = {
  pick: 'pick',
  walk: 'pick',
  count: 'count',
  undo: 'put back',
  pack: 'pack',
  unpack: 'take out',
  load: 'load',
  'take off': 'take off',
  'count on': 'count on',
  look: 'look up',
  'check in': 'check in',
  'count back': 'count back',
};

/** What waits to be sent, what was refused and why, and what arrived; nothing before the first scan. */
export function QueuePanel({ queue }: { readonly queue: ScanQueue }) {
  const { scans, sending, takeAway } = queue;
  const waiting = scans.filter(({ state }) => state === 'waiting');
  const refused = scans.filter(({ state }) => state === 'refused');
  const sent = scans.filter(({ state }) => state === 'sent');
  if (scans.length === 0) return null;
  return (
    <section className={waiting.length + refused.length > 0 ? 'card scan-queue' : 'scan-queue'} aria-label="Scans">
      {waiting.length > 0 && (
        <>
          <h2>
            {waiting.length} {waiting.length === 1 ? 'scan waits' : 'scans wait'}{' '}
            <span className="mark warning">{WHY[sending]}</span>
          </h2>
          <ul className="queued">
            {waiting.map((one) => (
              <li key={one.key}>
                <span>
                  <strong className="tag">{one.scan.code}</strong> {tell(one)}
                </span>
                <span className="mark warning">waiting</span>
                <button
                  type="button"
                  className="quiet"
                  onClick={() => takeAway(one)}
                  aria-label={`Take away: ${one.scan.code}`}
                >
                  Take away
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
      {refused.length > 0 && (
        <>
          <h2>Refused</h2>
          <ul className="queued">
            {refused.map((one) => (
              <li key={one.key}>
                <span>
                  <strong className="tag">{one.scan.code}</strong> <span className="mark refusal">refused</span>{' '}
                  {one.sentence}
                </span>
                <button
                  type="button"
                  className="quiet"
                  onClick={() => takeAway(one)}
                  aria-label={`Seen: ${one.scan.code}`}
                >
                  Seen
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
      <SentScans sent={sent} />
    </section>
  );
}

function SentScans({ sent }: { readonly sent: readonly QueuedScan[] }) {
  const last = sent.at(-1);
  if (last === undefined) return null;
  return (
    <details className="sent-scans">
      <summary>
        ✓ {sent.length} sent, the last <ShownMoment at={new Date(last.at).toISOString()} />
      </summary>
      <ul className="queued">
        {sent.toReversed().map((one) => (
          <li key={one.key}>
            <span>
              <strong className="tag">{one.scan.code}</strong> {one.sentence}
            </span>
          </li>
        ))}
      </ul>
    </details>
  );
}

function tell({ scan }: QueuedScan): string {
  if (scan.kind === 'check in') return `check in as ${scan.seen.condition}`;
  if (scan.kind === 'count' || scan.kind === 'count on') return `count ${scan.count}`;
  return scan.kind === 'count back' ? `count ${scan.back} back` : DID[scan.kind];
}

export const WHY: Readonly<Record<Sending, string>> = {
  'all sent': 'being sent',
  'no connection': 'no connection: sent when the line is back',
  'sign in': 'sign in again, then they are sent',
};
