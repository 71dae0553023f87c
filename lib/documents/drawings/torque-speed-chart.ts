/*
 * The torque–speed chart of a drive: every gear from free speed to stall, with its rated point, in the units asked for.
 * Invariant: drawn from the facts alone; what is continuous and what is short-time is told by hatching and words, never by colour alone.
 * Not here: pressure, altitude and charge, which change the curve (engineering).
 * Read next: model-picture.ts, drawing.ts.
 */
import type { Gear } from '#lib/equipment/drive.ts';
import type { DriveModel } from '#lib/equipment/model.ts';
import { formatQuantity, type UnitSystem } from '#lib/units/format-quantity.ts';
import { findUnit, fromSi } from '#lib/units/unit-table.ts';
import type { Drawing, Point, Shape } from './drawing.ts';
import { circle, hatch, line, point, polygon, polyline, rect, text } from './shapes.ts';

const WIDTH = 440;
const HEIGHT = 250;
const BOX = { left: 46, right: 426, top: 14, bottom: 196 } as const;
const TICKS = 5;

export interface GearRow {
  readonly name: string;
  readonly stall: string;
  readonly rated: string;
  readonly freeSpeed: string;
  readonly speedAtRated: string;
  readonly powerAtRated: string;
}

/** The figures of the chart as a table. */
export function gearRows(drive: DriveModel, system: UnitSystem): readonly GearRow[] {
  return drive.facts.gears.map((gear) => {
    const speed = speedAt(gear, gear.ratedTorque);
    const torque = (value: number) => formatQuantity({ value, unit: 'N·m', system });
    const turns = (value: number) => formatQuantity({ value, unit: '1/min', system });
    return {
      name: gear.name,
      stall: torque(gear.stallTorque),
      rated: torque(gear.ratedTorque),
      freeSpeed: turns(gear.freeSpeed),
      speedAtRated: turns(speed),
      powerAtRated: formatQuantity({ value: (gear.ratedTorque * speed * 2 * Math.PI) / 60, unit: 'W', system }),
    };
  });
}

export function torqueSpeedChart(drive: DriveModel, system: UnitSystem): Drawing {
  const { gears } = drive.facts;
  const unit = system === 'si' ? 'N·m' : 'lbf·ft';
  const torque = axisOf(Math.max(...gears.map(({ stallTorque }) => shownTorque(stallTorque, unit))));
  const speed = axisOf(Math.max(...gears.map(({ freeSpeed }) => freeSpeed)));
  const at = (newtonMetres: number, turns: number): Point =>
    point(
      BOX.left + (shownTorque(newtonMetres, unit) / torque.most) * (BOX.right - BOX.left),
      BOX.bottom - (turns / speed.most) * (BOX.bottom - BOX.top),
    );
  return {
    width: WIDTH,
    height: HEIGHT,
    title: `Torque and speed of ${drive.number}`,
    description: tellGears(drive, system),
    shapes: [
      ...gears.flatMap((gear) => regionsOf(gear, at)),
      ...grid({ torque, speed, unit, turns: system === 'si' ? '1/min' : 'rpm' }),
      ...gears.flatMap((gear) => curveOf(gear, at)),
      ...legend(),
    ],
  };
}

type Place = (newtonMetres: number, turns: number) => Point;

function shownTorque(newtonMetres: number, unit: string): number {
  const row = findUnit({ text: unit, dimension: 'torque' });
  return row === undefined ? newtonMetres : fromSi(row, newtonMetres);
}

interface Axis {
  readonly most: number;
  readonly step: number;
}

/** A step of 1, 2 or 5 times a power of ten, so that about five of them reach the most. */
function axisOf(most: number): Axis {
  const raw = most / TICKS;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = ([1, 2, 5, 10].find((factor) => factor * power >= raw) ?? 10) * power;
  return { step, most: Math.ceil((most * 1.02) / step) * step };
}

function pointsOf(gear: Gear): readonly { readonly torque: number; readonly speed: number }[] {
  return (
    gear.curve ?? [
      { torque: 0, speed: gear.freeSpeed },
      { torque: gear.stallTorque, speed: 0 },
    ]
  );
}

/** Straight lines between the points of the gear. */
function speedAt(gear: Gear, torque: number): number {
  const points = pointsOf(gear);
  const next = points.findIndex((one) => one.torque >= torque);
  const [a, b] = [points[Math.max(0, next - 1)], points[Math.max(0, next)]];
  if (a === undefined || b === undefined || b.torque === a.torque) return b?.speed ?? 0;
  return a.speed + ((torque - a.torque) / (b.torque - a.torque)) * (b.speed - a.speed);
}

/** Up to rated torque it may run on; from there to stall only for short. */
function regionsOf(gear: Gear, at: Place): readonly Shape[] {
  const rated = { torque: gear.ratedTorque, speed: speedAt(gear, gear.ratedTorque) };
  const points = pointsOf(gear);
  const before = [...points.filter(({ torque }) => torque < rated.torque), rated];
  const beyond = [rated, ...points.filter(({ torque }) => torque > rated.torque)];
  const under = (ends: typeof before): readonly Point[] => [
    at(ends[0]?.torque ?? 0, 0),
    ...ends.map(({ torque, speed }) => at(torque, speed)),
    at(ends.at(-1)?.torque ?? 0, 0),
  ];
  return [
    polygon(under(before), { fill: 'part' }),
    polygon(under(beyond), { stroke: 'muted', weight: 'hair', dash: 'dotted' }),
    ...shortTime(beyond, at),
  ];
}

