'use client';

import type { NewBookingForm } from '#lib/services/yard/new-booking-form.ts';
import type { Need } from './booking-draft.ts';
import styles from './new-booking.module.css';

interface NeedRowsProps {
  readonly needs: readonly Need[];
  readonly models: NewBookingForm['models'];
  readonly onChange: (needs: readonly Need[]) => void;
}

/** A model and how many of it a row; the last row cannot be taken away. */
export function NeedRows({ needs, models, onChange }: NeedRowsProps) {
  const change = (id: number, set: Partial<Need>): void =>
    onChange(needs.map((need) => (need.id === id ? { ...need, ...set } : need)));
  const roles = [...new Set(models.map(({ role }) => role))];
  return (
    <>
      <ul className={styles.needs}>
        {needs.map((need, index) => (
          <li key={need.id}>
            <label>
              Model
              <select
                value={need.model}
                required
                aria-label={`Model ${index + 1}`}
                onChange={({ target }) => change(need.id, { model: target.value })}
              >
                <option value="">choose</option>
                {roles.map((role) => (
                  <optgroup key={role} label={role}>
                    {models
                      .filter((model) => model.role === role)
                      .map(({ number, name }) => (
                        <option key={number} value={number}>
                          {number} {name}
                        </option>
                      ))}
                  </optgroup>
                ))}
              </select>
            </label>
            <label>
              Pieces
              <input
                type="number"
                min={1}
                max={1000}
                required
                inputMode="numeric"
                aria-label={`Pieces of model ${index + 1}`}
                value={need.count}
                onChange={({ target }) => change(need.id, { count: target.value })}
              />
            </label>
            <button
              type="button"
              disabled={needs.length === 1}
              aria-label={`Leave out model ${index + 1}`}
              onClick={() => onChange(needs.filter(({ id }) => id !== need.id))}
            >
              Leave out
            </button>
          </li>
        ))}
      </ul>
      <button
        type="button"
        disabled={needs.length >= 100}
        onClick={() => onChange([...needs, { id: Math.max(...needs.map(({ id }) => id)) + 1, model: '', count: '1' }])}
      >
        Another model
      </button>
    </>
  );
}
