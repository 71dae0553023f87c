import type { ShownTexts } from '#app/_lib/person-forms.ts';

/** An amount with its currency, in the person's form of numbers. */
export type Money = (amount_minor: number) => string;

export function moneyText(texts: ShownTexts, currency: string): Money {
  return (amount_minor) => `${texts.money(amount_minor, currency)} ${currency}`;
}
