import { describe, expect, it } from 'vitest';
import type { Context } from '#lib/services/context.ts';
import { checkIn, type PieceSeen } from '#lib/services/yard/back/check-in.ts';
import { decideCharge } from '#lib/services/yard/back/decide-charge.ts';
import { issueReturnNote } from '#lib/services/yard/back/issue-return-note.ts';
import { openBack } from '#lib/services/yard/back/open-back.ts';
import { openCharges } from '#lib/services/yard/back/open-charges.ts';
import { readReturnNote } from '#lib/services/yard/back/read-return-note.ts';
import { sayCause } from '#lib/services/yard/back/say-cause.ts';
import { undoCheckIn } from '#lib/services/yard/back/undo-check-in.ts';
import { readDespatch } from '#lib/services/yard/out/delivery-despatch.ts';
import { openOut } from '#lib/services/yard/out/open-out.ts';
import { listWorkOrders } from '#lib/services/yard/work/list-work-orders.ts';
import { endWork } from '#lib/services/yard/work/step-work-order.ts';
import { granted } from '#tests/support/granted.ts';
import { onDay } from '#tests/support/houses/booked-house.ts';
import { as, backGood, declare, GOOD, outHouse, pickedHouse, send } from '#tests/support/houses/out-and-back.ts';
import { readPdf } from '#tests/support/papers/read-pdf.ts';
import { textsAt } from '#tests/support/papers/xml-schema.ts';

const REFUSED = (code: string) => ({ ok: false, reason: { code } });

function unitState(context: Context, serial: string): unknown {
  return context.database.raw.prepare('SELECT state FROM unit WHERE serial = ?').pluck().get(serial);
}

function bookingState(context: Context, number: string): unknown {
  return context.database.raw.prepare('SELECT state FROM booking WHERE number = ?').pluck().get(number);
}

/** A word on every charge: as worked out where it can be, changed where something is open. */
function decideAll(context: Context, number: string): void {
  for (const { key, proposedMinor, word, open } of granted(openCharges(context, number)).charges) {
    if (word !== null) continue;
    const decision =
      open === null ? ({ kind: 'approved' } as const) : ({ kind: 'struck', reason: 'goodwill' } as const);
    granted(decideCharge(context, { number, key, proposedMinor, decision }));
  }
}

describe('a delivery', () => {
  it('leaves in parts, each with a despatch advice of what left and nothing else', async () => {
    const { context, number, serials } = await pickedHouse();
    const [first = '', ...rest] = serials;
    send(context, { number, serials: [first] });
    expect(bookingState(context, number)).toBe('out');
    expect(unitState(context, first)).toBe('out');
    const after = granted(openOut(context, number));
    expect(after.waiting.map(({ serial }) => serial)).toEqual(rest);
    expect(after.sent).toMatchObject([
      { sequence: 1, units: 1, handedTo: 'R. Dunlin', signedHow: 'typed', hasDespatch: true },
    ]);
    send(context, { number, serials: rest });
    const advices = granted(openOut(context, number)).sent.map(({ id }) =>
      Buffer.from(granted(readDespatch(context, id)).bytes).toString('utf8'),
    );
    expect(advices.map((xml) => textsAt(xml, '/*/cbc:ID'))).toEqual([[`${number}/1`], [`${number}/2`]]);
    expect(advices.map((xml) => textsAt(xml, '//cbc:SerialID').toSorted())).toEqual([[first], rest.toSorted()]);
    expect(granted(openOut(context, number)).waiting).toEqual([]);
  });
});

