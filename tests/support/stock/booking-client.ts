/*
 * A process of the storm of bookings: some clients, each with a connection of its own, book, give up and book again until they have asked often enough.
 * What was answered is written down after the service answered, so that it can be looked for afterwards; the process may be killed at any moment.
 *
 * node --import tsx tests/support/stock/booking-client.ts DATABASE ANSWERS FIRST-CLIENT CLIENTS ASKS MODEL…
 */
import { appendFileSync } from 'node:fs';
import { openDatabase } from '#db/client.ts';
import { addDays } from '#lib/kernel/date-range.ts';
import { seededRandom } from '#lib/kernel/random.ts';
import type { Result } from '#lib/kernel/result.ts';
import type { Context } from '#lib/services/context.ts';
import { bookEquipment } from '#lib/services/yard/book-equipment.ts';
import { cancelBooking } from '#lib/services/yard/cancel-booking.ts';
import { HOUSE_DAY } from '../houses/demo-house.ts';
import type { StormAnswer } from './storm-answer.ts';

const [database = '', answers = '', first = '0', clients = '1', asks = '1', ...models] = process.argv.slice(2);
const BUSY_TRIES = 50;

function client(id: number) {
  const context: Context = {
    database: openDatabase(database),
    now: () => new Date(`${HOUSE_DAY}T08:00:00Z`),
    actor: { id: `client-${id}`, name: `Client ${id}`, role: 'desk' },
  };
  const random = seededRandom(id * 7919 + process.pid);
  const below = (most: number): number => Math.floor(random() * most);
  const held: string[] = [];

  return (): void => {
    const gives = held.length > 0 && below(5) === 0 ? held.splice(below(held.length), 1)[0] : undefined;
    if (gives === undefined) book();
    else
      tell(
        patiently(() => cancelBooking(context, { number: gives, reason: 'changed my mind' })),
        { gives },
      );
  };

  function book(): void {
    const startsOn = addDays(HOUSE_DAY, 1 + below(40));
    const endsBefore = addDays(startsOn, 2 + below(12));
    const needs = [{ model: models[below(models.length)] ?? '', count: 1 + below(2) }];
    const why = `storm ${id}`;
    const asked = { needs, startsOn, endsBefore, heldUntil: null, depot: '', why };
    const answer = patiently(() => bookEquipment(context, asked));
    if (answer?.ok) held.push(answer.value.number);
    tell(answer, { count: needs[0]?.count ?? 0, startsOn, endsBefore });
  }

  function tell(answer: Result<{ readonly number: string }> | null, asked: StormAnswer['asked']): void {
    const line: StormAnswer =
      answer === null
        ? { client: id, asked, code: 'busy' }
        : answer.ok
          ? { client: id, asked, code: '', ...answer.value }
          : { client: id, asked, code: answer.reason.code };
    appendFileSync(answers, `${JSON.stringify(line)}\n`);
  }
}

/** Under so many writers a turn may take longer than a connection waits; then it is asked again. */
function patiently<Answer>(ask: () => Answer): Answer | null {
  for (let tried = 0; tried < BUSY_TRIES; tried += 1) {
    try {
      return ask();
    } catch (error) {
      if (!(error instanceof Error && 'code' in error && String(error.code).startsWith('SQLITE_BUSY'))) throw error;
    }
  }
  return null;
}

const all = Array.from({ length: Number(clients) }, (_, index) => client(Number(first) + index));
process.send?.('ready');
for (let ask = 0; ask < Number(asks); ask += 1) {
  for (const turn of all) {
    turn();
    await new Promise((resolve) => setImmediate(resolve));
  }
}
