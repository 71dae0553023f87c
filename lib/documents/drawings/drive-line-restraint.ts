/*
 * Restraints of the drive-line picture, each in its own shape, from the head to what takes the reaction.
 * Invariant: every kind of restraint has a drawing; what belongs to the place (wall, vehicle, ground) is drawn in ground ink.
 * Not here: forces and ratings (engineering, kits).
 * Read next: drive-line.ts.
 */
import type { RestraintKind } from '#lib/equipment/parts.ts';
import { unreachable } from '#lib/kernel/invariant.ts';
import type { Point, Shape } from './drawing.ts';
import {
  DARK_INK,
  EDGE_INK,
  FINE_INK,
  groundLine,
  PART_INK,
  structure,
  VALVE_INK,
  WHITE_INK,
} from './drive-line-scene.ts';
import { circle, hatch, line, point, polygon, polyline, rect } from './shapes.ts';

export interface RestraintPlace {
  readonly kind: RestraintKind;
  /** Where the arm meets the head, and half-width of the head there. */
  readonly x: number;
  readonly y: number;
  readonly half: number;
  readonly ground: number;
  readonly secondChain: boolean;
  /** How far below the wheel the valve's yoke is. */
  readonly yoke: number;
}

export interface RestraintPiece {
  readonly shapes: readonly Shape[];
  /** Drawn before everything else (what stands behind). */
  readonly behind: readonly Shape[];
  readonly part: Point;
  readonly anchor: Point;
  readonly anchorWords: string;
}

export const EDGE = -118;

export function restraintPiece(place: RestraintPlace): RestraintPiece {
  switch (place.kind) {
    case 'reaction arm with chain':
      return armToStructure(
        place,
        place.secondChain
          ? [
              ...chain(point(-78, place.y), point(EDGE, place.y - 26)),
              ...chain(point(-78, place.y), point(EDGE, place.y + 26)),
            ]
          : chain(point(-78, place.y), point(EDGE, place.y + 20)),
      );
    case 'reaction arm with strap':
      return armToStructure(place, strap(point(-78, place.y), point(EDGE, place.y + 18)));
    case 'reaction arm with fixed bar':
      return armToStructure(place, fixedBar(place.y));
    case 'twin-point arm':
      return twinPoint(place);
    case 'yoke clamp':
      return yokeClamp(place);
    case 'tow-bar brace':
      return towBar(place);
    case 'ground plate':
      return groundPlate(place);
    case 'two-leg prop':
      return twoLegProp(place);
    case 'street stand':
      return streetStand(place);
    case 'purpose-made restraint':
      return purposeMade(place);
    default:
      return unreachable(place.kind);
  }
}

/** The clamp about the head, on the chain's own axis; the caller leans it with the head. */
export function restraintCollar(hold: { readonly y: number; readonly half: number }): readonly Shape[] {
  return [
    rect({ x: -hold.half - 3, y: hold.y - 6, width: hold.half * 2 + 6, height: 12 }, { ...DARK_INK, radius: 2 }),
    circle(point(-hold.half + 3, hold.y), 1.6, WHITE_INK),
    circle(point(hold.half - 3, hold.y), 1.6, WHITE_INK),
  ];
}

function arm(place: RestraintPlace, to: number): readonly Shape[] {
  const from = to < 0 ? place.x - place.half - 3 : place.x + place.half + 3;
  const x = Math.min(from, to);
  return [
    rect({ x, y: place.y - 3.5, width: Math.abs(to - from), height: 7 }, DARK_INK),
    line(point(x, place.y - 1), point(x + Math.abs(to - from), place.y - 1), FINE_INK),
  ];
}

function armToStructure(place: RestraintPlace, tie: readonly Shape[]): RestraintPiece {
  return {
    shapes: [...tie, ...arm(place, -82), circle(point(-78, place.y), 2.6, WHITE_INK)],
    behind: structure({ x: EDGE, top: place.y - 46, bottom: place.y + 46, side: 'left' }),
    part: point(-60, place.y - 3),
    anchor: point(EDGE - 4, place.y + 38),
    anchorWords: 'Structure that may take the pull',
  };
}

