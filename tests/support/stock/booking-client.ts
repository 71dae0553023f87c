/*
 * A process of the storm of bookings: some clients, each with a connection of its own, accept quotes, book without one, extend, swap and cancel until they have asked often enough.
 * What was answered is written down after the service answered, so that it can be looked for afterwards; the process may be killed at any moment.
 *
 * node --import tsx tests/support/stock/booking-client.ts DATABASE ANSWERS FIRST-CLIENT CLIENTS ASKS HOUSE (JSON, see storm-answer.ts)
 */
import { appendFileSync } from 'node:fs';
import { openDatabase } from '#db/client.ts';
import { addDays } from '#lib/kernel/date-range.ts';
import { seededRandom } from '#lib/kernel/random.ts';
import type { Result } from '#lib/kernel/result.ts';
import type { Context } from '#lib/services/context.ts';
import { acceptQuote } from '#lib/services/quotes/accept-quote.ts';
import { cancelAcceptance } from '#lib/services/quotes/cancel-acceptance.ts';
import { changeUnitState } from '#lib/services/stock/change-unit-state.ts';
import { bookEquipment } from '#lib/services/yard/book-equipment.ts';
import { cancelBooking } from '#lib/services/yard/cancel-booking.ts';
import { extendBooking } from '#lib/services/yard/extend-booking.ts';
import { swapUnit } from '#lib/services/yard/swap-unit.ts';
import { HOUSE_DAY } from '../houses/demo-house.ts';
import type { StormAnswer, StormAsk, StormHouse } from './storm-answer.ts';

const [database = '', answers = '', first = '0', clients = '1', asks = '1', told = '{}'] = process.argv.slice(2);
const house = JSON.parse(told) as StormHouse;
const BUSY_TRIES = 50;

interface Held {
  readonly number: string;
  readonly quote: number | null;
  readonly serials: readonly string[];
  readonly endsBefore: string;
}

function client(id: number): () => void {
  const context: Context = {
    database: openDatabase(database),
    now: () => new Date(`${HOUSE_DAY}T08:00:00Z`),
    actor: { id: `client-${id}`, name: `Client ${id}`, role: 'administrator' },
  };
  const random = seededRandom(id * 7919 + process.pid);
  const below = (most: number): number => Math.floor(random() * most);
  const one = <Item>(of: readonly Item[]): Item => of[below(of.length)] as Item;
  const held: Held[] = [];

  return (): void => {
    if (held.length > 0 && below(3) === 0) change(held.splice(below(held.length), 1)[0] as Held);
    else if (below(3) === 0) accept();
    else book();
  };

  function book(): void {
    const startsOn = addDays(HOUSE_DAY, 1 + below(40));
    const endsBefore = addDays(startsOn, 2 + below(12));
    const count = 1 + below(2);
    const needs = [{ model: one(house.models).number, count }];
    const asked = { needs, startsOn, endsBefore, heldUntil: null, depot: '', why: `storm ${id}` };
    const answer = patiently(() => bookEquipment(context, asked));
    if (answer?.ok) held.push({ ...answer.value, quote: null, endsBefore });
    tell(answer, { deed: 'book', count, startsOn, endsBefore });
  }

  /** Others may have accepted the same one before: then the answer names their booking, and both go on with it. */
  function accept(): void {
    const { id: quote, startsOn, endsBefore, units } = one(house.quotes);
    const answer = patiently(() => acceptQuote(context, { quoteId: quote, acceptedBy: `storm ${id}` }));
    if (answer?.ok) held.push({ ...answer.value, quote, endsBefore });
    tell(answer, { deed: 'accept', quote, count: units, startsOn, endsBefore });
  }

  function change(booking: Held): void {
    const deed = one([cancel, extend, swap]);
    deed(booking);
  }

  function cancel({ number, quote }: Held): void {
    const reason = 'changed my mind';
    const answer =
      quote === null || below(2) === 0
        ? patiently(() => cancelBooking(context, { number, reason }))
        : patiently(() => cancelAcceptance(context, { quoteId: quote, reason }));
    // By the quote, it is the booking that stands which is cancelled: another one, where this was cancelled by others before.
    tell(answer, { deed: 'cancel', booking: answer?.ok ? answer.value.number : number });
  }

  function extend(booking: Held): void {
    const endsBefore = addDays(booking.endsBefore, 1 + below(4));
    const asked = { number: booking.number, endsBefore, serials: [], askedBy: `storm ${id}`, why: 'not ready' };
    const answer = patiently(() => extendBooking(context, asked));
    held.push(answer?.ok ? { ...booking, endsBefore } : booking);
    tell(answer, { deed: 'extend', booking: booking.number, endsBefore });
  }

  /** Whichever is free takes its place. The unit that was taken out is found sound at once, or nothing would be left after a while; so is any other that a kill left there. */
  function swap(booking: Held): void {
    const serial = one(booking.serials);
    const model = house.kit.find(({ serials }) => serials.includes(serial)) ?? one(house.kit);
    const took = model.serials.find((replacement) => {
      const asked = { number: booking.number, serial, replacement, why: 'it stuttered' };
      const answer = patiently(() => swapUnit(context, asked));
      tell(answer, { deed: 'swap', booking: booking.number, serial, replacement });
      return answer?.ok;
    });
    held.push({ ...booking, serials: booking.serials.map((of) => (of === serial ? (took ?? of) : of)) });
    for (const of of [serial, one(model.serials)])
      patiently(() => changeUnitState(context, { serial: of, to: 'ready', reason: 'tried, and sound' }));
  }

  function tell(answer: Result<Pick<StormAnswer, 'number' | 'serials'>> | null, asked: StormAsk): void {
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
