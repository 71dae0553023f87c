/*
 * Sets the call-outs of a drive line in a left and a right column, with leaders that end in a dot on the part.
 * Invariant: no two labels overlap; the columns grow downwards when there are many.
 * Not here: what the labels say (drive-line-words.ts).
 * Read next: place-labels.ts.
 */
import type { Shape } from './drawing.ts';
import type { CallOut } from './drive-line-scene.ts';
import { neededHeight, placeLabels } from './place-labels.ts';
import { circle, line, point, polyline, text } from './shapes.ts';
import { wrapText } from './text-width.ts';

const COLUMN = 112;
const SIZE = 7;
const ROW = 8.3;
const GAP = 6;

interface Set {
  readonly call: CallOut;
  readonly title: readonly string[];
  readonly detail: readonly string[];
  readonly height: number;
}

export function drawCalls(asked: {
  readonly calls: readonly CallOut[];
  readonly width: number;
  readonly top: number;
  readonly bottom: number;
}): { readonly shapes: readonly Shape[]; readonly bottom: number } {
  const sides = (['left', 'right'] as const).map((side) => ({
    side,
    sets: asked.calls.filter((call) => call.side === side).map(setOf),
  }));
  const needed = Math.max(
    ...sides.map(({ sets }) =>
      neededHeight(
        sets.map((set) => ({ wanted: 0, height: set.height })),
        GAP,
      ),
    ),
  );
  const bottom = Math.max(asked.bottom, asked.top + needed);
  return {
    shapes: sides.flatMap(({ side, sets }) => drawColumn({ side, sets, width: asked.width, top: asked.top, bottom })),
    bottom,
  };
}

function setOf(call: CallOut): Set {
  const title = wrapText(call.title, { size: SIZE, bold: true, width: COLUMN, maxLines: 2 });
  const detail = wrapText(call.detail, { size: SIZE, bold: false, width: COLUMN, maxLines: 4 });
  return { call, title, detail, height: (title.length + detail.length) * ROW };
}

function drawColumn(asked: {
  readonly side: 'left' | 'right';
  readonly sets: readonly Set[];
  readonly width: number;
  readonly top: number;
  readonly bottom: number;
}): readonly Shape[] {
  const { side, sets, width } = asked;
  const middles = placeLabels(
    sets.map((set) => ({ wanted: set.call.at.y, height: set.height })),
    { from: asked.top, to: asked.bottom, gap: GAP },
  );
  const edge = side === 'left' ? COLUMN + 4 : width - COLUMN - 4;
  const inward = side === 'left' ? 1 : -1;
  const textX = side === 'left' ? COLUMN : width - COLUMN;
  const shapes: Shape[] = [];
  sets.forEach((set, index) => {
    const middle = middles[index] ?? 0;
    const top = middle - set.height / 2;
    const hook = top + ROW * 0.5;
    shapes.push(line(point(edge, top - 1), point(edge, top + set.height), { stroke: 'accent', weight: 'medium' }));
    shapes.push(
      polyline([point(edge, hook), point(edge + inward * 9, hook), set.call.at], { stroke: 'muted', weight: 'hair' }),
    );
    shapes.push(circle(set.call.at, 1.3, { fill: 'text', stroke: 'paper', weight: 'hair' }));
    [
      ...set.title.map((words) => ({ words, bold: true })),
      ...set.detail.map((words) => ({ words, bold: false })),
    ].forEach((row, n) => {
      shapes.push(
        text(point(textX, top + n * ROW + SIZE * 0.83), row.words, {
          size: SIZE,
          anchor: side === 'left' ? 'end' : 'start',
          role: row.bold ? 'text' : 'muted',
          ...(row.bold ? { bold: true } : {}),
        }),
      );
    });
  });
  return shapes;
}
