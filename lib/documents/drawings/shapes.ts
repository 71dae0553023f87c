/*
 * Small builders of shapes: paths, hatching, leader text, and moving a group of shapes.
 * Invariant: hatching is drawn as lines of its own, so that every renderer shows it the same.
 * Not here: roles and colours.
 * Read next: drawing.ts.
 */
import type { LineWeight, PaintRole, PathShape, Point, RectShape, Shape, TextShape } from './drawing.ts';
import { textWidth } from './text-width.ts';

export interface Ink {
  readonly fill?: PaintRole;
  readonly stroke?: PaintRole;
  readonly weight?: LineWeight;
  readonly dash?: 'dashed' | 'dotted' | 'chain';
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The box that holds all shapes but texts, by their points (curves by their handles). */
export function extentOf(shapes: readonly Shape[]): Box {
  const points = shapes.flatMap(pointsOf);
  const xs = points.map((p) => p.x);
  const ys = points.map((p) => p.y);
  const x = Math.min(...xs);
  const y = Math.min(...ys);
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

function pointsOf(shape: Shape): readonly Point[] {
  switch (shape.kind) {
    case 'rect':
      return [point(shape.x, shape.y), point(shape.x + shape.width, shape.y + shape.height)];
    case 'line':
      return [shape.from, shape.to];
    case 'circle':
      return [
        point(shape.centre.x - shape.radius, shape.centre.y - shape.radius),
        point(shape.centre.x + shape.radius, shape.centre.y + shape.radius),
      ];
    case 'path':
      return [...shape.d.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map((match) => point(Number(match[1]), Number(match[2])));
    case 'text':
      return [];
  }
}

/** Two decimals are finer than any printer at these sizes and keep bytes stable. */
export function tidy(value: number): number {
  const rounded = Math.round(value * 100) / 100;
  return Object.is(rounded, -0) ? 0 : rounded;
}

export function point(x: number, y: number): Point {
  return { x, y };
}

export function line(from: Point, to: Point, ink: Ink): Shape {
  return { kind: 'line', from, to, ...ink };
}

export function rect(box: Box, ink: Ink & { readonly radius?: number }): RectShape {
  return { kind: 'rect', ...box, ...ink };
}

export function circle(centre: Point, radius: number, ink: Ink): Shape {
  return { kind: 'circle', centre, radius, ...ink };
}

export function polyline(points: readonly Point[], ink: Ink): PathShape {
  return { kind: 'path', d: straight(points), ...ink };
}

export function polygon(points: readonly Point[], ink: Ink): PathShape {
  return { kind: 'path', d: `${straight(points)} Z`, ...ink };
}

/** A cubic curve from the first point to the last with the two between as its handles. */
export function curve(points: readonly [Point, Point, Point, Point], ink: Ink): PathShape {
  const [a, b, c, d] = points;
  return { kind: 'path', d: `M ${pair(a)} C ${pair(b)} ${pair(c)} ${pair(d)}`, ...ink };
}

export function text(
  at: Point,
  words: string,
  style: {
    readonly size: number;
    readonly anchor?: TextShape['anchor'];
    readonly bold?: true;
    readonly role?: PaintRole;
  },
): TextShape {
  return {
    kind: 'text',
    at,
    text: words,
    size: style.size,
    anchor: style.anchor ?? 'start',
    bold: style.bold === true,
    role: style.role ?? 'text',
  };
}

/** The box a text may cover: ascent 0.75 and descent 0.22 of its size. */
export function textBox(shape: TextShape): Box {
  const width = textWidth(shape.text, shape);
  const x =
    shape.anchor === 'start' ? shape.at.x : shape.anchor === 'end' ? shape.at.x - width : shape.at.x - width / 2;
  return { x, y: shape.at.y - shape.size * 0.75, width, height: shape.size * 0.97 };
}

export const HATCHES = ['rising', 'falling', 'crossed', 'upright'] as const;
export type Hatch = (typeof HATCHES)[number];

/** Hatching of a box as one path, clipped to the box. */
export function hatch(
  box: Box,
  how: { readonly pattern: Hatch; readonly spacing: number; readonly stroke: PaintRole; readonly weight?: LineWeight },
): PathShape {
  const parts: string[] = [];
  if (how.pattern !== 'falling' && how.pattern !== 'upright') parts.push(...slanted(box, how.spacing, 1));
  if (how.pattern === 'falling' || how.pattern === 'crossed') parts.push(...slanted(box, how.spacing, -1));
  if (how.pattern === 'upright') {
    for (let x = box.x + how.spacing / 2; x < box.x + box.width; x += how.spacing)
      parts.push(`M ${pair(point(x, box.y))} L ${pair(point(x, box.y + box.height))}`);
  }
  return {
    kind: 'path',
    d: parts.length > 0 ? parts.join(' ') : `M ${pair(box)} L ${pair(box)}`,
    stroke: how.stroke,
    weight: how.weight ?? 'hair',
  };
}

/** Lines at 45°: rising (y falls as x grows) for sign 1, falling for −1. */
function slanted(box: Box, spacing: number, sign: 1 | -1): string[] {
  const parts: string[] = [];
  const { x, y, width, height } = box;
  for (let offset = spacing / 2; offset < width + height; offset += spacing) {
    const fromX = Math.max(0, offset - height);
    const toX = Math.min(width, offset);
    const from = sign === 1 ? point(x + fromX, y + (offset - fromX)) : point(x + fromX, y + height - (offset - fromX));
    const to = sign === 1 ? point(x + toX, y + (offset - toX)) : point(x + toX, y + height - (offset - toX));
    parts.push(`M ${pair(from)} L ${pair(to)}`);
  }
  return parts;
}

export interface Turn {
  readonly about: Point;
  /** Clockwise as seen. */
  readonly degrees: number;
  readonly scale?: number;
  readonly by?: Point;
}

/** Turns a group about a point, clockwise as seen, then moves it. Texts keep upright. */
export function turned(shapes: readonly Shape[], how: Turn): readonly Shape[] {
  return shapes.map((shape) => turnedShape(shape, how));
}

export function turnedPoint(p: Point, how: Turn): Point {
  const angle = (how.degrees * Math.PI) / 180;
  const scale = how.scale ?? 1;
  const dx = (p.x - how.about.x) * scale;
  const dy = (p.y - how.about.y) * scale;
  return {
    x: how.about.x + dx * Math.cos(angle) - dy * Math.sin(angle) + (how.by?.x ?? 0),
    y: how.about.y + dx * Math.sin(angle) + dy * Math.cos(angle) + (how.by?.y ?? 0),
  };
}

function turnedShape(shape: Shape, how: Turn): Shape {
  const move = (p: Point) => turnedPoint(p, how);
  switch (shape.kind) {
    case 'line':
      return { ...shape, from: move(shape.from), to: move(shape.to) };
    case 'circle':
      return { ...shape, centre: move(shape.centre), radius: shape.radius * (how.scale ?? 1) };
    case 'text':
      return { ...shape, at: move(shape.at) };
    case 'path':
      return {
        ...shape,
        d: shape.d.replace(/(-?[\d.]+) (-?[\d.]+)/g, (_, x: string, y: string) =>
          pair(move({ x: Number(x), y: Number(y) })),
        ),
      };
    case 'rect': {
      const { kind: _kind, x, y, width, height, radius, ...ink } = shape;
      return roundedBox({ x, y, width, height }, { radius: radius ?? 0, move, ink });
    }
  }
}

function roundedBox(
  box: Box,
  how: { readonly radius: number; readonly move: (p: Point) => Point; readonly ink: Ink },
): PathShape {
  const { x, y, width, height } = box;
  const r = Math.min(how.radius, width / 2, height / 2);
  const at = (px: number, py: number) => pair(how.move({ x: px, y: py }));
  if (r === 0)
    return {
      kind: 'path',
      d: `M ${at(x, y)} L ${at(x + width, y)} L ${at(x + width, y + height)} L ${at(x, y + height)} Z`,
      ...how.ink,
    };
  const k = r * 0.448;
  const d = [
    `M ${at(x + r, y)} L ${at(x + width - r, y)} C ${at(x + width - k, y)} ${at(x + width, y + k)} ${at(x + width, y + r)}`,
    `L ${at(x + width, y + height - r)} C ${at(x + width, y + height - k)} ${at(x + width - k, y + height)} ${at(x + width - r, y + height)}`,
    `L ${at(x + r, y + height)} C ${at(x + k, y + height)} ${at(x, y + height - k)} ${at(x, y + height - r)}`,
    `L ${at(x, y + r)} C ${at(x, y + k)} ${at(x + k, y)} ${at(x + r, y)} Z`,
  ];
  return { kind: 'path', d: d.join(' '), ...how.ink };
}

function straight(points: readonly Point[]): string {
  return points.map((p, index) => `${index === 0 ? 'M' : 'L'} ${pair(p)}`).join(' ');
}

function pair(p: Point): string {
  return `${tidy(p.x)} ${tidy(p.y)}`;
}
