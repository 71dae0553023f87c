'use client';
import { useRouter } from 'next/navigation';
import { useRef, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { ShownWords } from '#app/_ui/shown-forms.client.tsx';

interface IssueProps {
  readonly enquiryId: number;
  readonly total: string;
  /** Why it cannot be issued now; empty when it can. */
  readonly hindrances: readonly string[];
  readonly isRevision: 'yes' | 'no';
}

/** Issues the quote after asking once more: what is issued can only be superseded. */
export function PriceIssue({ enquiryId, total, hindrances, isRevision }: IssueProps) {
  const router = useRouter();
  const dialog = useRef<HTMLDialogElement>(null);
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState('');
  const [done, setDone] = useState('');
  const name = isRevision === 'yes' ? 'Issue a new revision' : 'Issue quote';

  async function issue(): Promise<void> {
    setBusy(true);
    setProblem('');
    const answer = await send({ path: `/api/v1/enquiries/${enquiryId}/quotes`, method: 'POST', body: {} });
    setBusy(false);
    dialog.current?.close();
    if (answer.ok) setDone(`Issued ${issuedName(answer.value)}. Its papers are below.`);
    else setProblem(answer.sentence);
    router.refresh();
  }

  return (
    <div>
      <button
        type="button"
        className={styles.main}
        disabled={hindrances.length > 0 || busy}
        onClick={() => dialog.current?.showModal()}
      >
        {name}
      </button>
      {hindrances.map((hindrance) => (
        <p key={hindrance} className={styles.soft}>
          <ShownWords>{hindrance}</ShownWords>
        </p>
      ))}
      <div aria-live="polite">
        {done === '' ? null : <p className={styles.calm}>{done}</p>}
        {problem === '' ? null : <p className={styles.refused}>{problem}</p>}
      </div>
      <dialog ref={dialog} className={styles.dialog} aria-labelledby="issue-title">
        <h2 id="issue-title">{name}?</h2>
        <p>
          <ShownWords>{total}</ShownWords> with tax. Its papers and files are drawn and kept byte for byte; an issued
          quote is never edited, only superseded by a revision.
        </p>
        <p>
          Figures in it are estimates until measured, and it does not approve any work: the owner of the valve, the
          rules of the place and competent persons decide.
        </p>
        <div className={styles.row}>
          <button type="button" className={styles.main} disabled={busy} onClick={issue}>
            {busy ? 'Drawing the papers…' : name}
          </button>
          <button type="button" className={styles.button} disabled={busy} onClick={() => dialog.current?.close()}>
            Not yet
          </button>
        </div>
      </dialog>
    </div>
  );
}

function issuedName(value: unknown): string {
  if (value === null || typeof value !== 'object' || !('number' in value) || !('revision' in value)) return 'the quote';
  return `${String(value.number)} ${String(value.revision)}`;
}
