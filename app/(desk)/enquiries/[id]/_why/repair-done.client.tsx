'use client';
import { useRouter } from 'next/navigation';
import { useState, useSyncExternalStore } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { useSentences } from '#app/_ui/shown-units.client.tsx';
import type { Told } from '#lib/units/say-figure.ts';

/** What was carried out, and what takes it back. */
export interface Done {
  readonly action: string;
  readonly told: Told;
  readonly lines: number;
  readonly version: number;
  readonly undo: {
    readonly edits: readonly unknown[];
    readonly enquiry: Readonly<Record<string, unknown>> | null;
  };
}

const CHANGED = 'kitwright-repair';
const keyOf = (enquiryId: number) => `kitwright-repair-${enquiryId}`;

/** Kept for the browser's tab: the page that offered the repair may no longer offer it once it is done. */
export function keepDone(enquiryId: number, done: Done | null): void {
  if (done === null) sessionStorage.removeItem(keyOf(enquiryId));
  else sessionStorage.setItem(keyOf(enquiryId), JSON.stringify(done));
  window.dispatchEvent(new Event(CHANGED));
}

function watch(tell: () => void): () => void {
  window.addEventListener(CHANGED, tell);
  return () => window.removeEventListener(CHANGED, tell);
}

/** Says what the last repair of this enquiry did, and takes it back. */
export function RepairDone({ enquiryId, replan }: { readonly enquiryId: number; readonly replan: 'yes' | 'no' }) {
  const router = useRouter();
  const tell = useSentences();
  const text = useSyncExternalStore(
    watch,
    () => sessionStorage.getItem(keyOf(enquiryId)) ?? '',
    () => '',
  );
  const [problem, setProblem] = useState('');
  const [busy, setBusy] = useState(false);
  const done = text === '' ? null : (JSON.parse(text) as Done);

  async function undo({ undo: back, version }: Done): Promise<void> {
    setBusy(true);
    setProblem('');
    const path = `/api/v1/enquiries/${enquiryId}`;
    const wider =
      back.enquiry === null
        ? ({ ok: true } as const)
        : await send({ path, method: 'PATCH', body: { version, ...back.enquiry } });
    const cells =
      wider.ok && back.edits.length > 0
        ? await send({ path: `${path}/lines`, method: 'PATCH', body: { edits: back.edits } })
        : wider;
    if (cells.ok && replan === 'yes') await send({ path: `${path}/plan`, method: 'POST' });
    setBusy(false);
    if (!cells.ok) return setProblem(cells.sentence);
    keepDone(enquiryId, null);
    router.refresh();
  }

  return (
    <div aria-live="polite">
      {done === null ? null : (
        <div className={styles.calm}>
          <p>
            <strong>Done: {done.action}.</strong>{' '}
            {done.lines === 0
              ? ''
              : done.lines === 1
                ? 'One line can be served now. '
                : `${done.lines} lines can be served now. `}
            {tell(done.told)}
          </p>
          {done.lines === 0 ? null : (
            <p className={styles.soft}>
              It is taken as said. Whether it is so at the valve is for a person there to make sure of.
            </p>
          )}
          <span className={styles.row}>
            <button type="button" className={styles.small} disabled={busy} onClick={() => undo(done)}>
              Undo this change
            </button>
            <button type="button" className={styles.small} onClick={() => keepDone(enquiryId, null)}>
              Keep it
            </button>
          </span>
          {problem === '' ? null : (
            <p className={styles.refused} role="alert">
              {problem}
            </p>
          )}
        </div>
      )}
    </div>
  );
}
