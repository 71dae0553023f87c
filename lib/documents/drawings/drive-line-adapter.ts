/*
 * Adapters, extensions, joints and in-line options of the drive-line picture: from the wheel or nut up to the head.
 * Invariant: each piece starts at the y it is given and says where it ends.
 * Not here: heads and drives (drive-line-machine.ts).
 * Read next: drive-line-machine.ts.
 */
import type { AdapterModel, ExtensionModel } from '#lib/equipment/model.ts';
import type { Shape } from './drawing.ts';
import { block, DARK_INK, EDGE_INK, FINE_INK, PART_INK, ribs, WHITE_INK } from './drive-line-scene.ts';
import { RIM, rimOffset } from './drive-line-valve.ts';
import { circle, hatch, line, point, polygon, polyline, rect } from './shapes.ts';

export interface Stack {
  readonly shapes: readonly Shape[];
  /** y of the upper end, where the next piece starts. */
  readonly top: number;
}

export function adapterPiece(
  adapter: AdapterModel,
  place: { readonly dished: boolean; readonly buried: boolean; readonly keyLength: number; readonly guided: boolean },
): Stack {
  switch (adapter.facts.kind) {
    case 'peg plate':
      return pegPlate(place.dished);
    case 'self-centring driver':
      return selfCentring(place.dished);
    case 'spoke driver':
      return spokeDriver(place.dished);
    case 'bolt-on plate':
      return boltOnPlate(place.dished);
    case 'drive socket':
      return driveSocket();
    case 'valve key':
      return valveKey(place);
  }
}

function pegPlate(dished: boolean): Stack {
  const plate = rimOffset(dished) - 14;
  const pegs = [-39, -24, 24, 39].flatMap((x) => [
    rect({ x: x - 2.6, y: plate + 5, width: 5.2, height: 17 - rimOffset(dished) * 0.9 }, { ...DARK_INK, radius: 1.5 }),
    rect({ x: x - 4, y: plate - 4, width: 8, height: 4 }, PART_INK),
  ]);
  return {
    shapes: [
      ...pegs,
      block({ half: 47, top: plate, bottom: plate + 6, radius: 1 }, PART_INK),
      block({ half: 14, top: plate - 14, bottom: plate, radius: 1 }, PART_INK),
      ...ribs({ half: 14, top: plate - 14, bottom: plate, step: 3.5 }),
    ],
    top: plate - 14,
  };
}

function selfCentring(dished: boolean): Stack {
  const rim = rimOffset(dished);
  const top = rim - 22;
  const jaw = (side: 1 | -1): Shape[] => [
    polygon(
      [
        point(side * 12, top),
        point(side * (RIM + 3), top + 7),
        point(side * (RIM + 9), top + 13),
        point(side * (RIM + 9), rim + 8),
        point(side * (RIM - 1), rim + 8),
        point(side * (RIM - 1), rim + 5.4),
        point(side * (RIM + 4.4), rim + 4),
        point(side * (RIM + 4.4), rim - 4),
        point(side * (RIM - 2), top + 14),
        point(side * 12, top + 9),
      ],
      PART_INK,
    ),
    circle(point(side * 32, top + 7.8), 1.8, EDGE_INK),
    line(point(side * 18, top + 5), point(side * 27, top + 6.6), FINE_INK),
  ];
  return {
    shapes: [
      ...jaw(-1),
      ...jaw(1),
      block({ half: 15, top: top - 13, bottom: top + 11, radius: 2 }, PART_INK),
      ...ribs({ half: 15, top: top - 3, bottom: top + 5, step: 2 }),
    ],
    top: top - 13,
  };
}

function spokeDriver(dished: boolean): Stack {
  const reach = dished ? 34 : 40;
  const bar = dished ? -17 : -15;
  const prong = (x: number): Shape =>
    polygon(
      [point(x - 4, bar + 6), point(x + 4, bar + 6), point(x + 3, 9), point(x - 1, 11), point(x - 3, 9)],
      DARK_INK,
    );
  const shapes: Shape[] = [
    prong(-reach + 10),
    prong(reach - 10),
    block({ half: reach, top: bar, bottom: bar + 7, radius: 3 }, PART_INK),
  ];
  if (dished)
    shapes.push(
      polyline([point(-reach, bar), point(-14, bar - 9)], EDGE_INK),
      polyline([point(reach, bar), point(14, bar - 9)], EDGE_INK),
    );
  shapes.push(
    block({ half: 14, top: bar - 13, bottom: bar, radius: 1 }, PART_INK),
    line(point(-9, bar - 13), point(-9, bar), FINE_INK),
    line(point(9, bar - 13), point(9, bar), FINE_INK),
  );
  return { shapes, top: bar - 13 };
}

