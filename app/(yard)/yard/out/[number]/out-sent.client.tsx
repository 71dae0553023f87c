'use client';

import { useState } from 'react';
import { ShownMoment } from '#app/_ui/shown-forms.client.tsx';
import type { SentDelivery } from '#lib/services/yard/out/open-out.ts';
import styles from '../../../_blocks/moves.module.css';
import { SaidLine } from '../../../_blocks/said.tsx';
import { useDeed } from '../../../_blocks/use-deed.client.tsx';

/** Deliveries that left, who took them over, their despatch advice, and taking one back that was a mistake. */
export function OutSent({ sent }: { readonly sent: readonly SentDelivery[] }) {
  if (sent.length === 0) return null;
  return (
    <section className="panel" aria-label="Deliveries">
      <h2>Left before</h2>
      <ul className={styles.list}>
        {sent.map((one) => (
          <SentRow key={one.id} one={one} />
        ))}
      </ul>
    </section>
  );
}

function SentRow({ one }: { readonly one: SentDelivery }) {
  const { busy, said, run } = useDeed();
  const [why, setWhy] = useState('');
  return (
    <li>
      <div className={styles.what}>
        <strong>Delivery {one.sequence}</strong>, <ShownMoment at={one.leftAt} />: {one.units}{' '}
        {one.units === 1 ? 'piece' : 'pieces'}, to {one.handedTo}
        <small className="beside">
          loaded by {one.loadedBy}, signed {one.signedHow === 'typed' ? 'by typed name' : 'on the pad'}:{' '}
          {one.signedName}
          {one.state === 'taken back' ? ` · taken back: ${one.takenBackWhy}` : ''}
        </small>
      </div>
      {one.signatureSvg === '' ? null : <Drawn svg={one.signatureSvg} name={one.signedName} />}
      {one.hasDespatch ? (
        <a className="button" href={`/api/v1/yard/deliveries/${one.id}/despatch`}>
          Despatch advice (UBL 2.1)
        </a>
      ) : null}
      {one.state !== 'left' ? null : (
        <details>
          <summary>It was a mistake</summary>
          <div className={styles.row}>
            <label>
              Why it is taken back
              <input value={why} onChange={(event) => setWhy(event.target.value)} />
            </label>
            <button
              type="button"
              className="danger"
              disabled={busy || why.trim() === ''}
              onClick={() =>
                run({
                  path: `/api/v1/yard/deliveries/${one.id}/undo`,
                  body: { why },
                  words: () => `Delivery ${one.sequence} is taken back.`,
                })
              }
            >
              Take it back
            </button>
          </div>
          <SaidLine said={said} />
        </details>
      )}
    </li>
  );
}

/** Drawn from the numbers of the kept path, never from markup. */
function Drawn({ svg, name }: { readonly svg: string; readonly name: string }) {
  const path = /<path d="([ML0-9 ]*)"/.exec(svg)?.[1] ?? '';
  return (
    <svg className={styles.signed} viewBox="0 0 600 200" role="img" aria-label={`Signature of ${name}`}>
      <path d={path} />
    </svg>
  );
}
