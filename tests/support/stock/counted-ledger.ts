/*
 * Random sequences of what happens to counted pieces, through the services, beside a ledger that only adds and takes away.
 * Counted pieces are never in quarantine: what is not fit is counted as not back. What is owned is therefore free, promised, out, on its way or lost.
 */
import { expect } from 'vitest';
import { addDays, rangeOfDays } from '#lib/kernel/date-range.ts';
import type { Result } from '#lib/kernel/result.ts';
import type { Context } from '#lib/services/context.ts';
import { freePieces } from '#lib/services/house/house-facts.ts';
import { arriveTransfer } from '#lib/services/stock/arrive-transfer.ts';
import { setCount } from '#lib/services/stock/counted.ts';
import { sendTransfer } from '#lib/services/stock/send-transfer.ts';
import { checkIn } from '#lib/services/yard/back/check-in.ts';
import { countBack } from '#lib/services/yard/back/count-back.ts';
import { bookEquipment } from '#lib/services/yard/book-equipment.ts';
import { cancelBooking } from '#lib/services/yard/cancel-booking.ts';
import { closeBooking } from '#lib/services/yard/close-booking.ts';
import { confirmBooking } from '#lib/services/yard/confirm-booking.ts';
import { beginDelivery, countLoad, scanLoad } from '#lib/services/yard/out/load-delivery.ts';
import { sendDelivery } from '#lib/services/yard/out/send-delivery.ts';
import { granted } from '../granted.ts';
import { takeUnits } from '../houses/booked-house.ts';
import { HOUSE_DAY } from '../houses/demo-house.ts';
import { declare, GOOD, LEAVING, yes } from '../houses/out-and-back.ts';

interface Hire {
  readonly number: string;
  readonly booked: number;
  sent: number;
  back: number;
  /** Units that wait in the yard, and those that are out. */
  waiting: readonly string[];
  out: readonly string[];
  lastReturn: number | null;
  wasCounted: boolean;
}

export interface Ledger {
  owned: number;
  lost: number;
  readonly onTheWay: Map<string, number>;
  hires: readonly Hire[];
  /** How often each deed was done, over all sequences. */
  readonly done: Map<string, number>;
}

interface Stage {
  readonly context: Context;
  readonly models: readonly string[];
  readonly counted: string;
  readonly below: (most: number) => number;
  readonly ledger: Ledger;
}

const DEPOTS = ['VEN', 'HAL'] as const;
const DAYS = 5;

export function step(stage: Stage): void {
  const deed = [
    book,
    book,
    sendOut,
    sendOut,
    comeBack,
    comeBack,
    comeBack,
    close,
    close,
    cancel,
    buy,
    transfer,
    arrive,
  ][stage.below(13)];
  if (deed?.(stage)) stage.ledger.done.set(deed.name, (stage.ledger.done.get(deed.name) ?? 0) + 1);
}

/** What the house says, against the ledger. */
export function balance({ context, counted, ledger }: Stage): void {
  const shelf = Number(
    context.database.raw.prepare('SELECT sum(count) FROM counted_shelf WHERE model_number = ?').pluck().get(counted),
  );
  const way = [...ledger.onTheWay.values()].reduce((sum, count) => sum + count, 0);
  const promised = ledger.hires.reduce((sum, hire) => sum + hire.booked - hire.sent, 0);
  const out = ledger.hires.reduce((sum, hire) => sum + hire.sent - hire.back, 0);
  const returned = ledger.hires.reduce((sum, hire) => sum + hire.back, 0);
  const free = freePieces(context, { window: rangeOfDays(HOUSE_DAY, 1) })[counted] ?? 0;
  expect(shelf + way + ledger.lost, 'on the shelves, on the way and lost are all that is owned').toBe(ledger.owned);
  // What came back of a booking that still runs is held with it until it closes.
  expect(free + promised + out + returned + way + ledger.lost, 'free, promised, out, back, on the way and lost').toBe(
    ledger.owned,
  );
}

function done(result: Result<unknown>): boolean {
  return result.ok;
}

function book({ context, models, counted, below, ledger }: Stage): boolean {
  const booked = 1 + below(4);
  const needs = [
    { model: models[below(models.length)] ?? '', count: 2 },
    { model: counted, count: booked },
  ];
  const asked = {
    needs,
    startsOn: HOUSE_DAY,
    endsBefore: addDays(HOUSE_DAY, DAYS),
    heldUntil: null,
    depot: '',
    why: 'x',
  };
  const made = bookEquipment(context, asked);
  if (!made.ok) return false;
  const { number, serials } = made.value;
  granted(confirmBooking(context, { number }));
  takeUnits(context, { number, to: 'picked' });
  const hire = { number, booked, sent: 0, back: 0, waiting: serials, out: [], lastReturn: null, wasCounted: false };
  ledger.hires = [...ledger.hires, hire];
  return true;
}

