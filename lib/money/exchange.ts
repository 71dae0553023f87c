/*
 * Turns an amount of one currency over into another at a rate that the house keeps.
 * Invariant: whole numbers all the way: the result is the nearest minor unit of the other currency, halves away from nought.
 * Not here: which rate holds on a day (the prices of the house).
 * Read next: currency.ts, money.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';
import { currencyDecimals } from './currency.ts';
import { type Minor, toMinor } from './money.ts';

/** One whole unit of `from` is `rate` whole units of `to`. */
export interface Exchange {
  readonly from: string;
  readonly to: string;
  readonly rate: number;
}

/** Rates are kept to six decimals, as central banks publish at most. */
export const RATE_STEPS = 1_000_000;

export function exchanged(minor: Minor, { from, to, rate }: Exchange): Minor {
  return scaled(minor, {
    times: stepsOf(rate) * 10n ** BigInt(currencyDecimals(to)),
    by: BigInt(RATE_STEPS) * 10n ** BigInt(currencyDecimals(from)),
  });
}

/** The other way round: an amount in `to`, told in `from`. */
export function exchangedBack(minor: Minor, { from, to, rate }: Exchange): Minor {
  return scaled(minor, {
    times: BigInt(RATE_STEPS) * 10n ** BigInt(currencyDecimals(from)),
    by: stepsOf(rate) * 10n ** BigInt(currencyDecimals(to)),
  });
}

function stepsOf(rate: number): bigint {
  const steps = Math.round(rate * RATE_STEPS);
  invariant(steps > 0, `An exchange rate is above nought, not ${rate}.`);
  return BigInt(steps);
}

function scaled(minor: Minor, { times, by }: { readonly times: bigint; readonly by: bigint }): Minor {
  const whole = BigInt(Math.abs(minor)) * times;
  const size = Number((whole * 2n + by) / (by * 2n));
  return toMinor(minor < 0 ? -size : size);
}
