/*
 * A picture as plain geometry: shapes with role names instead of colours, for screen and paper alike.
 * Invariant: a drawing is JSON; every shape lies in its own coordinates with y downwards; no meaning hangs on colour alone.
 * Not here: colours and fonts (the renderer's), what is drawn (torque-ladder.ts, drive-line.ts).
 * Read next: drawing-to-svg.ts, shapes.ts.
 */
/** What a shape stands for; the renderer maps it to a colour of its theme. */
export const PAINT_ROLES = [
  'needed',
  'window',
  'capacity',
  'never',
  'axis',
  'grid',
  'text',
  'muted',
  'warning',
  'outline',
  'part',
  'part-dark',
  'valve',
  'ground',
  'accent',
  'paper',
] as const;
export type PaintRole = (typeof PAINT_ROLES)[number];

/** Line widths in drawing units, after the ratio of technical drawing (wide to narrow 2 : 1). */
export const LINE_WEIGHTS = { hair: 0.35, thin: 0.6, medium: 0.9, wide: 1.4, heavy: 2.2 } as const;
export type LineWeight = keyof typeof LINE_WEIGHTS;

export interface Point {
  readonly x: number;
  readonly y: number;
}

interface Inked {
  readonly fill?: PaintRole;
  readonly stroke?: PaintRole;
  readonly weight?: LineWeight;
  readonly dash?: 'dashed' | 'dotted' | 'chain';
}

export interface RectShape extends Inked {
  readonly kind: 'rect';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly radius?: number;
}

export interface LineShape extends Inked {
  readonly kind: 'line';
  readonly from: Point;
  readonly to: Point;
}

/** `d` holds absolute M, L, C and Z commands only, numbers separated by single spaces. */
export interface PathShape extends Inked {
  readonly kind: 'path';
  readonly d: string;
}

export interface CircleShape extends Inked {
  readonly kind: 'circle';
  readonly centre: Point;
  readonly radius: number;
}

export interface TextShape {
  readonly kind: 'text';
  /** Point on the baseline that `anchor` speaks of. */
  readonly at: Point;
  readonly text: string;
  readonly size: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly bold: boolean;
  readonly role: PaintRole;
}

export type Shape = RectShape | LineShape | PathShape | CircleShape | TextShape;

export interface Drawing {
  readonly width: number;
  readonly height: number;
  /** Short name for screen readers and captions. */
  readonly title: string;
  /** The picture told in sentences, for those who do not see it. */
  readonly description: string;
  readonly shapes: readonly Shape[];
}

/** Dash pattern of a line in drawing units. */
export const DASHES: Readonly<Record<NonNullable<Inked['dash']>, string>> = {
  dashed: '3 2',
  dotted: '0.8 1.8',
  chain: '8 2 1.5 2',
};
