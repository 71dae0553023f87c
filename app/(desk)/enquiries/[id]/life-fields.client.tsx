'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import type { EnquiryLifeView } from '#lib/services/enquiries/open-enquiry-life.ts';
import styles from './enquiry-header.module.css';

/** Whose work it is and until when, saved as chosen; what somebody else chose meanwhile is told, not overwritten. */
export function LifeFields({ life }: { readonly life: EnquiryLifeView }) {
  const router = useRouter();
  const [trouble, setTrouble] = useState('');
  const { assigned_to, due_on } = life;

  async function save(set: Readonly<Record<string, unknown>>): Promise<void> {
    const body = { set, was: { assigned_to, due_on } };
    const sent = await send({ method: 'PATCH', path: `/api/v1/enquiries/${life.id}/life`, body });
    setTrouble(sent.ok ? '' : sent.sentence);
    router.refresh();
  }

  return (
    <div className={styles.fields}>
      <label>
        Whose work
        <select value={assigned_to} onChange={(event) => save({ assigned_to: event.target.value })}>
          <option value="">nobody’s yet</option>
          {life.people.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <label>
        Due
        <input
          key={due_on}
          type="date"
          defaultValue={due_on ?? ''}
          onBlur={(event) => {
            const day = event.target.value === '' ? null : event.target.value;
            if (day !== due_on) void save({ due_on: day });
          }}
        />
      </label>
      {trouble !== '' && (
        <p className={`notice refusal ${styles.trouble}`} role="alert">
          {trouble}
        </p>
      )}
    </div>
  );
}
