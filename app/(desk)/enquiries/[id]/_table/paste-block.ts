import type { CellEdit } from '#lib/services/schedule/edit-cells.ts';

export interface PastedBlock {
  /** Columns from the one pasted into to the last one shown. */
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

interface PasteInput {
  readonly block: PastedBlock;
  /** The lines that are there, from the first one on. */
  readonly lineIds: readonly number[];
  /** Whether lines may come at the end; not while some are hidden or in another order. */
  readonly grows: 'yes' | 'no';
}

interface Pasted {
  readonly edits: readonly CellEdit[];
  readonly lines: readonly { readonly cells: Readonly<Record<string, string>> }[];
  readonly sentence: string;
}

/** A block goes over the lines that are there; what goes past the last one becomes new lines. */
export function pasteBlock({ block, lineIds, grows }: PasteInput): Pasted {
  const edits = lineIds.flatMap((lineId, at) =>
    cellsOf(block, at).map(({ column, text }): CellEdit => ({ lineId, column, text })),
  );
  const over = block.rows.slice(lineIds.length).map((_, at) => ({
    cells: Object.fromEntries(
      cellsOf(block, lineIds.length + at)
        .filter(({ text }) => text !== '')
        .map(({ column, text }) => [column, text]),
    ),
  }));
  return { edits, lines: grows === 'yes' ? over : [], sentence: tell({ block, over: over.length, grows }) };
}

interface RoomToFill {
  readonly rows: readonly (readonly string[])[];
  readonly height: number;
  readonly width: number;
}

/** A smaller block fills a larger one that is a multiple of it, over and over. */
export function repeatBlock({ rows, height, width }: RoomToFill): readonly (readonly string[])[] {
  const wide = rows[0]?.length ?? 0;
  if (rows.length === 0 || wide === 0 || rows.some((row) => row.length !== wide)) return rows;
  const fits = height % rows.length === 0 && width % wide === 0 && height * width > rows.length * wide;
  if (!fits) return rows;
  return Array.from({ length: height }, (_, row) =>
    Array.from({ length: width }, (__, column) => rows[row % rows.length]?.[column % wide] ?? ''),
  );
}

function cellsOf(block: PastedBlock, row: number): readonly { readonly column: string; readonly text: string }[] {
  return block.columns.flatMap((column, at) => {
    const text = block.rows[row]?.[at];
    return text === undefined ? [] : [{ column, text }];
  });
}

interface Told {
  readonly block: PastedBlock;
  readonly over: number;
  readonly grows: 'yes' | 'no';
}

/** Says what of the block found no place, so that nothing is lost unseen. */
function tell({ block, over, grows }: Told): string {
  const beyond = Math.max(...block.rows.map((row) => row.length)) - block.columns.length;
  const parts = [`Pasted ${counted(block.rows.length, 'row')}.`];
  if (over > 0 && grows === 'yes') parts.push(`New lines: ${over}.`);
  if (over > 0 && grows === 'no')
    parts.push(`Left out: ${counted(over, 'row')}; show all lines in the list’s order to add new ones.`);
  if (beyond > 0) parts.push(`Left out: ${counted(beyond, 'column')} at the right, past the last column shown.`);
  return parts.join(' ');
}

function counted(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? '' : 's'}`;
}
