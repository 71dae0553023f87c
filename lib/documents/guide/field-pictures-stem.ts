/*
 * Drawings of the field guide: stem, thread, travel and collar.
 * Invariant: each fits FIELD_BOX and is told in one sentence.
 * Not here: the pieces they are made of (field-picture-parts.ts).
 * Read next: field-pictures.ts.
 */
import type { Shape } from '#lib/documents/drawings/drawing.ts';
import { circle, curve, line, point, polygon, rect } from '#lib/documents/drawings/shapes.ts';
import {
  BODY,
  dimension,
  EDGE,
  extension,
  type FieldPicture,
  gateBody,
  HIDDEN,
  label,
  stemUp,
  THIN,
  wheelSide,
} from './field-picture-parts.ts';

export const STEM_PICTURES = {
  'stem-kinds': {
    told: 'Three valves: a stem that comes up through a wheel that stays; a wheel that climbs with its stem; a stem that does not climb.',
    shapes: [
      ...[44, 120, 196].flatMap((x) => [
        rect({ x: x - 13, y: 84, width: 26, height: 36 }, BODY),
        rect({ x: x - 30, y: 108, width: 60, height: 16 }, BODY),
      ]),
      ...stemUp({ x: 44, from: 72, to: 22 }),
      ...wheelSide({ x: 44, y: 74, radius: 28 }),
      ...stemUp({ x: 120, from: 84, to: 44 }),
      ...wheelSide({ x: 120, y: 40, radius: 28 }),
      ...wheelSide({ x: 196, y: 74, radius: 28 }),
      ...dimension({ from: point(82, 68), to: point(82, 24), name: '', at: point(6, 0) }),
      ...dimension({ from: point(158, 68), to: point(158, 34), name: '', at: point(6, 0) }),
      label(point(44, 142), 'through wheel'),
      label(point(120, 142), 'with wheel'),
      label(point(196, 142), 'non-rising'),
    ],
  },
  'thread-pitch': {
    told: 'A thread from the side: diameter over the crests, and the length of ten threads, of which a tenth is the pitch.',
    shapes: [
      rect({ x: 20, y: 52, width: 200, height: 40 }, BODY),
      ...Array.from({ length: 15 }, (_, index) => trapezoid(26 + index * 13)).flat(),
      extension(point(30.5, 44), point(30.5, 24)),
      extension(point(160.5, 44), point(160.5, 24)),
      ...dimension({ from: point(30.5, 30), to: point(160.5, 30), name: '10 threads = 10 × pitch' }),
      extension(point(200, 40), point(232, 40)),
      extension(point(200, 104), point(232, 104)),
      ...dimension({ from: point(228, 40), to: point(228, 104), name: 'diameter', at: point(-4, 46) }),
    ],
  },
  'thread-starts': {
    told: 'The end of a stem with one thread beginning, and one with two threads beginning on opposite sides.',
    shapes: [
      ...startEnd(66, 1),
      ...startEnd(174, 2),
      label(point(66, 138), 'one start'),
      label(point(174, 138), 'two starts'),
    ],
  },
  'thread-hand': {
    told: 'Two upright stems: on the right-hand one the threads rise to the right, on the left-hand one to the left.',
    shapes: [
      ...handed(70, 1),
      ...handed(170, -1),
      label(point(70, 140), 'right-hand'),
      label(point(170, 140), 'left-hand'),
    ],
  },
  'stem-diameter': {
    told: 'A caliper over the crests of an upright stem.',
    shapes: [
      ...stemUp({ x: 120, from: 140, to: 16 }).map(widened),
      polygon([point(60, 60), point(108, 60), point(108, 96), point(102, 96), point(102, 70), point(60, 70)], BODY),
      polygon([point(180, 60), point(132, 60), point(132, 96), point(138, 96), point(138, 70), point(180, 70)], BODY),
      ...dimension({ from: point(108, 112), to: point(132, 112), name: 'diameter', at: point(20, 4) }),
    ],
  },
  collar: {
    told: 'A section of the yoke: the stem nut turns on its collar; the mean diameter lies midway between the collar’s outside and inside.',
    shapes: [
      rect({ x: 40, y: 84, width: 56, height: 16 }, BODY),
      rect({ x: 144, y: 84, width: 56, height: 16 }, BODY),
      polygon(
        [
          point(96, 40),
          point(144, 40),
          point(144, 64),
          point(164, 64),
          point(164, 84),
          point(76, 84),
          point(76, 64),
          point(96, 64),
        ],
        BODY,
      ),
      ...stemUp({ x: 120, from: 136, to: 14 }).map(widened),
      ...[82, 158].map((x) => circle(point(x, 80), 4, THIN)),
      extension(point(86, 86), point(86, 126)),
      extension(point(154, 86), point(154, 126)),
      ...dimension({ from: point(86, 122), to: point(154, 122), name: 'mean diameter', at: point(0, 14) }),
      label(point(170, 58), 'stem nut', 'start'),
    ],
  },
  travel: {
    told: 'Stem above the wheel with the valve closed and with it open; the difference is the travel.',
    shapes: [
      ...[62, 178].flatMap((x) => [
        ...gateBody({ x, top: 78, floor: 142 }).slice(3),
        rect({ x: x - 42, y: 118, width: 84, height: 18 }, BODY),
      ]),
      ...stemUp({ x: 62, from: 68, to: 56 }),
      ...stemUp({ x: 178, from: 68, to: 16 }),
      ...wheelSide({ x: 62, y: 70, radius: 34 }),
      ...wheelSide({ x: 178, y: 70, radius: 34 }),
      line(point(62, 56), point(132, 56), HIDDEN),
      extension(point(182, 16), point(128, 16)),
      ...dimension({ from: point(132, 56), to: point(132, 16), name: 'travel', at: point(-5, 3) }),
      label(point(62, 147), 'closed'),
      label(point(178, 147), 'open'),
    ],
  },
  'stem-protrusion': {
    told: 'A wheel from the side with the stem standing above its hub; the rule stands on the hub.',
    shapes: [
      ...gateBody({ x: 110, top: 88, floor: 146 }),
      ...stemUp({ x: 110, from: 76, to: 18 }),
      ...wheelSide({ x: 110, y: 78, radius: 60 }),
      extension(point(116, 18), point(156, 18)),
      extension(point(120, 73), point(156, 73)),
      ...dimension({ from: point(150, 73), to: point(150, 18), name: 'protrusion', at: point(6, 3) }),
    ],
  },
  'open-closed': {
    told: 'The same valve twice: closed with its stem short above the wheel, open with its stem long above the wheel.',
    shapes: [
      ...[62, 178].flatMap((x) => [
        rect({ x: x - 14, y: 76, width: 28, height: 40 }, BODY),
        rect({ x: x - 42, y: 112, width: 84, height: 18 }, BODY),
      ]),
      ...stemUp({ x: 62, from: 66, to: 56 }),
      ...stemUp({ x: 178, from: 66, to: 14 }),
      ...wheelSide({ x: 62, y: 68, radius: 34 }),
      ...wheelSide({ x: 178, y: 68, radius: 34 }),
      line(point(62, 112), point(62, 130), { stroke: 'accent', weight: 'heavy' }),
      line(point(178, 88), point(178, 106), { stroke: 'accent', weight: 'heavy' }),
      label(point(62, 146), 'closed: short'),
      label(point(178, 146), 'open: long'),
    ],
  },
  'stem-cover': {
    told: 'A tube over the stem, screwed on the hub, with its height and width.',
    shapes: [
      rect({ x: 106, y: 92, width: 28, height: 48 }, BODY),
      ...wheelSide({ x: 120, y: 90, radius: 60 }),
      rect({ x: 110, y: 22, width: 20, height: 63 }, { radius: 4, fill: 'part', stroke: 'outline', weight: 'medium' }),
      line(point(120, 34), point(120, 84), HIDDEN),
      extension(point(130, 22), point(166, 22)),
      extension(point(130, 85), point(166, 85)),
      ...dimension({ from: point(160, 85), to: point(160, 22), name: 'cover', at: point(6, 3) }),
    ],
  },
} satisfies Readonly<Record<string, FieldPicture>>;

