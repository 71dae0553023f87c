/*
 * A drawing of lib/documents in a PDF: the same shapes as vector graphics, texts selectable.
 * Invariant: nothing is added to the geometry; roles become the paper's colours.
 * Not here: geometry (documents).
 * Read next: block-pieces.ts.
 */
import {
  DASHES,
  type Drawing,
  LINE_WEIGHTS,
  type PathShape,
  type Shape,
  type TextShape,
} from '#lib/documents/drawings/drawing.ts';
import { PAPER_COLOURS } from '#lib/documents/papers/paper-colours.ts';
import { writeRuns } from './pen.ts';
import type { Piece } from './pieces.ts';
import { TEXT } from './styles.ts';
import { setLine } from './typeset.ts';

export function drawingPiece(drawing: Drawing, width: number): Piece {
  const scale = width / drawing.width;
  return {
    height: drawing.height * scale,
    draw: ({ document }, { x, y }) => {
      document.save().translate(x, y).scale(scale).lineCap('round').lineJoin('round');
      for (const shape of withMergedStrokes(drawing.shapes)) paint(document, shape);
      document.restore();
    },
  };
}

/** Neighbouring strokes of the same ink become one path: far fewer elements, the same picture. */
function withMergedStrokes(shapes: readonly Shape[]): readonly Shape[] {
  const merged: Shape[] = [];
  for (const shape of shapes) {
    const stroke = strokeOnly(shape);
    const last = merged.at(-1);
    if (stroke !== null && last?.kind === 'path' && last.fill === undefined && sameInk(last, stroke))
      merged[merged.length - 1] = { ...last, d: `${last.d} ${stroke.d}` };
    else merged.push(stroke ?? shape);
  }
  return merged;
}

function strokeOnly(shape: Shape): PathShape | null {
  if (shape.kind === 'path') return shape.fill === undefined ? shape : null;
  if (shape.kind !== 'line') return null;
  const { kind: _kind, from, to, ...ink } = shape;
  return { kind: 'path', d: `M ${from.x} ${from.y} L ${to.x} ${to.y}`, ...ink };
}

function sameInk(a: PathShape, b: PathShape): boolean {
  return a.stroke === b.stroke && a.weight === b.weight && a.dash === b.dash;
}

function paint(document: PDFKit.PDFDocument, shape: Shape): void {
  if (shape.kind === 'text') {
    write(document, shape);
    return;
  }
  if (shape.fill === undefined && shape.stroke === undefined) return;
  document.save();
  outline(document, shape);
  if (shape.stroke !== undefined) document.lineWidth(LINE_WEIGHTS[shape.weight ?? 'thin']);
  const [on, off, ...more] = shape.dash === undefined ? [] : DASHES[shape.dash].split(' ').map(Number);
  if (on !== undefined && off !== undefined) {
    if (more.length === 0) document.dash(on, { space: off });
    else document.addContent(`[${[on, off, ...more].join(' ')}] 0 d`);
  }
  const fill = shape.fill === undefined ? undefined : PAPER_COLOURS[shape.fill];
  const stroke = shape.stroke === undefined ? undefined : PAPER_COLOURS[shape.stroke];
  if (fill !== undefined && stroke !== undefined) document.fillAndStroke(fill, stroke);
  else if (fill !== undefined) document.fill(fill);
  else document.stroke(stroke);
  document.restore();
}

function outline(document: PDFKit.PDFDocument, shape: Exclude<Shape, { kind: 'text' }>): void {
  switch (shape.kind) {
    case 'rect':
      if (shape.radius === undefined || shape.radius === 0) document.rect(shape.x, shape.y, shape.width, shape.height);
      else document.roundedRect(shape.x, shape.y, shape.width, shape.height, shape.radius);
      break;
    case 'line':
      document.moveTo(shape.from.x, shape.from.y).lineTo(shape.to.x, shape.to.y);
      break;
    case 'path':
      document.path(shape.d);
      break;
    case 'circle':
      document.circle(shape.centre.x, shape.centre.y, shape.radius);
      break;
  }
}

function write(document: PDFKit.PDFDocument, shape: TextShape): void {
  const style = {
    ...TEXT.plain,
    size: shape.size,
    weight: shape.bold ? ('bold' as const) : ('regular' as const),
    colour: PAPER_COLOURS[shape.role],
  };
  const line = setLine(shape.text, style);
  const shift = shape.anchor === 'end' ? line.width : shape.anchor === 'middle' ? line.width / 2 : 0;
  writeRuns(document, { line, style, x: shape.at.x - shift, baseline: shape.at.y });
}
