/*
 * The drive line: one assembly drawn in side view from power source to valve, part by part, with what takes the reaction.
 * Invariant: not to scale and says so; every part of the assembly is named with its number; no two labels overlap.
 * Not here: the shapes of the pieces (drive-line-*.ts).
 * Read next: drive-line-scene.ts, drive-line-words.ts.
 */
import type { Duty } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { Model } from '#lib/equipment/model.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import type { Drawing, Shape } from './drawing.ts';
import {
  adapterPiece,
  counterDial,
  jointPiece,
  jointUpperFork,
  limiterCollar,
  type Stack,
  shaftPiece,
} from './drive-line-adapter.ts';
import { drawCalls } from './drive-line-labels.ts';
import { drivePiece, type HeadPiece, headPiece } from './drive-line-machine.ts';
import { restraintCollar, restraintPiece } from './drive-line-restraint.ts';
import { type CallOut, joined, type Scene, scene, turnedScene } from './drive-line-scene.ts';
import { BURIED_DEPTH, valveScene } from './drive-line-valve.ts';
import {
  type ChainParts,
  chainParts,
  gripCall,
  partCall,
  remarkCalls,
  setUpNote,
  valveKind,
} from './drive-line-words.ts';
import { extentOf, point, text, turned, turnedPoint } from './shapes.ts';

export interface DriveLineSubject {
  readonly assembly: Assembly;
  readonly models: readonly Model[];
  readonly line: ScheduleLine;
  readonly duty: Duty;
  readonly system: UnitSystem;
}

const WIDTH = 520;
const MIDDLE = 262;
const FIGURE = { from: 122, to: 399 };
const MARGIN = 14;

export function driveLine(subject: DriveLineSubject): Drawing {
  const parts = chainParts(subject);
  const upright = compose(subject, parts);
  const faced = facing(upright, subject.line.place.faces?.value);
  const drawn = fitted(faced);
  const box = extentOf(drawn.shapes);
  const notes = setUpNote(subject, parts);
  const labelled = drawCalls({
    calls: drawn.calls,
    width: WIDTH,
    top: 4,
    bottom: Math.max(box.height + MARGIN * 2, 190),
  });
  const height = labelled.bottom + 4 + notes.length * 9;
  const foot = notes.map(
    (words, index): Shape => text(point(6, labelled.bottom + 6 + index * 9), words, { size: 6.6, role: 'muted' }),
  );
  const told = drawn.calls.map((call) => `${call.title}: ${call.detail}`).join('. ');
  return {
    width: WIDTH,
    height: height + 2,
    title: `Drive line for ${subject.line.tag}`,
    description: `Side view from power source to valve. ${told}.`,
    shapes: [...drawn.shapes, ...labelled.shapes, ...foot],
  };
}

/** Puts the picture between the label columns: on the middle where it fits, moved or made smaller where it does not. */
function fitted(scene: Scene): Scene {
  const box = extentOf(scene.shapes);
  const scale = Math.min(1, (FIGURE.to - FIGURE.from) / box.width);
  const wished = MIDDLE + box.x * scale;
  const left = Math.max(FIGURE.from, Math.min(wished, FIGURE.to - box.width * scale));
  return turnedScene(scene, { about: point(box.x, box.y), degrees: 0, scale, by: point(left - box.x, MARGIN - box.y) });
}

function compose(subject: DriveLineSubject, parts: ChainParts): Scene {
  const kind = valveKind(subject, parts);
  const dished = (subject.duty.grip.wheelDish?.nominal ?? 0) >= 5;
  const risesThrough = subject.duty.grip.stemRisesThroughWheel !== 'no';
  const chain = stackChain({ parts, dished, buried: kind === 'buried', risesThrough });
  const protrusion =
    risesThrough && kind === 'wheel' ? (parts.head?.facts.kind === 'open-centre' ? -chain.head.top + 16 : 6) : 0;
  const valve = valveScene({
    kind,
    dished,
    protrusion,
    geared: subject.duty.movement === 'geared',
    closes: subject.duty.closes,
    floor: (subject.line.place.faces?.value ?? 'up') === 'up',
    grip: gripCall(subject, kind),
    remarks: remarkCalls(subject, kind),
  });
  const restraint =
    parts.restraint === undefined
      ? null
      : restraintPiece({
          kind: parts.restraint.facts.kind,
          ...chain.hold,
          ground: valve.ground,
          secondChain: parts.secondChain,
          yoke: 36,
        });
  const holding =
    restraint === null || parts.restraint === undefined
      ? scene([])
      : scene(restraint.shapes, [
          { ...partCall(subject, parts.restraint), at: restraint.part, side: 'left' },
          { title: restraint.anchorWords, detail: '', at: restraint.anchor, side: 'left' },
        ]);
  return joined([
    scene(restraint?.behind ?? []),
    valve.behind,
    chain.lower,
    scene(chain.upper.shapes.slice(0, chain.driveShapes)),
    holding,
    scene(restraint === null ? [] : chain.collar),
    scene(chain.upper.shapes.slice(chain.driveShapes), chain.upper.calls),
    scene(valve.stem),
  ]);
}

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

