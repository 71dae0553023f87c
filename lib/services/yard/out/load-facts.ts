/*
 * What a load is made of, as far as the look at it before it leaves asks: cases, petrol, packs, hoses.
 * Invariant: reads only; decided by the facts of the models that are loaded.
 * Not here: the questions (lib/stock/load-check.ts).
 * Read next: send-delivery.ts.
 */
import type { LoadedItem, LoadedUnit } from '#db/queries/deliveries.ts';
import type { Model } from '#lib/equipment/model.ts';
import { pieceOf } from '#lib/packing/piece.ts';
import type { Load, LoadTransport } from '#lib/stock/load-check.ts';

interface LoadedOn {
  readonly models: readonly Model[];
  readonly units: readonly LoadedUnit[];
  readonly items: readonly LoadedItem[];
  readonly transport: LoadTransport;
}

export function loadFacts({ models, units, items, transport }: LoadedOn): Load {
  const numbers = new Set([...units.map(({ model }) => model), ...items.map(({ model }) => model)]);
  const loaded = models.filter(({ number }) => numbers.has(number)).map((model) => pieceOf({ model, serial: null }));
  return {
    transport,
    cases: new Set(units.flatMap(({ caseLabel }) => (caseLabel === '' ? [] : [caseLabel]))).size,
    hasPetrol: loaded.some(({ kind }) => kind === 'petrol drive'),
    hasPacks: loaded.some(({ lithium }) => lithium !== null),
    hasHoses: loaded.some(({ kind }) => kind === 'air hose' || kind === 'air drive'),
  };
}
