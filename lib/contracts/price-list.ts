/*
 * The house's price list: what is not hired by the rate card and is quoted again and again.
 * Invariant: an item's kind and unit are those of a line added by hand; its price is in the house's currency.
 * Not here: rates of models (equipment.ts).
 * Read next: price-choices.ts, house.ts.
 */
import { z } from 'zod';
import { toMinor } from '#lib/money/money.ts';
import { MANUAL_KINDS } from '#lib/pricing/manual-line.ts';
import { MANUAL_UNITS } from '#lib/pricing/manual-units.ts';

export const priceListSchema = z
  .array(
    z.strictObject({
      id: z.string().trim().min(1).max(40),
      kind: z.enum(MANUAL_KINDS),
      text: z.string().trim().min(1).max(200),
      unit: z.enum(MANUAL_UNITS),
      unit_minor: z.int().nonnegative().transform(toMinor),
      per: z.enum(['day', 'once']),
    }),
  )
  .max(500)
  .refine((items) => new Set(items.map(({ id }) => id)).size === items.length, 'names an item twice')
  .default([]);

export type PriceList = z.output<typeof priceListSchema>;
