/*
 * Measures of the house's papers: A4, calm margins, one accent tone, figures of equal width.
 * Invariant: every size of a text that appears on a paper stands here.
 * Not here: colours by role (documents/papers/paper-colours.ts).
 * Read next: typeset.ts, block-pieces.ts.
 */
import { PAPER_COLOURS as INK } from '#lib/documents/papers/paper-colours.ts';
import type { Weight } from './fonts.ts';

/** Points; 72 to the inch. */
export const PAGE = { width: 595.28, height: 841.89, left: 42, right: 42, top: 60, bottom: 54 } as const;
export const CONTENT_WIDTH = PAGE.width - PAGE.left - PAGE.right;
export const CONTENT_HEIGHT = PAGE.height - PAGE.top - PAGE.bottom;

export interface TextStyle {
  readonly size: number;
  /** Height of a line in sizes. */
  readonly leading: number;
  readonly weight: Weight;
  readonly colour: string;
  readonly align: 'left' | 'right' | 'centre';
}

const PLAIN: TextStyle = { size: 9, leading: 1.32, weight: 'regular', colour: INK.text, align: 'left' };

export const TEXT = {
  plain: PLAIN,
  strong: { ...PLAIN, weight: 'bold' },
  muted: { ...PLAIN, size: 8, colour: INK.muted },
  h1: { ...PLAIN, size: 12.5, weight: 'bold', leading: 1.2 },
  h2: { ...PLAIN, weight: 'bold', size: 9.5, colour: INK.accent },
  label: { ...PLAIN, size: 7.5, colour: INK.muted },
  tableHead: { ...PLAIN, size: 7.5, weight: 'bold' },
  cell: { ...PLAIN, size: 8.2, leading: 1.25 },
  denseCell: { ...PLAIN, size: 7.5, leading: 1.25 },
  tick: { ...PLAIN, size: 12, leading: 0.9 },
  rowNote: { ...PLAIN, size: 7.5, colour: INK.muted },
  marker: { ...PLAIN, weight: 'bold', colour: INK.accent },
  barcode: { ...PLAIN, size: 8 },
  kind: { ...PLAIN, size: 21, weight: 'bold', leading: 1.1 },
  number: { ...PLAIN, size: 10 },
  houseName: { ...PLAIN, size: 10, weight: 'bold', align: 'right' },
  houseLine: { ...PLAIN, size: 8, colour: INK.muted, align: 'right' },
  runningName: { ...PLAIN, size: 8, weight: 'bold' },
  runningText: { ...PLAIN, size: 8, colour: INK.muted, align: 'right' },
  footWords: { ...PLAIN, size: 7, colour: INK.muted },
  footPage: { ...PLAIN, size: 7.5, align: 'right' },
} as const satisfies Readonly<Record<string, TextStyle>>;

/** Lines: how strong, and in what ink. */
export const RULES = {
  strong: { weight: 0.9, colour: INK.axis },
  plain: { weight: 0.6, colour: INK.axis },
  muted: { weight: 0.6, colour: INK.muted },
  soft: { weight: 0.6, colour: INK.grid },
  row: { weight: 0.35, colour: INK.grid },
} as const;
export type Rule = (typeof RULES)[keyof typeof RULES];
