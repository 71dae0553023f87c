/*
 * The most valuable filling of one case when every type of piece has a price: what column generation asks.
 * Invariant: the answer is the best; there is none where the effort ran out before that was known.
 * Not here: where the prices come from (case-relaxation.ts).
 * Read next: case-relaxation.ts.
 */
import { takesMore } from './filling.ts';
import type { Load } from './load.ts';
import { isSpent, type Meter } from './meter.ts';

export interface Priced {
  readonly load: Load;
  /** Pieces of each type that are left. */
  readonly counts: readonly number[];
  readonly prices: readonly number[];
}

export interface BestFilling {
  readonly counts: readonly number[];
  readonly value: number;
}

/** Over all holders. Effort is counted in the meter that is handed in. */
export function bestFilling(priced: Priced, meter: Meter): BestFilling | null {
  const { load, counts, prices } = priced;
  const worth = load.types.flatMap((_, type) => ((counts[type] ?? 0) > 0 && (prices[type] ?? 0) > 1e-12 ? [type] : []));
  const opening = load.types.flatMap(({ needsTwo }, type) => (needsTwo && (counts[type] ?? 0) > 0 ? [type] : []));
  let best: BestFilling = { counts: counts.map(() => 0), value: 0 };
  for (const [holder, { persons }] of load.holders.entries()) {
    // Whatever its price, the piece that needs two opens the larger mass to the others.
    const starts = persons === 1 ? [null] : opening;
    for (const start of starts) {
      const found = inHolder({ ...priced, holder, worth, start, atLeast: best.value }, meter);
      if (found !== null) best = found;
    }
  }
  return isSpent(meter) ? null : best;
}

interface InHolder extends Priced {
  readonly holder: number;
  readonly worth: readonly number[];
  /** A case for two starts with a piece that needs it. */
  readonly start: number | null;
  readonly atLeast: number;
}

interface Step {
  readonly type: number;
  readonly price: number;
  readonly grams: number;
  readonly volume: number;
  readonly most: number;
  /** Best price a gram and a volume from here on. */
  readonly perGram: number;
  readonly perVolume: number;
}

function inHolder(at: InHolder, meter: Meter): BestFilling | null {
  const { load, holder, start, atLeast } = at;
  const room = load.holders[holder];
  const first = start === null ? undefined : load.types[start];
  if (room === undefined || (first !== undefined && first.goesInto[holder] !== true)) return null;
  const steps = stepsOf(at);
  const chosen = load.types.map((_, type) => Number(type === start));
  let value = atLeast;
  let best: readonly number[] | null = null;
  const walk = (
    index: number,
    left: { readonly value: number; readonly grams: number; readonly volume: number },
  ): void => {
    meter.effort += 1;
    if (left.value > value + 1e-9) {
      value = left.value;
      best = [...chosen];
    }
    const step = steps[index];
    if (step === undefined || isSpent(meter)) return;
    if (left.value + Math.min(left.grams * step.perGram, left.volume * step.perVolume) <= value + 1e-9) return;
    const most = Math.min(step.most, Math.floor(left.grams / step.grams), Math.floor(left.volume / step.volume));
    const own: number = chosen[step.type] ?? 0;
    for (let more = most; more >= 0; more -= 1) {
      chosen[step.type] = own + more;
      walk(index + 1, {
        value: left.value + more * step.price,
        grams: left.grams - more * step.grams,
        volume: left.volume - more * step.volume,
      });
    }
    chosen[step.type] = own;
  };
  walk(0, {
    value: start === null ? 0 : (at.prices[start] ?? 0),
    grams: room.grams - (first?.grams ?? 0),
    volume: room.volume - (first?.volume ?? 0),
  });
  return best === null ? null : { counts: best, value };
}

/** The dearest for its size first, so that the first fillings are good and the bound falls early. */
function stepsOf({ load, holder, counts, prices, worth, start }: InHolder): readonly Step[] {
  const room = load.holders[holder];
  const fitting = worth.flatMap((type) => {
    const piece = load.types[type];
    const price = prices[type] ?? 0;
    const most = Math.min(
      (counts[type] ?? 0) - (type === start ? 1 : 0),
      takesMore(load, { holder, type, grams: 0, volume: 0 }),
    );
    return piece === undefined || room === undefined || most <= 0
      ? []
      : [
          {
            type,
            price,
            grams: piece.grams,
            volume: piece.volume,
            most,
            size: piece.grams / room.grams + piece.volume / room.volume,
          },
        ];
  });
  const order = fitting.sort((a, b) => b.price / b.size - a.price / a.size || a.type - b.type);
  let perGram = 0;
  let perVolume = 0;
  return order
    .reverse()
    .map(({ size: _, ...step }) => {
      perGram = Math.max(perGram, step.price / step.grams);
      perVolume = Math.max(perVolume, step.price / step.volume);
      return { ...step, perGram, perVolume };
    })
    .reverse();
}
