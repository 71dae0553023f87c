import { describe, expect, it } from 'vitest';
import { openDatabase } from '#db/client.ts';
import type { Context } from '#lib/services/context.ts';
import { confirmBooking } from '#lib/services/yard/confirm-booking.ts';
import { openBooking } from '#lib/services/yard/open-booking.ts';
import { openPicking } from '#lib/services/yard/picking/open-picking.ts';
import { openWalk, type WalkPiece, type WalkView } from '#lib/services/yard/picking/open-walk.ts';
import { walkScan } from '#lib/services/yard/picking/walk-scan.ts';
import { granted } from '#tests/support/granted.ts';
import { bookAgain, bookedHouse, HIRE, onDay } from '#tests/support/houses/booked-house.ts';
import { as } from '#tests/support/houses/out-and-back.ts';

const REFUSED = (code: string) => ({ ok: false, reason: { code } });
const DAY = HIRE.starts_on;

interface TwoLeaving {
  readonly context: Context;
  readonly one: string;
  readonly two: string;
}

let made: { readonly house: TwoLeaving; readonly image: Buffer } | undefined;

/** Two bookings that leave on one day, both confirmed; a copy of its own for every test. */
async function twoLeaving(): Promise<TwoLeaving> {
  made ??= await makeTwo();
  const { house, image } = made;
  return { ...house, context: { ...house.context, database: openDatabase(Buffer.from(image)) } };
}

async function makeTwo() {
  const one = await bookedHouse();
  const two = await bookAgain(one.context, DAY);
  for (const { number } of [one, two]) granted(confirmBooking(one.context, { number }));
  const context = as(onDay(one.context, DAY), 'yard');
  return { house: { context, one: one.number, two: two.number }, image: context.database.raw.serialize() };
}

let scans = 0;

function scanned(context: Context, code: string, key?: string) {
  scans += 1;
  return walkScan(context, { key: key ?? `walk-key-${scans}`, kind: 'walk', code, day: DAY });
}

function piecesOf(view: WalkView): readonly WalkPiece[] {
  return view.stops.flatMap(({ pieces }) => pieces);
}

describe('the walk of a day', () => {
  it('goes through the bays in order once, and has exactly the pieces of the lists of its bookings', async () => {
    const { context, one, two } = await twoLeaving();
    const walks = granted(openWalk(context, {})).depots.map(({ code }) => granted(openWalk(context, { depot: code })));
    const all = walks.flatMap(piecesOf);
    for (const number of [one, two]) {
      const mine = all.filter(({ booking }) => booking === number).map(({ code }) => code);
      expect(mine.toSorted()).toEqual(
        granted(openPicking(context, number))
          .lines.map(({ code }) => code)
          .toSorted(),
      );
    }
    const order = context.database.raw.prepare('SELECT depot || code, walk_order FROM bay').raw().all();
    const walk = new Map(order.map((row) => [String(Object(row)[0]), Number(Object(row)[1])]));
    for (const { depot, stops } of walks) {
      const places = stops.map(({ bay }) => walk.get(depot + bay) ?? Number.POSITIVE_INFINITY);
      expect(places).toEqual(places.toSorted((a, b) => a - b));
      expect(new Set(stops.map(({ bay }) => bay)).size).toBe(stops.length);
    }
    expect(walks[0]?.crates.map(({ booking }) => booking)).toEqual([one, two]);
  });

  it('gives each piece to the booking that holds it, and says into whose crate it goes', async () => {
    const { context } = await twoLeaving();
    for (const { code, booking, kind } of piecesOf(granted(openWalk(context, {})))) {
      if (kind === 'counted') continue;
      const answer = granted(scanned(context, code));
      expect(answer.sentence).toContain(`Into the crate of ${booking}`);
      const line = granted(openPicking(context, booking)).lines.find((each) => each.code === code);
      expect(line?.picked).toBe(true);
    }
    const left = piecesOf(granted(openWalk(context, {}))).filter(({ picked }) => !picked);
    expect(left.every(({ kind }) => kind === 'counted')).toBe(true);
  });

  it('a free unit that nobody holds goes to a booking that waits for its model, and only once', async () => {
    const { context } = await twoLeaving();
    const wanted = piecesOf(granted(openWalk(context, {}))).find(({ model }) => model === 'D-112');
    const other = String(
      context.database.raw
        .prepare(
          `SELECT serial FROM unit WHERE model_number = ? AND state = 'ready'
           AND serial NOT IN (SELECT unit_serial FROM booking_unit) ORDER BY serial DESC`,
        )
        .pluck()
        .get(wanted?.model),
    );
    const first = scanned(context, other, 'walk-key-same');
    expect(granted(first).sentence).toContain(`${other} picked in place of`);
    expect(scanned(context, other, 'walk-key-same')).toEqual(first);
    expect(scanned(context, other)).toMatchObject(REFUSED('unit-picked-already'));
    const holders = piecesOf(granted(openWalk(context, {}))).filter(({ code }) => code === other);
    expect(holders.length).toBe(1);
  });

  it('refuses as the list of a booking refuses, and says so where nothing leaves', async () => {
    const { context } = await twoLeaving();
    expect(scanned(context, 'D999-99')).toMatchObject(REFUSED('no-such-unit'));
    expect(scanned(context, 'BAY:VEN/A01')).toMatchObject(REFUSED('scan-wrong-label'));
    expect(scanned(context, '?')).toMatchObject(REFUSED('scan-unreadable'));
    const [piece] = piecesOf(granted(openWalk(context, {})));
    context.database.raw.prepare("UPDATE unit SET state = 'quarantine' WHERE serial = ?").run(piece?.code);
    expect(scanned(context, piece?.code ?? '').ok).toBe(false);
    const empty = { key: 'walk-key-empty', kind: 'walk', code: piece?.code ?? '', day: '2026-01-05' } as const;
    expect(walkScan(context, empty)).toMatchObject(REFUSED('walk-empty'));
    expect(granted(openWalk(context, { day: '2026-01-05' }))).toMatchObject({ stops: [], crates: [], pieces: 0 });
    expect(openWalk(context, { depot: 'NOWHERE' })).toMatchObject(REFUSED('no-such-depot'));
    expect(openWalk(as(context, 'contractor'), {})).toMatchObject(REFUSED('not-allowed'));
    expect(walkScan(as(context, 'contractor'), empty)).toMatchObject(REFUSED('not-allowed'));
  });

  it('leaves out what is only held, and keeps what should have left before on the walk of today', async () => {
    const house = await bookedHouse();
    const context = as(onDay(house.context, '2026-03-17'), 'yard');
    expect(granted(openWalk(context, {}))).toMatchObject({ stops: [], crates: [{ state: 'held', isLate: true }] });
    granted(confirmBooking(house.context, { number: house.number }));
    expect(granted(openWalk(context, {})).pieces).toBeGreaterThan(0);
    expect(granted(openWalk(context, { day: '2026-03-18' })).crates).toEqual([]);
    expect(granted(openBooking(context, house.number)).items.map(({ stands }) => stands)).not.toContain('out');
  });
});