function boltOnPlate(dished: boolean): Stack {
  const plate = dished ? -19 : -13;
  const bolt = (x: number): Shape[] => [
    polyline(
      [
        point(x - 5, plate - 5),
        point(x - 5, 6),
        point(x - 2, 9),
        point(x + 2, 9),
        point(x + 5, 6),
        point(x + 5, plate - 5),
      ],
      { stroke: 'outline', weight: 'wide' },
    ),
    rect({ x: x - 8, y: plate - 4, width: 6, height: 4 }, DARK_INK),
    rect({ x: x + 2, y: plate - 4, width: 6, height: 4 }, DARK_INK),
  ];
  return {
    shapes: [
      ...bolt(-27),
      ...bolt(27),
      block({ half: 38, top: plate, bottom: plate + 6 }, PART_INK),
      hatch({ x: -38, y: plate, width: 76, height: 6 }, { pattern: 'rising', spacing: 4, stroke: 'outline' }),
      block({ half: 9, top: plate - 14, bottom: plate }, PART_INK),
    ],
    top: plate - 14,
  };
}

function driveSocket(): Stack {
  return {
    shapes: [
      polygon([point(-9, -4), point(9, -4), point(11.5, 13), point(-11.5, 13)], PART_INK),
      block({ half: 10, top: -20, bottom: -4, radius: 2 }, PART_INK),
      ...ribs({ half: 10, top: -16, bottom: -7, step: 2.4 }),
      line(point(-6.5, 0), point(-8, 13), { stroke: 'outline', weight: 'hair', dash: 'dashed' }),
      line(point(6.5, 0), point(8, 13), { stroke: 'outline', weight: 'hair', dash: 'dashed' }),
    ],
    top: -20,
  };
}

function valveKey(place: { readonly keyLength: number; readonly guided: boolean; readonly buried: boolean }): Stack {
  const top = -place.keyLength;
  const split = top * 0.52;
  const shapes: Shape[] = [
    polygon([point(-5.5, -9), point(5.5, -9), point(9, -3), point(9, 9), point(-9, 9), point(-9, -3)], PART_INK),
    rect({ x: -3.2, y: split - 8, width: 6.4, height: -split - 1 }, PART_INK),
    rect({ x: -4.6, y: top + 8, width: 9.2, height: split - top - 2 }, PART_INK),
    block({ half: 6.4, top: split - 4, bottom: split + 5, radius: 1 }, DARK_INK),
    circle(point(0, split + 0.5), 1.5, WHITE_INK),
    ...[0, 1, 2, 3].map((hole) => circle(point(0, split + 14 + hole * 7), 1, FINE_INK)),
    block({ half: 8, top, bottom: top + 9, radius: 1 }, PART_INK),
    block({ half: 4.6, top: split - 26, bottom: split - 21 }, { fill: 'paper' }),
    breakAcross(split - 26),
    breakAcross(split - 21),
  ];
  if (place.guided)
    shapes.push(block({ half: 15, top: split * 0.5 - 2.5, bottom: split * 0.5 + 2.5, radius: 1 }, DARK_INK));
  return { shapes, top };
}

function breakAcross(y: number): Shape {
  return {
    kind: 'path',
    d: `M -6 ${y + 1.6} C -3 ${y - 2} -1.5 ${y - 1} 0 ${y} C 1.5 ${y + 1} 3 ${y + 2} 6 ${y - 1.6}`,
    stroke: 'outline',
    weight: 'thin',
  };
}

