/*
 * A paper as PDF bytes: A4, head of the house on the first page, running head, page n of m.
 * Invariant: the same paper gives the same bytes; dates inside the file are the paper's own.
 * Not here: what the paper says (documents); the thread it is drawn in (workers).
 * Read next: block-pieces.ts, flow-pages.ts, fonts.ts.
 */
import type { Paper } from '#lib/documents/papers/paper.ts';
import { PAPER_COLOURS as INK } from '#lib/documents/papers/paper-colours.ts';
import { isIsoDate } from '#lib/kernel/date-range.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { blockFlows, factsPiece } from './block-pieces.ts';
import { flowPages } from './flow-pages.ts';
import { openDocument } from './open-document.ts';
import type { Pen } from './pen.ts';
import { beside, type Piece, padded, stacked, textPiece, under } from './pieces.ts';
import { CONTENT_WIDTH, PAGE, RULES, TEXT } from './styles.ts';

export async function renderPaper(paper: Paper): Promise<Uint8Array> {
  invariant(isIsoDate(paper.fixedAt), `A paper is fixed at a calendar date, not ${paper.fixedAt}.`);
  const { document, pen, written } = openDocument({
    title: `${paper.title} ${paper.number}`,
    author: paper.house.name,
    subject: paper.kind,
    fixedAt: paper.fixedAt,
  });
  const pages = flowPages([{ kind: 'piece', piece: firstHead(paper) }, ...blockFlows(paper.blocks)]);
  pages.forEach((page, index) => {
    document.addPage();
    frame({ pen, paper, page: index + 1, pages: pages.length });
    for (const { piece, y } of page) piece.draw(pen, { x: PAGE.left, y });
  });
  document.end();
  return written;
}

interface Frame {
  readonly pen: Pen;
  readonly paper: Paper;
  readonly page: number;
  readonly pages: number;
}

/** Running head and foot of every page. */
function frame({ pen, paper, page, pages }: Frame): void {
  const head = beside([
    { left: 0, piece: textPiece({ text: paper.house.name, style: TEXT.runningName, width: CONTENT_WIDTH * 0.6 }) },
    {
      left: CONTENT_WIDTH * 0.6,
      piece: textPiece({
        text: `${paper.title} ${paper.number}`,
        style: TEXT.runningText,
        width: CONTENT_WIDTH * 0.4,
      }),
    },
  ]);
  head.draw(pen, { x: PAGE.left, y: 24 });
  pen.rule(RULES.plain, { x: PAGE.left, y: 24 + head.height + 4, width: CONTENT_WIDTH });
  const foot = PAGE.height - PAGE.bottom + 12;
  pen.rule(RULES.soft, { x: PAGE.left, y: foot, width: CONTENT_WIDTH });
  const words = CONTENT_WIDTH * 0.86;
  textPiece({ text: paper.foot, style: TEXT.footWords, width: words }).draw(pen, { x: PAGE.left, y: foot + 4 });
  const count = (paper.pageWords ?? 'Page {page} of {pages}')
    .replace('{page}', String(page))
    .replace('{pages}', String(pages));
  textPiece({ text: count, style: TEXT.footPage, width: CONTENT_WIDTH - words }).draw(pen, {
    x: PAGE.left + words,
    y: foot + 4,
  });
}

function firstHead(paper: Paper): Piece {
  const half = CONTENT_WIDTH / 2;
  const title = stacked([
    textPiece({ text: paper.title, style: TEXT.kind, width: half }),
    accentRule(),
    textPiece({ text: paper.number, style: TEXT.number, width: half }),
  ]);
  const house = stacked([
    textPiece({ text: paper.house.name, style: TEXT.houseName, width: half }),
    ...paper.house.lines.map((text) => textPiece({ text, style: TEXT.houseLine, width: half })),
  ]);
  const names = beside([
    { left: 0, piece: title },
    { left: half, piece: house },
  ]);
  return stacked([padded(names, { bottom: 12 }), padded(headBand(paper), { bottom: 10 })]);
}

function accentRule(): Piece {
  return {
    height: 5 + 2.4 + 6,
    draw: (pen, { x, y }) => pen.area(INK.accent, { x, y: y + 5, width: 36, height: 2.4 }),
  };
}

/** Whom the paper is for, and its facts, between two rules. */
function headBand(paper: Paper): Piece {
  const [name = '', ...address] = paper.to;
  const left = CONTENT_WIDTH * 0.38;
  const to = stacked([
    textPiece({ text: paper.toWords ?? 'For', style: TEXT.label, width: left - 12 }),
    textPiece({ text: name, style: TEXT.strong, width: left - 12 }),
    ...address.map((text) => textPiece({ text, style: TEXT.plain, width: left - 12 })),
  ]);
  const facts = factsPiece({ items: paper.facts, columns: 2, width: CONTENT_WIDTH - left });
  const band = padded(
    beside([
      { left: 0, piece: to },
      { left, piece: facts },
    ]),
    { top: 7, bottom: 7 },
  );
  return under(band, (pen, { x, y }) => {
    pen.rule(RULES.plain, { x, y, width: CONTENT_WIDTH });
    pen.rule(RULES.plain, { x, y: y + band.height, width: CONTENT_WIDTH });
  });
}
