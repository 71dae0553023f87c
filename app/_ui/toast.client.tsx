'use client';

import { useEffect, useState } from 'react';

interface ToastProps {
  /** What was just done. */
  readonly words: string;
  readonly onUndo: () => void;
  /** It was read, undone, or waited long enough. */
  readonly onDone: () => void;
}

const SHOWN_MS = 9000;

/** Says what was just done and takes it back; it waits as long as one looks at it or has the keys on it. */
export function Toast({ words, onUndo, onDone }: ToastProps) {
  const [isHeld, setHeld] = useState(false);

  useEffect(() => {
    if (isHeld) return;
    const timer = setTimeout(onDone, SHOWN_MS);
    return () => clearTimeout(timer);
  }, [isHeld, onDone]);

  return (
    <div className="toasts">
      <div
        className="toast"
        role="status"
        onPointerEnter={() => setHeld(true)}
        onPointerLeave={() => setHeld(false)}
        onFocus={() => setHeld(true)}
        onBlur={() => setHeld(false)}
      >
        {words}
        <button
          type="button"
          onClick={() => {
            onUndo();
            onDone();
          }}
        >
          Undo
        </button>
      </div>
    </div>
  );
}
