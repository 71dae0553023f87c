/*
 * Writes texts into cells of lines, each against what its writer saw there.
 * Invariant: a cell that says something else by now is left alone and told with both texts; nobody's text is lost.
 * Not here: storing (lib/services/schedule/apply-change.ts).
 * Read next: schedule-change.ts.
 */
import type { Cells, Column } from '#lib/intake/columns.ts';
import type { CellChange, CellWrite } from './schedule-change.ts';

export interface WritableLine {
  readonly cells: Cells;
  readonly measured: readonly Column[];
}

/** Two people wrote one cell, or one wrote into a line that the other removed. */
export interface CellClash {
  readonly kind: 'changed' | 'gone';
  readonly lineId: number;
  readonly column: Column;
  readonly mine: string;
  /** What the cell says now; empty where the line is gone. */
  readonly theirs: string;
}

export interface CellsWritten {
  readonly lines: readonly (WritableLine & { readonly id: number })[];
  readonly done: readonly CellChange[];
  readonly clashes: readonly CellClash[];
}

export function writeCells(input: {
  readonly lines: ReadonlyMap<number, WritableLine>;
  readonly writes: readonly CellWrite[];
}): CellsWritten {
  const now = new Map(input.lines);
  const changed = new Set<number>();
  const done: CellChange[] = [];
  const clashes: CellClash[] = [];
  for (const write of input.writes) {
    const { lineId, column, was } = write;
    const text = write.text.trim();
    const line = now.get(lineId);
    if (!line) {
      clashes.push({ kind: 'gone', lineId, column, mine: text, theirs: '' });
      continue;
    }
    const before = line.cells[column] ?? '';
    if (was !== undefined && was.trim() !== before.trim() && text !== before.trim()) {
      clashes.push({ kind: 'changed', lineId, column, mine: text, theirs: before });
      continue;
    }
    const measuredBefore = line.measured.includes(column);
    const measuredAfter = text !== '' && (write.measured ?? measuredBefore);
    if (before === text && measuredBefore === measuredAfter) continue;
    now.set(lineId, written(line, { column, text, measured: measuredAfter }));
    changed.add(lineId);
    done.push({ lineId, column, before, after: text, measuredBefore, measuredAfter });
  }
  const lines = [...changed].flatMap((id) => {
    const line = now.get(id);
    return line ? [{ id, ...line }] : [];
  });
  return { lines, done, clashes };
}

interface Writing {
  readonly column: Column;
  readonly text: string;
  readonly measured: boolean;
}

function written(line: WritableLine, { column, text, measured }: Writing): WritableLine {
  const { [column]: _, ...others } = line.cells;
  const unmarked = line.measured.filter((name) => name !== column);
  return {
    cells: text === '' ? others : { ...others, [column]: text },
    measured: measured ? [...unmarked, column] : unmarked,
  };
}
