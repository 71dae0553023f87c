'use client';

import { useEffect, useId, useRef, useState } from 'react';

interface ScanFieldProps {
  readonly label: string;
  /** What may be scanned or typed here. */
  readonly help?: string;
  /** Gets what was read, as it came. */
  readonly onScan: (text: string) => void;
  readonly disabled?: boolean;
}

/** One field for a code reader and for fingers: it takes the keys when the screen opens and again after every scan. */
export function ScanField({ label, help, onScan, disabled = false }: ScanFieldProps) {
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const [text, setText] = useState('');

  useEffect(() => {
    if (!disabled) field.current?.focus();
  }, [disabled]);

  return (
    <form
      className="scan-field"
      onSubmit={(event) => {
        event.preventDefault();
        if (text.trim() === '') return;
        onScan(text);
        setText('');
        field.current?.focus();
      }}
    >
      <label htmlFor={id}>{label}</label>
      <div>
        <input
          id={id}
          ref={field}
          value={text}
          onChange={(event) => setText(event.target.value)}
          disabled={disabled}
          autoComplete="off"
          autoCapitalize="characters"
          spellCheck={false}
          enterKeyHint="done"
          aria-describedby={help === undefined ? undefined : `${id}-help`}
        />
        <button type="submit" className="main" disabled={disabled}>
          Take
        </button>
      </div>
      {help !== undefined && (
        <small id={`${id}-help`} className="field-help">
          {help}
        </small>
      )}
    </form>
  );
}
