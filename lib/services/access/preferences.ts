/*
 * How a person likes figures to be shown.
 * Invariant: nothing here changes what is stored or printed on a paper.
 * Not here: a customer's formats; the conversion itself (units, documents).
 * Read next: who-asks.ts.
 */
import type { UserRow } from '#db/queries/users.ts';

export type Preferences = Pick<UserRow, 'units' | 'date_form' | 'decimal_mark'>;

export const HOUSE_PREFERENCES: Preferences = {
  units: null,
  date_form: 'written',
  decimal_mark: 'point',
};

export function preferencesOf({ units, date_form, decimal_mark }: UserRow): Preferences {
  return { units, date_form, decimal_mark };
}
