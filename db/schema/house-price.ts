/*
 * What the house charges besides rates, from a day on: taxes, waiver, deposit, delivery bands, labour.
 * Invariant: prices_json passes housePricesSchema of lib/contracts/house.ts; until the first row those of the house row hold.
 * Not here: everything of the house that is no price (house.ts).
 * Read next: record-change.ts.
 */
import { sqliteTable, text } from 'drizzle-orm/sqlite-core';

export const housePrice = sqliteTable('house_price', {
  starts_on: text('starts_on').primaryKey(),
  prices_json: text('prices_json').notNull(),
  note: text('note').notNull().default(''),
});
