/*
 * The valve's end of the drive-line picture: wheel valve, bare nut, or valve in the ground with its surface box.
 * Invariant: drawn in the grey of what is not ours; what the equipment grips lies at y = 0.
 * Not here: adapters and everything above them.
 * Read next: drive-line-adapter.ts.
 */
import type { Shape } from './drawing.ts';
import {
  block,
  breakLine,
  type CallOut,
  EDGE_INK,
  FINE_INK,
  groundLine,
  type Scene,
  scene,
  VALVE_INK,
} from './drive-line-scene.ts';
import { circle, line, point, polygon, polyline, rect } from './shapes.ts';

export interface ValveFacts {
  readonly kind: 'wheel' | 'nut' | 'buried';
  readonly dished: boolean;
  /** How far the stem stands above y = 0 in the picture; 0 when it does not. */
  readonly protrusion: number;
  readonly geared: boolean;
  /** Whether a floor is drawn below. */
  readonly floor: boolean;
  readonly closes: 'clockwise' | 'anticlockwise' | 'unknown';
  readonly grip: CallOut;
  readonly remarks: readonly CallOut[];
}

export interface ValveScene {
  readonly behind: Scene;
  /** Drawn last, over the equipment: the stem where a section shows it. */
  readonly stem: readonly Shape[];
  readonly ground: number;
}

/** Depth of the buried nut below the surface in the picture. */
export const BURIED_DEPTH = 108;
const FLOOR = 152;
export const RIM = 50;

export function valveScene(facts: ValveFacts): ValveScene {
  return facts.kind === 'buried' ? buriedValve(facts) : standingValve(facts);
}

/** Height of the rim's middle above the hub plane in the picture. */
export function rimOffset(dished: boolean): number {
  return dished ? -13 : 0;
}

function standingValve(facts: ValveFacts): ValveScene {
  const shapes: Shape[] = [...(facts.floor ? groundLine({ from: -128, to: 128, y: FLOOR }) : []), ...pipeAndBody(118)];
  shapes.push(...(facts.geared ? gearbox() : bonnetAndYoke()));
  shapes.push(rect({ x: -3, y: -4, width: 6, height: facts.geared ? 22 : 80 }, VALVE_INK));
  if (!facts.geared) for (let y = 22; y < 46; y += 2.6) shapes.push(line(point(-3, y + 1), point(3, y), FINE_INK));
  shapes.push(...(facts.kind === 'wheel' ? wheel(facts.dished) : nut()));
  shapes.push(...turnArrow(facts.closes, 31));
  return { behind: scene(shapes, [facts.grip, ...facts.remarks]), stem: stemAbove(facts.protrusion), ground: FLOOR };
}

function pipeAndBody(middle: number): readonly Shape[] {
  const half = 13;
  return [
    rect({ x: -104, y: middle - half, width: 208, height: half * 2 }, { fill: 'valve' }),
    line(point(-104, middle - half), point(104, middle - half), EDGE_INK),
    line(point(-104, middle + half), point(104, middle + half), EDGE_INK),
    breakLine({ x: -104, top: middle - half, bottom: middle + half, swing: 6 }),
    breakLine({ x: 104, top: middle - half, bottom: middle + half, swing: 6 }),
    line(point(-112, middle), point(112, middle), { stroke: 'muted', weight: 'hair', dash: 'chain' }),
    polygon(
      [
        point(-31, middle - 14),
        point(-19, middle - 24),
        point(-19, middle - 34),
        point(19, middle - 34),
        point(19, middle - 24),
        point(31, middle - 14),
        point(31, middle + 14),
        point(14, middle + 22),
        point(-14, middle + 22),
        point(-31, middle + 14),
      ],
      VALVE_INK,
    ),
    ...[-1, 1].flatMap((side) => [
      rect({ x: side === -1 ? -38 : 32, y: middle - 21, width: 6, height: 42 }, VALVE_INK),
      rect({ x: side === -1 ? -44 : 38, y: middle - 21, width: 6, height: 42 }, VALVE_INK),
    ]),
  ];
}

function bonnetAndYoke(): readonly Shape[] {
  return [
    block({ half: 24, top: 79, bottom: 84 }, VALVE_INK),
    block({ half: 24, top: 73, bottom: 78 }, VALVE_INK),
    polygon([point(-17, 73), point(-11, 58), point(11, 58), point(17, 73)], VALVE_INK),
    block({ half: 13, top: 52, bottom: 57, radius: 1 }, VALVE_INK),
    polygon(
      [point(-17, 73), point(-19, 66), point(-17, 20), point(-12, 14), point(-12, 22), point(-13.5, 66)],
      VALVE_INK,
    ),
    polygon([point(17, 73), point(19, 66), point(17, 20), point(12, 14), point(12, 22), point(13.5, 66)], VALVE_INK),
    block({ half: 13, top: 11, bottom: 19, radius: 2 }, VALVE_INK),
  ];
}

function gearbox(): readonly Shape[] {
  return [
    block({ half: 16, top: 72, bottom: 84 }, VALVE_INK),
    block({ half: 30, top: 30, bottom: 72, radius: 6 }, VALVE_INK),
    circle(point(0, 51), 15, EDGE_INK),
    circle(point(0, 51), 3, EDGE_INK),
    ...[0, 45, 90, 135, 180, 225, 270, 315].map((degrees) => {
      const a = (degrees * Math.PI) / 180;
      return line(
        point(15 * Math.cos(a), 51 + 15 * Math.sin(a)),
        point(18 * Math.cos(a), 51 + 18 * Math.sin(a)),
        EDGE_INK,
      );
    }),
    block({ half: 9, top: 18, bottom: 30, radius: 1 }, VALVE_INK),
  ];
}

