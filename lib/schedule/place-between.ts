/*
 * Places for lines between two that are there: positions mean order and nothing beyond it.
 * Invariant: the new places lie strictly between their neighbours and grow; where there is no room, the lines below make some.
 * Not here: storing them (lib/services/schedule/apply-change.ts).
 * Read next: schedule-change.ts.
 */
export interface Placed {
  readonly id: number;
  readonly position: number;
}

interface PlaceInput {
  /** The lines that are there, in order. */
  readonly lines: readonly Placed[];
  /** How many of them stand before the new places. */
  readonly at: number;
  readonly count: number;
}

interface Places {
  readonly positions: readonly number[];
  /** Lines that make room. */
  readonly shift: readonly Placed[];
}

/** Halving a gap again and again ends here; numbers of a million keep this distance exactly. */
const SMALLEST_GAP = 1e-6;

export function placeBetween({ lines, at, count }: PlaceInput): Places {
  const low = lines[at - 1]?.position ?? (lines[at]?.position ?? 1) - 1;
  const next = lines[at];
  if (!next) return { positions: spread({ low, step: 1, count }), shift: [] };
  const step = (next.position - low) / (count + 1);
  if (step >= SMALLEST_GAP) return { positions: spread({ low, step, count }), shift: [] };
  const room = low + count + 1 - next.position;
  const shift = lines.slice(at).map(({ id, position }) => ({ id, position: position + room }));
  return { positions: spread({ low, step: 1, count }), shift };
}

function spread({ low, step, count }: { readonly low: number; readonly step: number; readonly count: number }) {
  return Array.from({ length: count }, (_, index) => low + step * (index + 1));
}
