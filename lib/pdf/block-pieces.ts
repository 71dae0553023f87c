/*
 * Every kind of block of a paper as pieces in the order in which they flow down the page.
 * Invariant: a heading is never left alone; a picture, a callout and what belongs together stay whole while they fit a page.
 * Not here: tables (table-pieces.ts), page head and foot (render-paper.ts).
 * Read next: flow-pages.ts.
 */
import type { Block, LabelledText } from '#lib/documents/papers/paper.ts';
import { PAPER_COLOURS as INK } from '#lib/documents/papers/paper-colours.ts';
import { unreachable } from '#lib/kernel/invariant.ts';
import { barcodeDrawing } from './barcode-drawing.ts';
import { drawingPiece } from './paint-drawing.ts';
import {
  beside,
  type Flow,
  linePieces,
  type Piece,
  padded,
  ruleOf,
  space,
  stacked,
  textPiece,
  under,
} from './pieces.ts';
import { CONTENT_HEIGHT, CONTENT_WIDTH, RULES, TEXT, type TextStyle } from './styles.ts';
import { tableFlow } from './table-pieces.ts';

export function blockFlows(blocks: readonly Block[], width: number = CONTENT_WIDTH): readonly Flow[] {
  return blocks.flatMap((block) => flowsOf(block, width));
}

function flowsOf(block: Block, width: number): readonly Flow[] {
  switch (block.kind) {
    case 'heading':
      return pieces([headingPiece(block, width)]);
    case 'text':
      return pieces(paragraph(block.text, { style: TEXT[block.tone], width }));
    case 'facts':
      return pieces([factsPiece({ items: block.items, columns: block.columns, width }), space(4)]);
    case 'table':
      return [{ kind: 'table', table: tableFlow(block, width) }];
    case 'list':
      return pieces([
        ...block.items.map((text, index) => markedItem({ marker: markerOf(block.marker, index), text, width })),
        space(4),
      ]);
    case 'callout':
      return pieces(calloutPieces(block, width));
    case 'drawing':
      return pieces([padded(drawingPiece(block.drawing, width * block.share), { top: 4, bottom: 4 })]);
    case 'pair':
      return pairFlows(block, width);
    case 'blanks':
      return pieces([
        space(2),
        ...inRows(block.items, block.columns).map((labels) =>
          beside(labels.map((label, index) => blank({ label, index, width: width / block.columns }))),
        ),
        space(4),
      ]);
    case 'signatures':
      return pieces([signaturesPiece(block.parties, width)]);
    case 'barcode':
      return pieces([barcodePiece(block.text, width)]);
    case 'together':
      return whole(blockFlows(block.blocks, width));
    case 'page break':
      return [{ kind: 'page break' }];
    default:
      return unreachable(block);
  }
}

function pieces(list: readonly Piece[]): readonly Flow[] {
  return list.map((piece) => ({ kind: 'piece', piece }));
}

/** As one piece while it fits a page, else as it flows. */
function whole(flows: readonly Flow[]): readonly Flow[] {
  const one = stacked(piecesIn(flows));
  return one.height <= CONTENT_HEIGHT ? pieces([one]) : flows;
}

function piecesIn(flows: readonly Flow[]): readonly Piece[] {
  return flows.flatMap((flow) => {
    if (flow.kind === 'piece') return [flow.piece];
    if (flow.kind === 'table') return [flow.table.head, ...flow.table.rows, space(flow.table.after)];
    return [];
  });
}

function headingPiece({ text, level }: Extract<Block, { kind: 'heading' }>, width: number): Piece {
  const piece =
    level === 1
      ? padded(textPiece({ text, style: TEXT.h1, width }), { top: 12, bottom: 4 })
      : padded(textPiece({ text, style: TEXT.h2, width }), { top: 8, bottom: 3 });
  return { ...piece, ahead: 90 };
}

/** Lines that flow, but neither the first nor the last two alone. */
function paragraph(
  text: string,
  { style, width }: { readonly style: TextStyle; readonly width: number },
): readonly Piece[] {
  const lines = linePieces({ text, style, width });
  if (lines.length <= 4) return [padded(stacked(lines), { bottom: 4 })];
  return [stacked(lines.slice(0, 2)), ...lines.slice(2, -2), padded(stacked(lines.slice(-2)), { bottom: 4 })];
}

export function factsPiece({
  items,
  columns,
  width,
}: {
  readonly items: readonly LabelledText[];
  readonly columns: number;
  readonly width: number;
}): Piece {
  const column = width / columns;
  return stacked(
    inRows(items, columns).map((row) =>
      beside(
        row.map(({ label, value }, index) => ({
          left: index * column,
          piece: padded(
            stacked([
              textPiece({ text: label, style: TEXT.label, width: column - 10 }),
              textPiece({ text: value, style: TEXT.plain, width: column - 10 }),
            ]),
            { bottom: 4 },
          ),
        })),
      ),
    ),
  );
}

