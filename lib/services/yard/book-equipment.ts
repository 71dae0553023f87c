/*
 * Books equipment without a quote: for the house's own use, for a show or a trial, or while a quote is still being written.
 * Invariant: all is held or nothing; what is free is decided inside the transaction, after holds that ran out were let go.
 * Not here: booking what a quote promised (../quotes/accept-quote.ts).
 * Read next: equipment-asked.ts, hold-equipment.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { freePieces, houseModels, stockQuestion } from '#lib/services/house/house-facts.ts';
import { logChange } from '#lib/services/log-change.ts';
import { chooseCounted } from '#lib/stock/choose-counted.ts';
import { chooseUnits } from '#lib/stock/choose-units.ts';
import { type AskedWell, askedWell, type EquipmentAsked } from './equipment-asked.ts';
import { expireHoldsFirst } from './expire-holds.ts';
import { holdEquipment } from './hold-equipment.ts';

export interface EquipmentBooked {
  readonly number: string;
  readonly serials: readonly string[];
}

export function bookEquipment(context: Context, asked: EquipmentAsked): Result<EquipmentBooked> {
  const allowed = authorise(context, 'book equipment');
  if (!allowed.ok) return allowed;
  const sane = askedWell(context, asked);
  if (!sane.ok) return sane;
  return context.database.db.transaction(
    (tx) => {
      expireHoldsFirst(tx, context);
      return book(tx, { context, asked, ...sane.value });
    },
    { behavior: 'immediate' },
  );
}

interface Booking extends AskedWell {
  readonly context: Context;
  readonly asked: EquipmentAsked;
}

function book(tx: DbOrTx, { context, asked, window, depot, customerId }: Booking): Result<EquipmentBooked> {
  const { needs, heldUntil, why, purpose = 'other' } = asked;
  const counted = new Set(
    houseModels(context)
      .filter((model) => model.counted)
      .map(({ number }) => number),
  );
  const question = stockQuestion(context, { window });
  const units = chooseUnits({ ...question, needs: needs.filter(({ model }) => !counted.has(model)), depot });
  if (!units.ok) return units;
  const items = chooseCounted({
    needs: needs.filter(({ model }) => counted.has(model)),
    free: freePieces(context, { window }),
    window,
  });
  if (!items.ok) return items;
  const number = holdEquipment(tx, {
    context,
    quote: null,
    units: units.value,
    items: items.value,
    window,
    heldUntil: heldUntil === null ? null : new Date(heldUntil).toISOString(),
    depot,
    note: why.trim(),
    purpose,
    customerId,
  });
  const serials = units.value.map(({ serial }) => serial);
  const detail = { needs, ...window, serials, purpose, customerId, why: why.trim() };
  logChange(tx, {
    context,
    deed: { action: 'equipment booked without a quote', subject: `booking ${number}`, detail },
  });
  return ok({ number, serials });
}
