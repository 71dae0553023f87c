'use client';

import { useUnits } from '#app/_ui/shown-units.client.tsx';
import type { CellEdit } from '#lib/services/schedule/edit-cells.ts';
import type { LineCells } from '#lib/services/schedule/list-lines.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
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

type LineText = Pick<LineCells, 'cells'>;
type CellMap = ReadonlyMap<number, LineText>;

/** What is done with a block of cells, loaded or not. */
export function useBlockVerbs({ schedule, columns }: VerbsOf): BlockVerbs {
  const system = useUnits();
  const of: Sheet = { schedule, columns, system };
  return {
    lineIds: (block) => idsOf(of, block),
    copy: (block) => copy(of, block),
    paste: (block, text) => void paste(of, { block, text }),
    fillDown: (block) => void fillDown(of, block),
    fill: (block, text) => void fill(of, { block, text }),
  };
}

interface Sheet extends VerbsOf {
  readonly system: UnitSystem;
}

interface BlockText {
  readonly block: Block;
  readonly text: string;
}

function idsOf({ schedule }: Sheet, block: Block): readonly number[] {
  const { top, bottom } = spanOf(block);
  return schedule.lines.order.slice(top, bottom + 1);
}

function writable({ columns }: Sheet, block: Block): readonly string[] {
  const { left, right } = spanOf(block);
  return columns.slice(left, right + 1).flatMap(({ kind, name }) => (kind === 'cell' ? [name] : []));
}

/** What a cell of a line says that was fetched: a text that is not saved yet counts. */
function textIn(
  { schedule }: Sheet,
  cell: { readonly line: LineText | undefined; readonly id: number; readonly column: string },
) {
  const said: Readonly<Record<string, string | undefined>> = cell.line?.cells ?? {};
  return schedule.saving.unsaved.get(cell.id)?.get(cell.column)?.text ?? said[cell.column] ?? '';
}

/** Edits of lines that may not be loaded: each with what its cell says. */
function seen(of: Sheet, { edits, cells }: { readonly edits: readonly CellEdit[]; readonly cells: CellMap }) {
  return edits.map((edit): CellEdit => {
    const line = cells.get(edit.lineId);
    return line ? { ...edit, was: textIn(of, { line, id: edit.lineId, column: edit.column }) } : edit;
  });
}

function rowsOf(of: Sheet, { block, cells }: { readonly block: Block; readonly cells: CellMap }) {
  const { left, right } = spanOf(block);
  return idsOf(of, block).map((id) =>
    of.columns.slice(left, right + 1).map((column) => {
      const line = cells.get(id);
      if (column.kind === 'cell') return textIn(of, { line, id, column: column.name });
      const duty = of.schedule.lines.line(id)?.duty;
      return line ? copiedText({ ...line, duty }, { column, system: of.system }) : '';
    }),
  );
}

function copy(of: Sheet, block: Block): string | undefined {
  const { lines, tell } = of.schedule;
  const ids = idsOf(of, block);
  const loaded = new Map(ids.flatMap((id) => pair(id, lines.line(id))));
  if (loaded.size === ids.length) return joinBlock(rowsOf(of, { block, cells: loaded }));
  void lines
    .cells(ids)
    .then((cells) => navigator.clipboard.writeText(joinBlock(rowsOf(of, { block, cells }))))
    .then(() => tell(`Copied ${ids.length} rows.`))
    .catch(() => tell('The browser did not let the block be copied; choose fewer rows and copy again.'));
  return undefined;
}

async function paste(of: Sheet, { block, text }: BlockText): Promise<void> {
  const { lines, isWhole, take, tell } = of.schedule;
  const { top, bottom, left, right } = spanOf(block);
  const names = of.columns.slice(left).flatMap(({ kind, name }) => (kind === 'cell' ? [name] : []));
  const rows = repeatBlock({ rows: splitBlock(text), height: bottom - top + 1, width: right - left + 1 });
  const lineIds = lines.order.slice(top, top + rows.length);
  const cells = await lines.cells(lineIds);
  const pasted = pasteBlock({ block: { columns: names, rows }, lineIds, grows: isWhole ? 'yes' : 'no' });
  const edits = seen(of, { edits: pasted.edits, cells }).filter(({ text: now, was }) => now !== was);
  take(
    ...(edits.length > 0 ? [{ kind: 'cells' as const, edits }] : []),
    ...(pasted.lines.length > 0 ? [{ kind: 'add' as const, lines: pasted.lines }] : []),
  );
  tell(pasted.sentence);
}

async function fillDown(of: Sheet, block: Block): Promise<void> {
  const { lines, write, tell } = of.schedule;
  const { top, bottom } = spanOf(block);
  const from = top === bottom ? top - 1 : top;
  const source = lines.order[from];
  if (source === undefined) return;
  const ids = lines.order.slice(from + 1, bottom + 1);
  const cells = await lines.cells([source, ...ids]);
  const texts = writable(of, block).map((column) => ({
    ...{ column, text: textIn(of, { line: cells.get(source), id: source, column }) },
  }));
  const edits = ids.flatMap((lineId) => texts.map((cell) => ({ lineId, ...cell })));
  write(seen(of, { edits, cells }));
  tell(ids.length === 1 ? 'Filled one row.' : `Filled ${ids.length} rows.`);
}

async function fill(of: Sheet, { block, text }: BlockText): Promise<void> {
  const { lines, write } = of.schedule;
  const ids = idsOf(of, block);
  const cells = await lines.cells(ids);
  const names = writable(of, block);
  write(seen(of, { edits: ids.flatMap((lineId) => names.map((column) => ({ lineId, column, text }))), cells }));
}

function pair<Line>(id: number, line: Line | undefined): readonly (readonly [number, Line])[] {
  return line === undefined ? [] : [[id, line]];
}
