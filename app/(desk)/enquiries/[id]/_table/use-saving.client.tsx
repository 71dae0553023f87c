'use client';

import { useEffect, useMemo, useRef, useState } from 'react';
import { type SavingState, type SavingStore, savingStore } from './saving-store.ts';
import type { Job, JobDone } from './schedule-jobs.ts';

/** A cell whose text is not saved yet. */
export interface Unsaved {
  readonly text: string;
  /** Whether saving it failed so far. */
  readonly kept: boolean;
}

export interface Saving extends SavingState {
  /** By line, by column. */
  readonly unsaved: ReadonlyMap<number, ReadonlyMap<string, Unsaved>>;
  /** The queue itself; nothing on the server, where nothing is saved. */
  readonly store: SavingStore | undefined;
}

const IDLE: SavingState = { jobs: [], trouble: '', refused: [], clashes: [], past: [], future: [] };

interface SavingOf {
  readonly enquiryId: number;
  readonly onDone: (done: JobDone) => void;
}

/** Follows the queue of this enquiry, and asks before a link is followed while something could not be saved. */
export function useSaving({ enquiryId, onDone }: SavingOf): Saving {
  const [store, setStore] = useState<SavingStore>();
  const [state, setState] = useState(IDLE);
  const latest = useRef(onDone);
  latest.current = onDone;

  useEffect(() => {
    const opened = savingStore(enquiryId);
    setStore(opened);
    setState(opened.state());
    return opened.follow((done) => {
      setState(opened.state());
      if (done) latest.current(done);
    });
  }, [enquiryId]);

  useLeaving(state.refused.length > 0 || (state.jobs.length > 0 && state.trouble !== ''));
  const { jobs, trouble } = state;
  const unsaved = useMemo(() => unsavedOf(jobs, trouble !== ''), [jobs, trouble]);
  return { ...state, unsaved, store };
}

function unsavedOf(jobs: readonly Job[], kept: boolean): ReadonlyMap<number, ReadonlyMap<string, Unsaved>> {
  const lines = new Map<number, Map<string, Unsaved>>();
  for (const job of jobs) {
    if (job.kind !== 'cells') continue;
    for (const { lineId, column, text } of job.edits) {
      const line = lines.get(lineId) ?? new Map<string, Unsaved>();
      line.set(column, { text, kept });
      lines.set(lineId, line);
    }
  }
  return lines;
}

const LEAVE =
  'Some of what you typed could not be saved yet. Leave this screen? It is kept in this window and tried again.';

function useLeaving(isKept: boolean): void {
  useEffect(() => {
    if (!isKept) return undefined;
    function onClick(event: MouseEvent): void {
      const link = event.target instanceof Element ? event.target.closest('a[href]') : null;
      if (!link || window.confirm(LEAVE)) return;
      event.preventDefault();
      event.stopPropagation();
    }
    document.addEventListener('click', onClick, true);
    return () => document.removeEventListener('click', onClick, true);
  }, [isKept]);
}