function wheel(dished: boolean): readonly Shape[] {
  const rim = rimOffset(dished);
  const spoke = (side: 1 | -1) =>
    polygon(
      [point(side * 8, -3), point(side * (RIM - 3), rim - 1.6), point(side * (RIM - 3), rim + 1.6), point(side * 8, 3)],
      VALVE_INK,
    );
  return [
    spoke(-1),
    spoke(1),
    block({ half: 9, top: -5, bottom: 9, radius: 2 }, VALVE_INK),
    ...[-1, 1].map((side) =>
      rect(
        { x: side * RIM - 4, y: rim - 5, width: 8, height: 10 },
        { fill: 'valve', stroke: 'outline', weight: 'medium', radius: 4 },
      ),
    ),
    line(point(-RIM + 4, rim - 4), point(RIM - 4, rim - 4), { stroke: 'outline', weight: 'hair', dash: 'dashed' }),
  ];
}

function nut(): readonly Shape[] {
  return [
    polygon([point(-6.5, 0), point(6.5, 0), point(8.5, 14), point(-8.5, 14)], VALVE_INK),
    line(point(-2, 0), point(-2.6, 14), FINE_INK),
  ];
}

function stemAbove(protrusion: number): readonly Shape[] {
  if (protrusion <= 0) return [];
  const shapes: Shape[] = [rect({ x: -3, y: -protrusion, width: 6, height: protrusion - 4 }, VALVE_INK)];
  for (let y = -protrusion + 4; y < -6; y += 2.6) shapes.push(line(point(-3, y + 1), point(3, y), FINE_INK));
  return shapes;
}

/** Which way the wheel turns to close, as an arrow about the axis seen from above the wheel. */
function turnArrow(closes: ValveFacts['closes'], y: number): readonly Shape[] {
  if (closes === 'unknown') return [];
  const side = closes === 'clockwise' ? -1 : 1;
  const tip = point(side * 26, y - 1.5);
  return [
    {
      kind: 'path',
      d: `M ${-side * 26} ${y - 2} C ${-side * 24} ${y + 9} ${side * 24} ${y + 9} ${side * 26} ${y - 1}`,
      stroke: 'accent',
      weight: 'wide',
    },
    polygon([tip, point(tip.x - side * 5.5, tip.y + 3), point(tip.x - side * 0.2, tip.y + 6)], { fill: 'accent' }),
  ];
}

function buriedValve(facts: ValveFacts): ValveScene {
  const surface = -BURIED_DEPTH;
  const shapes: Shape[] = [
    ...groundLine({ from: -128, to: -17, y: surface }),
    ...groundLine({ from: 17, to: 128, y: surface }),
    ...soil(surface),
    ...pipeAndBody(62),
    block({ half: 20, top: 20, bottom: 28 }, VALVE_INK),
    polygon([point(-14, 20), point(-10, 12), point(10, 12), point(14, 20)], VALVE_INK),
    polygon([point(-5.5, 0), point(5.5, 0), point(7.5, 12), point(-7.5, 12)], VALVE_INK),
    ...surfaceBox(surface),
    ...depthMark(surface),
  ];
  return { behind: scene(shapes, [facts.grip, ...facts.remarks]), stem: [], ground: surface };
}

function soil(surface: number): readonly Shape[] {
  const shapes: Shape[] = [];
  for (let row = 0; row < 7; row += 1) {
    for (let column = 0; column < 8; column += 1) {
      const x = -120 + column * 34 + (row % 2) * 15;
      const y = surface + 20 + row * 13;
      if (Math.abs(x) > 24 && Math.abs(x) < 122 && x !== 90 && Math.abs(x - 60) > 16)
        shapes.push(
          polyline([point(x - 3, y), point(x, y + 2), point(x + 3, y)], { stroke: 'ground', weight: 'hair' }),
        );
    }
  }
  return shapes;
}

function surfaceBox(surface: number): readonly Shape[] {
  const tube: Shape[] = [-1, 1].map((side) =>
    line(point(side * 13, surface + 18), point(side * 13, 6), { stroke: 'outline', weight: 'thin' }),
  );
  return [
    ...tube,
    polygon(
      [
        point(-24, surface),
        point(-16, surface),
        point(-16, surface + 12),
        point(-12, surface + 18),
        point(-17, surface + 18),
        point(-24, surface + 10),
      ],
      VALVE_INK,
    ),
    polygon(
      [
        point(24, surface),
        point(16, surface),
        point(16, surface + 12),
        point(12, surface + 18),
        point(17, surface + 18),
        point(24, surface + 10),
      ],
      VALVE_INK,
    ),
    polygon(
      [point(30, surface - 1), point(38, surface - 23), point(41, surface - 22), point(33, surface - 1)],
      VALVE_INK,
    ),
  ];
}

function depthMark(surface: number): readonly Shape[] {
  const x = 60;
  const arrow = (y: number, way: 1 | -1) =>
    polygon([point(x, y), point(x - 2, y + way * 6), point(x + 2, y + way * 6)], { fill: 'outline' });
  return [
    line(point(9, 0), point(x + 4, 0), FINE_INK),
    line(point(x, surface), point(x, 0), FINE_INK),
    arrow(surface, 1),
    arrow(0, -1),
  ];
}
