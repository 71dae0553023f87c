'use client';

import { useCallback, useSyncExternalStore } from 'react';
import { beep } from './beep.ts';

const STORE = 'kitwright.muted';
const listeners = new Set<() => void>();

/** The sounds of the yard, which a person may mute on this machine. */
export function useSound() {
  const isMuted = useSyncExternalStore(subscribe, readMuted, () => false);
  const sound = useCallback(
    (tone: 'good' | 'bad') => {
      if (!isMuted) beep(tone);
    },
    [isMuted],
  );
  return { sound, isMuted, toggleSound };
}

function toggleSound(): void {
  try {
    window.localStorage.setItem(STORE, readMuted() ? 'no' : 'yes');
  } catch {
    // Where nothing is kept it stays loud.
  }
  for (const listener of listeners) listener();
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

function readMuted(): boolean {
  try {
    return window.localStorage.getItem(STORE) === 'yes';
  } catch {
    return false;
  }
}
