'use client';

import { ShownMoment } from '#app/_ui/shown-forms.client.tsx';
import type { ChainView } from '#lib/services/yard/picking/open-picking.ts';
import { SaidLine } from '../../../_blocks/said.tsx';
import { useYardDeed, type YardSound } from '../../../_blocks/use-yard-deed.client.ts';

interface ChainListProps {
  readonly number: string;
  readonly chains: readonly ChainView[];
  readonly sound: YardSound;
}

/** Each chain of the job, put together once before it leaves. */
export function ChainList({ number, chains, sound }: ChainListProps) {
  const { deed, said, busy } = useYardDeed(sound);
  if (chains.length === 0) return null;
  return (
    <section className="card" aria-label="Tried together">
      <h2>Tried together</h2>
      <ul className="yard-checks">
        {chains.map(({ id, serials, done }) => (
          <li key={id}>
            <div className="what">
              <strong className="tag">{id}</strong>
              <small className="beside">
                {done === null ? serials.join(', ') : <DoneBy who={done.who} at={done.at} />}
              </small>
            </div>
            {done === null ? (
              <button
                type="button"
                aria-label={`Fits: ${id}`}
                disabled={busy}
                onClick={() =>
                  deed({ path: `/api/v1/yard/bookings/${number}/chains`, body: { id }, done: () => `${id} fits.` })
                }
              >
                Fits
              </button>
            ) : (
              <span className="mark good">✓ fits</span>
            )}
          </li>
        ))}
      </ul>
      {said !== null && <SaidLine said={said} />}
    </section>
  );
}

function DoneBy({ who, at }: { readonly who: string; readonly at: string }) {
  return (
    <>
      {who}, <ShownMoment at={at} />
    </>
  );
}
