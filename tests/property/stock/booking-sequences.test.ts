import { expect, it } from 'vitest';
import { tally } from '#tests/support/stock/stock-commands.ts';
import { runSequences } from '#tests/support/stock/stock-sequences.ts';

it('whatever is booked, extended, late, swapped, cancelled, released, sent, counted or run out, availability and bookings agree with a day-by-day model', async () => {
  console.info(await runSequences({ runs: 50, seed: 20_261_129, most: 40 }));
  for (const done of ['book', 'extend', 'late', 'swap', 'cancel', 'release', 'send', 'arrive', 'stocktake'])
    expect(tally.get(`${done}: done`) ?? 0, `${done} was never done`).toBeGreaterThan(0);
}, 300_000);
