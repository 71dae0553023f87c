/*
 * Pieces of the field guide's drawings: dimension lines, wheels, stems, bodies, ground, nuts, all at one scale and in one hand.
 * Invariant: what is measured is drawn in the accent with its name; what is not ours stays grey.
 * Not here: which field shows what (field-pictures-stem.ts and its neighbours).
 * Read next: field-pictures.ts.
 */
import type { Point, Shape } from '#lib/documents/drawings/drawing.ts';
import { circle, type Ink, line, point, polygon, polyline, rect, text } from '#lib/documents/drawings/shapes.ts';

export interface FieldPicture {
  /** The picture in one sentence, for those who do not see it. */
  readonly told: string;
  readonly shapes: readonly Shape[];
}

export const FIELD_BOX = { width: 240, height: 150 } as const;

export const EDGE: Ink = { stroke: 'outline', weight: 'medium' };
export const THIN: Ink = { stroke: 'outline', weight: 'thin' };
export const BODY: Ink = { fill: 'valve', stroke: 'outline', weight: 'medium' };
export const HIDDEN: Ink = { stroke: 'muted', weight: 'thin', dash: 'dashed' };
const MEASURE: Ink = { stroke: 'accent', weight: 'medium' };
const ARROW = 5;

/** A dimension from a to b with arrows at both ends and its name beside the middle. */
export function dimension({
  from,
  to,
  name,
  at,
}: {
  readonly from: Point;
  readonly to: Point;
  readonly name: string;
  /** Where the name stands from the middle; above it where it is not said. */
  readonly at?: Point;
}): readonly Shape[] {
  const middle = point((from.x + to.x) / 2 + (at?.x ?? 0), (from.y + to.y) / 2 + (at?.y ?? -4));
  const anchor = at === undefined || at.x === 0 ? 'middle' : at.x > 0 ? 'start' : 'end';
  return [
    line(from, to, MEASURE),
    ...arrow({ tip: from, from: to }),
    ...arrow({ tip: to, from }),
    text(middle, name, { size: 10, anchor, bold: true, role: 'accent' }),
  ];
}

/** A filled head at `tip` for a line that comes from `from`. */
export function arrow({ tip, from }: { readonly tip: Point; readonly from: Point }): readonly Shape[] {
  const angle = Math.atan2(tip.y - from.y, tip.x - from.x);
  const side = (turn: number) => point(tip.x - ARROW * Math.cos(angle + turn), tip.y - ARROW * Math.sin(angle + turn));
  return [polygon([tip, side(0.4), side(-0.4)], { fill: 'accent', stroke: 'accent', weight: 'hair' })];
}

export function label(at: Point, words: string, anchor: 'start' | 'middle' | 'end' = 'middle'): Shape {
  return text(at, words, { size: 9, anchor, role: 'muted' });
}

export function extension(from: Point, to: Point): Shape {
  return line(from, to, { stroke: 'accent', weight: 'hair' });
}

/** A handwheel from above: rim, spokes, hub. */
export function wheelFace({
  centre,
  radius,
  spokes,
}: {
  readonly centre: Point;
  readonly radius: number;
  readonly spokes: number;
}): readonly Shape[] {
  const arms = Array.from({ length: spokes }, (_, index) => {
    const angle = (index * 2 * Math.PI) / spokes - Math.PI / 2;
    const at = (distance: number) =>
      point(centre.x + distance * Math.cos(angle), centre.y + distance * Math.sin(angle));
    return line(at(9), at(radius - 6), { stroke: 'outline', weight: 'heavy' });
  });
  return [
    circle(centre, radius, BODY),
    circle(centre, radius - 7, { fill: 'paper', stroke: 'outline', weight: 'thin' }),
    ...arms,
    circle(centre, 9, BODY),
    circle(centre, 3.5, THIN),
  ];
}

/** A handwheel from the side: its rim left and right, arms down to the hub by `dish`. */
export function wheelSide({
  x,
  y,
  radius,
  dish = 0,
}: {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly dish?: number;
}): readonly Shape[] {
  return [
    polyline([point(x - radius, y), point(x - 8, y + dish), point(x + 8, y + dish), point(x + radius, y)], {
      stroke: 'outline',
      weight: 'heavy',
    }),
    circle(point(x - radius, y), 4.5, BODY),
    circle(point(x + radius, y), 4.5, BODY),
    rect({ x: x - 9, y: y + dish - 5, width: 18, height: 10 }, BODY),
  ];
}

/** A gate valve from the side: pipe, body, bonnet up to `top`, centred on x. */
export function gateBody({
  x,
  top,
  floor,
}: {
  readonly x: number;
  readonly top: number;
  readonly floor: number;
}): readonly Shape[] {
  const pipe = floor - 24;
  return [
    rect({ x: x - 52, y: pipe, width: 104, height: 20 }, BODY),
    rect({ x: x - 34, y: pipe - 5, width: 5, height: 30 }, BODY),
    rect({ x: x + 29, y: pipe - 5, width: 5, height: 30 }, BODY),
    polygon([point(x - 20, pipe), point(x - 12, top), point(x + 12, top), point(x + 20, pipe)], BODY),
    rect({ x: x - 17, y: top + 14, width: 34, height: 5 }, BODY),
  ];
}

/** A threaded stem, upright. */
export function stemUp({
  x,
  from,
  to,
}: {
  readonly x: number;
  readonly from: number;
  readonly to: number;
}): readonly Shape[] {
  const shapes: Shape[] = [
    rect({ x: x - 4, y: to, width: 8, height: from - to }, { fill: 'paper', stroke: 'outline', weight: 'thin' }),
  ];
  for (let y = to + 3; y < from; y += 4) shapes.push(line(point(x - 4, y + 1), point(x + 4, y - 1), THIN));
  return shapes;
}

/** Ground with its hatching, open between `left` and `right`. */
export function ground({
  y,
  left,
  right,
}: {
  readonly y: number;
  readonly left: number;
  readonly right: number;
}): readonly Shape[] {
  const piece = (from: number, to: number): readonly Shape[] => {
    const shapes: Shape[] = [line(point(from, y), point(to, y), { stroke: 'ground', weight: 'wide' })];
    for (let x = from + 6; x < to; x += 9)
      shapes.push(line(point(x, y), point(x - 5, y + 7), { stroke: 'ground', weight: 'thin' }));
    return shapes;
  };
  return [...piece(0, left), ...piece(right, FIELD_BOX.width)];
}

/** A regular polygon with a flat below: the top of a nut. */
export function nutTop({
  centre,
  radius,
  corners,
}: {
  readonly centre: Point;
  readonly radius: number;
  readonly corners: number;
}): Shape {
  const points = Array.from({ length: corners }, (_, index) => {
    const angle = Math.PI / 2 + Math.PI / corners + (index * 2 * Math.PI) / corners;
    return point(centre.x + radius * Math.cos(angle), centre.y + radius * Math.sin(angle));
  });
  return polygon(points, BODY);
}

/** A person's outline with its feet at `at`, for scale. */
export function person(at: Point): readonly Shape[] {
  const ink: Ink = { stroke: 'muted', weight: 'wide' };
  return [
    circle(point(at.x, at.y - 52), 6, ink),
    polyline([point(at.x, at.y - 46), point(at.x, at.y - 22)], ink),
    polyline([point(at.x - 8, at.y), point(at.x, at.y - 22), point(at.x + 8, at.y)], ink),
    polyline([point(at.x + 16, at.y - 34), point(at.x, at.y - 41)], ink),
  ];
}
