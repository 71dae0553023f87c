'use client';

import { useRef, useState } from 'react';
import type { CellEdit } from '#lib/services/edit-cells.ts';
import type { LinesView } from '#lib/services/list-lines.ts';
import { type PastedBlock, pasteSteps } from './paste-block.ts';
import { type Change, useHistory } from './use-history.client.tsx';
import { type Lines, NO_FILTER, useLines } from './use-lines.client.tsx';

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
  const history = useHistory({ path, lines });
  const { inTurn, waiting } = useTurns(history.count);
  const [told, setTold] = useState('');
  const again = () => lines.reload(lines.filter);

  function make(change: Change): Promise<boolean> {
    setTold('');
    return history.make(change);
  }

  async function addLine(): Promise<number> {
    let total = 0;
    await inTurn(async () => {
      await make([{ kind: 'add', lines: [{ cells: {} }], was: [] }]);
      total = await lines.reload(NO_FILTER);
    });
    return total;
  }

  async function paste(block: PastedBlock): Promise<void> {
    const targets = await lines.fetchFrom(block.index, block.rows.length);
    const { steps, sentence } = pasteSteps({ block, targets, isFiltered: isSet(lines) });
    if (steps.length > 0 && (await make(steps))) await again();
    setTold(sentence);
  }

  async function remove(lineIds: readonly number[]): Promise<void> {
    await make([{ kind: 'remove', lineIds }]);
    await again();
  }

  async function step(way: 'undo' | 'redo'): Promise<void> {
    if (await history.step(way)) await again();
  }

  return {
    ...lines,
    ...{ told, canUndo: history.canUndo, canRedo: history.canRedo, addLine },
    trouble: history.trouble === '' ? lines.lost : history.trouble,
    saving: waiting > 0,
    edit: (edits) => void inTurn(async () => void (await make([{ kind: 'cells', edits }]))),
    paste: (block) => void inTurn(() => paste(block)),
    undo: () => void inTurn(() => step('undo')),
    redo: () => void inTurn(() => step('redo')),
    remove: (lineIds) => void inTurn(() => remove(lineIds)),
  };
}

/** Changes wait for each other, so that they come back in the order they were made. */
function useTurns(onDone: () => void) {
  const [waiting, setWaiting] = useState(0);
  const queue = useRef<Promise<unknown>>(Promise.resolve());

  function inTurn(work: () => Promise<void>): Promise<void> {
    setWaiting((count) => count + 1);
    const done = queue.current.then(work).finally(() => {
      setWaiting((count) => count - 1);
      onDone();
    });
    queue.current = done.catch(() => undefined);
    return done;
  }

  return { inTurn, waiting };
}

function isSet({ filter }: Lines): boolean {
  return filter.text.trim() !== '' || filter.problems;
}
