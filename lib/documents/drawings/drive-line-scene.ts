/*
 * The working vocabulary of the drive-line picture: scenes of shapes with call-outs, and inks used by all its pieces.
 * Invariant: in a scene the valve's axis is x = 0, up is −y, and the wheel's hub plane or the nut's top is y = 0.
 * Not here: the pieces themselves.
 * Read next: drive-line.ts.
 */
import type { Point, Shape } from './drawing.ts';
import { type Ink, line, point, polyline, rect, type Turn, turned, turnedPoint } from './shapes.ts';

/** A label with a leader to a point of the picture. */
export interface CallOut {
  readonly at: Point;
  readonly side: 'left' | 'right';
  readonly title: string;
  readonly detail: string;
}

export interface Scene {
  readonly shapes: readonly Shape[];
  readonly calls: readonly CallOut[];
}

export const PART_INK: Ink = { fill: 'part', stroke: 'outline', weight: 'medium' };
export const DARK_INK: Ink = { fill: 'part-dark', stroke: 'outline', weight: 'medium' };
export const VALVE_INK: Ink = { fill: 'valve', stroke: 'outline', weight: 'thin' };
export const EDGE_INK: Ink = { stroke: 'outline', weight: 'thin' };
export const FINE_INK: Ink = { stroke: 'outline', weight: 'hair' };
export const WHITE_INK: Ink = { fill: 'paper', stroke: 'outline', weight: 'thin' };

export function scene(shapes: readonly Shape[], calls: readonly CallOut[] = []): Scene {
  return { shapes, calls };
}

export function joined(scenes: readonly Scene[]): Scene {
  return { shapes: scenes.flatMap((part) => part.shapes), calls: scenes.flatMap((part) => part.calls) };
}

export function turnedScene(part: Scene, how: Turn): Scene {
  return {
    shapes: turned(part.shapes, how),
    calls: part.calls.map((call) => ({ ...call, at: turnedPoint(call.at, how) })),
  };
}

/** A box that stands symmetrically about the axis, from `top` (smaller y) to `bottom`. */
export function block(
  size: { readonly half: number; readonly top: number; readonly bottom: number; readonly radius?: number },
  ink: Ink,
): Shape {
  return rect(
    { x: -size.half, y: size.top, width: size.half * 2, height: size.bottom - size.top },
    { ...ink, radius: size.radius ?? 0 },
  );
}

/** Cooling fins, ribs or knurling: short lines across a block. */
export function ribs(
  span: { readonly half: number; readonly top: number; readonly bottom: number; readonly step: number },
  ink: Ink = FINE_INK,
): readonly Shape[] {
  const shapes: Shape[] = [];
  for (let y = span.top + span.step; y < span.bottom - span.step / 2; y += span.step)
    shapes.push(line(point(-span.half, y), point(span.half, y), ink));
  return shapes;
}

/** The S-shaped break line of technical drawing across a pipe or shaft, upright at x. */
export function breakLine(at: {
  readonly x: number;
  readonly top: number;
  readonly bottom: number;
  readonly swing: number;
}): Shape {
  const { x, top, bottom, swing } = at;
  const middle = (top + bottom) / 2;
  const d = `M ${x} ${top} C ${x + swing} ${top + (middle - top) * 0.4} ${x + swing} ${top + (middle - top) * 0.7} ${x} ${middle} C ${x - swing} ${middle + (bottom - middle) * 0.4} ${x - swing} ${middle + (bottom - middle) * 0.7} ${x} ${bottom}`;
  return { kind: 'path', d, stroke: 'outline', weight: 'thin' };
}

/** A structure (wall, column, steelwork) that takes a force: a face with hatching behind it. */
export function structure(at: {
  readonly x: number;
  readonly top: number;
  readonly bottom: number;
  readonly side: 'left' | 'right';
}): readonly Shape[] {
  const depth = at.side === 'left' ? -9 : 9;
  const shapes: Shape[] = [line(point(at.x, at.top), point(at.x, at.bottom), { stroke: 'outline', weight: 'wide' })];
  for (let y = at.top + 2; y < at.bottom - 1; y += 5)
    shapes.push(line(point(at.x, y), point(at.x + depth, y + 6), { stroke: 'ground', weight: 'thin' }));
  return shapes;
}

/** Ground or floor: a heavy line with slanted strokes below, as in a section. */
export function groundLine(at: { readonly from: number; readonly to: number; readonly y: number }): readonly Shape[] {
  const shapes: Shape[] = [line(point(at.from, at.y), point(at.to, at.y), { stroke: 'outline', weight: 'wide' })];
  for (let x = at.from + 4; x < at.to; x += 7)
    shapes.push(polyline([point(x, at.y), point(x - 6, at.y + 7)], { stroke: 'ground', weight: 'thin' }));
  return shapes;
}
