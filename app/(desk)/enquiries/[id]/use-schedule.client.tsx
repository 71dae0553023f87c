'use client';

import { useCallback, useRef, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import type { CellEdit, CellsEdited } from '#lib/services/edit-cells.ts';
import type { LineView } from '#lib/services/line-view.ts';
import type { LinesView } from '#lib/services/list-lines.ts';

export interface Filter {
  readonly text: string;
  readonly problems: boolean;
}

const WINDOW = 100;

export interface Schedule {
  readonly total: number;
  readonly at: (index: number) => LineView | undefined;
  readonly filter: Filter;
  readonly trouble: string;
  readonly saving: boolean;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  readonly need: (from: number, to: number) => void;
  readonly refilter: (filter: Filter) => void;
  readonly edit: (edits: readonly CellEdit[]) => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly add: (cells: readonly Readonly<Record<string, string>>[]) => void;
  readonly remove: (lineIds: readonly number[]) => void;
}

/** The lines that were loaded so far, edits as they are made, and the way back. */
export function useSchedule({ enquiryId, first }: { readonly enquiryId: number; readonly first: LinesView }): Schedule {
  const path = `/api/v1/enquiries/${enquiryId}/lines`;
  const [total, setTotal] = useState(first.total);
  const [lines, setLines] = useState<ReadonlyMap<number, LineView>>(
    () => new Map(first.lines.map((line, index) => [index, line])),
  );
  const [filter, setFilter] = useState<Filter>({ text: '', problems: false });
  const [trouble, setTrouble] = useState('');
  const [saving, setSaving] = useState(false);
  const [past, setPast] = useState<readonly (readonly CellEdit[])[]>([]);
  const [future, setFuture] = useState<readonly (readonly CellEdit[])[]>([]);
  const asked = useRef(new Set<number>([0]));

  const load = useCallback(
    async (from: number, by: Filter): Promise<void> => {
      const query = new URLSearchParams({
        from: String(from),
        count: String(WINDOW),
        text: by.text,
        only: by.problems ? 'problems' : '',
      });
      const sent = await send<LinesView>({ method: 'GET', path: `${path}?${query}` });
      if (!sent.ok) {
        setTrouble(sent.sentence);
        return;
      }
      setTotal(sent.value.total);
      setLines(
        (before) => new Map([...before, ...sent.value.lines.map((line, index) => [from + index, line] as const)]),
      );
    },
    [path],
  );

  const need = useCallback(
    (from: number, to: number): void => {
      for (let start = Math.floor(from / WINDOW) * WINDOW; start <= to; start += WINDOW) {
        if (asked.current.has(start)) continue;
        asked.current.add(start);
        void load(start, filter);
      }
    },
    [filter, load],
  );

  function refilter(next: Filter): void {
    setFilter(next);
    setLines(new Map());
    asked.current = new Set([0]);
    void load(0, next);
  }

  async function save(edits: readonly CellEdit[]): Promise<readonly CellEdit[] | undefined> {
    setSaving(true);
    const sent = await send<CellsEdited>({ method: 'PATCH', path, body: { edits } });
    setSaving(false);
    setTrouble(sent.ok ? '' : sent.sentence);
    if (!sent.ok) return undefined;
    const changed = new Map(sent.value.lines.map((line) => [line.id, line]));
    setLines((before) => new Map([...before].map(([index, line]) => [index, changed.get(line.id) ?? line])));
    return sent.value.undo;
  }

  async function edit(edits: readonly CellEdit[]): Promise<void> {
    const back = await save(edits);
    if (!back) return;
    setPast((before) => [...before, back]);
    setFuture([]);
  }

  async function step(way: 'undo' | 'redo'): Promise<void> {
    const stack = way === 'undo' ? past : future;
    const edits = stack.at(-1);
    if (!edits) return;
    const back = await save(edits);
    if (!back) return;
    const [setFrom, setTo] = way === 'undo' ? [setPast, setFuture] : [setFuture, setPast];
    setFrom((before) => before.slice(0, -1));
    setTo((before) => [...before, back]);
  }

  async function change(method: 'POST' | 'DELETE', body: unknown): Promise<void> {
    const sent = await send({ method, path, body });
    setTrouble(sent.ok ? '' : sent.sentence);
    if (sent.ok) refilter(filter);
  }

  return {
    total,
    at: (index) => lines.get(index),
    filter,
    trouble,
    saving,
    canUndo: past.length > 0,
    canRedo: future.length > 0,
    need,
    refilter,
    edit: (edits) => void edit(edits),
    undo: () => void step('undo'),
    redo: () => void step('redo'),
    add: (cells) => void change('POST', { lines: cells.map((one) => ({ cells: one })) }),
    remove: (lineIds) => void change('DELETE', { lineIds }),
  };
}
