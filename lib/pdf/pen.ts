/*
 * Draws lines of text, rules, areas and pictures on a page of the document.
 * Invariant: a place is given in points from the upper left corner of the page; the pen moves nothing by itself.
 * Not here: what goes where (pieces.ts, flow-pages.ts).
 * Read next: pieces.ts, paint-drawing.ts.
 */
import type { Rule, TextStyle } from './styles.ts';
import type { TextLine } from './typeset.ts';

export interface At {
  readonly x: number;
  readonly y: number;
}

export interface Pen {
  /** One line of text whose box begins at `at` and is `width` wide. */
  readonly text: (line: TextLine, style: TextStyle, at: At & { readonly width: number }) => void;
  readonly rule: (rule: Rule, at: At & { readonly width: number }) => void;
  readonly upright: (rule: Rule, at: At & { readonly height: number }) => void;
  readonly area: (colour: string, at: At & { readonly width: number; readonly height: number }) => void;
  readonly document: PDFKit.PDFDocument;
}

/** From the middle of a line down to its baseline, in sizes: half of the height of capitals. */
const BASELINE = 0.335;

export function openPen(document: PDFKit.PDFDocument): Pen {
  const stroke = ({ weight, colour }: Rule, to: { readonly from: At; readonly to: At }) =>
    document.moveTo(to.from.x, to.from.y).lineTo(to.to.x, to.to.y).lineWidth(weight).stroke(colour);
  return {
    document,
    text: (line, style, { x, y, width }) => {
      const shift =
        style.align === 'right' ? width - line.width : style.align === 'centre' ? (width - line.width) / 2 : 0;
      writeRuns(document, { line, style, x: x + shift, baseline: y + style.size * (style.leading / 2 + BASELINE) });
    },
    rule: (rule, { x, y, width }) => {
      stroke(rule, { from: { x, y }, to: { x: x + width, y } });
    },
    upright: (rule, { x, y, height }) => {
      stroke(rule, { from: { x, y }, to: { x, y: y + height } });
    },
    area: (colour, { x, y, width, height }) => {
      document.rect(x, y, width, height).fill(colour);
    },
  };
}

interface Writing {
  readonly line: TextLine;
  readonly style: Pick<TextStyle, 'size' | 'colour'>;
  readonly x: number;
  readonly baseline: number;
}

export function writeRuns(document: PDFKit.PDFDocument, { line, style, x, baseline }: Writing): void {
  let at = x;
  document.fontSize(style.size).fillColor(style.colour);
  for (const run of line.runs) {
    document.font(run.face).text(run.text, at, baseline, { lineBreak: false, baseline: 'alphabetic' });
    at += run.width;
  }
}
