/*
 * Reading between the points of a table by straight lines.
 * Invariant: at a point the answer is that point's; outside the table it is the nearest end's.
 * Not here: whether reading outside a table is allowed (each formula says so itself).
 * Read next: air-supply.ts, torque-speed.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';

export type Point = readonly [x: number, y: number];

/**
 * Value between the points of a table.
 *
 * Formula: y = y1 + (y2 − y1)·(x − x1)/(x2 − x1)
 *
 * @param points - Points in rising order of x. [–] range at least one
 * @param x - Where to read. [–] range any
 * @returns Value at x; the nearest end's outside the table. [–]
 * @source Linear interpolation.
 * @assumes The points are in rising order of x.
 * @example between({ points: [[0, 1], [10, 3]], x: 5 }) // => 2
 */
export function between({ points, x }: { readonly points: readonly Point[]; readonly x: number }): number {
  const first = points[0];
  invariant(first !== undefined, 'A table to read between holds at least one point.');
  let [lastX, lastY] = first;
  if (x <= lastX) return lastY;
  for (const [nextX, nextY] of points.slice(1)) {
    invariant(nextX > lastX, 'The points of a table come in rising order.');
    if (x <= nextX) return lastY + ((nextY - lastY) * (x - lastX)) / (nextX - lastX);
    [lastX, lastY] = [nextX, nextY];
  }
  return lastY;
}
