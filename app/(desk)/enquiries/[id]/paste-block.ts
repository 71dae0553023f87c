import type { CellEdit } from '#lib/services/edit-cells.ts';
import type { LineView } from '#lib/services/line-view.ts';
import type { Step } from './schedule-steps.ts';

export interface PastedBlock {
  /** Place of the first line, as the table shows them. */
  readonly index: number;
  /** Columns from the one pasted into to the last one shown. */
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

interface PasteInput {
  readonly block: PastedBlock;
  /** The lines that are there, from the first one on. */
  readonly targets: readonly LineView[];
  readonly isFiltered: boolean;
}

/** A block goes over the lines that are there; what goes past the last one becomes new lines. */
export function pasteSteps({ block, targets, isFiltered }: PasteInput): {
  readonly steps: readonly Step[];
  readonly sentence: string;
} {
  const edits = targets.flatMap(({ id }, at) =>
    cellsOf(block, at).map(({ column, text }): CellEdit => ({ lineId: id, column, text })),
  );
  const over = block.rows.slice(targets.length).map((_, at) => ({
    cells: Object.fromEntries(
      cellsOf(block, targets.length + at)
        .filter(({ text }) => text !== '')
        .map(({ column, text }) => [column, text]),
    ),
  }));
  const added = isFiltered ? [] : over;
  const cells: readonly Step[] = edits.length === 0 ? [] : [{ kind: 'cells', edits }];
  const lines: readonly Step[] = added.length === 0 ? [] : [{ kind: 'add', lines: added, was: [] }];
  return { steps: [...cells, ...lines], sentence: tell(block, over.length, isFiltered) };
}

function cellsOf(block: PastedBlock, row: number): readonly { readonly column: string; readonly text: string }[] {
  return block.columns.flatMap((column, at) => {
    const text = block.rows[row]?.[at];
    return text === undefined ? [] : [{ column, text }];
  });
}

/** Says what of the block found no place, so that nothing is lost unseen. */
function tell(block: PastedBlock, over: number, isFiltered: boolean): string {
  const beyond = Math.max(...block.rows.map((row) => row.length)) - block.columns.length;
  const parts = [`Pasted ${counted(block.rows.length, 'row')}.`];
  if (over > 0 && !isFiltered) parts.push(`New lines: ${over}.`);
  if (over > 0 && isFiltered) parts.push(`Left out: ${counted(over, 'row')}; show all lines to add new ones.`);
  if (beyond > 0) parts.push(`Left out: ${counted(beyond, 'column')} at the right, past the last column shown.`);
  return parts.join(' ');
}

function counted(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? '' : 's'}`;
}