/** Links drawn along the line from a to b. */
function chain(a: Point, b: Point): readonly Shape[] {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const links = Math.max(3, Math.round(length / 6.4));
  const ux = (b.x - a.x) / length;
  const uy = (b.y - a.y) / length;
  const step = length / links;
  return Array.from({ length: links }, (_, index) => {
    const cx = a.x + ux * step * (index + 0.5);
    const cy = a.y + uy * step * (index + 0.5);
    const along = step * 0.68;
    const across = index % 2 === 0 ? 2.2 : 0.7;
    const corner = (i: number, j: number) =>
      point(cx + ux * along * i - uy * across * j, cy + uy * along * i + ux * across * j);
    return polygon(
      [
        corner(-1, -0.4),
        corner(-0.7, -1),
        corner(0.7, -1),
        corner(1, -0.4),
        corner(1, 0.4),
        corner(0.7, 1),
        corner(-0.7, 1),
        corner(-1, 0.4),
      ],
      index % 2 === 0
        ? { fill: 'paper', stroke: 'outline', weight: 'medium' }
        : { fill: 'outline', stroke: 'outline', weight: 'thin' },
    );
  });
}

function strap(a: Point, b: Point): readonly Shape[] {
  const middle = point((a.x + b.x) / 2, (a.y + b.y) / 2);
  return [
    polygon([point(a.x, a.y - 2.4), point(b.x, b.y - 2.4), point(b.x, b.y + 2.4), point(a.x, a.y + 2.4)], PART_INK),
    polyline([a, b], { stroke: 'outline', weight: 'hair', dash: 'dashed' }),
    rect({ x: middle.x - 5, y: middle.y - 5, width: 10, height: 9 }, { ...DARK_INK, radius: 1 }),
    line(point(middle.x - 3, middle.y - 5), point(middle.x - 7, middle.y - 11), { stroke: 'outline', weight: 'wide' }),
  ];
}

function fixedBar(y: number): readonly Shape[] {
  return [
    rect({ x: EDGE + 6, y: y - 2.5, width: 34, height: 5 }, PART_INK),
    rect({ x: EDGE, y: y - 12, width: 8, height: 24 }, DARK_INK),
    circle(point(EDGE + 4, y - 8), 1.4, WHITE_INK),
    circle(point(EDGE + 4, y + 8), 1.4, WHITE_INK),
    polygon([point(-96, y), point(-91, y - 6), point(-91, y - 4)], { fill: 'accent' }),
    polygon([point(-104, y), point(-109, y - 6), point(-109, y - 4)], { fill: 'accent' }),
  ];
}

function twinPoint(place: RestraintPlace): RestraintPiece {
  const foot = (side: 1 | -1): Shape[] => [
    rect({ x: side === -1 ? EDGE : -EDGE - 8, y: place.y - 9, width: 8, height: 18 }, { ...DARK_INK, radius: 1 }),
  ];
  return {
    shapes: [...foot(-1), ...foot(1), ...arm(place, EDGE + 8), ...arm(place, -EDGE - 8)],
    behind: [
      ...structure({ x: EDGE, top: place.y - 34, bottom: place.y + 34, side: 'left' }),
      ...structure({ x: -EDGE, top: place.y - 34, bottom: place.y + 34, side: 'right' }),
    ],
    part: point(-70, place.y - 3),
    anchor: point(EDGE - 4, place.y + 28),
    anchorWords: 'Two anchors, one each side',
  };
}