/** An extension shaft of the drawn length, tubular when a stem passes it. */
export function shaftPiece(
  model: ExtensionModel,
  place: { readonly from: number; readonly length: number; readonly stemInside: boolean },
): Stack {
  const top = place.from - place.length;
  const half = place.stemInside || model.facts.bore !== undefined ? 9 : 5.5;
  const middle = (top + place.from) / 2;
  const shapes: Shape[] = [
    block({ half, top: top + 6, bottom: place.from - 6 }, PART_INK),
    block({ half: half + 3.5, top: place.from - 9, bottom: place.from, radius: 1 }, PART_INK),
    block({ half: half + 3.5, top, bottom: top + 9, radius: 1 }, PART_INK),
    block({ half: half + 0.5, top: middle - 2.5, bottom: middle + 2.5 }, { fill: 'paper' }),
    {
      kind: 'path',
      d: `M ${-half - 2} ${middle - 1.5} C ${-half / 2} ${middle - 5} ${half / 2} ${middle} ${half + 2} ${middle - 3.5}`,
      stroke: 'outline',
      weight: 'thin',
    },
    {
      kind: 'path',
      d: `M ${-half - 2} ${middle + 3.5} C ${-half / 2} ${middle} ${half / 2} ${middle + 5} ${half + 2} ${middle + 1.5}`,
      stroke: 'outline',
      weight: 'thin',
    },
  ];
  return { shapes, top };
}

/** A universal joint: two forks and a cross; the pieces above lean by the angle about `pivot`. */
export function jointPiece(from: number): Stack & { readonly pivot: number } {
  const pivot = from - 19;
  const shapes: Shape[] = [
    block({ half: 7, top: from - 7, bottom: from, radius: 1 }, PART_INK),
    polygon(
      [
        point(-9, from - 6),
        point(9, from - 6),
        point(9, pivot - 4),
        point(4.5, pivot - 6),
        point(4.5, pivot + 5),
        point(-4.5, pivot + 5),
        point(-4.5, pivot - 6),
        point(-9, pivot - 4),
      ],
      PART_INK,
    ),
  ];
  return { shapes, top: pivot, pivot };
}

/** The upper fork, drawn with what leans. */
export function jointUpperFork(pivot: number): Stack {
  return {
    shapes: [
      polygon(
        [
          point(-7, pivot - 18),
          point(7, pivot - 18),
          point(7, pivot - 9),
          point(4, pivot - 7),
          point(4, pivot + 4),
          point(-4, pivot + 4),
          point(-4, pivot - 7),
          point(-7, pivot - 9),
        ],
        DARK_INK,
      ),
      circle(point(0, pivot), 3, WHITE_INK),
      line(point(-8, pivot), point(8, pivot), FINE_INK),
      block({ half: 7, top: pivot - 24, bottom: pivot - 17, radius: 1 }, PART_INK),
    ],
    top: pivot - 24,
  };
}

/** A torque limiter in the line, with its setting collar. */
export function limiterCollar(from: number): Stack {
  const top = from - 21;
  return {
    shapes: [
      block({ half: 17, top, bottom: from, radius: 3 }, DARK_INK),
      block({ half: 18.5, top: top + 7, bottom: top + 13 }, PART_INK),
      ...[-14, -10, -6, -2, 2, 6, 10, 14].map((x) =>
        line(point(x, top + 7), point(x, top + (x % 4 === 2 ? 11 : 10)), FINE_INK),
      ),
      polygon([point(0, top + 7.5), point(-2, top + 3.5), point(2, top + 3.5)], { fill: 'accent' }),
    ],
    top,
  };
}

/** A turns counter: a small dial on a bracket at the side of the stack. */
export function counterDial(at: {
  readonly y: number;
  readonly half: number;
  readonly side: 1 | -1;
}): readonly Shape[] {
  const x = at.side * (at.half + 17);
  return [
    line(point(at.side * at.half, at.y), point(x, at.y), { stroke: 'outline', weight: 'wide' }),
    circle(point(x, at.y), 8.5, PART_INK),
    circle(point(x, at.y), 6, WHITE_INK),
    line(point(x, at.y), point(x + 2.6, at.y - 3.8), { stroke: 'accent', weight: 'medium' }),
    ...[0, 60, 120, 180, 240, 300].map((degrees) => {
      const a = (degrees * Math.PI) / 180;
      return line(
        point(x + 4.6 * Math.cos(a), at.y + 4.6 * Math.sin(a)),
        point(x + 6 * Math.cos(a), at.y + 6 * Math.sin(a)),
        FINE_INK,
      );
    }),
  ];
}
