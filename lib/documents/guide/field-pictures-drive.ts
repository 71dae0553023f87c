/*
 * Drawings of the field guide: wheel, nut, spindle, wrench.
 * Invariant: each fits FIELD_BOX and is told in one sentence.
 * Not here: the pieces they are made of (field-picture-parts.ts).
 * Read next: field-pictures.ts.
 */
import type { Point, Shape } from '#lib/documents/drawings/drawing.ts';
import { circle, curve, line, point, polygon, polyline, rect } from '#lib/documents/drawings/shapes.ts';
import {
  arrow,
  BODY,
  dimension,
  extension,
  type FieldPicture,
  ground,
  HIDDEN,
  label,
  nutTop,
  wheelFace,
  wheelSide,
} from './field-picture-parts.ts';

export const DRIVE_PICTURES = {
  'wheel-diameter': {
    told: 'A handwheel from above; the tape lies across its middle from outside to outside of the rim.',
    shapes: [
      ...wheelFace({ centre: point(120, 84), radius: 54, spokes: 5 }),
      extension(point(66, 84), point(66, 14)),
      extension(point(174, 84), point(174, 14)),
      ...dimension({ from: point(66, 20), to: point(174, 20), name: 'wheel diameter' }),
    ],
  },
  'wheel-spokes': {
    told: 'A handwheel from above with its five spokes numbered from the top.',
    shapes: [
      ...wheelFace({ centre: point(120, 76), radius: 62, spokes: 5 }),
      ...Array.from({ length: 5 }, (_, index) => {
        const angle = (index * 2 * Math.PI) / 5 - Math.PI / 2 + 0.28;
        return label(point(120 + 36 * Math.cos(angle), 79 + 36 * Math.sin(angle)), String(index + 1));
      }),
    ],
  },
  'wheel-dish': {
    told: 'A dished wheel from the side: a straight edge lies on the rim, the depth is measured down to the hub, the angle is between spoke and straight edge.',
    shapes: [
      ...wheelSide({ x: 120, y: 56, radius: 92, dish: 44 }),
      rect({ x: 20, y: 44, width: 200, height: 7 }, { fill: 'part', stroke: 'outline', weight: 'thin' }),
      ...dimension({ from: point(120, 52), to: point(120, 94), name: 'depth', at: point(6, -8) }),
      curve([point(66, 55), point(70, 61), point(70, 67), point(67, 74)], { stroke: 'accent', weight: 'medium' }),
      label(point(74, 69), 'angle', 'start'),
      rect({ x: 111, y: 105, width: 18, height: 36 }, BODY),
    ],
  },
  'driven-by': {
    told: 'What a person may turn: handwheel, bare nut, square, chain wheel, cap of a key, and the hand drive of an actuator.',
    shapes: [
      ...wheelFace({ centre: point(40, 38), radius: 26, spokes: 4 }),
      nutTop({ centre: point(120, 38), radius: 22, corners: 6 }),
      nutTop({ centre: point(200, 38), radius: 24, corners: 4 }),
      circle(point(40, 104), 22, BODY),
      ...[18, 62].map((x) =>
        line(point(x, 104), point(x, 132), { stroke: 'outline', weight: 'heavy', dash: 'dotted' }),
      ),
      polygon([point(106, 128), point(111, 90), point(129, 90), point(134, 128)], BODY),
      rect({ x: 172, y: 88, width: 44, height: 34 }, { ...BODY, radius: 8 }),
      circle(point(222, 105), 12, BODY),
      label(point(40, 74), 'handwheel'),
      label(point(120, 74), 'nut'),
      label(point(200, 74), 'square'),
      label(point(40, 144), 'chain wheel'),
      label(point(120, 144), 'key cap'),
      label(point(196, 144), 'actuator'),
    ],
  },
  'nut-flats': {
    told: 'A square nut from above with the caliper across two parallel flats, and a tapered one from the side measured at top and base.',
    shapes: [
      nutTop({ centre: point(62, 74), radius: 42, corners: 4 }),
      extension(point(32, 44), point(32, 16)),
      extension(point(92, 44), point(92, 16)),
      ...dimension({ from: point(32, 22), to: point(92, 22), name: 'across flats' }),
      polygon([point(148, 122), point(160, 50), point(200, 50), point(212, 122)], BODY),
      ...dimension({ from: point(160, 38), to: point(200, 38), name: 'top' }),
      ...dimension({ from: point(148, 132), to: point(212, 132), name: 'base', at: point(0, 14) }),
      label(point(62, 134), 'from above'),
    ],
  },
  'nut-shapes': {
    told: 'Four tops of nuts: square, tapered square with its wider base behind it, pentagon and hexagon.',
    shapes: [
      nutTop({ centre: point(60, 40), radius: 28, corners: 4 }),
      nutTop({ centre: point(180, 40), radius: 34, corners: 4 }),
      nutTop({ centre: point(180, 40), radius: 22, corners: 4 }),
      nutTop({ centre: point(60, 108), radius: 25, corners: 5 }),
      nutTop({ centre: point(180, 108), radius: 25, corners: 6 }),
      label(point(60, 76), 'square'),
      label(point(180, 78), 'tapered square'),
      label(point(60, 145), 'pentagon'),
      label(point(180, 145), 'hexagon'),
    ],
  },
  'nut-wear': {
    told: 'Three square nuts from above: sharp corners, corners a little gone, corners rounded away.',
    shapes: [
      ...worn(44, 0),
      ...worn(120, 5),
      ...worn(196, 14),
      label(point(44, 132), 'good'),
      label(point(120, 132), 'worn'),
      label(point(196, 132), 'rounded'),
    ],
  },
  spindle: {
    told: 'A buried valve with its extension spindle: length from the cap down to the valve, and the side of its square bar.',
    shapes: [
      ...ground({ y: 26, left: 78, right: 134 }),
      rect({ x: 88, y: 118, width: 36, height: 26 }, BODY),
      rect({ x: 101, y: 44, width: 10, height: 74 }, BODY),
      polygon([point(96, 44), point(99, 28), point(113, 28), point(116, 44)], BODY),
      rect({ x: 82, y: 26, width: 48, height: 10 }, HIDDEN),
      extension(point(118, 29), point(164, 29)),
      extension(point(126, 118), point(164, 118)),
      ...dimension({ from: point(158, 118), to: point(158, 29), name: 'length', at: point(6, 3) }),
      ...dimension({ from: point(80, 82), to: point(101, 82), name: '', at: point(0, -4) }),
      label(point(76, 85), 'size of the bar', 'end'),
    ],
  },
  'torque-wrench': {
    told: 'A torque wrench set square on the middle of the hub; it is pulled slowly and read where the wheel starts.',
    shapes: [
      ...wheelFace({ centre: point(70, 82), radius: 56, spokes: 5 }),
      rect({ x: 62, y: 74, width: 16, height: 16 }, { fill: 'part', stroke: 'outline', weight: 'medium' }),
      rect({ x: 78, y: 78, width: 132, height: 8 }, { radius: 3, fill: 'part', stroke: 'outline', weight: 'medium' }),
      circle(point(150, 82), 11, { fill: 'paper', stroke: 'outline', weight: 'medium' }),
      line(point(150, 82), point(156, 76), { stroke: 'accent', weight: 'medium' }),
      ...pulled(point(202, 92), point(202, 122)),
      label(point(202, 136), 'pull slowly'),
    ],
  },
  closes: {
    told: 'A handwheel seen from the side on which a person stands, with an arrow that turns clockwise and the question whether that shuts it.',
    shapes: [
      ...wheelFace({ centre: point(120, 84), radius: 52, spokes: 4 }),
      curve([point(84, 30), point(105, 12), point(135, 12), point(158, 31)], { stroke: 'accent', weight: 'wide' }),
      ...arrow({ tip: point(158, 31), from: point(146, 20) }),
      label(point(120, 14), 'shuts?'),
      label(point(120, 147), 'seen facing the wheel'),
    ],
  },
} satisfies Readonly<Record<string, FieldPicture>>;

/** A square nut with its corners cut or rounded by so much. */
function worn(x: number, by: number): readonly Shape[] {
  const half = 28;
  const at = (sx: number, sy: number) => point(x + sx, 80 + sy);
  const d = half - by;
  const corners = [
    [at(-d, -half), at(d, -half)],
    [at(half, -d), at(half, d)],
    [at(d, half), at(-d, half)],
    [at(-half, d), at(-half, -d)],
  ].flat();
  return [rect({ x: x - half, y: 80 - half, width: half * 2, height: half * 2 }, HIDDEN), polygon(corners, BODY)];
}

function pulled(from: Point, to: Point): readonly Shape[] {
  return [polyline([from, to], { stroke: 'accent', weight: 'wide' }), ...arrow({ tip: to, from })];
}