describe('a return in two parts with a dirty, a damaged and a missing piece', () => {
  it('is charged, decided, noted, and closes the booking with the last note', async () => {
    const { context: yard, number, serials } = await outHouse();
    const desk = as(yard, 'desk');
    const [damaged = '', missing = '', dirty = '', ...rest] = serials;
    const one = declare(yard, number);
    const seen = (scan: string, change: Partial<PieceSeen>) =>
      checkIn(yard, { ...GOOD, returnId: one, scan, ...change });
    granted(
      seen(damaged, { condition: 'damaged', note: 'lever housing cracked', repairHours: 1.5, repairPartsMinor: 4120 }),
    );
    granted(seen(missing, { condition: 'missing', note: 'fell into the wet well' }));
    granted(seen(dirty, { condition: 'dirty' }));
    expect([damaged, missing, dirty].map((serial) => unitState(yard, serial))).toEqual(['quarantine', 'lost', 'back']);
    expect(bookingState(yard, number)).toBe('out');

    const drafted = granted(openCharges(desk, number));
    expect(drafted.charges.map(({ label, mark }) => `${label} ${mark}`)).toEqual(
      expect.arrayContaining([`Repair ${damaged}`, `Loss ${missing}`, `Cleaning ${dirty}`]),
    );
    expect(drafted.total).toBeNull();
    const charge = (label: string) => drafted.charges.find((each) => each.label === label);
    const repair = charge('Repair');
    const loss = charge('Loss');
    // 1.5 h at EUR 68.00 and parts for EUR 41.20 make EUR 143.20.
    expect(repair).toMatchObject({ proposedMinor: 14_320, open: 'cause', asksCause: true });
    expect(charge('Cleaning')).toMatchObject({ proposedMinor: 1600, open: null });

    expect(await issueReturnNote(desk, { number })).toMatchObject(REFUSED('charges-undecided'));
    const word = { number, key: repair?.key ?? '', proposedMinor: 14_320 };
    expect(decideCharge(desk, { ...word, decision: { kind: 'approved' } })).toMatchObject(REFUSED('charge-open-cause'));
    const leavesOut = drafted.leavesOut.find((words) => words.includes('misuse')) ?? '';
    granted(sayCause(desk, { number, about: repair?.about ?? '', cause: { kind: 'left out', words: leavesOut } }));
    granted(
      decideCharge(desk, { ...word, decision: { kind: 'changed', net_minor: 7160 as never, reason: 'half, agreed' } }),
    );
    granted(sayCause(desk, { number, about: loss?.about ?? '', cause: { kind: 'covered' } }));
    expect(granted(openCharges(desk, number)).charges.find(({ label }) => label === 'Loss')).toMatchObject({
      proposedMinor: 0,
      open: null,
    });
    decideAll(desk, number);
    expect(granted(openCharges(desk, number)).total?.net).toBe(7160 + 1600);

    const note = granted(await issueReturnNote(desk, { number }));
    expect(note).toMatchObject({ isClosed: false, currency: 'EUR' });
    const paper = granted(readReturnNote(yard, note.number));
    const text = readPdf(paper.bytes).text.replace(/\s+/g, ' ');
    for (const part of [
      note.number,
      number,
      damaged,
      missing,
      dirty,
      'half, agreed',
      'fell into the wet well',
      'Still with you',
    ])
      expect(text).toContain(part);
    for (const serial of rest) expect(text).toContain(serial);
    expect(granted(readReturnNote(yard, note.number)).bytes).toEqual(paper.bytes);

    const late = onDay(yard, '2026-03-23');
    const two = declare(late, number);
    backGood(late, { returnId: two, serials: rest });
    expect(granted(openBack(late, number)).awaited.map(({ serial }) => serial)).toEqual([missing]);
    const more = granted(openCharges(as(late, 'desk'), number));
    expect(more.closes).toBe(true);
    expect(more.charges.filter(({ label, about }) => label === 'More hire' && about.startsWith('unit '))).toHaveLength(
      rest.length,
    );
    decideAll(as(late, 'desk'), number);
    const last = granted(await issueReturnNote(as(late, 'desk'), { number }));
    expect(last.isClosed).toBe(true);
    expect(bookingState(late, number)).toBe('closed');
    expect(await issueReturnNote(as(late, 'desk'), { number })).toMatchObject(REFUSED('booking-ended'));
    const audit = yard.database.raw
      .prepare('SELECT action FROM audit_entry WHERE subject = ?')
      .pluck()
      .all(`booking ${number}`);
    expect(audit).toEqual(
      expect.arrayContaining([
        'sent out',
        'return opened',
        'piece checked in',
        'cause said',
        'charge decided',
        'return note issued',
      ]),
    );
  });

  it('asks again where an amount became another after it was decided', async () => {
    const { context: yard, number, serials } = await outHouse();
    const desk = as(yard, 'desk');
    const returnId = declare(yard, number);
    const [damaged = ''] = serials;
    granted(checkIn(yard, { ...GOOD, returnId, scan: damaged, condition: 'damaged', note: 'bent', repairHours: 1 }));
    const [repair] = granted(openCharges(desk, number)).charges.filter(({ label }) => label === 'Repair');
    const key = repair?.key ?? '';
    const struck = { kind: 'struck', reason: 'wear' } as const;
    granted(decideCharge(desk, { number, key, proposedMinor: repair?.proposedMinor ?? 0, decision: struck }));
    const [order] = granted(listWorkOrders(yard)).open.filter(({ serial }) => serial === damaged);
    granted(
      endWork(yard, {
        number: order?.number ?? '',
        result: 'fit',
        done: 'straightened',
        hours: 0.5,
        partsMinor: 0,
        dueOn: null,
      }),
    );
    expect(unitState(yard, damaged)).toBe('ready');
    const again = granted(openCharges(desk, number)).charges.find((one) => one.key === key);
    expect(again).toMatchObject({ word: null, proposedMinor: 3400 });
    expect(again?.sentence).toContain(`as repaired, ${order?.number}`);
    expect(
      decideCharge(desk, { number, key, proposedMinor: repair?.proposedMinor ?? 0, decision: struck }),
    ).toMatchObject(REFUSED('changed-meanwhile'));
  });

  it('can be taken back piece by piece until it stands on a note', async () => {
    const { context: yard, number, serials } = await outHouse();
    const returnId = declare(yard, number, 'sewage');
    const [first = ''] = serials;
    const { pieceId, orders } = granted(checkIn(yard, { ...GOOD, returnId, scan: first }));
    expect(orders).toHaveLength(1);
    granted(undoCheckIn(yard, { pieceId, why: 'wrong piece' }));
    expect(unitState(yard, first)).toBe('out');
    expect(granted(listWorkOrders(yard)).open.filter(({ serial }) => serial === first)).toEqual([]);
    expect(granted(openBack(yard, number)).awaited).toHaveLength(serials.length);
    expect(undoCheckIn(yard, { pieceId, why: 'again' })).toMatchObject(REFUSED('no-such-piece'));
    granted(checkIn(yard, { ...GOOD, returnId, scan: first }));
    expect(unitState(yard, first)).toBe('quarantine');
  });
});
