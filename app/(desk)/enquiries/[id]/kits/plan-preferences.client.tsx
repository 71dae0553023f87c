'use client';
import { useRouter } from 'next/navigation';
import { useState, useTransition } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { PlanWide } from '#app/_ui/plan/plan-wide.tsx';
import { ShownWords } from '#app/_ui/shown-forms.client.tsx';
import type { PlanSummary } from '#lib/services/plans/plan-view.ts';
import { PLAN_BEFORE } from './plan-before.ts';

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
  /** By the plan it is compared with, the one before among them: more or less of each figure; null for itself and where there is none. */
  readonly against: Readonly<Record<string, Readonly<Record<Figure, string>> | null>>;
}

type Figure = 'served' | 'cost' | 'price' | 'hours' | 'mass' | 'pieces';

interface PreferencesProps {
  readonly enquiryId: number;
  readonly version: number;
  readonly shown: PlanSummary['preference'];
  readonly rows: readonly PreferenceRow[];
  /** What the shown plan has more or less than the one before; undefined for the first. */
  readonly since: string | undefined;
}

/** The four plans side by side; the chosen one is what kits, price and papers follow. */
export function PlanPreferences({ enquiryId, version, shown, rows, since }: PreferencesProps) {
  const router = useRouter();
  const [base, setBase] = useState('');
  const [problem, setProblem] = useState('');
  const [saving, setSaving] = useState(false);
  const [reading, startReading] = useTransition();
  const busy = saving || reading;

  async function choose(preference: PlanSummary['preference']): Promise<void> {
    setSaving(true);
    const answer = await send({
      path: `/api/v1/enquiries/${enquiryId}`,
      method: 'PATCH',
      body: { version, preference },
    });
    setSaving(false);
    setProblem(answer.ok ? '' : answer.sentence);
    startReading(() => router.refresh());
  }

  return (
    <>
      {since === undefined ? null : (
        <p className={styles.screenOnly}>
          Against the plan before: <ShownWords>{since}</ShownWords>.
        </p>
      )}
      <label className={`${styles.field} ${styles.screenOnly}`} style={{ justifyItems: 'start' }}>
        Show differences from
        <select className={styles.input} value={base} onChange={(event) => setBase(event.target.value)}>
          <option value="">no other plan</option>
          {since === undefined ? null : <option value={PLAN_BEFORE}>The plan before this one</option>}
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
