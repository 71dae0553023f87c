'use client';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import type { UnitSystem } from '#lib/units/format-quantity.ts';

const CHOICES = [
  { value: 'si', name: 'SI' },
  { value: 'us', name: 'US customary' },
] as const;

/** Which units the papers of this enquiry print; what is issued keeps those it was issued with. */
export function PaperUnits({ enquiryId, units }: { readonly enquiryId: number; readonly units: UnitSystem }) {
  const router = useRouter();
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState('');

  async function choose(value: UnitSystem): Promise<void> {
    setBusy(true);
    const answer = await send({
      path: `/api/v1/enquiries/${enquiryId}`,
      method: 'PATCH',
      body: { paper_units: value },
    });
    setBusy(false);
    setProblem(answer.ok ? '' : answer.sentence);
    router.refresh();
  }

  return (
    <>
      <fieldset className={styles.choices} disabled={busy}>
        <legend>Units on papers</legend>
        {CHOICES.map(({ value, name }) => (
          <label key={value}>
            <input
              type="radio"
              name="paper-units"
              value={value}
              checked={units === value}
              onChange={() => void choose(value)}
            />{' '}
            {name}
          </label>
        ))}
      </fieldset>
      <div role="alert">{problem === '' ? null : <p className={styles.refused}>{problem}</p>}</div>
    </>
  );
}
