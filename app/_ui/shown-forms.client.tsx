'use client';

import { createContext, type ReactNode, useContext } from 'react';
import { dateIn, momentIn, moneyIn, type PersonForms, windowIn } from '#lib/documents/words/person-forms.ts';
import type { DateRange, IsoDate } from '#lib/kernel/date-range.ts';

const Forms = createContext<PersonForms>({ dates: 'written', decimals: 'point' });

/** Holds the forms of dates and numbers that the person likes; everything below shows its own in them. */
export function FormsProvider({ forms, children }: { readonly forms: PersonForms; readonly children: ReactNode }) {
  return <Forms value={forms}>{children}</Forms>;
}

export function useForms(): PersonForms {
  return useContext(Forms);
}

export function ShownDate({ on }: { readonly on: IsoDate }) {
  return <time dateTime={on}>{dateIn(on, useForms().dates)}</time>;
}

export function ShownMoment({ at }: { readonly at: string }) {
  return <time dateTime={at}>{momentIn(at, useForms().dates)}</time>;
}

export function ShownWindow({ days }: { readonly days: DateRange }) {
  return windowIn(days, useForms().dates);
}

export function ShownMoney({ minor, currency }: { readonly minor: number; readonly currency: string }) {
  return moneyIn({ amount_minor: minor, currency, mark: useForms().decimals });
}
