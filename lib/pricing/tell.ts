/*
 * Wording that the sentences of a price share: lists, counts, amounts, percentages.
 * Invariant: an amount is printed with the decimals of its currency.
 * Not here: printing for a locale (lib/documents).
 * Read next: price-plan.ts.
 */
import { decimalText } from '#lib/money/currency.ts';

/** `a`, `a and b`, `a, b and c`; empty parts are left out. */
export function tellParts(parts: readonly string[]): string {
  const said = parts.filter((part) => part !== '');
  if (said.length <= 1) return said.join('');
  return `${said.slice(0, -1).join(', ')} and ${said.at(-1)}`;
}

export function tellAmount({ minor, currency }: { readonly minor: number; readonly currency: string }): string {
  return `${currency} ${decimalText(minor, currency)}`;
}

export function tellCount({
  count,
  one,
  many,
}: {
  readonly count: number;
  readonly one: string;
  readonly many: string;
}): string {
  return `${count} ${count === 1 ? one : many}`;
}