function trapezoid(x: number): readonly Shape[] {
  const up = [point(x, 52), point(x + 2, 40), point(x + 7, 40), point(x + 9, 52)];
  const down = up.map((corner) => point(corner.x + 6.5, 144 - corner.y));
  return [polygon(up, BODY), polygon(down, BODY)];
}

function startEnd(x: number, starts: number): readonly Shape[] {
  const centre = point(x, 74);
  const marks = Array.from({ length: starts }, (_, index) => {
    const angle = (index * 2 * Math.PI) / starts - Math.PI / 2;
    const at = (radius: number, turn: number) =>
      point(x + radius * Math.cos(angle + turn), 74 + radius * Math.sin(angle + turn));
    return curve([at(26, 0), at(31, 0.35), at(36, 0.6), at(40, 1)], { stroke: 'accent', weight: 'heavy' });
  });
  return [circle(centre, 40, BODY), circle(centre, 26, { ...THIN, fill: 'paper' }), ...marks];
}

function handed(x: number, sign: 1 | -1): readonly Shape[] {
  const shapes: Shape[] = [rect({ x: x - 18, y: 16, width: 36, height: 108 }, BODY)];
  for (let y = 26; y < 122; y += 12) shapes.push(line(point(x - 18, y + 4 * sign), point(x + 18, y - 4 * sign), EDGE));
  return shapes;
}

/** The same stem, three times as thick. */
function widened(shape: Shape): Shape {
  if (shape.kind === 'rect') return { ...shape, x: 108, width: 24 };
  if (shape.kind === 'line') return { ...shape, from: point(108, shape.from.y + 1), to: point(132, shape.to.y - 1) };
  return shape;
}
