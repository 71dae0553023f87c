/*
 * The drive line: one assembly drawn in side view from power source to valve, part by part, with what takes the reaction.
 * Invariant: not to scale and says so; every part of the assembly is named with its number; no two labels overlap.
 * Not here: the shapes of the pieces (drive-line-*.ts).
 * Read next: drive-line-scene.ts, drive-line-words.ts.
 */
import type { Drawing, Shape } from './drawing.ts';
import { drawCalls } from './drive-line-labels.ts';
import { restraintPiece } from './drive-line-restraint.ts';
import { joined, type Scene, scene, turnedScene } from './drive-line-scene.ts';
import { stackChain } from './drive-line-stack.ts';
import { valveScene } from './drive-line-valve.ts';
import {
  type ChainParts,
  chainParts,
  type DriveLineSubject,
  gripCall,
  partCall,
  remarkCalls,
  setUpNote,
  valveKind,
} from './drive-line-words.ts';
import { extentOf, point, text } from './shapes.ts';
import { wrapText } from './text-width.ts';

const WIDTH = 520;
const MIDDLE = 262;
const FIGURE = { from: 122, to: 399 };
const MARGIN = 14;
const NOTE_SIZE = 6.6;

export function driveLine(subject: DriveLineSubject): Drawing {
  const parts = chainParts(subject);
  const upright = compose(subject, parts);
  const faced = facing(upright, subject.line.place.faces?.value);
  const drawn = fitted(faced);
  const box = extentOf(drawn.shapes);
  const { tell = same } = subject;
  const calls = drawn.calls.map((call) => ({ ...call, title: tell(call.title), detail: tell(call.detail) }));
  const notes = setUpNote(subject, parts).flatMap((words) =>
    wrapText(tell(words), { size: NOTE_SIZE, bold: false, width: WIDTH - 12, maxLines: 12 }),
  );
  const labelled = drawCalls({
    calls,
    width: WIDTH,
    top: 4,
    bottom: Math.max(box.height + MARGIN * 2, 190),
  });
  const height = labelled.bottom + 4 + notes.length * 9;
  const foot = notes.map(
    (words, index): Shape => text(point(6, labelled.bottom + 6 + index * 9), words, { size: NOTE_SIZE, role: 'muted' }),
  );
  const told = calls.map((call) => `${call.title}: ${call.detail}`).join('. ');
  return {
    width: WIDTH,
    height: height + 2,
    title: tell(`Drive line for ${subject.line.tag}`),
    description: `${tell('Side view from power source to valve.')} ${told}.`,
    shapes: [...drawn.shapes, ...labelled.shapes, ...foot],
  };
}

function same(words: string): string {
  return words;
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
    scene(chain.upper.shapes.slice(chain.driveShapes), chain.upper.calls),
    scene(restraint === null ? [] : chain.collar),
    scene(valve.stem),
  ]);
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
