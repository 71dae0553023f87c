'use client';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { useWords } from '#app/_ui/shown-forms.client.tsx';
import { useCarryOut } from '#app/(desk)/enquiries/[id]/_why/use-carry-out.client.tsx';

interface StartLaterProps {
  readonly id: number;
  readonly version: number;
  /** The site as it was entered, for taking it back. */
  readonly siteJson: Readonly<Record<string, unknown>>;
  readonly startsOn: string;
  /** The same day as it is written. */
  readonly on: string;
  readonly sentence: string;
}

/** Moves the start of the hire to a day on which all of it can be there, plans anew, and keeps what undoes it. */
export function StartLater({ id, version, siteJson, startsOn, on, sentence }: StartLaterProps) {
  const words = useWords();
  const { carryOut, busy, problem } = useCarryOut(id);
  const begin = () =>
    carryOut({
      key: startsOn,
      action: `Start on ${on}`,
      told: { sentence },
      message: {
        path: `/api/v1/enquiries/${id}`,
        method: 'PATCH',
        body: { version, site: { ...siteJson, starts_on: startsOn } },
      },
      undone: (answer) => ({
        lines: 0,
        version: (answer as { readonly version: number }).version,
        undo: { edits: [], enquiry: { site: siteJson } },
      }),
      replan: 'yes',
    });
  return (
    <>
      <p className={styles.offer}>
        <span>{words(sentence)}</span>
        <button type="button" className={styles.offerButton} disabled={busy !== ''} onClick={begin}>
          {busy === startsOn ? 'Taking it…' : `${words(`Start on ${on}`)} and plan again`}
        </button>
      </p>
      {problem === '' ? null : (
        <p className={styles.refused} role="alert">
          {problem}
        </p>
      )}
    </>
  );
}
