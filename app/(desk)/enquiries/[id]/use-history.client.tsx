'use client';

import { useRef, useState } from 'react';
import { renameLines, type Step, takeStep } from './schedule-steps.ts';
import type { Lines } from './use-lines.client.tsx';

/** Steps that are taken, and taken back, as one. */
export type Change = readonly Step[];

interface Taken {
  /** What takes back the steps that were done, even when a later one was refused. */
  readonly back: Change;
  readonly ok: boolean;
  /** Lines came or went. */
  readonly moved: boolean;
}

interface History {
  readonly trouble: string;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** Makes a change that can be taken back; answers whether lines came or went. */
  readonly make: (change: Change) => Promise<boolean>;
  /** Takes the last change back, or makes it again; answers whether lines came or went. */
  readonly step: (way: 'undo' | 'redo') => Promise<boolean>;
  /** Lets the screen know how far back and forth it goes now. */
  readonly count: () => void;
}

/** The changes that were made to the schedule, and those that were taken back. */
export function useHistory({ path, lines }: { readonly path: string; readonly lines: Lines }): History {
  const [trouble, setTrouble] = useState('');
  const [depth, setDepth] = useState({ past: 0, future: 0 });
  const past = useRef<Change[]>([]);
  const future = useRef<Change[]>([]);

  async function take(change: Change): Promise<Taken> {
    const back: Step[] = [];
    let moved = false;
    for (const step of change) {
      const sent = await takeStep(path, step);
      setTrouble(sent.ok ? '' : sent.sentence);
      if (!sent.ok) return { back, ok: false, moved };
      const { value } = sent;
      for (const stack of [past, future]) {
        stack.current = stack.current.map((one) => one.map((other) => renameLines(other, value.renamed)));
      }
      back.unshift(value.back);
      lines.change(value.changed);
      moved ||= value.moved;
    }
    return { back, ok: true, moved };
  }

  async function make(change: Change): Promise<boolean> {
    const { back, moved } = await take(change);
    if (back.length === 0) return false;
    past.current.push(back);
    future.current = [];
    return moved;
  }

  async function step(way: 'undo' | 'redo'): Promise<boolean> {
    const [from, to] = way === 'undo' ? [past, future] : [future, past];
    const change = from.current.at(-1);
    if (!change) return false;
    const { back, ok, moved } = await take(change);
    if (!ok && back.length === 0) return false;
    from.current.pop();
    to.current.push(back);
    return moved;
  }

  return {
    ...{ trouble, make, step },
    canUndo: depth.past > 0,
    canRedo: depth.future > 0,
    count: () => setDepth({ past: past.current.length, future: future.current.length }),
  };
}
