/*
 * What the world may know of the house: its name, telephone and mail address, and the first day that can be hired.
 * Invariant: nothing else of the house leaves here.
 * Not here: what is rented out (order-answer.ts).
 * Read next: start-order.ts.
 */
import { addDays, type IsoDate } from '#lib/kernel/date-range.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';

export interface HouseCard {
  readonly name: string;
  readonly telephone: string;
  readonly email: string;
  readonly firstDay: IsoDate;
}

export function openHouseCard(context: Context): Result<HouseCard> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const { name, telephone, email } = houseFacts(context);
  return ok({ name, telephone, email, firstDay: addDays(today(context), 1) });
}
