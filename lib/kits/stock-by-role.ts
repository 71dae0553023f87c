/*
 * The models of one request, sorted by role and number.
 * Invariant: order depends only on the models' numbers, so that answers come in a fixed order.
 * Not here: which of them fit.
 * Read next: cores/frames.ts.
 */
import type {
  AccessoryModel,
  AdapterModel,
  DriveModel,
  ExtensionModel,
  HeadModel,
  Model,
  OptionModel,
  RestraintModel,
} from '#lib/equipment/model.ts';

export interface StockByRole {
  readonly drives: readonly DriveModel[];
  readonly heads: readonly HeadModel[];
  readonly adapters: readonly AdapterModel[];
  readonly extensions: readonly ExtensionModel[];
  readonly restraints: readonly RestraintModel[];
  readonly limiters: readonly OptionModel[];
  readonly counters: readonly OptionModel[];
  readonly accessories: readonly AccessoryModel[];
  readonly all: readonly Model[];
}

export function stockByRole(models: readonly Model[]): StockByRole {
  const all = models.toSorted((a, b) => (a.number < b.number ? -1 : a.number > b.number ? 1 : 0));
  return {
    drives: all.filter((model) => model.role === 'drive'),
    heads: all.filter((model) => model.role === 'head'),
    adapters: all.filter((model) => model.role === 'adapter'),
    extensions: all.filter((model) => model.role === 'extension'),
    restraints: all.filter((model) => model.role === 'restraint'),
    limiters: all.filter((model) => model.role === 'option').filter((model) => model.facts.kind === 'torque limiter'),
    counters: all.filter((model) => model.role === 'option').filter((model) => model.facts.kind === 'turns counter'),
    accessories: all.filter((model) => model.role === 'accessory'),
    all,
  };
}
