import { expect, it } from 'vitest';
import { stormOfBookings, tellStorm } from '#tests/support/stock/booking-storm.ts';

it('many clients at once, some killed midway, never book a unit twice, leave no half booking, accept a quote once, and lose nothing that was answered', async () => {
  const told = await stormOfBookings({
    processes: 3,
    clientsEach: 6,
    asksEach: 12,
    quotes: 4,
    killed: 2,
    killAfterAnswers: 30,
  });
  console.info(`storm of bookings: ${tellStorm(told)}`);
  expect(told).toMatchObject({ clients: 18, kills: 2, overlaps: 0, half: 0, lost: 0, quotesWrong: 0, busy: 0 });
  expect(told.done.book).toBeGreaterThan(10);
  expect(told.done.accept).toBeGreaterThan(0);
  expect(told.refused).toBeGreaterThan(10);
  expect(told.unanswered).toBeLessThanOrEqual(2);
}, 240_000);
