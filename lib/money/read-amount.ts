/*
 * Reads an amount of money as it is typed: `1 234.50`, `1234,5`, `98`.
 * Invariant: digits become minor units one by one, never by way of a binary fraction; what is not an amount is null, never a guess.
 * Not here: printing (documents).
 * Read next: currency.ts.
 */
import { currencyDecimals } from './currency.ts';
import { type Minor, toMinor } from './money.ts';

/** Digits with spaces between thousands, then a point or comma and the decimals. */
const AMOUNT = /^(\d{1,9}|\d{1,3}(?:[ \u00a0\u202f]\d{3})+)(?:[.,](\d+))?$/;

export function readAmount(text: string, currency: string): Minor | null {
  const match = AMOUNT.exec(text.trim());
  if (match === null) return null;
  const [, whole = '', part = ''] = match;
  const decimals = currencyDecimals(currency);
  if (part.length > decimals) return null;
  const digits = `${whole.replace(/\D/g, '')}${part.padEnd(decimals, '0')}`;
  const minor = Number(digits);
  return Number.isSafeInteger(minor) ? toMinor(minor) : null;
}