function yokeClamp(place: RestraintPlace): RestraintPiece {
  const bottom = place.yoke + 8;
  const leg = (side: 1 | -1): Shape[] => [
    polygon(
      [
        point(place.x + side * (place.half + 3), place.y - 4),
        point(side * 66, place.y - 4),
        point(side * 70, place.y),
        point(side * 70, bottom),
        point(side * 64, bottom),
        point(side * 64, place.y + 4),
        point(place.x + side * (place.half + 3), place.y + 4),
      ],
      DARK_INK,
    ),
    polygon(
      [
        point(side * 70, bottom - 9),
        point(side * 70, bottom),
        point(side * 22, bottom),
        point(side * 16, bottom - 3),
        point(side * 16, bottom - 7),
        point(side * 22, bottom - 9),
      ],
      DARK_INK,
    ),
    rect({ x: side === -1 ? -22 : 16, y: bottom - 12, width: 6, height: 15 }, { ...PART_INK, radius: 1 }),
    line(point(side * 66, place.y + 10), point(side * 66, bottom - 12), FINE_INK),
  ];
  return {
    shapes: [...leg(-1), ...leg(1)],
    behind: [],
    part: point(-67, (place.y + bottom) / 2),
    anchor: point(-19, bottom - 4),
    anchorWords: 'Valve yoke',
  };
}

function towBar(place: RestraintPlace): RestraintPiece {
  const g = place.ground;
  const hitch = point(-92, g - 30);
  const bar = polygon(
    [
      point(place.x - place.half - 2, place.y - 3),
      point(hitch.x, hitch.y - 3),
      point(hitch.x, hitch.y + 3),
      point(place.x - place.half - 2, place.y + 4),
    ],
    DARK_INK,
  );
  return {
    shapes: [bar, circle(hitch, 4, PART_INK), circle(hitch, 1.4, { fill: 'outline' })],
    behind: [
      polygon(
        [
          point(-140, g - 78),
          point(-130, g - 78),
          point(-122, g - 58),
          point(-104, g - 56),
          point(-102, g - 24),
          point(-140, g - 24),
        ],
        VALVE_INK,
      ),
      line(point(-140, g - 56), point(-104, g - 56), FINE_INK),
      polygon([point(-140, g - 74), point(-132, g - 74), point(-126, g - 59), point(-140, g - 59)], WHITE_INK),
      rect({ x: -106, y: g - 50, width: 4, height: 12 }, { fill: 'warning', stroke: 'outline', weight: 'hair' }),
      rect({ x: -102, y: g - 31, width: 10, height: 3 }, DARK_INK),
      circle(point(-127, g - 15), 15, { fill: 'valve', stroke: 'outline', weight: 'wide' }),
      circle(point(-127, g - 15), 7, EDGE_INK),
      polygon([point(-112, g), point(-99, g), point(-112, g - 10)], {
        fill: 'accent',
        stroke: 'outline',
        weight: 'thin',
      }),
      ...groundLine({ from: -143, to: -100, y: g }),
    ],
    part: point((hitch.x - place.half) / 2, (hitch.y + place.y) / 2 - 3),
    anchor: point(-124, g - 64),
    anchorWords: 'Vehicle: brake on, wheels chocked',
  };
}

function groundPlate(place: RestraintPlace): RestraintPiece {
  const g = place.ground;
  return {
    shapes: [
      rect({ x: -90, y: place.y - 6, width: 8, height: g - place.y + 2 }, DARK_INK),
      line(point(-86, place.y + 8), point(-86, g - 8), FINE_INK),
      polygon([point(-90, g - 28), point(-104, g - 4), point(-90, g - 4)], PART_INK),
      polygon([point(-82, g - 28), point(-68, g - 4), point(-82, g - 4)], PART_INK),
      rect({ x: -122, y: g - 4, width: 74, height: 4 }, DARK_INK),
      ...[-118, -108, -64, -54].map((x) =>
        polygon([point(x - 2, g), point(x + 2, g), point(x, g + 4)], { fill: 'outline' }),
      ),
      rect({ x: -121, y: g - 17, width: 15, height: 13 }, { ...VALVE_INK, radius: 2 }),
      rect({ x: -119, y: g - 29, width: 12, height: 12 }, { ...VALVE_INK, radius: 2 }),
      hatch({ x: -121, y: g - 17, width: 15, height: 13 }, { pattern: 'crossed', spacing: 4, stroke: 'ground' }),
      ...arm(place, -84),
    ],
    behind: [],
    part: point(-88, (place.y + g) / 2),
    anchor: point(-114, g - 22),
    anchorWords: 'Weight on the plate, firm level ground',
  };
}

