'use client';

import { type FormEvent, useId, useRef } from 'react';
import styles from './moves.module.css';

interface ScanBoxProps {
  readonly label: string;
  readonly busy: boolean;
  readonly onScan: (text: string) => void;
}

/** One wide field that a reader fills and ends with Enter, or a finger types into; it keeps the place for the next scan. */
export function ScanBox({ label, busy, onScan }: ScanBoxProps) {
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const text = field.current?.value ?? '';
    if (text.trim() === '') return;
    onScan(text);
    if (field.current) {
      field.current.value = '';
      field.current.focus();
    }
  };
  return (
    <form className={styles.scan} onSubmit={submit}>
      <label htmlFor={id}>{label}</label>
      <div>
        <input ref={field} id={id} type="text" autoComplete="off" autoCapitalize="characters" spellCheck={false} />
        <button type="submit" className="main" disabled={busy}>
          Take
        </button>
      </div>
    </form>
  );
}
