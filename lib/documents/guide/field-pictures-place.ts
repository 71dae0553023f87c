/*
 * Drawings of the field guide: depth, room, reach, anchors and vehicle.
 * Invariant: each fits FIELD_BOX and is told in one sentence.
 * Not here: the pieces they are made of (field-picture-parts.ts).
 * Read next: field-pictures.ts.
 */
import type { Shape } from '#lib/documents/drawings/drawing.ts';
import { circle, curve, line, point, polygon, polyline, rect, turned } from '#lib/documents/drawings/shapes.ts';
import {
  arrow,
  BODY,
  dimension,
  EDGE,
  extension,
  type FieldPicture,
  ground,
  HIDDEN,
  label,
  person,
  stemUp,
  THIN,
  wheelFace,
  wheelSide,
} from './field-picture-parts.ts';

export const PLACE_PICTURES = {
  depth: {
    told: 'A rod stands on the nut at the bottom of the surface box; it is read at the level of the ground.',
    shapes: [
      ...ground({ y: 30, left: 96, right: 144 }),
      line(point(96, 30), point(96, 122), EDGE),
      line(point(144, 30), point(144, 122), EDGE),
      rect({ x: 110, y: 112, width: 20, height: 14 }, BODY),
      rect({ x: 84, y: 126, width: 72, height: 18 }, BODY),
      line(point(120, 10), point(120, 111), { stroke: 'outline', weight: 'heavy' }),
      extension(point(130, 112), point(166, 112)),
      extension(point(146, 30), point(166, 30)),
      ...dimension({ from: point(160, 112), to: point(160, 30), name: 'depth to nut', at: point(6, 3) }),
    ],
  },
  misalignment: {
    told: 'A key leans out of its box because the nut does not stand under it; the angle is read against a level held upright.',
    shapes: [
      ...ground({ y: 56, left: 88, right: 152 }),
      line(point(88, 56), point(88, 128), EDGE),
      line(point(152, 56), point(152, 128), EDGE),
      rect({ x: 94, y: 122, width: 22, height: 14 }, BODY),
      line(point(105, 122), point(142, 12), { stroke: 'outline', weight: 'heavy' }),
      line(point(105, 122), point(105, 8), { stroke: 'accent', weight: 'medium', dash: 'dashed' }),
      curve([point(105, 30), point(114, 28), point(124, 30), point(135, 34)], { stroke: 'accent', weight: 'medium' }),
      label(point(150, 22), 'angle', 'start'),
    ],
  },
  faces: {
    told: 'Three valves: the wheel faces up, to the side, and down.',
    shapes: [
      ...facing(42, 0),
      ...facing(120, 90),
      ...facing(198, 180),
      label(point(42, 144), 'up'),
      label(point(120, 144), 'side'),
      label(point(198, 144), 'down'),
    ],
  },
  reach: {
    told: 'From where a person stands firm to the middle of the wheel.',
    shapes: [
      ...ground({ y: 128, left: 240, right: 240 }),
      ...person(point(44, 126)),
      rect({ x: 166, y: 92, width: 28, height: 34 }, BODY),
      ...wheelSide({ x: 180, y: 88, radius: 40 }),
      extension(point(44, 70), point(44, 40)),
      extension(point(180, 84), point(180, 40)),
      ...dimension({ from: point(44, 46), to: point(180, 46), name: 'reach' }),
    ],
  },
  'clear-radius': {
    told: 'From the stem outward to the nearest thing, here a column beside the wheel.',
    shapes: [
      circle(point(104, 78), 62, HIDDEN),
      ...wheelFace({ centre: point(104, 78), radius: 36, spokes: 5 }),
      rect({ x: 166, y: 20, width: 22, height: 116 }, { fill: 'part', stroke: 'outline', weight: 'medium' }),
      ...dimension({ from: point(104, 78), to: point(166, 78), name: 'clear radius', at: point(20, -66) }),
    ],
  },
  headroom: {
    told: 'From the wheel straight up to the nearest thing above, with the stem fully out.',
    shapes: [
      rect({ x: 20, y: 8, width: 200, height: 12 }, { fill: 'part', stroke: 'outline', weight: 'medium' }),
      rect({ x: 106, y: 122, width: 28, height: 22 }, BODY),
      ...wheelSide({ x: 120, y: 116, radius: 50 }),
      ...stemUp({ x: 120, from: 111, to: 84 }),
      extension(point(120, 112), point(196, 112)),
      ...dimension({ from: point(190, 112), to: point(190, 20), name: 'headroom', at: point(-6, 3) }),
    ],
  },
  vehicle: {
    told: 'From the valve to the nearest place where a van stands level with its brake on.',
    shapes: [
      ...ground({ y: 124, left: 240, right: 240 }),
      polygon([point(136, 112), point(136, 66), point(190, 66), point(206, 88), point(222, 92), point(222, 112)], BODY),
      circle(point(156, 114), 9, { ...EDGE, fill: 'paper' }),
      circle(point(204, 114), 9, { ...EDGE, fill: 'paper' }),
      rect({ x: 30, y: 100, width: 16, height: 22 }, BODY),
      ...wheelSide({ x: 38, y: 96, radius: 24 }),
      extension(point(38, 90), point(38, 38)),
      extension(point(136, 64), point(136, 38)),
      ...dimension({ from: point(38, 44), to: point(136, 44), name: 'vehicle distance' }),
    ],
  },
  anchor: {
    told: 'Good for the reaction: steelwork and a pipe as thick as the valve’s own. Never: a handrail or a small pipe.',
    shapes: [
      ...wheelFace({ centre: point(120, 70), radius: 32, spokes: 5 }),
      polyline(
        [
          point(20, 20),
          point(44, 20),
          point(44, 28),
          point(36, 28),
          point(36, 112),
          point(44, 112),
          point(44, 120),
          point(20, 120),
        ],
        { ...BODY },
      ),
      line(point(88, 70), point(40, 70), { stroke: 'accent', weight: 'wide' }),
      ...arrow({ tip: point(40, 70), from: point(88, 70) }),
      ...[186, 192].map((x) => line(point(x, 24), point(x, 120), THIN)),
      line(point(170, 48), point(208, 92), { stroke: 'never', weight: 'heavy' }),
      line(point(208, 48), point(170, 92), { stroke: 'never', weight: 'heavy' }),
      label(point(36, 138), 'steelwork'),
      label(point(189, 138), 'small pipe, handrail'),
    ],
  },
} satisfies Readonly<Record<string, FieldPicture>>;

/** A valve on its pipe, turned so that its wheel faces another way. */
function facing(x: number, degrees: number): readonly Shape[] {
  const about = point(x, 76);
  return turned(
    [
      circle(about, 15, BODY),
      rect({ x: x - 5, y: 42, width: 10, height: 20 }, BODY),
      ...wheelSide({ x, y: 36, radius: 24 }),
    ],
    { about, degrees },
  );
}
