/*
 * Rates of a model from a day on; the rates in the model's facts hold until its first card.
 * Invariant: a model has at most one card that begins on a day; a card that has begun stays.
 * Not here: which card a price takes (lib/equipment/rate-on.ts).
 * Read next: house-price.ts.
 */
import { integer, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { model } from './model.ts';

export const rateCard = sqliteTable(
  'rate_card',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    model_number: text('model_number')
      .notNull()
      .references(() => model.number, { onDelete: 'restrict' }),
    starts_on: text('starts_on').notNull(),
    day_minor: integer('day_minor').notNull(),
    week_minor: integer('week_minor').notNull(),
    four_weeks_minor: integer('four_weeks_minor').notNull(),
    minimum_days: integer('minimum_days').notNull(),
    note: text('note').notNull().default(''),
  },
  (table) => [uniqueIndex('rate_card_by_day').on(table.model_number, table.starts_on)],
);
