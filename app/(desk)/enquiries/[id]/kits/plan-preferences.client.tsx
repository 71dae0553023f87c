'use client';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { send } from '#app/_ui/plan/plan-send.ts';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { PlanWide } from '#app/_ui/plan/plan-wide.tsx';
import { ShownWords } from '#app/_ui/shown-forms.client.tsx';
import type { PlanSummary } from '#lib/services/plans/plan-view.ts';

/** One plan as the table shows it, every figure as text. */
export interface PreferenceRow {
  readonly preference: PlanSummary['preference'];
  readonly name: string;
  readonly served: string;
  readonly cost: string;
  readonly price: string;
  readonly hours: string;
  readonly mass: string;
  readonly pieces: string;
  readonly gap: string;
  readonly proof: string;
  /** By the plan it is compared with: more or less of each figure; null for itself. */
  readonly against: Readonly<Record<string, Readonly<Record<Figure, string>> | null>>;
}

type Figure = 'served' | 'cost' | 'price' | 'hours' | 'mass' | 'pieces';

interface PreferencesProps {
  readonly enquiryId: number;
  readonly version: number;
  readonly shown: PlanSummary['preference'];
  readonly rows: readonly PreferenceRow[];
}

/** The four plans side by side; the chosen one is what kits, price and papers follow. */
export function PlanPreferences({ enquiryId, version, shown, rows }: PreferencesProps) {
  const router = useRouter();
  const [base, setBase] = useState<PlanSummary['preference'] | ''>('');
  const [problem, setProblem] = useState('');
  const [busy, setBusy] = useState(false);

  async function choose(preference: PlanSummary['preference']): Promise<void> {
    setBusy(true);
    const answer = await send({
      path: `/api/v1/enquiries/${enquiryId}`,
      method: 'PATCH',
      body: { version, preference },
    });
    setBusy(false);
    setProblem(answer.ok ? '' : answer.sentence);
    router.refresh();
  }

  return (
    <>
      <label className={`${styles.field} ${styles.screenOnly}`} style={{ justifyItems: 'start' }}>
        Show differences from
        <select
          className={styles.input}
          value={base}
          onChange={(event) =>
            setBase(rows.find(({ preference }) => preference === event.target.value)?.preference ?? '')
          }
        >
          <option value="">no other plan</option>
          {rows.map((row) => (
            <option key={row.preference} value={row.preference}>
              {row.name}
            </option>
          ))}
        </select>
      </label>
      <PlanWide label="Table of the plans">
        <table className={styles.table}>
          <caption>
            As many valves as can be served come first in every plan; then the preference; cost settles what is equal.
          </caption>
          <PreferenceHead />
          <tbody>
            {rows.map((row) => (
              <PreferenceView
                key={row.preference}
                row={row}
                against={row.against[base] ?? null}
                isShown={row.preference === shown}
                isBusy={busy}
                onChoose={choose}
              />
            ))}
          </tbody>
        </table>
      </PlanWide>
      {problem === '' ? null : (
        <p className={styles.refused} role="alert">
          {problem}
        </p>
      )}
    </>
  );
}

const FIGURES: readonly (readonly [figure: Figure, heading: string])[] = [
  ['served', 'Valves served'],
  ['cost', 'Equipment and time'],
  ['price', 'Price with tax'],
  ['hours', 'Crew hours'],
  ['mass', 'Mass'],
  ['pieces', 'Pieces'],
];

function PreferenceHead() {
  return (
    <thead>
      <tr>
        <th scope="col">Preference</th>
        {FIGURES.map(([figure, heading]) => (
          <th scope="col" className={styles.number} key={figure}>
            {heading}
          </th>
        ))}
        <th scope="col">Could be better by</th>
        <th scope="col">Proof</th>
      </tr>
    </thead>
  );
}

interface PreferenceViewProps {
  readonly row: PreferenceRow;
  readonly against: PreferenceRow['against'][string];
  readonly isShown: boolean;
  readonly isBusy: boolean;
  readonly onChoose: (preference: PlanSummary['preference']) => Promise<void>;
}

/** One plan; the one that is shown says so where the others offer to be. */
function PreferenceView({ row, against, isShown, isBusy, onChoose }: PreferenceViewProps) {
  return (
    <tr aria-current={isShown}>
      <th scope="row">
        {row.name}
        <br />
        {isShown ? (
          <span className={styles.soft}>✓ shown and quoted</span>
        ) : (
          <button
            type="button"
            className={styles.small}
            disabled={isBusy}
            aria-label={`Use the plan: ${row.name}`}
            onClick={() => onChoose(row.preference)}
          >
            Use this plan
          </button>
        )}
      </th>
      {FIGURES.map(([figure]) => (
        <td className={styles.number} key={figure}>
          <ShownWords>{row[figure]}</ShownWords>
          {against === null || against === undefined ? null : (
            <span className={`${styles.under} ${styles.soft}`}>
              <ShownWords>{against[figure]}</ShownWords>
            </span>
          )}
        </td>
      ))}
      <td>
        <ShownWords>{row.gap}</ShownWords>
      </td>
      <td className={styles.sentence}>{row.proof}</td>
    </tr>
  );
}
