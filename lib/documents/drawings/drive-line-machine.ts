/*
 * Heads and drives of the drive-line picture, with handles and energy source.
 * Invariant: a drive is drawn pointing up from y = 0; the caller turns it where the head asks for it.
 * Not here: adapters below the head and restraints beside it.
 * Read next: drive-line-restraint.ts.
 */
import type { DriveModel, HeadModel } from '#lib/equipment/model.ts';
import type { Point, Shape } from './drawing.ts';
import { block, breakLine, DARK_INK, EDGE_INK, FINE_INK, PART_INK, ribs, WHITE_INK } from './drive-line-scene.ts';
import { circle, curve, hatch, line, point, polygon, polyline, rect } from './shapes.ts';

export interface HeadPiece {
  readonly shapes: readonly Shape[];
  readonly top: number;
  /** Where the restraint takes hold: y of the arm, half-width of the head there. */
  readonly hold: { readonly y: number; readonly half: number };
  /** Where the drive begins, and which way it points. */
  readonly drive: { readonly at: Point; readonly degrees: 0 | 90 };
}

export function headPiece(head: HeadModel, from: number): HeadPiece {
  switch (head.facts.kind) {
    case 'inline':
      return inlineHead(from);
    case 'right-angle':
      return rightAngleHead(from);
    case 'open-centre':
      return openCentreHead(from);
  }
}

function inlineHead(from: number): HeadPiece {
  const top = from - 34;
  return {
    shapes: [
      block({ half: 10, top: from - 5, bottom: from }, PART_INK),
      polygon(
        [
          point(-19, from - 5),
          point(19, from - 5),
          point(22, from - 10),
          point(22, top + 4),
          point(18, top),
          point(-18, top),
          point(-22, top + 4),
          point(-22, from - 10),
        ],
        PART_INK,
      ),
      line(point(-22, from - 20), point(22, from - 20), FINE_INK),
      line(point(-22, from - 23), point(22, from - 23), FINE_INK),
      ...[-15, 15].map((x) => circle(point(x, top + 5), 1.4, FINE_INK)),
    ],
    top,
    hold: { y: from - 13, half: 22 },
    drive: { at: point(0, top), degrees: 0 },
  };
}

function rightAngleHead(from: number): HeadPiece {
  const top = from - 52;
  const axis = from - 33;
  return {
    shapes: [
      block({ half: 10, top: from - 5, bottom: from }, PART_INK),
      polygon(
        [
          point(-20, from - 5),
          point(20, from - 5),
          point(23, from - 12),
          point(23, axis - 14),
          point(18, top),
          point(-10, top),
          point(-23, axis - 10),
          point(-23, from - 12),
        ],
        PART_INK,
      ),
      rect({ x: 23, y: axis - 10, width: 11, height: 20 }, PART_INK),
      line(point(0, from - 8), point(0, axis), { stroke: 'muted', weight: 'hair', dash: 'chain' }),
      line(point(0, axis), point(36, axis), { stroke: 'muted', weight: 'hair', dash: 'chain' }),
      polygon([point(-9, from - 20), point(9, from - 20), point(5, from - 26), point(-5, from - 26)], EDGE_INK),
      polygon([point(13, axis - 8), point(13, axis + 8), point(7, axis + 4), point(7, axis - 4)], EDGE_INK),
    ],
    top,
    hold: { y: from - 12, half: 23 },
    drive: { at: point(34, axis), degrees: 90 },
  };
}

function openCentreHead(from: number): HeadPiece {
  const top = from - 46;
  const axis = from - 29;
  return {
    shapes: [
      block({ half: 34, top, bottom: from, radius: 4 }, PART_INK),
      ...[-1, 1].map((side) =>
        hatch(
          { x: side === -1 ? -34 : 9, y: top + 3, width: 25, height: 9 },
          { pattern: 'rising', spacing: 3.4, stroke: 'outline' },
        ),
      ),
      ...[-1, 1].map((side) =>
        hatch(
          { x: side === -1 ? -34 : 9, y: from - 9, width: 25, height: 9 },
          { pattern: 'rising', spacing: 3.4, stroke: 'outline' },
        ),
      ),
      ...[-1, 1].map((side) =>
        rect({ x: side === -1 ? -27 : 13, y: top + 15, width: 14, height: 18 }, { ...DARK_INK, radius: 1 }),
      ),
      rect({ x: -9, y: top - 2, width: 18, height: 48 }, WHITE_INK),
      line(point(-9, top - 2), point(9, top - 2), { stroke: 'paper', weight: 'wide' }),
      rect({ x: 34, y: axis - 10, width: 11, height: 20 }, PART_INK),
      line(point(0, top - 14), point(0, from), { stroke: 'muted', weight: 'hair', dash: 'chain' }),
    ],
    top,
    hold: { y: from - 8, half: 34 },
    drive: { at: point(45, axis), degrees: 90 },
  };
}