/** Upright lines under the short-time part, so that it is told apart without colour. */
function shortTime(ends: readonly { readonly torque: number; readonly speed: number }[], at: Place): readonly Shape[] {
  return ends.slice(1).flatMap((b, index) => {
    const a = ends[index];
    if (a === undefined) return [];
    const count = Math.max(2, Math.round((at(b.torque, 0).x - at(a.torque, 0).x) / 5));
    return Array.from({ length: count }, (_unused, step) => {
      const share = (step + 0.5) / count;
      const torque = a.torque + share * (b.torque - a.torque);
      const speed = a.speed + share * (b.speed - a.speed);
      return line(at(torque, 0), at(torque, speed), { stroke: 'warning', weight: 'hair' });
    });
  });
}

function curveOf(gear: Gear, at: Place): readonly Shape[] {
  const rated = at(gear.ratedTorque, speedAt(gear, gear.ratedTorque));
  const stall = at(gear.stallTorque, 0);
  return [
    polyline(
      pointsOf(gear).map(({ torque, speed }) => at(torque, speed)),
      { stroke: 'outline', weight: 'wide' },
    ),
    circle(rated, 3.2, { fill: 'accent', stroke: 'outline', weight: 'thin' }),
    rect({ x: stall.x - 3, y: stall.y - 3, width: 6, height: 6 }, { fill: 'never', stroke: 'outline', weight: 'thin' }),
    text(point(rated.x + 6, rated.y - 4), gear.name, { size: 9, bold: true, role: 'text' }),
  ];
}

interface Frame {
  readonly torque: Axis;
  readonly speed: Axis;
  readonly unit: string;
  readonly turns: string;
}

function grid({ torque, speed, unit, turns }: Frame): readonly Shape[] {
  const shapes: Shape[] = [];
  const ink = { stroke: 'grid', weight: 'hair' } as const;
  for (let step = 0; step <= torque.most / torque.step + 1e-9; step += 1) {
    const x = BOX.left + ((step * torque.step) / torque.most) * (BOX.right - BOX.left);
    shapes.push(line(point(x, BOX.top), point(x, BOX.bottom), ink));
    shapes.push(
      text(point(x, BOX.bottom + 12), plain(step * torque.step), { size: 8.5, anchor: 'middle', role: 'text' }),
    );
  }
  for (let step = 0; step <= speed.most / speed.step + 1e-9; step += 1) {
    const y = BOX.bottom - ((step * speed.step) / speed.most) * (BOX.bottom - BOX.top);
    shapes.push(line(point(BOX.left, y), point(BOX.right, y), ink));
    shapes.push(text(point(BOX.left - 5, y + 3), plain(step * speed.step), { size: 8.5, anchor: 'end', role: 'text' }));
  }
  return [
    ...shapes,
    line(point(BOX.left, BOX.bottom), point(BOX.right, BOX.bottom), { stroke: 'axis', weight: 'medium' }),
    line(point(BOX.left, BOX.top), point(BOX.left, BOX.bottom), { stroke: 'axis', weight: 'medium' }),
    text(point((BOX.left + BOX.right) / 2, BOX.bottom + 25), `torque at the output, ${unit}`, {
      size: 9,
      anchor: 'middle',
      role: 'text',
    }),
    text(point(BOX.left, BOX.top - 5), `speed, ${turns}`, { size: 9, role: 'text' }),
  ];
}

const plain = (value: number): string => String(Number(value.toPrecision(6)));

function legend(): readonly Shape[] {
  const y = HEIGHT - 12;
  return [
    circle(point(52, y - 3), 3.2, { fill: 'accent', stroke: 'outline', weight: 'thin' }),
    text(point(59, y), 'rated', { size: 8.5, role: 'text' }),
    rect({ x: 96, y: y - 6, width: 6, height: 6 }, { fill: 'never', stroke: 'outline', weight: 'thin' }),
    text(point(106, y), 'stall', { size: 8.5, role: 'text' }),
    rect({ x: 142, y: y - 8, width: 14, height: 9 }, { fill: 'part', stroke: 'outline', weight: 'hair' }),
    text(point(160, y), 'for its continuous run', { size: 8.5, role: 'text' }),
    rect({ x: 262, y: y - 8, width: 14, height: 9 }, { stroke: 'outline', weight: 'hair' }),
    hatch({ x: 262, y: y - 8, width: 14, height: 9 }, { pattern: 'upright', spacing: 3, stroke: 'warning' }),
    text(point(280, y), 'for short, towards stall', { size: 8.5, role: 'text' }),
  ];
}

function tellGears(drive: DriveModel, system: UnitSystem): string {
  return gearRows(drive, system)
    .map(
      (row) =>
        `Gear ${row.name}: ${row.freeSpeed} without load, ${row.speedAtRated} at its rated ${row.rated}, and it stalls at ${row.stall}.`,
    )
    .join(' ');
}