function stackChain(asked: {
  readonly parts: ChainParts;
  readonly dished: boolean;
  readonly buried: boolean;
  readonly risesThrough: boolean;
}): ChainScenes {
  const { parts, dished, buried, risesThrough } = asked;
  const calls: CallOut[] = [];
  const lower: Shape[] = [];
  const leaning: Shape[] = [];
  const isKey = parts.adapter?.facts.kind === 'valve key';
  const adapter: Stack =
    parts.adapter === undefined
      ? { shapes: [], top: 0 }
      : adapterPiece(parts.adapter, {
          dished,
          buried,
          keyLength: buried ? BURIED_DEPTH + 40 : 84,
          guided: parts.keyGuide,
        });
  lower.push(...adapter.shapes);
  if (parts.adapter !== undefined)
    calls.push({
      ...parts.words(parts.adapter),
      at: point(isKey ? 4 : 12, isKey ? adapter.top * 0.75 : adapter.top + 8),
      side: 'right',
    });
  let top = adapter.top;
  let pivot: number | null = null;
  const push = (stack: Stack) => {
    (pivot === null ? lower : leaning).push(...stack.shapes);
    top = stack.top;
  };
  const shafts = parts.extensions.filter((model) => model.facts.kind === 'extension shaft').length;
  const shaftLength = buried && !isKey ? (BURIED_DEPTH + 30) / Math.max(1, shafts) : 46;
  for (const model of parts.extensions) {
    const from = top;
    if (model.facts.kind === 'universal joint' && pivot === null) {
      const joint = jointPiece(top);
      push(joint);
      pivot = joint.pivot;
      push(jointUpperFork(joint.pivot));
    } else
      push(
        shaftPiece(model, {
          from: top,
          length: model.facts.kind === 'universal joint' ? 24 : shaftLength,
          stemInside: risesThrough && parts.head?.facts.kind === 'open-centre',
        }),
      );
    calls.push({ ...parts.words(model), at: point(7, (from + top) / 2), side: 'right' });
  }
  for (const option of parts.limitersAfterHead) {
    push(limiterCollar(top));
    calls.push({ ...parts.words(option), at: point(17, top + 10), side: 'right' });
  }
  const head =
    parts.head === undefined
      ? { shapes: [], top, hold: { y: top, half: 12 }, drive: { at: point(0, top), degrees: 0 as const } }
      : headPiece(parts.head, top);
  const machine = machineOf(parts, head);
  const lean = pivot === null ? null : { about: point(0, pivot), degrees: parts.lean };
  const upperCalls = [...machine.calls];
  if (parts.head !== undefined)
    upperCalls.push({ ...parts.words(parts.head), at: point(-head.hold.half + 3, head.hold.y - 12), side: 'left' });
  const upper = scene([...machine.drive, ...leaning, ...head.shapes, ...machine.over], upperCalls);
  const hold = lean === null ? point(0, head.hold.y) : turnedPoint(point(0, head.hold.y), lean);
  const collar = lean === null ? restraintCollar(head.hold) : turned(restraintCollar(head.hold), lean);
  return {
    lower: scene(lower, calls),
    upper: lean === null ? upper : turnedScene(upper, lean),
    driveShapes: machine.drive.length,
    head,
    hold: { ...hold, half: head.hold.half },
    collar,
  };
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

/** A wheel that faces sideways or down is drawn as it stands; labels go where their points went. */
function facing(upright: Scene, faces: 'up' | 'side' | 'down' | undefined): Scene {
  if (faces === undefined || faces === 'up') return upright;
  const turnedRound = turnedScene(upright, {
    about: point(0, 0),
    degrees: faces === 'side' ? -90 : 180,
    scale: faces === 'side' ? 0.82 : 1,
  });
  const box = extentOf(turnedRound.shapes);
  const middle = box.x + box.width / 2;
  return {
    shapes: turnedRound.shapes,
    calls: turnedRound.calls.map((call) => ({ ...call, side: call.at.x < middle ? 'left' : 'right' })),
  };
}
