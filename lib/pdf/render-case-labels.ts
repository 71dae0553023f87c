/*
 * Labels of packed cases as PDF bytes: A4, two by two of A6 each, to be cut along the thin lines.
 * Invariant: the same sheet gives the same bytes; what does not fit on a label is cut with an ellipsis, bars and mass never are.
 * Not here: what the labels say (lib/documents/labels/case-label.ts).
 * Read next: label-codes.ts, render-labels.ts.
 */
import type { CaseLabel, CaseLabelSheet } from '#lib/documents/labels/case-label.ts';
import { PAPER_COLOURS as INK } from '#lib/documents/papers/paper-colours.ts';
import { isIsoDate } from '#lib/kernel/date-range.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { barRects } from './label-codes.ts';
import { openDocument } from './open-document.ts';
import type { At, Pen } from './pen.ts';
import { PAGE, TEXT, type TextStyle } from './styles.ts';
import { breakLines, setLine, type TextLine } from './typeset.ts';

const MM = 72 / 25.4;
const WIDTH = PAGE.width / 2;
const HEIGHT = PAGE.height / 2;
const EDGE = 8 * MM;
const INNER = WIDTH - 2 * EDGE;
const BARS = { width: INNER, height: 15 * MM };
const A_SHEET = 4;

const STYLES = {
  house: { ...TEXT.plain, size: 7.5, colour: INK.muted, leading: 1.3 },
  booking: { ...TEXT.plain, size: 21, weight: 'bold', leading: 1.15 },
  place: { ...TEXT.plain, size: 14, weight: 'bold', leading: 1.2 },
  mass: { ...TEXT.plain, size: 24, weight: 'bold', leading: 1.15 },
  lift: { ...TEXT.plain, size: 13, weight: 'bold', leading: 1.25 },
  line: { ...TEXT.plain, size: 8.4, leading: 1.28 },
  goods: { ...TEXT.plain, size: 8, leading: 1.28 },
  code: { ...TEXT.plain, size: 9, align: 'centre', leading: 1.3 },
} as const satisfies Readonly<Record<string, TextStyle>>;

export async function renderCaseLabels(sheet: CaseLabelSheet): Promise<Uint8Array> {
  invariant(isIsoDate(sheet.fixedAt), `Labels are fixed at a calendar date, not ${sheet.fixedAt}.`);
  const { title, house, fixedAt } = sheet;
  const { document, pen, written } = openDocument({ title, author: house, subject: 'case labels', fixedAt });
  sheet.cases.forEach((label, index) => {
    const place = index % A_SHEET;
    if (place === 0) openSheet(pen);
    drawLabel(pen, { label, house: sheet.house, at: { x: (place % 2) * WIDTH, y: Math.floor(place / 2) * HEIGHT } });
  });
  if (sheet.cases.length === 0) document.addPage();
  document.end();
  return written;
}

/** Thin lines to cut along. */
function openSheet(pen: Pen): void {
  pen.document.addPage();
  const rule = { weight: 0.35, colour: INK.muted } as const;
  pen.rule(rule, { x: 0, y: HEIGHT, width: PAGE.width });
  pen.upright(rule, { x: WIDTH, y: 0, height: PAGE.height });
}

interface OnSheet {
  readonly label: CaseLabel;
  readonly house: string;
  readonly at: At;
}

function drawLabel(pen: Pen, { label, house, at }: OnSheet): void {
  const x = at.x + EDGE;
  const foot = at.y + HEIGHT - EDGE - STYLES.code.size * STYLES.code.leading;
  const bars = foot - BARS.height;
  const goods = linesOf(label.goods.length === 0 ? ['No dangerous goods.'] : label.goods, STYLES.goods);
  const goodsTop = bars - 6 - goods.length * STYLES.goods.size * STYLES.goods.leading;
  let y = at.y + EDGE;
  const put = (lines: readonly TextLine[], style: TextStyle): void => {
    for (const line of lines) {
      pen.text(line, style, { x, y, width: INNER });
      y += style.size * style.leading;
    }
  };
  put([whole(house, STYLES.house)], STYLES.house);
  put([whole(label.booking, STYLES.booking)], STYLES.booking);
  put([whole(label.place, STYLES.place)], STYLES.place);
  put(
    label.to.map((line) => whole(line, STYLES.line)),
    STYLES.line,
  );
  y += 6;
  pen.rule({ weight: 0.9, colour: INK.text }, { x, y, width: INNER });
  y += 5;
  put([whole(label.mass, STYLES.mass)], STYLES.mass);
  put([whole(`Lift: ${label.lift}`, STYLES.lift)], STYLES.lift);
  y += 5;
  pen.rule({ weight: 0.6, colour: INK.text }, { x, y, width: INNER });
  y += 5;
  const room = Math.max(1, Math.floor((goodsTop - 8 - y) / (STYLES.line.size * STYLES.line.leading)));
  put(
    shortened(label.contents, room).map((line) => whole(line, STYLES.line)),
    STYLES.line,
  );
  y = goodsTop - 4;
  pen.rule({ weight: 0.6, colour: INK.text }, { x, y, width: INNER });
  y = goodsTop;
  put(goods, STYLES.goods);
  fill(pen, { text: label.code, at: { x, y: bars } });
  pen.text(setLine(label.code, STYLES.code), STYLES.code, { x, y: foot, width: INNER });
}

function fill({ document }: Pen, { text, at }: { readonly text: string; readonly at: At }): void {
  const rects = barRects({ text, ...BARS });
  invariant(rects.length > 0, `The bars of ${text} do not fit on a label.`);
  const wide = Math.max(...rects.map(({ x, width }) => x + width)) + (rects[0]?.x ?? 0);
  const left = at.x + (BARS.width - wide) / 2;
  for (const { x, y, width, height } of rects) document.rect(left + x, at.y + y, width, height);
  document.fill('#000000');
}

function linesOf(texts: readonly string[], style: TextStyle): readonly TextLine[] {
  return texts.flatMap((text) => breakLines({ text, style, width: INNER }));
}

function shortened(lines: readonly string[], room: number): readonly string[] {
  if (lines.length <= room) return lines;
  return [...lines.slice(0, room - 1), `… and ${lines.length - room + 1} more, see the packing list`];
}

/** One line, cut at the end where it is too long. */
function whole(text: string, style: TextStyle): TextLine {
  let shown = text;
  while (setLine(shown, style).width > INNER && shown.length > 1) shown = `${shown.slice(0, -2).trimEnd()}…`;
  return setLine(shown, style);
}
