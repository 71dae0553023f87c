/*
 * A list of models made ready for search: sorted by role, and coupled to frames; kept while the list is the same.
 * Invariant: the same list of models, with the same ones left out, gives the same catalogue, however often it is asked.
 * Not here: anything that looks at a line.
 * Read next: cores/frames.ts, stock-by-role.ts.
 */
import type { Model } from '#lib/equipment/model.ts';
import { type Frames, findFrames } from './cores/frames.ts';
import { type StockByRole, stockByRole } from './stock-by-role.ts';
import { type KitConstraints, modelsLeft } from './wishes.ts';

export interface Catalogue {
  readonly stock: StockByRole;
  readonly frames: Frames;
}

/** Lists of left-out parts for which one list of models is kept ready; the oldest goes first. */
const KEPT = 8;

const ready = new WeakMap<readonly Model[], Map<string, Catalogue>>();

export function catalogueOf(
  models: readonly Model[],
  { excludedParts }: Pick<KitConstraints, 'excludedParts'>,
): Catalogue {
  const kept = ready.get(models) ?? new Map<string, Catalogue>();
  ready.set(models, kept);
  const key = excludedParts.toSorted().join('\n');
  const known = kept.get(key);
  if (known !== undefined) return known;
  const stock = stockByRole(modelsLeft(models, { excludedParts }));
  const made = { stock, frames: findFrames(stock) };
  const [oldest] = kept.keys();
  if (kept.size >= KEPT && oldest !== undefined) kept.delete(oldest);
  kept.set(key, made);
  return made;
}
