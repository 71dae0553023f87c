/*
 * A line drawing of one model, made from its facts: what it looks like, and its known sizes with dimension lines.
 * Invariant: what is to scale says so and carries its scale bar; what is a sketch says so too.
 * Not here: a whole chain on a valve (drive-line.ts) and what the drive gives (torque-speed-chart.ts).
 * Read next: drive-line-machine.ts, drive-line-adapter.ts, model-picture-sizes.ts.
 */
import type {
  AccessoryModel,
  AdapterModel,
  ExtensionModel,
  Model,
  OptionModel,
  RestraintModel,
} from '#lib/equipment/model.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import { accessoryPiece } from './accessory-piece.ts';
import type { Drawing, Shape } from './drawing.ts';
import {
  adapterPiece,
  counterDial,
  jointPiece,
  jointUpperFork,
  limiterCollar,
  shaftPiece,
} from './drive-line-adapter.ts';
import { drivePiece, headPiece } from './drive-line-machine.ts';
import { restraintCollar, restraintPiece } from './drive-line-restraint.ts';
import { block, PART_INK } from './drive-line-scene.ts';
import { sizesDrawing } from './model-picture-sizes.ts';
import { extentOf, point, text, turned } from './shapes.ts';

const WIDTH = 440;
const MIDDLE = 120;
const TOP = 16;
const HIGH = 168;
const WIDE = 200;

export function modelPicture(model: Model, system: UnitSystem): Drawing {
  const sketch = fitted(sketchOf(model));
  const sizes = sizesDrawing(model, { left: 250, top: TOP, system });
  const height = Math.max(TOP + HIGH, sizes.bottom) + 34;
  const words = `${model.name}. ${sizes.words}`;
  const notes = ['Left: a sketch, not to scale.', sizes.scaled ? 'Right: to the scale of its bar.' : '']
    .filter(Boolean)
    .join(' ');
  return {
    width: WIDTH,
    height,
    title: `${model.number} ${model.name}`,
    description: `${words} ${notes}`,
    shapes: [...sketch, ...sizes.shapes, text(point(10, height - 8), notes, { size: 8, role: 'muted' })],
  };
}

function sketchOf(model: Model): readonly Shape[] {
  switch (model.role) {
    case 'drive':
      return [block({ half: 7, top: 0, bottom: 9 }, PART_INK), ...drivePiece(model).shapes];
    case 'head':
      return headPiece(model, 0).shapes;
    case 'adapter':
      return adapterSketch(model);
    case 'extension':
      return extensionSketch(model);
    case 'restraint':
      return restraintSketch(model);
    case 'option':
      return optionSketch(model);
    case 'accessory':
      return accessorySketch(model);
  }
}

function adapterSketch(model: AdapterModel): readonly Shape[] {
  const dished = (model.facts.wheel?.dishUpTo ?? 0) > 0;
  return adapterPiece(model, { dished, buried: false, keyLength: 84, guided: false }).shapes;
}

function extensionSketch(model: ExtensionModel): readonly Shape[] {
  if (model.facts.kind !== 'universal joint')
    return shaftPiece(model, { from: 0, length: 84, stemInside: false }).shapes;
  const joint = jointPiece(0);
  return [
    ...joint.shapes,
    ...turned(jointUpperFork(joint.pivot).shapes, {
      about: point(0, joint.pivot),
      degrees: Math.min(30, model.facts.highestAngle ?? 20),
    }),
  ];
}

function restraintSketch(model: RestraintModel): readonly Shape[] {
  const hold = { y: 0, half: 22 };
  const piece = restraintPiece({
    kind: model.facts.kind,
    x: 0,
    y: 0,
    half: 22,
    ground: 110,
    secondChain: model.facts.directions === 'both ways' && model.facts.kind === 'reaction arm with chain',
    yoke: 40,
  });
  return [
    ...piece.behind,
    block({ half: 22, top: -30, bottom: 26, radius: 3 }, PART_INK),
    ...piece.shapes,
    ...restraintCollar(hold),
  ];
}

function optionSketch(model: OptionModel): readonly Shape[] {
  if (model.facts.kind === 'torque limiter') return limiterCollar(0).shapes;
  return [block({ half: 22, top: -30, bottom: 26, radius: 3 }, PART_INK), ...counterDial({ y: 0, half: 22, side: 1 })];
}

function accessorySketch(model: AccessoryModel): readonly Shape[] {
  return accessoryPiece(model.facts.kind);
}

/** Set into the left half, as large as it goes, line widths unchanged. */
function fitted(shapes: readonly Shape[]): readonly Shape[] {
  const box = extentOf(shapes);
  const by = Math.min(HIGH / Math.max(1, box.height), WIDE / Math.max(1, box.width), 2.4);
  const x = MIDDLE - (box.x + box.width / 2) * by;
  const y = TOP + (HIGH - box.height * by) / 2 - box.y * by;
  return shapes.map((shape) => scaled(shape, { by, x, y }));
}

interface Fit {
  readonly by: number;
  readonly x: number;
  readonly y: number;
}

function scaled(shape: Shape, { by, x, y }: Fit): Shape {
  const at = (p: { readonly x: number; readonly y: number }) => point(p.x * by + x, p.y * by + y);
  switch (shape.kind) {
    case 'rect': {
      const radius = shape.radius === undefined ? {} : { radius: shape.radius * by };
      return { ...shape, ...at(shape), width: shape.width * by, height: shape.height * by, ...radius };
    }
    case 'line':
      return { ...shape, from: at(shape.from), to: at(shape.to) };
    case 'circle':
      return { ...shape, centre: at(shape.centre), radius: shape.radius * by };
    case 'text':
      return { ...shape, at: at(shape.at), size: shape.size * by };
    case 'path':
      return { ...shape, d: scaledPath(shape.d, { by, x, y }) };
  }
}

/** Paths hold absolute commands only, so that numbers come in pairs of x and y. */
function scaledPath(d: string, { by, x, y }: Fit): string {
  let isX = false;
  return d
    .split(' ')
    .map((word) => {
      if (!/^-?[\d.]/.test(word)) return word;
      isX = !isX;
      return String(Number((Number(word) * by + (isX ? x : y)).toFixed(2)));
    })
    .join(' ');
}
