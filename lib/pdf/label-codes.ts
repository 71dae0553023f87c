/*
 * The two codes of a label as vector rectangles: Code 128 bars and a QR square that fit the room they are given.
 * Invariant: quiet zones of ten modules beside the bars (ISO/IEC 15417) and four around the square (ISO/IEC 18004); no module is thinner than an office printer prints.
 * Not here: where they stand on the label (render-labels.ts).
 * Read next: render-labels.ts.
 */
import bwip from 'bwip-js/node';
import { invariant } from '#lib/kernel/invariant.ts';

/** 0.19 mm in points: two dots and a bit at 300 dots an inch, the thinnest that a hand reader takes. Common practice, no source. */
const THINNEST = 0.54;
/** Wider than 0.33 mm gains nothing at arm's length. Common practice, no source. */
const WIDEST = 0.94;
const BAR_QUIET = 10;
const SQUARE_QUIET = 4;

export interface CodeRect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

interface Room {
  readonly text: string;
  readonly width: number;
  readonly height: number;
}

/** Empty where the text is too long for bars of this room: the square then carries it alone. */
export function barRects({ text, width, height }: Room): readonly CodeRect[] {
  const widths = barWidths(text);
  const modules = widths.reduce((sum, one) => sum + one, 0) + 2 * BAR_QUIET;
  const module = Math.min(WIDEST, width / modules);
  if (module < THINNEST) return [];
  const rects: CodeRect[] = [];
  let x = BAR_QUIET * module;
  widths.forEach((one, index) => {
    if (index % 2 === 0) rects.push({ x, y: 0, width: one * module, height });
    x += one * module;
  });
  return rects;
}

/** Error correction level M, the library's own choice. Dark modules of a row that touch are one rectangle. */
export function squareRects({ text, side }: { readonly text: string; readonly side: number }): readonly CodeRect[] {
  const [symbol] = bwip.raw({ bcid: 'qrcode', text });
  invariant(symbol !== undefined && 'pixs' in symbol, `No QR symbol was made for ${text}.`);
  const { pixs, pixx: across } = symbol;
  const module = side / (across + 2 * SQUARE_QUIET);
  const rects: CodeRect[] = [];
  for (let row = 0; row * across < pixs.length; row += 1) {
    for (let from = 0; from < across; from += 1) {
      if (pixs[row * across + from] !== 1) continue;
      let to = from;
      while (to < across && pixs[row * across + to] === 1) to += 1;
      const [x, y] = [(from + SQUARE_QUIET) * module, (row + SQUARE_QUIET) * module];
      rects.push({ x, y, width: (to - from) * module, height: module });
      from = to;
    }
  }
  return rects;
}

/** Bar and space widths in modules, a bar first. */
export function barWidths(text: string): readonly number[] {
  const [symbol] = bwip.raw({ bcid: 'code128', text });
  invariant(symbol !== undefined && 'sbs' in symbol, `No Code 128 symbol was made for ${text}.`);
  return symbol.sbs;
}
