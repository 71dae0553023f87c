/*
 * How many decimals a currency's minor unit has.
 * Invariant: a currency that is not listed is refused, never guessed.
 * Not here: exchange rates (exchange.ts).
 * Read next: money.ts, exchange.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';

/** ISO 4217 minor-unit exponents; from memory of the standard's table. */
const DECIMALS: Readonly<Record<string, number>> = {
  EUR: 2,
  GBP: 2,
  USD: 2,
  CHF: 2,
  NOK: 2,
  SEK: 2,
  DKK: 2,
  PLN: 2,
  CZK: 2,
  AUD: 2,
  NZD: 2,
  CAD: 2,
  ZAR: 2,
  NGN: 2,
  GHS: 2,
  INR: 2,
  AED: 2,
  SGD: 2,
  JPY: 0,
  KRW: 0,
  CLP: 0,
  ISK: 0,
  BHD: 3,
  KWD: 3,
  OMR: 3,
  JOD: 3,
  TND: 3,
};

/** `-1234.50`: an amount with all decimals of its currency and no mark between thousands. */
export function decimalText(minor: number, currency: string): string {
  const decimals = currencyDecimals(currency);
  const digits = String(Math.abs(minor)).padStart(decimals + 1, '0');
  const whole = digits.slice(0, digits.length - decimals);
  return `${minor < 0 ? '-' : ''}${whole}${decimals === 0 ? '' : `.${digits.slice(-decimals)}`}`;
}

export function isKnownCurrency(code: string): boolean {
  return code in DECIMALS;
}

export function currencyDecimals(currency: string): number {
  const decimals = DECIMALS[currency];
  invariant(decimals !== undefined, `The currency ${currency} is not in the list; add its ISO 4217 decimals first.`);
  return decimals;
}
