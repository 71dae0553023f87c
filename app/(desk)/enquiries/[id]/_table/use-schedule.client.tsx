'use client';

import { useEffect, useState } from 'react';
import { NO_FILTER, showsAll } from '#lib/schedule/line-filter.ts';
import type { BulkEdit } from '#lib/services/schedule/bulk-edit.ts';
import type { CellEdit } from '#lib/services/schedule/edit-cells.ts';
import type { ChangeView } from '#lib/services/schedule/read-changes.ts';
import { useLive } from '../live-enquiry.client.tsx';
import type { JobDone, Work } from './schedule-jobs.ts';
import { type FirstLines, type Lines, useLines } from './use-lines.client.tsx';
import { type Saving, useSaving } from './use-saving.client.tsx';

/** Who wrote a cell a moment ago, by line, by column. */
export type Foreign = ReadonlyMap<number, ReadonlyMap<string, string>>;

export interface Schedule {
  readonly enquiryId: number;
  readonly lines: Lines;
  readonly saving: Saving;
  readonly foreign: Foreign;
  readonly told: string;
  readonly tell: (sentence: string) => void;
  /** Whether all lines are shown in the list’s own order. */
  readonly isWhole: boolean;
  /** What a cell says, saved or not. */
  readonly textOf: (lineId: number, column: string) => string;
  readonly take: (...work: readonly Work[]) => void;
  /** Writes cells against what they say now, so that nobody else’s text is written over unseen. */
  readonly write: (edits: readonly CellEdit[]) => void;
  readonly bulk: (lineIds: readonly number[] | undefined, edit: BulkEdit) => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly addLine: (after?: number) => void;
  /** Where a line came that was just added at the end. */
  readonly newest: number | undefined;
}

/** The schedule as this window sees it: lines, what is being saved, and what others change meanwhile. */
export function useSchedule({
  enquiryId,
  first,
}: {
  readonly enquiryId: number;
  readonly first: FirstLines;
}): Schedule {
  const lines = useLines({ path: `/api/v1/enquiries/${enquiryId}/lines`, first });
  const [told, tell] = useState('');
  const [newest, setNewest] = useState<number>();
  const saving = useSaving({ enquiryId, onDone: (done) => void taken(done) });
  const foreign = useForeign({ lines, tell });

  async function taken(done: JobDone): Promise<void> {
    lines.change(done.lines);
    if (done.told !== '') tell(done.told);
    if (done.moved || done.wide) await lines.reload();
  }

  function textOf(lineId: number, column: string): string {
    const unsaved = saving.unsaved.get(lineId)?.get(column);
    if (unsaved) return unsaved.text;
    const cells: Readonly<Record<string, string | undefined>> = lines.line(lineId)?.cells ?? {};
    return cells[column] ?? '';
  }

  function take(...work: readonly Work[]): void {
    tell('');
    saving.store?.take(work);
  }

  function write(edits: readonly CellEdit[]): void {
    const seen = edits.map((edit) =>
      edit.was === undefined && lines.line(edit.lineId) ? { ...edit, was: textOf(edit.lineId, edit.column) } : edit,
    );
    const changed = seen.filter(
      ({ text, was, measured }) => measured !== undefined || was === undefined || text !== was,
    );
    if (changed.length > 0) take({ kind: 'cells', edits: changed });
  }

  return {
    ...{ enquiryId, lines, saving, foreign, told, tell, textOf, take, write, newest },
    isWhole: showsAll(lines.filter) && lines.filter.sort === null,
    bulk: (lineIds, edit) => take({ kind: 'bulk', lineIds, edit }),
    undo: () => saving.store?.step('undo'),
    redo: () => saving.store?.step('redo'),
    addLine: (after) => {
      if (after === undefined) {
        setNewest(lines.state.lines);
        if (!showsAll(lines.filter)) void lines.show(NO_FILTER);
      }
      take({ kind: 'add', lines: [{ cells: {} }], after });
    },
  };
}

const MARKED_MS = 20_000;

/** What others changed: their lines are read again, their cells bear their name for a while, and it is told. */
function useForeign({ lines, tell }: { readonly lines: Lines; readonly tell: (sentence: string) => void }): Foreign {
  const { follow } = useLive();
  const [foreign, setForeign] = useState<Foreign>(new Map());
  useEffect(() =>
    follow((changes) => {
      lines.refresh([...new Set(changes.flatMap(({ cells }) => cells.map(({ lineId }) => lineId)))]);
      if (changes.some(({ reload }) => reload)) void lines.reload();
      setForeign((before) => changes.reduce(withMarks, before));
      tell(changes.map(({ who, told }) => `${who}: ${told}.`).join(' '));
    }),
  );
  useEffect(() => {
    if (foreign.size === 0) return undefined;
    const timer = setTimeout(() => setForeign(new Map()), MARKED_MS);
    return () => clearTimeout(timer);
  }, [foreign]);
  return foreign;
}

function withMarks(before: Foreign, { who, cells }: ChangeView): Foreign {
  const after = new Map(before);
  for (const { lineId, column } of cells) after.set(lineId, new Map([...(after.get(lineId) ?? []), [column, who]]));
  return after;
}