function sendOut({ context, counted, below, ledger }: Stage): boolean {
  const hire = ledger.hires.find(({ waiting }) => waiting.length > 0);
  const [serial = '', ...others] = hire?.waiting ?? [];
  if (hire === undefined) return false;
  const { id: deliveryId } = granted(beginDelivery(context, { number: hire.number, transport: 'road' }));
  granted(scanLoad(context, { deliveryId, scan: serial }));
  const left = hire.booked - hire.sent;
  const count = below(left + 1);
  if (count > 0) granted(countLoad(context, { deliveryId, model: counted, count }));
  expect(done(countLoad(context, { deliveryId, model: counted, count: left + 1 }))).toBe(false);
  granted(sendDelivery(context, { ...LEAVING, deliveryId, checks: yes(context, hire.number) }));
  hire.sent += count;
  hire.waiting = others;
  hire.out = [...hire.out, serial];
  return true;
}

function comeBack({ context, counted, below, ledger }: Stage): boolean {
  const all = ledger.hires.filter(({ out }) => out.length > 0);
  const hire = all[below(all.length)];
  const [serial = '', ...others] = hire?.out ?? [];
  if (hire === undefined) return false;
  const returnId = declare(context, hire.number);
  granted(checkIn(context, { ...GOOD, returnId, scan: serial }));
  const count = below(hire.sent - hire.back + 1);
  hire.out = others;
  hire.lastReturn = returnId;
  if (hire.sent === 0 || below(3) === 0) return true;
  granted(countBack(context, { returnId, model: counted, back: count, unused: 0 }));
  hire.back += count;
  hire.wasCounted = true;
  return true;
}

/** What did not come back is lost when the booking closes. */
function close({ context, counted, ledger }: Stage): boolean {
  const hire = ledger.hires.find(
    ({ waiting, out, lastReturn }) => waiting.length + out.length === 0 && lastReturn !== null,
  );
  if (hire === undefined) return false;
  if (hire.sent > 0 && !hire.wasCounted) {
    expect(closeBooking(context, { number: hire.number })).toMatchObject({ reason: { code: 'pieces-uncounted' } });
    granted(countBack(context, { returnId: hire.lastReturn ?? 0, model: counted, back: 0, unused: 0 }));
  }
  granted(closeBooking(context, { number: hire.number }));
  ledger.lost += hire.sent - hire.back;
  ledger.hires = ledger.hires.filter((one) => one !== hire);
  return true;
}

function cancel({ context, ledger }: Stage): boolean {
  const hire = ledger.hires.find(({ out, lastReturn }) => out.length === 0 && lastReturn === null);
  if (hire === undefined || hire.sent > 0) return false;
  granted(cancelBooking(context, { number: hire.number, reason: 'x' }));
  ledger.hires = ledger.hires.filter((one) => one !== hire);
  return true;
}

function buy({ context, counted, below, ledger }: Stage): boolean {
  const depot = DEPOTS[below(2)] ?? 'VEN';
  const sql = 'SELECT count FROM counted_shelf WHERE model_number = ? AND depot = ?';
  const there = Number(context.database.raw.prepare(sql).pluck().get(counted, depot) ?? 0);
  const more = 1 + below(3);
  granted(setCount(context, { model: counted, depot, count: there + more, reason: 'bought' }));
  ledger.owned += more;
  return true;
}

function transfer({ context, counted, below, ledger }: Stage): boolean {
  const from = DEPOTS[below(2)] ?? 'VEN';
  const to = from === 'VEN' ? 'HAL' : 'VEN';
  const count = 1 + below(2);
  const items = [{ model: counted, count }];
  const sent = sendTransfer(context, { from, to, dueOn: addDays(HOUSE_DAY, 1), serials: [], items, note: '' });
  if (!sent.ok) return false;
  ledger.onTheWay.set(sent.value.number, count);
  return true;
}

function arrive({ context, counted, below, ledger }: Stage): boolean {
  const [number = '', count = 0] = [...ledger.onTheWay][0] ?? [];
  if (number === '') return false;
  const arrived = below(count + 1);
  granted(arriveTransfer(context, { number, units: [], items: [{ model: counted, arrived }], lost: [] }));
  ledger.onTheWay.delete(number);
  ledger.lost += count - arrived;
  return true;
}
