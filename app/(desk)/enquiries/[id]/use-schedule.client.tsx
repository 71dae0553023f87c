'use client';

import { useRef, useState } from 'react';
import type { CellEdit } from '#lib/services/edit-cells.ts';
import type { LinesView } from '#lib/services/list-lines.ts';
import { type PastedBlock, pasteSteps } from './paste-block.ts';
import { renameLines, type Step, takeStep } from './schedule-steps.ts';
import { type Lines, NO_FILTER, useLines } from './use-lines.client.tsx';

type Change = readonly Step[];

export interface Schedule extends Lines {
  readonly trouble: string;
  readonly told: string;
  readonly saving: boolean;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  readonly edit: (edits: readonly CellEdit[]) => void;
  readonly paste: (block: PastedBlock) => void;
  readonly undo: () => void;
  readonly redo: () => void;
  /** Answers with the number of lines there are then. */
  readonly addLine: () => Promise<number>;
  readonly remove: (lineIds: readonly number[]) => void;
}

/** Edits as they are made, one after the other, and the way back and forth. */
export function useSchedule({ enquiryId, first }: { readonly enquiryId: number; readonly first: LinesView }): Schedule {
  const path = `/api/v1/enquiries/${enquiryId}/lines`;
  const lines = useLines({ path, first });
  const [trouble, setTrouble] = useState('');
  const [told, setTold] = useState('');
  const [waiting, setWaiting] = useState(0);
  const [depth, setDepth] = useState({ past: 0, future: 0 });
  const past = useRef<Change[]>([]);
  const future = useRef<Change[]>([]);
  const queue = useRef<Promise<unknown>>(Promise.resolve());

  /** Changes wait for each other, so that they come back in the order they were made. */
  function inTurn(work: () => Promise<void>): Promise<void> {
    setWaiting((count) => count + 1);
    const done = queue.current.then(work).finally(() => {
      setWaiting((count) => count - 1);
      setDepth({ past: past.current.length, future: future.current.length });
    });
    queue.current = done.catch(() => undefined);
    return done;
  }

  /** Answers with what takes back the steps that were done, even when a later one was refused. */
  async function take(
    change: Change,
  ): Promise<{ readonly back: Change; readonly ok: boolean; readonly moved: boolean }> {
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
    setTold('');
    const { back, moved } = await take(change);
    if (back.length === 0) return false;
    past.current.push(back);
    future.current = [];
    return moved;
  }

  function step(way: 'undo' | 'redo'): Promise<void> {
    return inTurn(async () => {
      const [from, to] = way === 'undo' ? [past, future] : [future, past];
      const change = from.current.at(-1);
      if (!change) return;
      const { back, ok, moved } = await take(change);
      if (!ok && back.length === 0) return;
      from.current.pop();
      to.current.push(back);
      if (moved) await lines.reload(lines.filter);
    });
  }

  async function addLine(): Promise<number> {
    let total = 0;
    await inTurn(async () => {
      await make([{ kind: 'add', lines: [{ cells: {} }], was: [] }]);
      total = await lines.reload(NO_FILTER);
    });
    return total;
  }

  function paste(block: PastedBlock): Promise<void> {
    return inTurn(async () => {
      const targets = await lines.fetchFrom(block.index, block.rows.length);
      const { steps, sentence } = pasteSteps({ block, targets, isFiltered: isSet(lines) });
      if (steps.length > 0 && (await make(steps))) await lines.reload(lines.filter);
      setTold(sentence);
    });
  }

  return {
    ...lines,
    trouble: trouble === '' ? lines.lost : trouble,
    told,
    saving: waiting > 0,
    canUndo: depth.past > 0,
    canRedo: depth.future > 0,
    edit: (edits) => void inTurn(async () => void (await make([{ kind: 'cells', edits }]))),
    paste: (block) => void paste(block),
    undo: () => void step('undo'),
    redo: () => void step('redo'),
    addLine,
    remove: (lineIds) =>
      void inTurn(async () => {
        await make([{ kind: 'remove', lineIds }]);
        await lines.reload(lines.filter);
      }),
  };
}

function isSet({ filter }: Lines): boolean {
  return filter.text.trim() !== '' || filter.problems;
}
