/*
 * Drawings of the field guide: bodies of valves, pipe, pressures, by-pass, gearboxes and flange.
 * Invariant: each fits FIELD_BOX and is told in one sentence.
 * Not here: the pieces they are made of (field-picture-parts.ts).
 * Read next: field-pictures.ts.
 */
import type { Point, Shape } from '#lib/documents/drawings/drawing.ts';
import { circle, line, point, polygon, rect, text } from '#lib/documents/drawings/shapes.ts';
import {
  BODY,
  dimension,
  EDGE,
  type FieldPicture,
  gateBody,
  HIDDEN,
  label,
  THIN,
  wheelSide,
} from './field-picture-parts.ts';

export const VALVE_PICTURES = {
  'valve-kinds': {
    told: 'Four bodies from the side: a gate with its high bonnet, a round globe, a thin butterfly between flanges with its gearbox, a penstock plate in its frame.',
    shapes: [
      rect({ x: 8, y: 78, width: 48, height: 16 }, BODY),
      polygon([point(20, 78), point(25, 34), point(39, 34), point(44, 78)], BODY),
      ...wheelSide({ x: 32, y: 22, radius: 20 }),
      rect({ x: 68, y: 78, width: 48, height: 16 }, BODY),
      circle(point(92, 86), 19, BODY),
      rect({ x: 86, y: 44, width: 12, height: 24 }, BODY),
      ...wheelSide({ x: 92, y: 34, radius: 18 }),
      rect({ x: 128, y: 78, width: 48, height: 16 }, BODY),
      rect({ x: 146, y: 68, width: 12, height: 36 }, BODY),
      rect({ x: 141, y: 42, width: 26, height: 20 }, BODY),
      line(point(167, 52), point(176, 52), EDGE),
      line(point(177, 38), point(177, 66), { stroke: 'outline', weight: 'heavy' }),
      rect({ x: 192, y: 20, width: 38, height: 92 }, THIN),
      rect({ x: 196, y: 70, width: 30, height: 40 }, BODY),
      line(point(211, 12), point(211, 70), EDGE),
      label(point(32, 126), 'gate'),
      label(point(92, 126), 'globe'),
      label(point(152, 126), 'butterfly'),
      label(point(211, 126), 'penstock'),
    ],
  },
  'pipe-round': {
    told: 'A tape laid once round the bare pipe; its length divided by 3.14 is the outside diameter.',
    shapes: [
      rect({ x: 16, y: 48, width: 208, height: 50 }, BODY),
      rect({ x: 52, y: 46, width: 12, height: 54 }, { radius: 3, fill: 'part', stroke: 'accent', weight: 'medium' }),
      ...[52, 60, 68, 76, 84, 92].map((y) => line(point(52, y), point(57, y), { stroke: 'accent', weight: 'thin' })),
      ...dimension({ from: point(190, 48), to: point(190, 98), name: 'length ÷ 3.14', at: point(-5, 3) }),
      label(point(58, 118), 'tape once round'),
    ],
  },
  'body-marks': {
    told: 'A valve body with the marks that are raised in its casting: the size and the pressure class.',
    shapes: [
      ...gateBody({ x: 120, top: 54, floor: 140 }),
      ...wheelSide({ x: 120, y: 40, radius: 44 }),
      text(point(120, 129), 'DN 150', { size: 11, anchor: 'middle', bold: true, role: 'accent' }),
      text(point(120, 98), 'PN 16', { size: 9, anchor: 'middle', bold: true, role: 'accent' }),
    ],
  },
  pressures: {
    told: 'A closed valve with a gauge on either side; the difference of the two readings acts on it.',
    shapes: [
      ...gateBody({ x: 120, top: 56, floor: 140 }),
      rect({ x: 20, y: 116, width: 48, height: 20 }, BODY),
      rect({ x: 172, y: 116, width: 48, height: 20 }, BODY),
      ...gauge(point(44, 84), '6 bar'),
      ...gauge(point(196, 84), '4 bar'),
      line(point(120, 114), point(120, 138), { stroke: 'accent', weight: 'heavy' }),
      text(point(120, 30), '6 − 4 = 2 bar across it', { size: 11, anchor: 'middle', bold: true, role: 'accent' }),
    ],
  },
  'by-pass': {
    told: 'A small line with a valve of its own leads round the body of the large valve.',
    shapes: [
      ...gateBody({ x: 120, top: 62, floor: 118 }),
      ...wheelSide({ x: 120, y: 46, radius: 40 }),
      rect({ x: 30, y: 94, width: 40, height: 20 }, BODY),
      rect({ x: 170, y: 94, width: 40, height: 20 }, BODY),
      line(point(54, 114), point(54, 138), { stroke: 'accent', weight: 'heavy' }),
      line(point(54, 138), point(186, 138), { stroke: 'accent', weight: 'heavy' }),
      line(point(186, 138), point(186, 114), { stroke: 'accent', weight: 'heavy' }),
      polygon([point(108, 130), point(132, 146), point(132, 130), point(108, 146)], {
        fill: 'part',
        stroke: 'accent',
        weight: 'medium',
      }),
      label(point(196, 132), 'by-pass', 'start'),
    ],
  },
  'gearbox-kinds': {
    told: 'Four gearboxes: worm with its shaft beside the stem, travelling nut in a long housing, bevel with its shaft on the line of the stem, spur with both shafts side by side.',
    shapes: [
      circle(point(42, 36), 18, BODY),
      line(point(10, 56), point(78, 56), EDGE),
      line(point(80, 46), point(80, 66), { stroke: 'outline', weight: 'heavy' }),
      rect({ x: 128, y: 20, width: 84, height: 18 }, BODY),
      circle(point(156, 48), 14, BODY),
      line(point(212, 29), point(228, 29), EDGE),
      line(point(230, 19), point(230, 39), { stroke: 'outline', weight: 'heavy' }),
      polygon([point(22, 96), point(62, 96), point(52, 110), point(32, 110)], BODY),
      line(point(42, 110), point(42, 130), EDGE),
      line(point(64, 103), point(80, 103), EDGE),
      line(point(82, 93), point(82, 113), { stroke: 'outline', weight: 'heavy' }),
      circle(point(156, 108), 20, BODY),
      circle(point(188, 108), 12, BODY),
      line(point(156, 128), point(156, 134), EDGE),
      label(point(42, 82), 'worm'),
      label(point(170, 78), 'travelling nut'),
      label(point(42, 145), 'bevel'),
      label(point(170, 145), 'spur'),
    ],
  },
  flange: {
    told: 'The mounting flange from above: measure between the centres of two bolts that stand opposite each other.',
    shapes: [
      circle(point(120, 72), 60, BODY),
      circle(point(120, 72), 46, HIDDEN),
      circle(point(120, 72), 18, THIN),
      ...[0, 1, 2, 3].map((index) => {
        const angle = (index * Math.PI) / 2 + Math.PI / 4;
        return circle(point(120 + 46 * Math.cos(angle), 72 + 46 * Math.sin(angle)), 6, { ...THIN, fill: 'paper' });
      }),
      ...dimension({ from: point(87.5, 104.5), to: point(152.5, 39.5), name: 'bolt circle', at: point(0, 73) }),
    ],
  },
} satisfies Readonly<Record<string, FieldPicture>>;

function gauge(centre: Point, reading: string): readonly Shape[] {
  return [
    line(point(centre.x, centre.y + 15), point(centre.x, 116), EDGE),
    circle(centre, 15, { ...EDGE, fill: 'paper' }),
    line(centre, point(centre.x + 7, centre.y - 8), { stroke: 'accent', weight: 'medium' }),
    label(point(centre.x, centre.y - 20), reading),
  ];
}
