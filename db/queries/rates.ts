/*
 * Reads and writes dated rate cards of models and dated prices of the house.
 * Invariant: cards come in order of model and day.
 * Not here: which card holds on a day (lib/equipment/rate-on.ts).
 * Read next: ../schema/rate-card.ts, ../schema/house-price.ts.
 */
import { and, asc, eq } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { housePrice } from '../schema/house-price.ts';
import { rateCard } from '../schema/rate-card.ts';

export type RateCardRow = typeof rateCard.$inferSelect;
export type HousePriceRow = typeof housePrice.$inferSelect;

export function listRateCards(db: DbOrTx): readonly RateCardRow[] {
  return db.select().from(rateCard).orderBy(asc(rateCard.model_number), asc(rateCard.starts_on)).all();
}

export function rateCardsOf(db: DbOrTx, modelNumber: string): readonly RateCardRow[] {
  return db
    .select()
    .from(rateCard)
    .where(eq(rateCard.model_number, modelNumber))
    .orderBy(asc(rateCard.starts_on))
    .all();
}

/** A card of the same model and day is replaced. */
export function putRateCard(db: DbOrTx, { model_number, starts_on, ...rates }: Omit<RateCardRow, 'id'>): void {
  db.insert(rateCard)
    .values({ model_number, starts_on, ...rates })
    .onConflictDoUpdate({ target: [rateCard.model_number, rateCard.starts_on], set: rates })
    .run();
}

export function removeRateCard(db: DbOrTx, card: { readonly modelNumber: string; readonly startsOn: string }): void {
  db.delete(rateCard)
    .where(and(eq(rateCard.model_number, card.modelNumber), eq(rateCard.starts_on, card.startsOn)))
    .run();
}

export function listHousePrices(db: DbOrTx): readonly HousePriceRow[] {
  return db.select().from(housePrice).orderBy(asc(housePrice.starts_on)).all();
}

export function putHousePrices(db: DbOrTx, { starts_on, ...held }: HousePriceRow): void {
  db.insert(housePrice)
    .values({ starts_on, ...held })
    .onConflictDoUpdate({ target: housePrice.starts_on, set: held })
    .run();
}

export function removeHousePrices(db: DbOrTx, startsOn: string): void {
  db.delete(housePrice).where(eq(housePrice.starts_on, startsOn)).run();
}
