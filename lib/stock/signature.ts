/*
 * A signature drawn on a pad: strokes of whole points, kept as a picture of lines that anyone can open.
 * Invariant: bounded in strokes and points, so that it is a signature and no flood; the picture is made from numbers alone.
 * Not here: who signed for what (lib/services/yard).
 * Read next: load-check.ts.
 */
import { failed, ok, type Result } from '#lib/kernel/result.ts';

export const PAD = { width: 600, height: 200 } as const;
const MOST_STROKES = 200;
const MOST_POINTS = 6000;
/** A dot or a slip of the finger is no signature. [points of the pad] */
const LEAST_INK = 60;

export type Strokes = readonly (readonly (readonly [number, number])[])[];

export function signatureSvg(strokes: Strokes): Result<string> {
  const points = strokes.flat();
  const isBounded = strokes.length <= MOST_STROKES && points.length <= MOST_POINTS;
  const isOnPad = points.every(
    ([x, y]) => Number.isInteger(x) && Number.isInteger(y) && x >= 0 && x <= PAD.width && y >= 0 && y <= PAD.height,
  );
  if (!isBounded || !isOnPad)
    return failed({
      code: 'signature-unreadable',
      sentence: 'The signature could not be read: clear the pad and sign again.',
    });
  if (inkOf(strokes) < LEAST_INK)
    return failed({ code: 'signature-empty', sentence: 'Sign on the pad, or type the name instead.' });
  const path = strokes
    .filter((stroke) => stroke.length > 0)
    .map((stroke) => `M${stroke.map(([x, y]) => `${x} ${y}`).join('L')}`)
    .join('');
  return ok(
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${PAD.width} ${PAD.height}"><path d="${path}" fill="none" stroke="black" stroke-width="3" stroke-linecap="round" stroke-linejoin="round"/></svg>`,
  );
}

function inkOf(strokes: Strokes): number {
  return strokes.reduce(
    (sum, stroke) =>
      sum +
      stroke.slice(1).reduce((length, [x, y], index) => {
        const [fromX, fromY] = stroke[index] ?? [x, y];
        return length + Math.hypot(x - fromX, y - fromY);
      }, 0),
    0,
  );
}