function twoLegProp(place: RestraintPlace): RestraintPiece {
  const g = place.ground;
  const hub = point(-70, place.y);
  const leg = (foot: number): Shape[] => {
    const dx = (foot - hub.x) / (g - hub.y);
    return [
      polygon(
        [point(hub.x - 3, hub.y), point(hub.x + 3, hub.y), point(foot + 3, g - 4), point(foot - 3, g - 4)],
        DARK_INK,
      ),
      polygon(
        [
          point(hub.x + dx * 30 - 4, hub.y + 30),
          point(hub.x + dx * 30 + 4, hub.y + 30),
          point(hub.x + dx * 36 + 4, hub.y + 36),
          point(hub.x + dx * 36 - 4, hub.y + 36),
        ],
        PART_INK,
      ),
      rect({ x: foot - 9, y: g - 4, width: 18, height: 4 }, DARK_INK),
      polygon([point(foot - 5, g), point(foot - 1, g), point(foot - 3, g + 4)], { fill: 'outline' }),
      polygon([point(foot + 1, g), point(foot + 5, g), point(foot + 3, g + 4)], { fill: 'outline' }),
    ];
  };
  return {
    shapes: [...leg(-112), ...leg(-48), ...arm(place, -68), circle(hub, 6, PART_INK), circle(hub, 2, WHITE_INK)],
    behind: [],
    part: point(-88, (place.y + g) / 2 - 6),
    anchor: point(-112, g - 2),
    anchorWords: 'Firm ground for both feet',
  };
}

function streetStand(place: RestraintPlace): RestraintPiece {
  const g = place.ground;
  const top = place.y;
  const leg = (side: 1 | -1): Shape[] => [
    polygon(
      [
        point(place.x + side * (place.half - 2), top + 4),
        point(place.x + side * (place.half + 4), top + 4),
        point(side * 66, g - 5),
        point(side * 58, g - 5),
      ],
      DARK_INK,
    ),
    rect({ x: side === -1 ? -72 : 52, y: g - 5, width: 20, height: 5 }, { ...DARK_INK, radius: 1 }),
  ];
  return {
    shapes: [...leg(-1), ...leg(1), line(point(-50, g - 22), point(50, g - 22), { stroke: 'outline', weight: 'wide' })],
    behind: [],
    part: point(-place.half - 18, top + (g - top) * 0.45),
    anchor: point(-66, g - 2),
    anchorWords: 'Street surface beside the box, not on it',
  };
}

function purposeMade(place: RestraintPlace): RestraintPiece {
  const bottom = Math.min(place.ground - 6, 106);
  return {
    shapes: [
      {
        kind: 'path',
        d: `M ${place.x - place.half - 3} ${place.y - 5} L -96 ${place.y - 5} L -96 ${bottom} L -44 ${bottom} L -44 ${bottom - 10} L -86 ${bottom - 10} L -86 ${place.y + 5} L ${place.x - place.half - 3} ${place.y + 5} Z`,
        fill: 'paper',
        stroke: 'outline',
        weight: 'wide',
        dash: 'dashed',
      },
      hatch(
        { x: -96, y: place.y + 6, width: 10, height: Math.max(4, bottom - place.y - 18) },
        { pattern: 'rising', spacing: 5, stroke: 'muted' },
      ),
    ],
    behind: [],
    part: point(-91, (place.y + bottom) / 2),
    anchor: point(-52, bottom - 5),
    anchorWords: 'Shape to be agreed with the workshop',
  };
}
