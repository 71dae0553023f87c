import { expect, it } from 'vitest';
import { tally } from '#tests/support/stock/stock-commands.ts';
import { runSequences } from '#tests/support/stock/stock-sequences.ts';

it('thousands of random sequences of a house’s work agree with a day-by-day model of stock and bookings', async () => {
  console.info(await runSequences({ runs: 2000, seed: 77, most: 30 }));
  for (const done of [
    'book',
    'extend',
    'late',
    'swap',
    'cancel',
    'release',
    'send',
    'arrive',
    'stocktake',
    'lose',
    'close',
  ])
    expect(tally.get(`${done}: done`) ?? 0, `${done} was never done`).toBeGreaterThan(0);
  expect(tally.get('moved to another unit') ?? 0).toBeGreaterThan(0);
});
