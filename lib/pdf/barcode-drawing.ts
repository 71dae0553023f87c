/*
 * Code 128 bars as vector rectangles for the packing list.
 * Invariant: a quiet zone of ten modules stands on both sides (ISO/IEC 15417).
 * Not here: check values (packing/barcode.ts).
 * Read next: block-views.tsx.
 */
import type { Drawing, Shape } from '#lib/documents/drawings/drawing.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { barWidths } from './label-codes.ts';

/** Module width in points: 0.4 mm, wide enough for any hand scanner. */
const MODULE = 1.13;
const QUIET = 10 * MODULE;
const HEIGHT = 40;

export function barcodeDrawing(text: string): Drawing {
  invariant(
    /^[\x20-\x7e]{1,40}$/.test(text),
    `A barcode holds 1 to 40 printable ASCII characters, not ${JSON.stringify(text)}.`,
  );
  const widths = barWidths(text);
  const shapes: Shape[] = [];
  let x = QUIET;
  widths.forEach((width, index) => {
    if (index % 2 === 0) shapes.push({ kind: 'rect', x, y: 0, width: width * MODULE, height: HEIGHT, fill: 'axis' });
    x += width * MODULE;
  });
  return { width: x + QUIET, height: HEIGHT, title: `Barcode ${text}`, description: `Code 128: ${text}`, shapes };
}
