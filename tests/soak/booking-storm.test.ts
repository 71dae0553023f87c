import { expect, it } from 'vitest';
import { stormOfBookings, tellStorm } from '#tests/support/stock/booking-storm.ts';

it('two hundred clients, half of them killed midway and started again, never book a unit twice, accept a quote once, and lose nothing that was answered', async () => {
  const told = await stormOfBookings({
    processes: 20,
    clientsEach: 10,
    asksEach: 25,
    quotes: 20,
    killed: 10,
    killAfterAnswers: 1500,
  });
  console.info(`storm of bookings: ${tellStorm(told)}`);
  expect(told).toMatchObject({ clients: 200, kills: 10, overlaps: 0, half: 0, lost: 0, quotesWrong: 0 });
  expect(told.bookings).toBeGreaterThan(100);
  for (const [deed, count] of Object.entries(told.done))
    expect(count, `${deed} was done too seldom`).toBeGreaterThan(10);
});
