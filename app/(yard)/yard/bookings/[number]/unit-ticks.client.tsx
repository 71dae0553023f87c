'use client';

import styles from './booking.module.css';

interface UnitTicksProps {
  readonly legend: string;
  readonly serials: readonly string[];
  readonly chosen: readonly string[];
  readonly onChange: (chosen: readonly string[]) => void;
}

/** Some of the units, by ticking them. */
export function UnitTicks({ legend, serials, chosen, onChange }: UnitTicksProps) {
  return (
    <fieldset className={styles.ticks}>
      <legend>{legend}</legend>
      {serials.map((serial) => (
        <label key={serial} className="tick">
          <input
            type="checkbox"
            checked={chosen.includes(serial)}
            onChange={(event) =>
              onChange(event.target.checked ? [...chosen, serial] : chosen.filter((one) => one !== serial))
            }
          />
          {serial}
        </label>
      ))}
    </fieldset>
  );
}

interface FieldProps {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly type?: 'text' | 'date' | 'datetime-local';
}

export function DeedField({ id, label, value, onChange, type = 'text' }: FieldProps) {
  return (
    <div>
      <label htmlFor={id}>{label}</label>
      <input id={id} type={type} value={value} autoComplete="off" onChange={(event) => onChange(event.target.value)} />
    </div>
  );
}
