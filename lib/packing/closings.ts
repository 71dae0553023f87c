/*
 * Every way to close the next case: around the first piece that is left, so full that nothing left would still go in.
 * Invariant: if a load goes into so many cases at all, it does with one of these; fillings that waste too much are left out.
 * Not here: going on with what is left (fewest-cases.ts).
 * Read next: fewest-cases.ts.
 */
import { type Filling, takesMore } from './filling.ts';
import type { Load } from './load.ts';
import { isSpent, type Meter } from './meter.ts';

export interface Closing {
  readonly load: Load;
  /** Left of each type. */
  readonly counts: readonly number[];
  readonly prices: readonly number[];
  /** A filling worth less than this wastes more than there is to spare. */
  readonly least: number;
}

export interface ClosedCase extends Filling {
  readonly worth: number;
}

/** The most worth first. */
export function closings(closing: Closing, meter: Meter): readonly ClosedCase[] {
  const { load, counts } = closing;
  const anchor = counts.findIndex((count) => count > 0);
  const type = load.types[anchor];
  if (type === undefined) return [];
  const found: ClosedCase[] = [];
  const rest = counts.map((count, at) => (at === anchor ? count - 1 : count));
  const after = load.types.map((_, at) => sumFrom(closing, { rest, from: at }));
  for (const holder of holdersFor(load, anchor)) {
    const chosen = counts.map((_, at) => Number(at === anchor));
    fill(
      { closing, meter, holder, rest, after, anchor, chosen, found },
      { type: anchor, grams: type.grams, volume: type.volume, worth: closing.prices[anchor] ?? 0 },
    );
  }
  return found.sort((a, b) => b.worth - a.worth);
}

interface Weight {
  readonly grams: number;
  readonly volume: number;
  readonly worth: number;
}

/** All that is left of a type and of those after it. */
function sumFrom(
  { load, prices }: Closing,
  { rest, from }: { readonly rest: readonly number[]; readonly from: number },
): Weight {
  const sum = (of: (type: number) => number): number =>
    rest.reduce((all, count, type) => (type < from ? all : all + count * of(type)), 0);
  return {
    grams: sum((type) => load.types[type]?.grams ?? 0),
    volume: sum((type) => load.types[type]?.volume ?? 0),
    worth: sum((type) => Math.max(0, prices[type] ?? 0)),
  };
}

interface Filled {
  readonly closing: Closing;
  readonly meter: Meter;
  readonly holder: number;
  /** Left beside the anchor. */
  readonly rest: readonly number[];
  readonly after: readonly Weight[];
  readonly anchor: number;
  /** With the anchor; changed on the way down, and back on the way up. */
  readonly chosen: number[];
  readonly found: ClosedCase[];
}

interface At extends Weight {
  readonly type: number;
}

function fill(filled: Filled, { type, grams, volume, worth }: At): void {
  const { closing, meter, holder, rest, after, anchor, chosen, found } = filled;
  if (isSpent(meter)) return;
  meter.effort += 1;
  const still = after[type] ?? { grams: 0, volume: 0, worth: 0 };
  if (worth + still.worth < closing.least) return;
  // What was left out before would go in even with all that may still come: such a case is not closed.
  if (!isClosed(filled, { type, grams: grams + still.grams, volume: volume + still.volume })) return;
  const piece = closing.load.types[type];
  if (piece === undefined) {
    found.push({ holder, counts: [...chosen], worth });
    return;
  }
  const own = type === anchor ? 1 : 0;
  const most = Math.min(rest[type] ?? 0, takesMore(closing.load, { holder, type, grams, volume }));
  for (let more = most; more >= 0; more -= 1) {
    chosen[type] = own + more;
    fill(filled, {
      type: type + 1,
      grams: grams + more * piece.grams,
      volume: volume + more * piece.volume,
      worth: worth + more * (closing.prices[type] ?? 0),
    });
  }
  chosen[type] = own;
}

/**
 * Of the types before this one nothing that is left goes in any more. A case that could take more is never better, but for pieces that
 * need two persons: taken out of its own case, such a piece leaves a case that may be too heavy for one.
 */
function isClosed(
  { closing, holder, rest, anchor, chosen }: Filled,
  { type, grams, volume }: Omit<At, 'worth'>,
): boolean {
  for (let before = anchor; before < type; before += 1) {
    const left = (rest[before] ?? 0) - (chosen[before] ?? 0) + (before === anchor ? 1 : 0);
    if (
      left > 0 &&
      closing.load.types[before]?.needsTwo !== true &&
      takesMore(closing.load, { holder, type: before, grams, volume }) > 0
    )
      return false;
  }
  return true;
}

/** Holders worth opening for a piece: one that takes less of everything than another is left out. */
function holdersFor({ types, holders }: Load, anchor: number): readonly number[] {
  const opener = types[anchor];
  const fitting = holders.flatMap(({ persons }, at) =>
    opener?.goesInto[at] === true && (persons === 2) === opener.needsTwo ? [at] : [],
  );
  const covers = (one: number, other: number): boolean => {
    const [a, b] = [holders[one], holders[other]];
    return (
      a !== undefined &&
      b !== undefined &&
      a.grams >= b.grams &&
      a.volume >= b.volume &&
      types.every(({ goesInto }) => goesInto[other] !== true || goesInto[one] === true)
    );
  };
  return fitting.filter(
    (one) => !fitting.some((other) => other !== one && covers(other, one) && (!covers(one, other) || other < one)),
  );
}
