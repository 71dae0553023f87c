'use client';

import { useState } from 'react';

interface CountProps {
  readonly label: string;
  /** How many are wanted. */
  readonly count: number;
  readonly onCount: (count: number) => void;
}

/** How many of a box were counted out; nothing is taken for granted, so the field begins empty. */
export function CountPieces({ label, count, onCount }: CountProps) {
  const [text, setText] = useState('');
  return (
    <form
      className="count-pieces no-print"
      onSubmit={(event) => {
        event.preventDefault();
        if (/^\d{1,6}$/.test(text.trim())) onCount(Number(text));
      }}
    >
      <input
        aria-label={label}
        inputMode="numeric"
        value={text}
        onChange={(event) => setText(event.target.value)}
        placeholder={String(count)}
      />
      <button type="submit">Counted</button>
    </form>
  );
}
