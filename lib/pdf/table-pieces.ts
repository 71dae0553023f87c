/*
 * A table of a paper: head repeated on every page, rows kept whole, groups and totals set apart by line and weight.
 * Invariant: column widths come from the shares alone, so that all pages of a table line up.
 * Not here: what stands in the cells (documents).
 * Read next: block-pieces.ts.
 */
import type { Block, TableColumn, TableRow } from '#lib/documents/papers/paper.ts';
import { PAPER_COLOURS as INK } from '#lib/documents/papers/paper-colours.ts';
import { beside, linePieces, type Piece, padded, space, stacked, type TableFlow, textPiece, under } from './pieces.ts';
import { CONTENT_HEIGHT, RULES, TEXT, type TextStyle } from './styles.ts';

type Table = Extract<Block, { kind: 'table' }>;

interface Place {
  readonly left: number;
  readonly width: number;
  readonly align: TextStyle['align'];
}

/** Between a cell's words and the next column. */
const GUTTER = 8;

export function tableFlow(table: Table, width: number): TableFlow {
  const places = placesOf(table.columns, width);
  return {
    head: headPiece({ table, places, width }),
    rows: table.rows.flatMap((row) => rowPieces({ row, table, places, width })),
    after: 8,
  };
}

function placesOf(columns: readonly TableColumn[], width: number): readonly Place[] {
  const total = columns.reduce((sum, column) => sum + column.share, 0);
  let left = 0;
  return columns.map((column) => {
    const place = { left, width: (column.share / total) * width, align: column.align ?? 'left' };
    left += place.width;
    return place;
  });
}

interface Given {
  readonly table: Table;
  readonly places: readonly Place[];
  readonly width: number;
}

function headPiece({ table, places, width }: Given): Piece {
  const cells = beside(
    table.columns.map((column, index) =>
      cellPiece({ text: column.label, style: TEXT.tableHead, place: places[index] }),
    ),
  );
  const labels = padded(cells, { top: 2, bottom: 2.5 });
  const ruled = under(labels, (pen, { x, y }) => pen.rule(RULES.strong, { x, y: y + labels.height, width }));
  return { ...stacked([...captionPieces(table.caption, width), ruled]), ahead: 36 };
}

function captionPieces(caption: Table['caption'], width: number): readonly Piece[] {
  if (caption === undefined) return [];
  const heading =
    caption.level === 1
      ? padded(textPiece({ text: caption.text, style: TEXT.h1, width }), { top: 12, bottom: 4 })
      : padded(textPiece({ text: caption.text, style: TEXT.h2, width }), { top: 8, bottom: 3 });
  return caption.words === undefined
    ? [heading]
    : [heading, padded(textPiece({ text: caption.words, style: TEXT.muted, width }), { bottom: 4 })];
}

function cellPiece({
  text,
  style,
  place = { left: 0, width: 0, align: 'left' },
}: {
  readonly text: string;
  readonly style: TextStyle;
  readonly place: Place | undefined;
}) {
  const piece = textPiece({ text, style: { ...style, align: place.align }, width: place.width - GUTTER });
  return { left: place.left, piece };
}

interface RowGiven extends Given {
  readonly row: TableRow;
}

/** A row is one piece, unless its words would fill most of a page by themselves: then it goes on line by line. */
function rowPieces(given: RowGiven): readonly Piece[] {
  const { row, table, places, width } = given;
  const whole = rowPiece(given);
  const ahead = row.tone === 'group' ? { ahead: 30 } : {};
  if (whole.height < CONTENT_HEIGHT * 0.8) return [{ ...whole, ...ahead }];
  const columns = places.map((place, index) => ({
    place,
    lines: linePieces({
      text: row.cells[index] ?? '',
      style: { ...styleOf({ row, table, index }), align: place.align },
      width: place.width - GUTTER,
    }),
  }));
  const most = Math.max(...columns.map(({ lines }) => lines.length));
  const lines = Array.from({ length: most }, (_, line) =>
    beside(columns.map((column) => ({ left: column.place.left, piece: column.lines[line] ?? space(0) }))),
  );
  const note = row.note === undefined ? [] : linePieces({ text: row.note, style: TEXT.rowNote, width: width - 5 });
  return [...lines, ...note, space(padding(table).bottom)];
}

function rowPiece(given: RowGiven): Piece {
  const { row, table, places, width } = given;
  const tone = row.tone ?? 'plain';
  const { top, bottom } = padding(table);
  const cells =
    tone === 'group'
      ? textPiece({
          text: row.cells.filter((cell) => cell !== '').join('   '),
          style: { ...TEXT.cell, weight: 'bold' },
          width: width - GUTTER,
        })
      : beside(
          places.map((place, index) => {
            const boxed = table.tall === true && index > 0;
            const inner = boxed ? { ...place, left: place.left + 4, width: place.width - 4 } : place;
            return cellPiece({ text: row.cells[index] ?? '', style: styleOf({ row, table, index }), place: inner });
          }),
        );
  const note =
    row.note === undefined
      ? []
      : [padded(textPiece({ text: row.note, style: TEXT.rowNote, width: width - 5 }), { top: 1 })];
  const body = padded(stacked([cells, ...note]), { top, bottom, left: tone === 'group' ? 3 : 0 });
  return under(body, (pen, { x, y }) => {
    if (tone === 'group') pen.area(INK.valve, { x, y, width, height: body.height });
    if (tone === 'total') pen.rule(RULES.strong, { x, y, width });
    if (table.tall === true)
      for (const place of places.slice(1)) pen.upright(RULES.muted, { x: x + place.left, y, height: body.height });
    pen.rule(table.tall === true ? RULES.muted : RULES.row, { x, y: y + body.height, width });
  });
}

function padding(table: Table): { readonly top: number; readonly bottom: number } {
  if (table.tall === true) return { top: 7, bottom: 15 };
  return table.dense === true ? { top: 1.6, bottom: 1.6 } : { top: 2.6, bottom: 2.6 };
}

function styleOf({
  row,
  table,
  index,
}: {
  readonly row: TableRow;
  readonly table: Table;
  readonly index: number;
}): TextStyle {
  if (row.cells[index] === '☐') return TEXT.tick;
  const base: TextStyle = table.dense === true ? TEXT.denseCell : TEXT.cell;
  const bold = row.tone === 'total' || (row.tone === 'result' && index < table.columns.length - 1);
  return bold ? { ...base, weight: 'bold' } : base;
}
