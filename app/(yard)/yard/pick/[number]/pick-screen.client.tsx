'use client';

import '../../../_blocks/picking.css';
import Link from 'next/link';
import { ShownWindow } from '#app/_ui/shown-forms.client.tsx';
import type { PickingView } from '#lib/services/yard/picking/open-picking.ts';
import { QueuePanel } from '../../../_blocks/queue-panel.client.tsx';
import { SaidLine } from '../../../_blocks/said.tsx';
import { ScanField } from '../../../_blocks/scan-field.client.tsx';
import { SoundSwitch } from '../../../_blocks/sound-switch.client.tsx';
import { useScanQueue } from '../../../_blocks/use-scan-queue.client.tsx';
import { ChainList } from './chain-list.client.tsx';
import { FinishPicking } from './finish-picking.client.tsx';
import { PickLines } from './pick-lines.client.tsx';
import { TestList } from './test-list.client.tsx';

/** A booking is picked: scan, see what came of it, and what is left on the way through the bays. */
export function PickScreen({ view }: { readonly view: PickingView }) {
  const queue = useScanQueue(view.number);
  const picked = view.lines.filter((line) => line.picked).length;
  return (
    <div className="yard-work">
      <div className="heading">
        <h1>Pick {view.number}</h1>
        <span className={picked === view.lines.length ? 'mark good' : 'mark'}>
          {picked} of {view.lines.length} picked
        </span>
        <SoundSwitch isMuted={queue.isMuted} onToggle={queue.toggleSound} />
      </div>
      <p className="soft">
        {[view.customer, view.title].filter((text) => text !== '').join(' · ')} ·{' '}
        <ShownWindow days={{ starts_on: view.startsOn, ends_before: view.endsBefore }} />
      </p>
      {view.state === 'held' && <p className="notice warning">Only held: the Desk confirms it before it is picked.</p>}
      <ScanField label="Scan a piece" onScan={(code) => queue.add({ kind: 'pick', code })} />
      <SaidLine said={queue.said} />
      <QueuePanel queue={queue} />
      <PickLines lines={view.lines} scans={queue.scans} onAdd={queue.add} />
      {view.lacking.length > 0 && (
        <section className="card asks" aria-label="Not in this load">
          <h2>Not in this load</h2>
          <ul>
            {view.lacking.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </section>
      )}
      <ChainList number={view.number} chains={view.chains} sound={queue.sound} />
      <TestList number={view.number} tests={view.tests} sound={queue.sound} />
      <FinishPicking view={view} sound={queue.sound} />
      <p className="tools">
        <Link className="button" href={`/yard/pack/${view.number}`}>
          Pack
        </Link>
        <Link className="button" href={`/yard/bookings/${view.number}`}>
          Booking
        </Link>
      </p>
    </div>
  );
}
