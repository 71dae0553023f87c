'use client';

import '../../../_blocks/picking.css';
import Link from 'next/link';
import { useState } from 'react';
import type { PackingView } from '#lib/services/yard/packing/open-packing.ts';
import { QueuePanel } from '../../../_blocks/queue-panel.client.tsx';
import { SaidLine } from '../../../_blocks/said.tsx';
import { ScanField } from '../../../_blocks/scan-field.client.tsx';
import { SoundSwitch } from '../../../_blocks/sound-switch.client.tsx';
import { useScanQueue } from '../../../_blocks/use-scan-queue.client.tsx';
import { CaseCard, Contents } from './case-card.tsx';
import { ChangeLoad } from './change-load.client.tsx';
import { LoadPapers } from './load-papers.tsx';

/** A booking is packed: choose or scan a case, scan what goes in, watch its mass. */
export function PackScreen({ view }: { readonly view: PackingView }) {
  const queue = useScanQueue(view.number);
  const [into, setInto] = useState<number | null>(null);
  const scan = (code: string) => {
    const box = caseOf(code, view.number);
    if (box === null) return queue.add({ kind: 'pack', code, case: into });
    const isKnown = view.cases.some(({ number }) => number === box);
    setInto(isKnown ? box : into);
    queue.sound(isKnown ? 'good' : 'bad');
    queue.setSaid(
      isKnown
        ? { tone: 'good', words: `Case ${box}: scan what goes in.` }
        : { tone: 'refusal', words: `${view.number} has no case ${box}.` },
    );
  };
  return (
    <div className="yard-work">
      <div className="heading">
        <h1>Pack {view.number}</h1>
        <span className={view.packed === view.pieces ? 'mark good' : 'mark'}>
          {view.packed} of {view.pieces} packed
        </span>
        <SoundSwitch isMuted={queue.isMuted} onToggle={queue.toggleSound} />
      </div>
      <p className="soft">
        {[view.customer, view.title].filter((text) => text !== '').join(' · ')} · by {view.transport} ·{' '}
        {Math.round(view.mass_kg * 10) / 10} kg
      </p>
      <ScanField
        label={into === null ? 'Scan a piece, or a case' : `Scan a piece into case ${into}`}
        help="Without a case chosen, each piece goes into the case it is proposed for."
        onScan={scan}
      />
      <SaidLine said={queue.said} />
      <QueuePanel queue={queue} />
      {view.unassigned.length > 0 && (
        <section className="card asks" aria-label="In no case yet">
          <h2>In no case yet</h2>
          <Contents contents={view.unassigned} onOut={null} />
        </section>
      )}
      {view.cases.map((box) => (
        <CaseCard
          key={box.number}
          box={box}
          of={view.cases.length}
          isChosen={into === box.number}
          onChoose={() => setInto(into === box.number ? null : box.number)}
          onOut={(code) => queue.add({ kind: 'unpack', code })}
        />
      ))}
      {view.proofs.map((sentence) => (
        <p key={sentence} className="soft">
          {sentence}
        </p>
      ))}
      <LoadPapers view={view} />
      <ChangeLoad view={view} sound={queue.sound} />
      <PackLinks number={view.number} />
    </div>
  );
}

function PackLinks({ number }: { readonly number: string }) {
  return (
    <p className="tools">
      <Link className="button" href={`/yard/pick/${number}`}>
        Back to picking
      </Link>
      <Link className="button main" href={`/yard/out/${number}`}>
        Out
      </Link>
      <Link className="button" href={`/yard/bookings/${number}`}>
        Booking
      </Link>
    </p>
  );
}

/** Number of the case that a label of this booking names. */
function caseOf(code: string, booking: string): number | null {
  const found = /^(?:\][A-Za-z]\w)?CASE[:;](B-\d{1,8})\/(\d{1,3})$/i.exec(code.replace(/\s+/g, ''));
  return found?.[1]?.toUpperCase() === booking ? Number(found[2]) : null;
}
