'use client';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { useWords } from '#app/_ui/shown-forms.client.tsx';
import { useAdopt } from './use-adopt.client.tsx';

export interface Way {
  readonly key: string;
  readonly sentence: string;
  /** What the button does; empty where somebody else must. */
  readonly action: string;
}

/** Other terms under which more valves are served, the most first and then the cheapest. */
export function PlanWays({ enquiryId, ways }: { readonly enquiryId: number; readonly ways: readonly Way[] }) {
  const { adopt, busy, problem } = useAdopt({ enquiryId, kind: 'ways' });
  const words = useWords();
  return (
    <>
      <ul className={styles.bare}>
        {ways.map((way) => (
          <li key={way.key} className={styles.offer}>
            <span>{words(way.sentence)}</span>
            {way.action === '' ? null : (
              <button type="button" className={styles.offerButton} disabled={busy !== ''} onClick={() => adopt(way)}>
                {busy === way.key ? 'Taking it…' : `${words(way.action)} and plan again`}
              </button>
            )}
          </li>
        ))}
      </ul>
      {problem === '' ? null : (
        <p className={styles.refused} role="alert">
          {problem}
        </p>
      )}
    </>
  );
}
