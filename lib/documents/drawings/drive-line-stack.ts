/*
 * The chain of the drive line stacked from the valve upwards: adapter, extensions, joint, limiters, head, drive, counter.
 * Invariant: what lies beyond a joint leans with it, labels and the restraint's hold included.
 * Not here: the valve, the restraint and the page (drive-line.ts).
 * Read next: drive-line-adapter.ts, drive-line-machine.ts.
 */
import type { ExtensionModel } from '#lib/equipment/model.ts';
import type { Shape } from './drawing.ts';
import {
  adapterPiece,
  counterDial,
  jointPiece,
  jointUpperFork,
  limiterCollar,
  shaftPiece,
} from './drive-line-adapter.ts';
import { drivePiece, type HeadPiece, headPiece } from './drive-line-machine.ts';
import { restraintCollar } from './drive-line-restraint.ts';
import { type CallOut, joined, type Scene, scene, turnedScene } from './drive-line-scene.ts';
import { BURIED_DEPTH } from './drive-line-valve.ts';
import type { ChainParts } from './drive-line-words.ts';
import { point, turned, turnedPoint } from './shapes.ts';

interface ChainScenes {
  readonly lower: Scene;
  readonly upper: Scene;
  /** How many of the upper shapes are the drive's, drawn before the restraint. */
  readonly driveShapes: number;
  readonly head: HeadPiece;
  /** Where the restraint takes hold once the head leans, and its clamp there. */
  readonly hold: { readonly x: number; readonly y: number; readonly half: number };
  readonly collar: readonly Shape[];
}

interface ChainPlace {
  readonly parts: ChainParts;
  readonly dished: boolean;
  readonly buried: boolean;
  readonly risesThrough: boolean;
}

export function stackChain(place: ChainPlace): ChainScenes {
  const { parts } = place;
  const column = stackColumn(place);
  const head =
    parts.head === undefined
      ? {
          shapes: [],
          top: column.top,
          hold: { y: column.top, half: 12 },
          drive: { at: point(0, column.top), degrees: 0 as const },
        }
      : headPiece(parts.head, column.top);
  const machine = machineOf(parts, head);
  const calls = [...column.leaning.calls, ...machine.calls];
  if (parts.head !== undefined)
    calls.push({ ...parts.words(parts.head), at: point(-head.hold.half + 3, head.hold.y - 12), side: 'left' });
  const upper = scene([...machine.drive, ...column.leaning.shapes, ...head.shapes, ...machine.over], calls);
  const lean = column.pivot === null ? null : { about: point(0, column.pivot), degrees: parts.lean };
  const hold = lean === null ? point(0, head.hold.y) : turnedPoint(point(0, head.hold.y), lean);
  const collar = lean === null ? restraintCollar(head.hold) : turned(restraintCollar(head.hold), lean);
  return {
    lower: column.standing,
    upper: lean === null ? upper : turnedScene(upper, lean),
    driveShapes: machine.drive.length,
    head,
    hold: { ...hold, half: head.hold.half },
    collar,
  };
}

interface Column {
  /** What stands on the valve's axis, and what leans beyond a joint. */
  readonly standing: Scene;
  readonly leaning: Scene;
  readonly pivot: number | null;
  readonly top: number;
}

function emptyGroup(): { readonly shapes: Shape[]; readonly calls: CallOut[] } {
  return { shapes: [], calls: [] };
}

/** Adapter, extensions, joint and limiters, from the valve up to the head. */
function stackColumn(place: ChainPlace): Column {
  const { parts, buried } = place;
  const isKey = parts.adapter?.facts.kind === 'valve key';
  const standing = emptyGroup();
  const leaning = emptyGroup();
  let top = 0;
  let pivot: number | null = null;
  if (parts.adapter !== undefined) {
    const keyLength = buried ? BURIED_DEPTH + 40 : 84;
    const piece = adapterPiece(parts.adapter, { dished: place.dished, buried, keyLength, guided: parts.keyGuide });
    top = piece.top;
    standing.shapes.push(...piece.shapes);
    standing.calls.push({
      ...parts.words(parts.adapter),
      at: point(isKey ? 4 : 12, isKey ? top * 0.75 : top + 8),
      side: 'right',
    });
  }
  for (const model of parts.extensions) {
    const from = top;
    if (model.facts.kind === 'universal joint' && pivot === null) {
      const joint = jointPiece(top);
      const fork = jointUpperFork(joint.pivot);
      standing.shapes.push(...joint.shapes);
      leaning.shapes.push(...fork.shapes);
      pivot = joint.pivot;
      top = fork.top;
      standing.calls.push({ ...parts.words(model), at: point(3, joint.pivot), side: 'right' });
      continue;
    }
    const group = pivot === null ? standing : leaning;
    const piece = shaftPiece(model, {
      from,
      length: shaftLength(place, model),
      stemInside: place.risesThrough && parts.head?.facts.kind === 'open-centre',
    });
    group.shapes.push(...piece.shapes);
    top = piece.top;
    group.calls.push({ ...parts.words(model), at: point(7, (from + top) / 2), side: 'right' });
  }
  for (const option of parts.limitersAfterHead) {
    const group = pivot === null ? standing : leaning;
    const piece = limiterCollar(top);
    group.shapes.push(...piece.shapes);
    top = piece.top;
    group.calls.push({ ...parts.words(option), at: point(17, top + 10), side: 'right' });
  }
  return { standing, leaning, pivot, top };
}

/** Down a shaft the extensions share the way to the surface; elsewhere they are drawn short. */
function shaftLength(place: ChainPlace, model: ExtensionModel): number {
  if (model.facts.kind === 'universal joint') return 24;
  if (!place.buried || place.parts.adapter?.facts.kind === 'valve key') return 46;
  const shafts = place.parts.extensions.filter((extension) => extension.facts.kind === 'extension shaft').length;
  return (BURIED_DEPTH + 30) / Math.max(1, shafts);
}

function machineOf(
  parts: ChainParts,
  head: HeadPiece,
): { readonly drive: readonly Shape[]; readonly over: readonly Shape[]; readonly calls: readonly CallOut[] } {
  const calls: CallOut[] = [];
  let local: Scene = scene([]);
  let offset = 0;
  for (const option of parts.limitersAfterDrive) {
    const limiter = limiterCollar(offset);
    local = joined([
      local,
      scene(limiter.shapes, [{ ...parts.words(option), at: point(17, offset - 10), side: 'right' }]),
    ]);
    offset = limiter.top;
  }
  if (parts.drive !== undefined) {
    const drive = drivePiece(parts.drive);
    const own = scene(drive.shapes, [
      {
        ...parts.words(parts.drive),
        at: head.drive.degrees === 90 ? point(-15, -30) : point(-12, -22),
        side: head.drive.degrees === 90 ? 'right' : 'left',
      },
      { ...parts.energyWords, at: drive.energy, side: 'right' },
    ]);
    local = joined([local, turnedScene(own, { about: point(0, 0), degrees: 0, by: point(0, offset) })]);
  }
  const placed = turnedScene(local, { about: point(0, 0), degrees: head.drive.degrees, by: head.drive.at });
  const over: Shape[] = [];
  for (const option of parts.counters) {
    over.push(...counterDial({ y: head.hold.y - 2, half: head.hold.half, side: 1 }));
    calls.push({ ...parts.words(option), at: point(head.hold.half + 24, head.hold.y), side: 'right' });
  }
  return { drive: placed.shapes, over, calls: [...placed.calls, ...calls] };
}
