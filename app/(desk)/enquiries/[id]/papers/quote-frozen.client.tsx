'use client';
import { useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import type { Redrawn } from '#lib/services/quotes/redraw-quote.ts';
import sheet from './price-sheet.module.css';

interface FrozenProps {
  readonly quoteId: number;
  readonly quote: string;
  readonly drawnBy: string;
  readonly papers: readonly { readonly kind: string; readonly sha256: string }[];
}

/** What was kept with a quote, byte for byte, and whether this program draws the same from what was frozen. */
export function QuoteFrozen({ quoteId, quote, drawnBy, papers }: FrozenProps) {
  const [again, setAgain] = useState<Redrawn | null>(null);
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState('');

  async function draw(): Promise<void> {
    setBusy(true);
    const answer = await send({ path: `/api/v1/quotes/${quoteId}/redraw`, method: 'POST' });
    setBusy(false);
    setProblem(answer.ok ? '' : answer.sentence);
    if (answer.ok) setAgain(answer.value as Redrawn);
  }

  const answers = new Map(again?.papers.map(({ kind, answer }) => [kind, answer]) ?? []);
  return (
    <details>
      <summary>Kept byte for byte: {papers.length} papers and files</summary>
      <p className={styles.soft}>
        {drawnBy === '' ? 'Drawn before the version of the program was kept.' : `Drawn by version ${drawnBy}.`} Each has
        the SHA-256 below; schedule, equipment, rates, rules and choices are frozen with it.
      </p>
      <dl className={styles.facts}>
        {papers.map(({ kind, sha256 }) => (
          <div key={kind} className={styles.fact}>
            <dt>{kind}</dt>
            <dd>
              <span className={sheet.hash}>{sha256}</span>
              {answers.has(kind) ? <strong> {answers.get(kind)}</strong> : null}
            </dd>
          </div>
        ))}
      </dl>
      <p className={styles.row}>
        <button
          type="button"
          className={styles.button}
          aria-label={`Draw ${quote} again`}
          disabled={busy}
          onClick={draw}
        >
          {busy ? 'Drawing…' : 'Draw again and compare'}
        </button>
      </p>
      <div aria-live="polite">
        {problem === '' ? null : <p className={styles.refused}>{problem}</p>}
        {again === null ? null : <p className={styles.calm}>{tellAgain(again)}</p>}
      </div>
    </details>
  );
}

function tellAgain({ papers, program, drawnBy }: Redrawn): string {
  const apart = papers.filter(({ answer }) => answer !== 'identical').map(({ kind }) => kind);
  if (apart.length === 0) return `All ${papers.length} come out identical, drawn by version ${program}.`;
  const why = program === drawnBy ? 'by the same version' : `this is version ${program}, they were drawn by ${drawnBy}`;
  return `Not identical: ${apart.join(', ')} (${why}). What was kept stays as it is.`;
}
