import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exchanged, exchangedBack } from '#lib/money/exchange.ts';
import { toMinor } from '#lib/money/money.ts';

const at = (from: string, to: string, rate: number) => ({ from, to, rate });

describe('an amount turned over into another currency', () => {
  // Council Regulation (EC) No 1103/97, articles 4 and 5: the fixed rates are not rounded or cut, and the amount goes to
  // the nearest sub-unit, a half upwards. Rates of Regulation (EC) No 2866/98; from memory. 1 EUR = 1.95583 DEM = 166.386 ESP,
  // told here with USD for two decimals and JPY for none.
  it.each([
    [10_000, at('EUR', 'USD', 1.95583), 19_558],
    [100, at('EUR', 'USD', 1.95583), 196],
    [10_000, at('EUR', 'JPY', 166.386), 16_639],
    [1, at('EUR', 'JPY', 166.386), 2],
    [10_000, at('EUR', 'KWD', 0.3345), 33_450],
    [5, at('EUR', 'USD', 0.5), 3],
    [-5, at('EUR', 'USD', 0.5), -3],
    [0, at('EUR', 'USD', 1.2), 0],
    [9_007_199_254_740, at('EUR', 'USD', 1.000001), 9_007_208_261_939],
  ])('%d %o is %d', (minor, exchange, expected) => {
    expect(exchanged(toMinor(minor), exchange)).toBe(expected);
  });

  it('comes back to within what one minor unit of the other is worth', () => {
    let checked = 0;
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 10_000_000 }),
        fc.integer({ min: 1000, max: 9_000_000 }),
        (minor, steps) => {
          const exchange = at('EUR', 'USD', steps / 1_000_000);
          const back = exchangedBack(exchanged(toMinor(minor), exchange), exchange);
          expect(Math.abs(back - minor)).toBeLessThanOrEqual(0.5 / exchange.rate + 0.5);
          checked += 1;
        },
      ),
      { seed: 4217, numRuns: 500 },
    );
    console.info(`${checked} amounts there and back`);
  });

  it('a rate of nought or below is a slip of the program', () => {
    expect(() => exchanged(toMinor(1), at('EUR', 'USD', 0))).toThrow('above nought');
  });
});
