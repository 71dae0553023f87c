'use client';

import { useEffect, useState } from 'react';
import { USUAL } from './grid-columns.ts';

export interface ShownColumns {
  readonly names: readonly string[];
  readonly show: (names: readonly string[]) => void;
  readonly hide: (name: string) => void;
}

const KEY = 'kitwright-columns';

/** The columns that this browser shows, as they were chosen last. */
export function useShownColumns(): ShownColumns {
  const [names, setNames] = useState(USUAL);
  useEffect(() => setNames(readNames()), []);

  function show(next: readonly string[]): void {
    const all = next.includes('tag') ? next : ['tag', ...next];
    setNames(all);
    try {
      window.localStorage.setItem(KEY, JSON.stringify(all));
    } catch {
      // A browser that keeps nothing shows the usual columns next time.
    }
  }

  return { names, show, hide: (name) => show(names.filter((one) => one !== name)) };
}

function readNames(): readonly string[] {
  try {
    const kept: unknown = JSON.parse(window.localStorage.getItem(KEY) ?? 'null');
    return Array.isArray(kept) && kept.length > 0 ? kept.map(String) : USUAL;
  } catch {
    return USUAL;
  }
}
