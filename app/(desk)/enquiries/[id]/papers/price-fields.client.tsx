'use client';
import { useId } from 'react';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import sheet from './price-sheet.module.css';

interface FieldProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly inputMode?: 'decimal' | 'text';
  readonly type?: 'text' | 'date';
  readonly wide?: 'yes';
}

export function Field({ label, value, onChange, inputMode = 'text', type = 'text', wide }: FieldProps) {
  return (
    <label className={`${styles.field} ${wide === undefined ? '' : sheet.wide}`}>
      {label}
      <input
        className={styles.input}
        value={value}
        type={type}
        inputMode={inputMode}
        autoComplete="off"
        onChange={(event) => onChange(event.target.value)}
      />
    </label>
  );
}

interface SelectProps {
  readonly label: string;
  readonly value: string;
  readonly choices: readonly { readonly value: string; readonly name: string }[];
  readonly onChange: (value: string) => void;
  readonly wide?: 'yes';
}

export function SelectField({ label, value, choices, onChange, wide }: SelectProps) {
  const id = useId();
  return (
    <span className={`${styles.field} ${wide === undefined ? '' : sheet.wide}`}>
      <label htmlFor={id}>{label}</label>
      <select id={id} className={styles.input} value={value} onChange={(event) => onChange(event.target.value)}>
        {choices.map((choice) => (
          <option key={choice.value} value={choice.value}>
            {choice.name}
          </option>
        ))}
      </select>
    </span>
  );
}

interface FormEndProps {
  readonly problem: string;
  readonly busy: boolean;
  /** Words of the button that keeps what was typed. */
  readonly words: string;
  readonly onClose: () => void;
}

export function FormEnd({ problem, busy, words, onClose }: FormEndProps) {
  return (
    <>
      {problem === '' ? null : (
        <p className={styles.refused} role="alert">
          {problem}
        </p>
      )}
      <div className={styles.row}>
        <button type="submit" className={styles.main} disabled={busy}>
          {words}
        </button>
        <button type="button" className={styles.button} disabled={busy} onClick={onClose}>
          Leave it
        </button>
      </div>
    </>
  );
}
