'use client';

import { createContext, type ReactNode, useContext, useMemo } from 'react';
import { dateIn, momentIn, moneyIn, type PersonForms, windowIn } from '#lib/documents/words/person-forms.ts';
import { numbersWith, writer } from '#lib/documents/words/written-forms.ts';
import type { DateRange, IsoDate } from '#lib/kernel/date-range.ts';

const Forms = createContext<PersonForms>({ dates: 'written', decimals: 'point' });

/** Holds the forms of dates and numbers that the person likes; everything below shows its own in them. */
export function FormsProvider({ forms, children }: { readonly forms: PersonForms; readonly children: ReactNode }) {
  return <Forms value={forms}>{children}</Forms>;
}

export function useForms(): PersonForms {
  return useContext(Forms);
}

/** Words with days and figures in them, as the person writes both; `names` stay as they are. */
export function useWords(...names: readonly string[]): (words: string) => string {
  const { dates, decimals } = useForms();
  const kept = names.join('\n');
  return useMemo(
    () => writer({ forms: { dates, numbers: numbersWith(decimals) }, names: kept === '' ? [] : kept.split('\n') }),
    [dates, decimals, kept],
  );
}

export function ShownWords({ children }: { readonly children: string }) {
  return useWords()(children);
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
