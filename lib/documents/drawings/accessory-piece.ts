/*
 * Sketches of accessories: chargers, packs, hoses, cans, pins, chains, cases and the like.
 * Invariant: every kind has its own outline, drawn about the origin.
 * Not here: the parts of the chain itself (drive-line-*.ts).
 * Read next: model-picture.ts.
 */
import type { AccessoryModel } from '#lib/equipment/model.ts';
import type { Shape } from './drawing.ts';
import { block, DARK_INK, EDGE_INK, FINE_INK, PART_INK, ribs, WHITE_INK } from './drive-line-scene.ts';
import { circle, curve, line, point, polygon, polyline, rect } from './shapes.ts';

type Kind = AccessoryModel['facts']['kind'];

export function accessoryPiece(kind: Kind): readonly Shape[] {
  return PIECES[kind]();
}

const box = (x: number, y: number, width: number, height: number): Shape =>
  rect({ x, y, width, height }, { ...PART_INK, radius: 3 });

const link = (x: number): Shape =>
  rect({ x, y: -4, width: 12, height: 8 }, { stroke: 'outline', weight: 'wide', radius: 4 });

const hose = (): readonly Shape[] => [
  ...[26, 20, 14].map((radius) => circle(point(0, 0), radius, { stroke: 'outline', weight: 'heavy' })),
  curve([point(26, 0), point(34, 14), point(40, 20), point(52, 20)], { stroke: 'outline', weight: 'heavy' }),
  rect({ x: 52, y: 15, width: 10, height: 10 }, DARK_INK),
];

const regulator = (glass: 'with oil' | 'dry'): readonly Shape[] => [
  line(point(-40, -8), point(40, -8), { stroke: 'outline', weight: 'heavy' }),
  box(-26, -16, 20, 18),
  rect({ x: -24, y: 2, width: 16, height: 24 }, { ...WHITE_INK, radius: 5 }),
  circle(point(-16, -24), 8, WHITE_INK),
  line(point(-16, -24), point(-12, -28), FINE_INK),
  ...(glass === 'with oil'
    ? [
        box(6, -16, 20, 18),
        rect({ x: 8, y: 2, width: 16, height: 24 }, { ...WHITE_INK, radius: 5 }),
        line(point(8, 16), point(24, 16), EDGE_INK),
      ]
    : []),
];

const PIECES: Readonly<Record<Kind, () => readonly Shape[]>> = {
  charger: () => [
    box(-30, -14, 60, 30),
    rect({ x: -18, y: -22, width: 36, height: 8 }, DARK_INK),
    circle(point(20, 6), 2.4, WHITE_INK),
    curve([point(-30, 8), point(-46, 8), point(-40, 26), point(-58, 26)], { stroke: 'outline', weight: 'wide' }),
    rect({ x: -68, y: 20, width: 10, height: 12 }, DARK_INK),
    line(point(-68, 23), point(-74, 23), EDGE_INK),
    line(point(-68, 29), point(-74, 29), EDGE_INK),
  ],
  'spare pack': () => [
    block({ half: 14, top: -22, bottom: -16 }, PART_INK),
    block({ half: 26, top: -17, bottom: 18, radius: 4 }, PART_INK),
    line(point(-14, 0), point(-6, 0), { stroke: 'outline', weight: 'wide' }),
    line(point(6, 0), point(14, 0), { stroke: 'outline', weight: 'wide' }),
    line(point(10, -4), point(10, 4), { stroke: 'outline', weight: 'wide' }),
  ],
  'air hose': hose,
  'hose restraint': () => [
    curve([point(-40, 0), point(-16, -4), point(16, 4), point(40, 0)], { stroke: 'outline', weight: 'heavy' }),
    ...[-24, 24].map((x) => circle(point(x, 0), 7, { stroke: 'outline', weight: 'wide' })),
    curve([point(-24, -7), point(-10, -26), point(10, -26), point(24, -7)], {
      stroke: 'outline',
      weight: 'medium',
      dash: 'dashed',
    }),
  ],
  'filter-regulator-lubricator': () => regulator('with oil'),
  'dry filter-regulator': () => regulator('dry'),
  'fuel can': () => [
    polygon([point(-24, -16), point(10, -16), point(24, -6), point(24, 30), point(-24, 30)], PART_INK),
    polyline([point(-16, -16), point(-16, -26), point(4, -26), point(4, -16)], { stroke: 'outline', weight: 'heavy' }),
    polygon([point(14, -13), point(28, -26), point(32, -22), point(21, -8)], DARK_INK),
    line(point(-18, 0), point(18, 24), FINE_INK),
    line(point(18, 0), point(-18, 24), FINE_INK),
  ],
  'retaining pins': () =>
    [-18, 0, 18].flatMap((y) => [
      line(point(-30, y), point(26, y), { stroke: 'outline', weight: 'heavy' }),
      circle(point(32, y), 6, { stroke: 'outline', weight: 'medium' }),
    ]),
  pegs: () =>
    [-24, -8, 8, 24].flatMap((x) => [
      rect({ x: x - 5, y: -20, width: 10, height: 34 }, { ...PART_INK, radius: 2 }),
      rect({ x: x - 3, y: 14, width: 6, height: 12 }, DARK_INK),
    ]),
  lanyards: () => [
    circle(point(-34, 0), 9, { stroke: 'outline', weight: 'heavy' }),
    curve([point(-25, 0), point(-8, -26), point(8, 26), point(25, 0)], { stroke: 'outline', weight: 'wide' }),
    circle(point(34, 0), 9, { stroke: 'outline', weight: 'heavy' }),
  ],
  'key guide': () => [
    rect({ x: -36, y: 6, width: 72, height: 8 }, DARK_INK),
    rect({ x: -10, y: -10, width: 20, height: 34 }, PART_INK),
    line(point(0, -34), point(0, 40), { stroke: 'muted', weight: 'hair', dash: 'chain' }),
    rect({ x: -4, y: -30, width: 8, height: 66 }, WHITE_INK),
  ],
  'second chain': () => [
    ...[-46, -36, -26, -16, -6, 4].map(link),
    rect({ x: 16, y: -7, width: 26, height: 14 }, DARK_INK),
    curve([point(42, 0), point(54, 0), point(54, 16), point(44, 16)], { stroke: 'outline', weight: 'heavy' }),
  ],
  case: () => [
    box(-40, -20, 80, 44),
    line(point(-40, -4), point(40, -4), EDGE_INK),
    polyline([point(-12, -20), point(-12, -30), point(12, -30), point(12, -20)], {
      stroke: 'outline',
      weight: 'heavy',
    }),
    ...[-24, 16].map((x) => rect({ x, y: -8, width: 8, height: 10 }, DARK_INK)),
  ],
  'sling support': () => [
    circle(point(0, -40), 6, { stroke: 'outline', weight: 'heavy' }),
    box(-12, -32, 24, 24),
    line(point(0, -8), point(0, 8), { stroke: 'outline', weight: 'wide' }),
    polyline([point(-22, 28), point(0, 8), point(22, 28)], { stroke: 'outline', weight: 'heavy' }),
    line(point(-22, 28), point(22, 28), { stroke: 'outline', weight: 'heavy' }),
  ],
  'flame arrester': () => [
    block({ half: 8, top: -34, bottom: -20 }, PART_INK),
    block({ half: 20, top: -20, bottom: 20, radius: 6 }, PART_INK),
    ...ribs({ half: 15, top: -14, bottom: 14, step: 4 }),
    block({ half: 8, top: 20, bottom: 32 }, PART_INK),
  ],
};
