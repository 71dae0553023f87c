import { currencyDecimals } from '#lib/money/currency.ts';

/** An amount typed in whole units with a point, as minor units; null where it is none. */
export function minorOf(text: string, currency: string): number | null {
  const decimals = currencyDecimals(currency);
  const [, whole, fraction = ''] = /^(\d{1,12})(?:\.(\d{1,3}))?$/.exec(text.trim()) ?? [];
  if (whole === undefined || fraction.length > decimals) return null;
  return Number(whole) * 10 ** decimals + Number(fraction.padEnd(decimals, '0') || 0);
}
