/*
 * One and the same object for equal models with equal rates, and one and the same list for equal lists, while they are asked for.
 * Invariant: what comes out equals what went in; only its identity is that of an earlier one, so that what was made ready for it serves again.
 * Not here: where models and rates come from (house-facts.ts).
 * Read next: ../../kits/catalogue.ts.
 */
import type { Model } from '#lib/equipment/model.ts';

const repriced = new WeakMap<Model, Map<string, Model>>();

/** Days of rates, and lists, that are kept; the oldest goes first. */
const KEPT = 4;

export function withRates(model: Model, rates: Model['rates']): Model {
  const ofModel = repriced.get(model) ?? new Map<string, Model>();
  repriced.set(model, ofModel);
  const key = JSON.stringify(rates);
  const known = ofModel.get(key) ?? { ...model, rates };
  const [oldest] = ofModel.keys();
  if (!ofModel.has(key) && ofModel.size >= KEPT && oldest !== undefined) ofModel.delete(oldest);
  ofModel.set(key, known);
  return known;
}

const lists: (readonly Model[])[] = [];

export function sameList(models: readonly Model[]): readonly Model[] {
  const known = lists.find(
    (list) => list.length === models.length && list.every((model, index) => model === models[index]),
  );
  if (known !== undefined) return known;
  lists.unshift(models);
  lists.length = Math.min(lists.length, KEPT);
  return models;
}
