/*
 * A sheet of labels as PDF bytes: A4, three columns of eight, each with text, Code 128 bars and a QR square.
 * Invariant: the same sheet gives the same bytes; nothing of a label reaches into its neighbour.
 * Not here: what the labels say (lib/documents/labels).
 * Read next: label-codes.ts.
 */
import { LABEL_GRID, LABELS_A_SHEET, type Label, type LabelSheet } from '#lib/documents/labels/label-sheet.ts';
import { PAPER_COLOURS as INK } from '#lib/documents/papers/paper-colours.ts';
import { isIsoDate } from '#lib/kernel/date-range.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { barRects, type CodeRect, squareRects } from './label-codes.ts';
import { openDocument } from './open-document.ts';
import type { At, Pen } from './pen.ts';
import { textPiece } from './pieces.ts';
import { PAGE, TEXT, type TextStyle } from './styles.ts';
import { setLine } from './typeset.ts';

const MM = 72 / 25.4;
const WIDTH = LABEL_GRID.width_mm * MM;
const HEIGHT = LABEL_GRID.height_mm * MM;
/** The sheet's upper edge: what eight rows leave, halved. */
const TOP = (PAGE.height - LABEL_GRID.rows * HEIGHT) / 2;
const EDGE = 4 * MM;
const SQUARE = 19 * MM;
const BARS = { width: WIDTH - 2 * EDGE - SQUARE, height: 9.5 * MM };
const FACTS = { width: WIDTH - 2 * EDGE };
const INK_OF_BARS = '#000000';

const STYLES = {
  corner: { ...TEXT.plain, size: 6.2, colour: INK.muted, leading: 1.2 },
  headline: { ...TEXT.plain, size: 15, weight: 'bold', leading: 1.1 },
  line: { ...TEXT.plain, size: 7.4, leading: 1.2 },
  code: { ...TEXT.plain, size: 6.6, leading: 1.2 },
} as const satisfies Readonly<Record<string, TextStyle>>;

export async function renderLabels(sheet: LabelSheet): Promise<Uint8Array> {
  invariant(isIsoDate(sheet.fixedAt), `A sheet of labels is fixed at a calendar date, not ${sheet.fixedAt}.`);
  const { title, house, fixedAt } = sheet;
  const { document, pen, written } = openDocument({ title, author: house, subject: 'labels', fixedAt });
  sheet.labels.forEach((label, index) => {
    const place = (sheet.skip % LABELS_A_SHEET) + index;
    if (index === 0 || place % LABELS_A_SHEET === 0) document.addPage();
    drawLabel(pen, { label, at: placeOf(place % LABELS_A_SHEET) });
  });
  if (sheet.labels.length === 0) document.addPage();
  document.end();
  return written;
}

function placeOf(place: number): At {
  const column = place % LABEL_GRID.columns;
  return { x: column * WIDTH, y: TOP + Math.floor(place / LABEL_GRID.columns) * HEIGHT };
}

/** Words above, bars and square below, so that the longest line has the whole width. */
function drawLabel(pen: Pen, { label, at }: { readonly label: Label; readonly at: At }): void {
  const x = at.x + EDGE;
  let y = at.y + 2.2 * MM;
  for (const [text, style] of wordsOf(label)) {
    write(pen, { text, style, at: { x, y } });
    y += style.size * style.leading;
  }
  const foot = at.y + HEIGHT - 2.2 * MM;
  const bars = barRects({ text: label.code, ...BARS });
  const codeLine = STYLES.code.size * STYLES.code.leading;
  fill(pen, { rects: bars, at: { x, y: foot - codeLine - BARS.height } });
  textPiece({ text: label.code, style: { ...STYLES.code, align: 'centre' }, width: BARS.width }).draw(pen, {
    x,
    y: foot - codeLine,
  });
  fill(pen, {
    rects: squareRects({ text: label.code, side: SQUARE }),
    at: { x: at.x + WIDTH - EDGE - SQUARE + 4, y: foot - SQUARE + 4 },
  });
}

function wordsOf({ corner, headline, lines }: Label): readonly (readonly [string, TextStyle])[] {
  return [
    [corner, STYLES.corner],
    [headline, STYLES.headline],
    ...lines.slice(0, 3).map((line) => [line, STYLES.line] as const),
  ];
}

interface Writing {
  readonly text: string;
  readonly style: TextStyle;
  readonly at: At;
}

/** One line: set smaller where it would not fit, and cut at the end where even that does not do. */
function write(pen: Pen, { text, style, at }: Writing): void {
  const full = setLine(text, style);
  const size = Math.max(style.size * 0.7, Math.min(style.size, (style.size * FACTS.width) / Math.max(1, full.width)));
  const smaller = { ...style, size };
  let shown = text;
  while (setLine(shown, smaller).width > FACTS.width && shown.length > 1) shown = `${shown.slice(0, -2).trimEnd()}…`;
  pen.text(setLine(shown, smaller), smaller, { ...at, width: FACTS.width });
}

function fill({ document }: Pen, { rects, at }: { readonly rects: readonly CodeRect[]; readonly at: At }): void {
  if (rects.length === 0) return;
  for (const { x, y, width, height } of rects) document.rect(at.x + x, at.y + y, width, height);
  document.fill(INK_OF_BARS);
}