export interface DrivePiece {
  readonly shapes: readonly Shape[];
  /** Points that call-outs lead to, before any turning. */
  readonly body: Point;
  readonly energy: Point;
  readonly handle: Point;
}

export function drivePiece(drive: DriveModel): DrivePiece {
  const motor: Shape[] = [
    ...handles(),
    block({ half: 15, top: -10, bottom: 0 }, PART_INK),
    polygon(
      [point(-15, -10), point(15, -10), point(19, -16), point(19, -52), point(-19, -52), point(-19, -16)],
      PART_INK,
    ),
    ...ribs({ half: 15, top: -48, bottom: -20, step: 4 }),
    block({ half: 19, top: -58, bottom: -52, radius: 1 }, DARK_INK),
    circle(point(0, -14), 2, FINE_INK),
  ];
  const energy = energyOf(drive);
  return { shapes: [...motor, ...energy], body: point(-12, -20), energy: point(8, -72), handle: point(-50, -38) };
}

/** Two handles across the body, with rubber grips and the hold-to-run lever. */
function handles(): readonly Shape[] {
  return [-1, 1].flatMap((side) => [
    polyline([point(side * 17, -38), point(side * 36, -38)], { stroke: 'outline', weight: 'heavy' }),
    rect({ x: side === -1 ? -62 : 34, y: -42, width: 28, height: 8 }, { ...DARK_INK, radius: 4 }),
    hatch(
      { x: side === -1 ? -57 : 38, y: -41, width: 19, height: 6 },
      { pattern: 'upright', spacing: 3, stroke: 'outline' },
    ),
    ...(side === 1
      ? [polyline([point(34, -34), point(40, -31), point(56, -31)], { stroke: 'outline', weight: 'wide' })]
      : []),
  ]);
}

function energyOf(drive: DriveModel): readonly Shape[] {
  switch (drive.facts.power.kind) {
    case 'battery':
      return [
        block({ half: 14, top: -62, bottom: -58 }, PART_INK),
        block({ half: 22, top: -84, bottom: -61, radius: 3 }, PART_INK),
        line(point(-22, -66), point(22, -66), FINE_INK),
        line(point(-12, -75), point(-6, -75), { stroke: 'outline', weight: 'wide' }),
        line(point(6, -75), point(12, -75), { stroke: 'outline', weight: 'wide' }),
        line(point(9, -78), point(9, -72), { stroke: 'outline', weight: 'wide' }),
      ];
    case 'air':
      return [
        block({ half: 7, top: -66, bottom: -58 }, DARK_INK),
        curve([point(0, -66), point(0, -92), point(34, -94), point(42, -70)], { stroke: 'outline', weight: 'heavy' }),
        curve([point(42, -70), point(46, -56), point(50, -40), point(66, -40)], { stroke: 'outline', weight: 'heavy' }),
        rect({ x: 66, y: -48, width: 11, height: 16 }, { ...PART_INK, radius: 2 }),
        rect({ x: 79, y: -50, width: 9, height: 22 }, { ...PART_INK, radius: 4 }),
        line(point(77, -40), point(79, -40), EDGE_INK),
        circle(point(71.5, -52), 3.6, WHITE_INK),
        line(point(71.5, -52), point(73.4, -54), FINE_INK),
        line(point(88, -40), point(100, -40), { stroke: 'outline', weight: 'heavy' }),
        breakLine({ x: 101, top: -44, bottom: -36, swing: 2 }),
      ];
    case 'petrol':
      return [
        block({ half: 25, top: -82, bottom: -58, radius: 2 }, PART_INK),
        ...ribs({ half: 25, top: -80, bottom: -60, step: 3 }),
        block({ half: 18, top: -98, bottom: -83, radius: 5 }, DARK_INK),
        block({ half: 5, top: -102, bottom: -98, radius: 1 }, PART_INK),
        rect({ x: 25, y: -76, width: 9, height: 10 }, PART_INK),
        polyline([point(34, -73), point(40, -73), point(43, -77)], { stroke: 'outline', weight: 'wide' }),
        circle(point(-25, -70), 5, WHITE_INK),
        line(point(-25, -70), point(-35, -66), EDGE_INK),
      ];
  }
}
