import { moneyIn, type PersonForms, windowIn } from '#lib/documents/words/person-forms.ts';
import type { DateRange } from '#lib/kernel/date-range.ts';
import { asked } from './asking.ts';

export interface ShownTexts {
  readonly money: (amount_minor: number, currency: string) => string;
  readonly window: (days: DateRange) => string;
}

async function personForms(): Promise<PersonForms> {
  const { date_form, decimal_mark } = (await asked()).asker.preferences;
  return { dates: date_form, decimals: decimal_mark };
}

/** Texts in the forms of the person who asks, for a page that hands texts on; elsewhere the `Shown…` blocks do it. */
export async function shownTexts(): Promise<ShownTexts> {
  const { dates, decimals } = await personForms();
  return {
    money: (amount_minor, currency) => moneyIn({ amount_minor, currency, mark: decimals }),
    window: (days) => windowIn(days, dates),
  };
}
