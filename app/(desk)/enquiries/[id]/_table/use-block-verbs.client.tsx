'use client';

import { useUnits } from '#app/_ui/shown-units.client.tsx';
import type { CellEdit } from '#lib/services/edit-cells.ts';
import type { LineCells } from '#lib/services/list-lines.ts';
import { type Block, spanOf } from './block.ts';
import { copiedText, type GridColumn } from './grid-columns.ts';
import { joinBlock } from './join-block.ts';
import { pasteBlock, repeatBlock } from './paste-block.ts';
import { splitBlock } from './split-block.ts';
import type { Schedule } from './use-schedule.client.tsx';

export interface BlockVerbs {
  readonly lineIds: (block: Block) => readonly number[];
  /** The text of the block if all of it is loaded; otherwise it is fetched and put on the clipboard by itself. */
  readonly copy: (block: Block) => string | undefined;
  readonly paste: (block: Block, text: string) => void;
  /** The block’s first row goes over its other rows; of a single cell, what stands above it. */
  readonly fillDown: (block: Block) => void;
  /** One text in every cell of the block; nothing empties them. */
  readonly fill: (block: Block, text: string) => void;
}

interface VerbsOf {
  readonly schedule: Schedule;
  readonly columns: readonly GridColumn[];
}

type CellMap = ReadonlyMap<number, Pick<LineCells, 'cells'>>;

/** What is done with a block of cells, loaded or not. */
export function useBlockVerbs({ schedule, columns }: VerbsOf): BlockVerbs {
  const { lines, tell, write, take } = schedule;
  const system = useUnits();

  function lineIds(block: Block): readonly number[] {
    const { top, bottom } = spanOf(block);
    return lines.order.slice(top, bottom + 1);
  }

  function writable(block: Block): readonly string[] {
    const { left, right } = spanOf(block);
    return columns.slice(left, right + 1).flatMap(({ kind, name }) => (kind === 'cell' ? [name] : []));
  }

  /** Edits of lines that may not be loaded: each with what its cell says. */
  function seen(edits: readonly CellEdit[], cells: CellMap): readonly CellEdit[] {
    return edits.map((edit) => {
      const unsaved = schedule.saving.unsaved.get(edit.lineId)?.get(edit.column);
      const line = cells.get(edit.lineId);
      const said: Readonly<Record<string, string | undefined>> = line?.cells ?? {};
      return line ? { ...edit, was: unsaved?.text ?? said[edit.column] ?? '' } : edit;
    });
  }

  function rowsOf(ids: readonly number[], { block, cells }: { readonly block: Block; readonly cells: CellMap }) {
    const { left, right } = spanOf(block);
    return ids.map((id) =>
      columns.slice(left, right + 1).map((column) => {
        const unsaved = schedule.saving.unsaved.get(id)?.get(column.name)?.text;
        const line = cells.get(id);
        return unsaved ?? (line ? copiedText({ ...line, duty: lines.line(id)?.duty }, { column, system }) : '');
      }),
    );
  }

  function copy(block: Block): string | undefined {
    const ids = lineIds(block);
    const loaded = new Map(ids.flatMap((id) => pair(id, lines.line(id))));
    if (loaded.size === ids.length) return joinBlock(rowsOf(ids, { block, cells: loaded }));
    void lines
      .cells(ids)
      .then((cells) => navigator.clipboard.writeText(joinBlock(rowsOf(ids, { block, cells }))))
      .then(() => tell(`Copied ${ids.length} rows.`))
      .catch(() => tell('The browser did not let the block be copied; choose fewer rows and copy again.'));
    return undefined;
  }

  async function paste(block: Block, text: string): Promise<void> {
    const { top, bottom, left, right } = spanOf(block);
    const names = columns.slice(left).flatMap(({ kind, name }) => (kind === 'cell' ? [name] : []));
    const rows = repeatBlock({ rows: splitBlock(text), height: bottom - top + 1, width: right - left + 1 });
    const ids = lines.order.slice(top, top + rows.length);
    const cells = await lines.cells(ids);
    const grows = schedule.isWhole ? 'yes' : 'no';
    const pasted = pasteBlock({ block: { columns: names, rows }, lineIds: ids, grows });
    const edits = seen(pasted.edits, cells).filter(({ text: now, was }) => now !== was);
    take(
      ...(edits.length > 0 ? [{ kind: 'cells' as const, edits }] : []),
      ...(pasted.lines.length > 0 ? [{ kind: 'add' as const, lines: pasted.lines }] : []),
    );
    tell(pasted.sentence);
  }

  async function fillDown(block: Block): Promise<void> {
    const { top, bottom } = spanOf(block);
    const from = top === bottom ? top - 1 : top;
    const source = lines.order[from];
    if (source === undefined) return;
    const ids = lines.order.slice(from + 1, bottom + 1);
    const cells = await lines.cells([source, ...ids]);
    const said: Readonly<Record<string, string | undefined>> = cells.get(source)?.cells ?? {};
    const texts = new Map(
      writable(block).map((column) => [
        column,
        schedule.saving.unsaved.get(source)?.get(column)?.text ?? said[column] ?? '',
      ]),
    );
    const edits = ids.flatMap((lineId) => [...texts].map(([column, text]) => ({ lineId, column, text })));
    write(seen(edits, cells));
    tell(ids.length === 1 ? 'Filled one row.' : `Filled ${ids.length} rows.`);
  }

  async function fill(block: Block, text: string): Promise<void> {
    const ids = lineIds(block);
    const cells = await lines.cells(ids);
    const names = writable(block);
    write(
      seen(
        ids.flatMap((lineId) => names.map((column) => ({ lineId, column, text }))),
        cells,
      ),
    );
  }

  return {
    ...{ lineIds, copy },
    paste: (block, text) => void paste(block, text),
    fillDown: (block) => void fillDown(block),
    fill: (block, text) => void fill(block, text),
  };
}

function pair<Line>(id: number, line: Line | undefined): readonly (readonly [number, Line])[] {
  return line === undefined ? [] : [[id, line]];
}
