/*
 * The rungs as they stood before a value was changed, dashed behind the new ones.
 * Invariant: what has not moved is not drawn twice.
 * Not here: the rungs that hold now (torque-ladder.ts).
 * Read next: torque-ladder.ts.
 */
import type { Shape } from './drawing.ts';
import type { DirectionMarks } from './ladder-marks.ts';
import { line, point, rect } from './shapes.ts';

const BAR = 14;
const WINDOW = 18;
/** A dashed box stands out on both sides of the bar that it belongs to. */
const OUT = 2.5;

export function rungsBefore(asked: {
  readonly before: DirectionMarks;
  readonly now: DirectionMarks;
  readonly lane: { readonly run: number; readonly start: number; readonly window: number };
  readonly from: number;
  readonly to: number;
  readonly y: (torque: number) => number;
}): readonly Shape[] {
  const { before, now, lane, y } = asked;
  const shapes: Shape[] = [];
  const ranges = [
    { x: lane.run, width: BAR, was: before.running, is: now.running },
    { x: lane.start, width: BAR, was: before.starting, is: now.starting },
  ];
  for (const { x, width, was, is } of ranges) {
    if (was.low === is.low && was.high === is.high) continue;
    shapes.push(box({ x, width, top: y(was.high), bottom: y(was.low) }));
  }
  const { window } = before;
  const moved = window?.start !== now.window?.start || window?.ceiling !== now.window?.ceiling;
  if (window !== null && moved && window.ceiling >= window.start)
    shapes.push(box({ x: lane.window, width: WINDOW, top: y(window.ceiling), bottom: y(window.start) }));
  if (before.never !== now.never)
    shapes.push(
      line(point(asked.from, y(before.never)), point(asked.to, y(before.never)), {
        stroke: 'never',
        weight: 'medium',
        dash: 'dashed',
      }),
    );
  return shapes;
}

function box(bar: {
  readonly x: number;
  readonly width: number;
  readonly top: number;
  readonly bottom: number;
}): Shape {
  return rect(
    { x: bar.x - OUT, y: bar.top, width: bar.width + 2 * OUT, height: Math.max(1.6, bar.bottom - bar.top) },
    { stroke: 'axis', weight: 'medium', dash: 'dashed' },
  );
}
