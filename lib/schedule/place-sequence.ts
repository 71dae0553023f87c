/*
 * Positions for a new sequence of lines, keeping as many of those that are there as possible.
 * Invariant: positions grow along the sequence; a line whose place among the others stays is not moved where there is room.
 * Not here: a few lines between two others (place-between.ts).
 * Read next: place-between.ts.
 */
/** A line by its id and position, or a new one without either. */
export type SequencePlace = { readonly id: number; readonly position: number } | null;

const SMALLEST_GAP = 1e-6;

/** One position a place, in order. */
export function placeSequence(places: readonly SequencePlace[]): readonly number[] {
  return keptPlaces(places) ?? places.map((_, at) => at + 1);
}

/** New lines go into the gaps; nothing where the lines that are there do not grow, or a gap is too small. */
function keptPlaces(places: readonly SequencePlace[]): readonly number[] | undefined {
  const positions: number[] = [];
  let low = (places.find((place) => place !== null)?.position ?? 1) - 1;
  let waiting = 0;
  for (const place of places) {
    if (place === null) {
      waiting += 1;
      continue;
    }
    const step = (place.position - low) / (waiting + 1);
    if (step < SMALLEST_GAP) return undefined;
    for (let count = 1; count <= waiting; count += 1) positions.push(low + step * count);
    positions.push(place.position);
    low = place.position;
    waiting = 0;
  }
  for (let count = 1; count <= waiting; count += 1) positions.push(low + count);
  return positions;
}
