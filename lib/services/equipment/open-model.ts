/*
 * One model in full: facts, pictures, rates by day, units, where it is used, what it joins, what changed, what does not hang together.
 * Invariant: reads only; past rate cards are shown with those that hold and those to come.
 * Not here: changing it (save-model.ts, retire-model.ts, rate-cards.ts).
 * Read next: list-models-view.ts.
 */
import { findModel, listUnits, type ModelRow } from '#db/queries/equipment.ts';
import { enquiriesWithModel } from '#db/queries/model-use.ts';
import { rateCardsOf } from '#db/queries/rates.ts';
import { shelvesOf } from '#db/queries/stock.ts';
import { type FlatModel, flatOf } from '#lib/contracts/equipment-flat.ts';
import type { Drawing } from '#lib/documents/drawings/drawing.ts';
import { modelPicture } from '#lib/documents/drawings/model-picture.ts';
import { type GearRow, gearRows, torqueSpeedChart } from '#lib/documents/drawings/torque-speed-chart.ts';
import { matesOf } from '#lib/equipment/coherence.ts';
import type { Model, Role } from '#lib/equipment/model.ts';
import { heldOn } from '#lib/equipment/rate-on.ts';
import type { IsoDate } from '#lib/kernel/date-range.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import { houseFacts, houseModels, knownModels } from '#lib/services/house/house-facts.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import { type ChangeView, readHistory } from './equipment-history.ts';
import { jsonOf, type ModelState, NO_SUCH_MODEL } from './model-record.ts';
import { warningsAbout } from './save-model.ts';
import { type RatesState, toldModel, toldRates } from './told-states.ts';

export interface RateCardView {
  /** Null on the rates that the model began with. */
  readonly starts_on: IsoDate | null;
  readonly day_minor: number;
  readonly week_minor: number;
  readonly four_weeks_minor: number;
  readonly minimum_days: number;
  readonly note: string;
  readonly when: 'past' | 'holds' | 'to come';
}

export interface ModelDetail {
  readonly number: string;
  readonly name: string;
  readonly role: Role;
  readonly version: number;
  readonly retired_on: IsoDate | null;
  readonly currency: string;
  readonly facts: Readonly<Record<string, unknown>>;
  readonly fields: FlatModel;
  readonly picture: Drawing;
  readonly chart: { readonly drawing: Drawing; readonly rows: readonly GearRow[] } | null;
  readonly mass_kg: number;
  readonly marking: string | null;
  readonly counted: boolean;
  readonly madeToOrder: boolean;
  readonly replacement_minor: number;
  /** Pieces of a counted model, depot by depot. */
  readonly shelves: readonly { readonly depot: string; readonly count: number }[];
  readonly stock: readonly { readonly depot: string; readonly state: string; readonly units: number }[];
  readonly cards: readonly RateCardView[];
  readonly mates: readonly {
    readonly side: 'input' | 'output';
    readonly models: readonly { readonly number: string; readonly name: string }[];
  }[];
  readonly usedIn: readonly {
    readonly id: number;
    readonly number: string;
    readonly title: string;
    readonly pieces: number;
  }[];
  readonly warnings: readonly string[];
  readonly changes: readonly ChangeView[];
  readonly rateChanges: readonly ChangeView[];
  readonly mayChange: boolean;
}

export function openModel(
  context: Context,
  { number, system }: { readonly number: string; readonly system: UnitSystem },
): Result<ModelDetail> {
  const allowed = authorise(context, 'read equipment');
  if (!allowed.ok) return allowed;
  const row = findModel(context.database.db, number);
  const model = knownModels(context).find((one) => one.number === number);
  if (row === undefined || model === undefined) return NO_SUCH_MODEL(number);
  const { currency } = houseFacts(context).pricing;
  return ok({
    number,
    name: model.name,
    role: model.role,
    version: row.version,
    retired_on: row.retired_on,
    currency,
    facts: { ...jsonOf(row).facts },
    fields: flatOf(jsonOf(row), currency),
    picture: modelPicture(model, system),
    chart: model.role === 'drive' ? { drawing: torqueSpeedChart(model, system), rows: gearRows(model, system) } : null,
    mass_kg: model.mass,
    marking: model.marking,
    counted: model.counted,
    madeToOrder: model.madeToOrder,
    replacement_minor: model.replacement_minor,
    shelves: shelvesOf(context.database.db, number).map(({ depot, count }) => ({ depot, count })),
    stock: stockOf(context, number),
    cards: cardsOf(context, row),
    mates: matesNamed(context, model),
    usedIn: enquiriesWithModel(context.database.db, number),
    warnings: warningsAbout(context, number),
    changes: readHistory(context, {
      subject: `model ${number}`,
      tell: (state: ModelState | null) => toldModel(state, currency),
    }),
    rateChanges: readHistory(context, {
      subject: `rates ${number}`,
      tell: (state: RatesState | null) => toldRates(state, currency),
    }),
    mayChange: authorise(context, 'change equipment').ok,
  });
}

function stockOf(context: Context, number: string): ModelDetail['stock'] {
  const counts = new Map<string, number>();
  for (const unit of listUnits(context.database.db)) {
    if (unit.model_number !== number) continue;
    const key = JSON.stringify([unit.depot, unit.state]);
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return [...counts].map(([key, units]) => {
    const [depot = '', state = '']: readonly string[] = JSON.parse(key);
    return { depot, state, units };
  });
}

function cardsOf(context: Context, row: ModelRow): readonly RateCardView[] {
  const day = today(context);
  const dated = rateCardsOf(context.database.db, row.number);
  const held = heldOn(dated, day);
  const opening: RateCardView = {
    starts_on: null,
    ...jsonOf(row).rates,
    note: 'began with these',
    when: held === undefined ? 'holds' : 'past',
  };
  const later = dated.map(
    ({ id, model_number: _model, ...card }): RateCardView => ({
      ...card,
      when: id === held?.id ? 'holds' : card.starts_on <= day ? 'past' : 'to come',
    }),
  );
  return [opening, ...later].reverse();
}

function matesNamed(context: Context, model: Model): ModelDetail['mates'] {
  const models = houseModels(context);
  return matesOf(models, model).map(({ side, numbers }) => ({
    side,
    models: numbers.map((number) => {
      const mate = models.find((one) => one.number === number);
      invariant(mate, `${number} joins ${model.number} and is not in the catalogue.`);
      return { number, name: mate.name };
    }),
  }));
}
