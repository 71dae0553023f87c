/*
 * A booking as picking sees it: what is planned, what is held, what was picked, and what the place asks for.
 * Invariant: what was planned is read from the quote as it was frozen; what is there now is read from the stock.
 * Not here: deciding on a scan (scan-unit.ts) and what screens show (open-picking.ts).
 * Read next: open-picking.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import {
  type BookingItemRow,
  type BookingRow,
  type BookingUnitRow,
  itemsOfBooking,
  unitsOfBooking,
} from '#db/queries/bookings.ts';
import type { UnitRow } from '#db/queries/equipment.ts';
import { findQuote } from '#db/queries/quotes.ts';
import { findUnit } from '#db/queries/stock.ts';
import type { AssemblyParts } from '#lib/equipment/assembly.ts';
import type { Model } from '#lib/equipment/model.ts';
import type { DateRange } from '#lib/kernel/date-range.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import type { Context } from '#lib/services/context.ts';
import { knownModels } from '#lib/services/house/house-facts.ts';
import { optionOf, type PapersInput } from '#lib/services/quotes/papers-of.ts';
import { holds } from '#lib/stock/booking-life.ts';
import { type ObligatoryNeed, whyObligatory } from '#lib/stock/obligatory.ts';
import type { PickedUnit, PlannedChain } from '#lib/stock/pick-checks.ts';
import { bookedUnitStateOf } from '../booking-record.ts';

export interface PickPiece {
  readonly row: BookingUnitRow;
  readonly unit: UnitRow;
  readonly model: Model;
  /** The model that was planned; its own, but where it stands in. */
  readonly planned: string;
}

export interface PickFacts {
  readonly booking: BookingRow;
  /** What the quote was frozen with; null where equipment is withdrawn without one. */
  readonly papers: PapersInput | null;
  readonly models: readonly Model[];
  readonly window: DateRange;
  /** Units the booking still holds. */
  readonly pieces: readonly PickPiece[];
  readonly items: readonly (BookingItemRow & { readonly model: Model })[];
}

export function pickFacts(
  db: DbOrTx,
  { context, booking }: { readonly context: Context; readonly booking: BookingRow },
): PickFacts {
  const models = knownModels(context);
  const byNumber = new Map(models.map((model) => [model.number, model]));
  const modelOf = (number: string): Model => {
    const model = byNumber.get(number);
    invariant(model, `The house knows no model ${number}.`);
    return model;
  };
  const rows = unitsOfBooking(db, booking.id).filter((row) => holds(bookedUnitStateOf(row)));
  const pieces = rows.map((row): PickPiece => {
    const unit = findUnit(db, row.unit_serial);
    invariant(unit, `There is no unit ${row.unit_serial}.`);
    const planned = row.quoted_model === '' ? unit.model_number : row.quoted_model;
    return { row, unit, model: modelOf(unit.model_number), planned };
  });
  const items = itemsOfBooking(db, booking.id)
    .filter((row) => holds(bookedUnitStateOf(row)))
    .map((row) => ({ ...row, model: modelOf(row.model_number) }));
  return {
    booking,
    papers: papersOfBooking(db, booking),
    models,
    window: windowOf([...rows, ...items]),
    pieces,
    items,
  };
}

/** What the accepted option of the quote was frozen with. */
export function papersOfBooking(db: DbOrTx, booking: BookingRow): PapersInput | null {
  const quote = booking.quote_id === null ? undefined : findQuote(db, booking.quote_id);
  if (!quote) return null;
  const papers = JSON.parse(quote.frozen_json) as PapersInput;
  return optionOf(papers, booking.option_slot) ?? papers;
}

function windowOf(rows: readonly { readonly starts_on: string; readonly ends_before: string }[]): DateRange {
  const [first] = rows.map(({ starts_on }) => starts_on).toSorted();
  const last = rows
    .map(({ ends_before }) => ends_before)
    .toSorted()
    .at(-1);
  return { starts_on: first ?? '', ends_before: last ?? '' };
}

export function isPicked({ state }: Pick<BookingUnitRow, 'state'>): boolean {
  return state === 'allocated' || state === 'picked';
}

export function pickedUnits({ pieces }: PickFacts): readonly PickedUnit[] {
  return pieces
    .filter(({ row }) => isPicked(row))
    .map(({ row, model, planned }) => ({ serial: row.unit_serial, model, planned }));
}

/** By the model that was planned: units scanned, and counted pieces counted. */
export function pickedCounts({ pieces, items }: PickFacts): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  const add = (number: string, count: number): void => void counts.set(number, (counts.get(number) ?? 0) + count);
  for (const { row, planned } of pieces) if (isPicked(row)) add(planned, 1);
  for (const item of items) if (isPicked(item)) add(item.model_number, item.count);
  return counts;
}

/** What the plan's kits carry because the rules ask for it. */
export function obligatoryNeeds({ papers, models }: PickFacts): readonly ObligatoryNeed[] {
  if (papers === null) return [];
  const counts = new Map<string, number>();
  for (const { item, count } of papers.outcome.kits.flatMap((kit) => kit.items))
    counts.set(item, (counts.get(item) ?? 0) + count);
  const mains = { voltage: papers.site.mainsVoltage, plug: papers.site.mainsPlug };
  return [...counts].flatMap(([number, count]) => {
    const model = models.find((one) => one.number === number);
    if (model === undefined || model.madeToOrder) return [];
    const why = whyObligatory({ model, mains });
    return why === null ? [] : [{ number, name: model.name, count, why }];
  });
}

/** Each chain that the plan uses, once, whatever accessories go with it. */
export function plannedChains({ papers, models }: PickFacts): readonly PlannedChain[] {
  if (papers === null) return [];
  const used = papers.outcome.work.map(({ assembly }) => papers.outcome.assemblies[assembly]?.parts);
  const chains = used.flatMap((parts) => (parts === undefined ? [] : chainsOf(parts, models)));
  return [...new Map(chains.map((chain) => [chain.id, chain])).values()].sort((a, b) => (a.id < b.id ? -1 : 1));
}

/** One chain for every adapter of a covering set, the limiter where it sits in the line. */
function chainsOf(parts: AssemblyParts, models: readonly Model[]): readonly PlannedChain[] {
  const sits = (place: 'after drive' | 'after head') =>
    parts.options.filter((number) =>
      models.some((model) => model.number === number && model.role === 'option' && model.facts.sits === place),
    );
  return parts.adapters.map((adapter, index) => {
    const extensions = parts.adapterExtensions?.[index] ?? parts.extensions;
    const chain = [parts.drive, ...sits('after drive'), parts.head, ...sits('after head'), ...extensions, adapter];
    return { id: chain.join(' – '), models: chain };
  });
}