function inRows<Item>(items: readonly Item[], columns: number): readonly (readonly Item[])[] {
  return Array.from({ length: Math.ceil(items.length / columns) }, (_, row) =>
    items.slice(row * columns, (row + 1) * columns),
  );
}

function markerOf(marker: 'dot' | 'number' | 'box', index: number): string {
  return marker === 'number' ? `${index + 1}` : marker === 'box' ? '☐' : '·';
}

const MARKER_ROOM = 14;

function markedItem({
  marker,
  text,
  width,
}: {
  readonly marker: string;
  readonly text: string;
  readonly width: number;
}): Piece {
  const row = beside([
    { left: 0, piece: textPiece({ text: marker, style: TEXT.marker, width: MARKER_ROOM * 2 }) },
    { left: MARKER_ROOM, piece: textPiece({ text, style: TEXT.plain, width: width - MARKER_ROOM }) },
  ]);
  return padded(row, { bottom: 2 });
}

/** The sign before the title tells the tone where colour does not. */
const TONES = {
  caution: { sign: '▲', colour: INK.warning },
  refusal: { sign: '■', colour: INK.warning },
  note: { sign: '●', colour: INK.accent },
} as const;

/** A callout longer than this flows over pages. */
const MOST_WHOLE_ITEMS = 8;

function calloutPieces(block: Extract<Block, { kind: 'callout' }>, width: number): readonly Piece[] {
  const tone = TONES[block.tone];
  const barred = (piece: Piece): Piece => {
    const inner = padded(piece, { left: 11.4 });
    return under(inner, (pen, { x, y }) => pen.area(tone.colour, { x, y, width: 2.4, height: inner.height }));
  };
  const style = { ...TEXT.strong, colour: tone.colour };
  const title = textPiece({ text: `${tone.sign} ${block.title}`, style, width: width - 12 });
  const items = block.items.map((text) => markedItem({ marker: '·', text, width: width - 12 }));
  const parts = [padded(title, { top: 4, bottom: 2 }), ...items, space(3)];
  if (block.items.length <= MOST_WHOLE_ITEMS) return [space(6), barred(stacked(parts)), space(8)];
  return [space(6), { ...barred(stacked(parts.slice(0, 2))) }, ...parts.slice(2).map(barred), space(8)];
}

const PAIR_GUTTER = 8;

function pairFlows(block: Extract<Block, { kind: 'pair' }>, width: number): readonly Flow[] {
  const left = width * block.leftShare - PAIR_GUTTER;
  const right = width * (1 - block.leftShare) - PAIR_GUTTER;
  const row = beside([
    { left: 0, piece: stacked(piecesIn(blockFlows(block.left, left))) },
    { left: left + 2 * PAIR_GUTTER, piece: stacked(piecesIn(blockFlows(block.right, right))) },
  ]);
  if (row.height + 4 <= CONTENT_HEIGHT) return pieces([padded(row, { bottom: 4 })]);
  return [...blockFlows(block.left, width), ...blockFlows(block.right, width)];
}

function blank({ label, index, width }: { readonly label: string; readonly index: number; readonly width: number }) {
  const line = ruleOf(RULES.plain, { width: width - 10, height: 14 });
  const piece = padded(stacked([textPiece({ text: label, style: TEXT.label, width: width - 10 }), line]), {
    bottom: 7,
  });
  return { left: index * width, piece };
}

function signaturesPiece(
  parties: readonly { readonly title: string; readonly lines: readonly string[] }[],
  width: number,
): Piece {
  const share = width / Math.max(1, parties.length);
  const party = (title: string, lines: readonly string[]): Piece =>
    stacked([
      padded(textPiece({ text: title, style: TEXT.strong, width: share - 24 }), { bottom: 4 }),
      ...lines.map((label) =>
        padded(
          stacked([
            ruleOf(RULES.plain, { width: share - 24, height: 18 }),
            textPiece({ text: label, style: TEXT.label, width: share - 24 }),
          ]),
          { bottom: 8 },
        ),
      ),
    ]);
  const row = beside(parties.map(({ title, lines }, index) => ({ left: index * share, piece: party(title, lines) })));
  return padded(row, { top: 6, bottom: 4 });
}

function barcodePiece(text: string, width: number): Piece {
  const drawing = barcodeDrawing(text);
  const words = textPiece({ text, style: TEXT.barcode, width });
  return padded(stacked([drawingPiece(drawing, drawing.width), space(2), words]), { bottom: 6 });
}
