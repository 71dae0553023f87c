/*
 * Pieces of a paper: boxes of known height that are never cut, and how they stand over and beside each other.
 * Invariant: a piece draws inside its own height; measuring and drawing use the same lines.
 * Not here: which piece goes on which page (flow-pages.ts).
 * Read next: block-pieces.ts, flow-pages.ts.
 */
import type { At, Pen } from './pen.ts';
import type { Rule, TextStyle } from './styles.ts';
import { breakLines, type TextLine } from './typeset.ts';

export interface Piece {
  readonly height: number;
  readonly draw: (pen: Pen, at: At) => void;
  /** Room that must be left below it on the same page for what follows; a heading is never left alone. */
  readonly ahead?: number;
}

/** A table's head comes again on every page that its rows reach. */
export interface TableFlow {
  readonly head: Piece;
  readonly rows: readonly Piece[];
  /** Room below the last row. */
  readonly after: number;
}

export type Flow =
  | { readonly kind: 'piece'; readonly piece: Piece }
  | { readonly kind: 'table'; readonly table: TableFlow }
  | { readonly kind: 'page break' };

export interface Padding {
  readonly top?: number;
  readonly bottom?: number;
  readonly left?: number;
}

export function padded(piece: Piece, { top = 0, bottom = 0, left = 0 }: Padding): Piece {
  return {
    ...piece,
    height: piece.height + top + bottom,
    draw: (pen, { x, y }) => piece.draw(pen, { x: x + left, y: y + top }),
  };
}

export function stacked(pieces: readonly Piece[]): Piece {
  return {
    height: pieces.reduce((sum, { height }) => sum + height, 0),
    draw: (pen, { x, y }) => {
      let down = y;
      for (const piece of pieces) {
        piece.draw(pen, { x, y: down });
        down += piece.height;
      }
    },
  };
}

/** Pieces side by side, each with its distance from the left. */
export function beside(pieces: readonly { readonly left: number; readonly piece: Piece }[]): Piece {
  return {
    height: Math.max(0, ...pieces.map(({ piece }) => piece.height)),
    draw: (pen, { x, y }) => {
      for (const { left, piece } of pieces) piece.draw(pen, { x: x + left, y });
    },
  };
}

/** The same piece with something drawn behind it or around it. */
export function under(piece: Piece, behind: (pen: Pen, at: At) => void): Piece {
  return {
    ...piece,
    draw: (pen, at) => {
      behind(pen, at);
      piece.draw(pen, at);
    },
  };
}

export function space(height: number): Piece {
  return stacked([{ height, draw: () => undefined }]);
}

export function ruleOf(rule: Rule, { width, height }: { readonly width: number; readonly height: number }): Piece {
  return { height, draw: (pen, { x, y }) => pen.rule(rule, { x, y: y + height, width }) };
}

interface Setting {
  readonly text: string;
  readonly style: TextStyle;
  readonly width: number;
}

/** A text as one piece. */
export function textPiece(setting: Setting): Piece {
  return stacked(linePieces(setting));
}

/** A text line by line. */
export function linePieces({ text, style, width }: Setting): readonly Piece[] {
  return breakLines({ text, style, width }).map((line) => linePiece({ line, style, width }));
}

function linePiece({
  line,
  style,
  width,
}: {
  readonly line: TextLine;
  readonly style: TextStyle;
  readonly width: number;
}): Piece {
  return { height: style.size * style.leading, draw: (pen, at) => pen.text(line, style, { ...at, width }) };
}
