/*
 * A packing at once: each piece, the heaviest first, into the first case that takes it, otherwise into a new one.
 * Invariant: every piece of the load is in exactly one filling.
 * Not here: proving that fewer would not do (fewest-cases.ts).
 * Read next: fewest-cases.ts.
 */
import type { Filling } from './filling.ts';
import { takesMore } from './filling.ts';
import type { Load } from './load.ts';

interface Open {
  readonly holder: number;
  readonly counts: number[];
  grams: number;
  volume: number;
}

/** The best of opening the smallest and opening the roomiest case for a piece that goes nowhere else. */
export function firstFit(load: Load): readonly Filling[] {
  const tries = (['smallest', 'largest'] as const).map((opens) => placeAll(load, opens));
  return tries.reduce((best, next) => (next.length < best.length ? next : best));
}

function placeAll(load: Load, opens: 'smallest' | 'largest'): readonly Filling[] {
  const open: Open[] = [];
  for (const [type, { pieces }] of load.types.entries()) {
    for (const _ of pieces) {
      const into = open.find((one) => takesMore(load, { ...one, type }) > 0) ?? openCase(load, { type, opens, open });
      put(load, { into, type });
    }
  }
  return open.map(({ holder, counts }) => ({ holder, counts }));
}

function openCase(
  load: Load,
  { type, opens, open }: { readonly type: number; readonly opens: 'smallest' | 'largest'; readonly open: Open[] },
): Open {
  const { goesInto = [], needsTwo = false } = load.types[type] ?? {};
  const fitting = load.holders.flatMap(({ persons }, at) =>
    goesInto[at] === true && (persons === 2) === needsTwo ? [at] : [],
  );
  const holder = (opens === 'smallest' ? fitting[0] : fitting.at(-1)) ?? 0;
  const made: Open = { holder, counts: load.types.map(() => 0), grams: 0, volume: 0 };
  open.push(made);
  return made;
}

function put(load: Load, { into, type }: { readonly into: Open; readonly type: number }): void {
  into.counts[type] = (into.counts[type] ?? 0) + 1;
  into.grams += load.types[type]?.grams ?? 0;
  into.volume += load.types[type]?.volume ?? 0;
}
