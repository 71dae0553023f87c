/*
 * Finds a text in cells and says what they would read with another one in its place.
 * Invariant: a find without text finds nothing; what is replaced is told cell by cell before anything is written.
 * Not here: writing it (lib/services/schedule/bulk-edit.ts).
 * Read next: write-cells.ts.
 */
import type { Cells, Column } from '#lib/intake/columns.ts';

export interface Replacement {
  readonly find: string;
  readonly put: string;
  /** Columns looked in; none means all. */
  readonly columns: readonly Column[];
  readonly match: 'part' | 'whole';
  /** Whether capitals count. */
  readonly letters: 'any' | 'exact';
}

export interface Replaced {
  readonly lineId: number;
  readonly column: Column;
  readonly before: string;
  readonly after: string;
}

export interface TextLine {
  readonly id: number;
  readonly cells: Cells;
}

export function replaceText(lines: readonly TextLine[], replacement: Replacement): readonly Replaced[] {
  if (replacement.find === '') return [];
  const among = new Set<string>(replacement.columns);
  const pattern = patternOf(replacement);
  return lines.flatMap(({ id, cells }) =>
    columnsOf(cells)
      .filter(([column]) => among.size === 0 || among.has(column))
      .filter(([, before]) => before.search(pattern) >= 0)
      .map(([column, before]) => ({
        ...{ lineId: id, column, before },
        after: before.replace(pattern, () => replacement.put).trim(),
      })),
  );
}

function columnsOf(cells: Cells): readonly (readonly [Column, string])[] {
  return Object.entries(cells) as [Column, string][];
}

function patternOf({ find, match, letters }: Replacement): RegExp {
  const plain = find.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
  const flags = letters === 'exact' ? 'gu' : 'giu';
  return new RegExp(match === 'whole' ? `^\\s*${plain.trim()}\\s*$` : plain, flags);
}
