import { describe, expect, it } from 'vitest';
import { type Context, USER_ROLES } from '#lib/services/context.ts';
import { checkIn } from '#lib/services/yard/back/check-in.ts';
import { countBack } from '#lib/services/yard/back/count-back.ts';
import { decideCharge } from '#lib/services/yard/back/decide-charge.ts';
import { issueReturnNote } from '#lib/services/yard/back/issue-return-note.ts';
import { openBack } from '#lib/services/yard/back/open-back.ts';
import { openCharges } from '#lib/services/yard/back/open-charges.ts';
import { openReturn } from '#lib/services/yard/back/open-return.ts';
import { readReturnNote } from '#lib/services/yard/back/read-return-note.ts';
import { addPhoto, readPhoto, removePhoto } from '#lib/services/yard/back/return-photos.ts';
import { sayCause } from '#lib/services/yard/back/say-cause.ts';
import { undoCheckIn } from '#lib/services/yard/back/undo-check-in.ts';
import { readDespatch } from '#lib/services/yard/out/delivery-despatch.ts';
import { beginDelivery, countLoad, scanLoad, takeOff } from '#lib/services/yard/out/load-delivery.ts';
import { openOut } from '#lib/services/yard/out/open-out.ts';
import { sendDelivery } from '#lib/services/yard/out/send-delivery.ts';
import { takeBackDelivery } from '#lib/services/yard/out/take-back-delivery.ts';
import { listWorkOrders } from '#lib/services/yard/work/list-work-orders.ts';
import { openWorkOrder } from '#lib/services/yard/work/open-work-order.ts';
import { beginWork, endWork, type WorkEnd } from '#lib/services/yard/work/step-work-order.ts';
import { granted } from '#tests/support/granted.ts';
import { bookAgain } from '#tests/support/houses/booked-house.ts';
import { as, declare, GOOD, LEAVING, outHouse, pickedHouse, send } from '#tests/support/houses/out-and-back.ts';
import { scanned } from '#tests/support/houses/yard-scans.ts';

const REFUSED = (code: string) => ({ ok: false, reason: { code } });
const PNG = Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 1, 2, 3]);

function first(context: Context, sql: string): string {
  return String(context.database.raw.prepare(sql).pluck().get());
}

describe('charges', () => {
  it('are decided only where they stand, for a reason that the terms know', async () => {
    const { context, number, serials } = await outHouse();
    const desk = as(context, 'desk');
    const [scan = ''] = serials;
    const seen = { ...GOOD, returnId: declare(context, number), scan, condition: 'damaged', note: 'bent' } as const;
    granted(checkIn(context, seen));
    const word = { number, key: 'repair piece 999', proposedMinor: 0, decision: { kind: 'approved' } } as const;
    expect(decideCharge(desk, word)).toMatchObject(REFUSED('no-such-charge'));
    const [repair] = granted(openCharges(desk, number)).charges.filter(({ label }) => label === 'Repair');
    expect(repair).toMatchObject({ open: 'price', proposedMinor: 0 });
    const key = repair?.key ?? '';
    expect(decideCharge(desk, { ...word, key })).toMatchObject(REFUSED('charge-open-price'));
    expect(decideCharge(desk, { ...word, key, decision: { kind: 'struck', reason: '' } })).toMatchObject(
      REFUSED('charge-reason-missing'),
    );
    const about = repair?.about ?? '';
    const cause = { kind: 'left out', words: 'bad luck' } as const;
    expect(sayCause(desk, { number, about, cause })).toMatchObject(REFUSED('cause-unknown'));
    expect(sayCause(desk, { number, about: 'piece 999', cause })).toMatchObject(REFUSED('no-such-charge'));
    granted(decideCharge(desk, { ...word, key, decision: { kind: 'struck', reason: 'old' } }));
    granted(decideCharge(desk, { ...word, key, decision: null }));
    expect(granted(openCharges(desk, number)).charges.find((one) => one.key === key)?.word).toBeNull();
    expect(readReturnNote(desk, 'R-99999')).toMatchObject(REFUSED('no-such-note'));
  });

  it('need a quote', async () => {
    const { context } = await outHouse();
    context.database.raw.exec("INSERT INTO booking (number, state) VALUES ('B-00900', 'out')");
    expect(openCharges(context, 'B-00900')).toMatchObject(REFUSED('booking-without-quote'));
  });
});

describe('a work order', () => {
  const END: Omit<WorkEnd, 'number'> = { result: 'fit', done: 'looked at', hours: 1, partsMinor: 0, dueOn: null };

  it('by hand takes the unit out of hire, and ends with the day of the next check', async () => {
    const { context, number, serials } = await pickedHouse();
    const scan = first(
      context,
      "SELECT serial FROM unit WHERE state = 'ready' AND serial NOT IN (SELECT unit_serial FROM booking_unit)",
    );
    const open = (change: object) =>
      openWorkOrder(context, { scan, kind: 'inspection', reason: 'was dropped', ...change });
    expect(open({ scan: '?' })).toMatchObject(REFUSED('scan-not-a-unit'));
    expect(open({ scan: number })).toMatchObject(REFUSED('scan-not-a-unit'));
    expect(open({ scan: 'ZZ-99' })).toMatchObject(REFUSED('no-such-unit'));
    expect(open({ reason: ' ' })).toMatchObject(REFUSED('reason-missing'));
    send(context, { number, serials });
    expect(open({ scan: serials[0] })).toMatchObject(REFUSED('unit-not-here'));
    const order = granted(open({})).number;
    expect(first(context, `SELECT state FROM unit WHERE serial = '${scan}'`)).toBe('quarantine');
    granted(beginWork(context, order));
    expect(beginWork(context, order)).toMatchObject(REFUSED('work-begun'));
    expect(endWork(context, { ...END, number: order, done: '' })).toMatchObject(REFUSED('work-unsaid'));
    expect(endWork(context, { ...END, number: order })).toMatchObject(REFUSED('due-date-missing'));
    expect(endWork(context, { ...END, number: order, dueOn: '2026-03-01' })).toMatchObject(REFUSED('due-date-missing'));
    expect(granted(endWork(context, { ...END, number: order, dueOn: '2027-03-16' }))).toEqual({
      unitState: 'ready',
      repair: null,
    });
    expect(first(context, `SELECT inspection_due_on FROM unit WHERE serial = '${scan}'`)).toBe('2027-03-16');
    expect(endWork(context, { ...END, number: order })).toMatchObject(REFUSED('work-ended'));
    expect(beginWork(context, 'W-99999')).toMatchObject(REFUSED('no-such-work-order'));
  });

  it('waits for the wash, opens a repair where one is needed, and retires a unit with all that was open on it', async () => {
    const { context, number, serials } = await outHouse();
    const [scan = ''] = serials;
    const seen = { ...GOOD, returnId: declare(context, number, 'sewage'), scan, sawOverload: true };
    const [wash = '', calibration = ''] = granted(checkIn(context, seen)).orders;
    expect(beginWork(context, calibration)).toMatchObject(REFUSED('work-wash-first'));
    expect(granted(endWork(context, { ...END, number: wash })).unitState).toBe('quarantine');
    const failed = granted(endWork(context, { ...END, number: calibration, result: 'repair', done: 'trips late' }));
    expect(failed).toMatchObject({ unitState: 'quarantine', repair: expect.stringMatching(/^W-/) });
    const open = granted(openWorkOrder(context, { scan, kind: 'inspection', reason: 'look again' })).number;
    expect(
      granted(endWork(context, { ...END, number: failed.repair ?? '', result: 'retired', done: 'worn out' })).unitState,
    ).toBe('retired');
    expect(granted(listWorkOrders(context)).ended.map(({ number: one, state }) => `${one} ${state}`)).toContain(
      `${open} withdrawn`,
    );
  });
});

describe('who may do what at the gate', () => {
  it.each(USER_ROLES)('a %s', async (role) => {
    const { context: yard, number } = await outHouse();
    const context = as(yard, role);
    const isStaff = role !== 'contractor';
    const refused = (answer: { readonly ok: boolean; readonly reason?: { readonly code: string } }) =>
      !answer.ok && answer.reason?.code === 'not-allowed';
    const why = 'x';
    for (const answer of [
      openOut(context, number),
      openBack(context, number),
      openCharges(context, number),
      listWorkOrders(context),
      readReturnNote(context, 'N-1'),
      readDespatch(context, 1),
      readPhoto(context, 1),
      scanned({ context, number }, { kind: 'look', code: why, return: 1 }),
    ])
      expect(refused(answer)).toBe(!isStaff);
    const open = { number, depot: 'VEN', broughtBy: '', contamination: 'none', note: '' } as const;
    for (const answer of [
      beginDelivery(context, { number, transport: 'road' }),
      scanLoad(context, { deliveryId: 1, scan: why }),
      takeOff(context, { deliveryId: 1, serial: why }),
      countLoad(context, { deliveryId: 1, model: why, count: 1 }),
      sendDelivery(context, { ...LEAVING, deliveryId: 99, checks: [] }),
      takeBackDelivery(context, { deliveryId: 99, why }),
      openReturn(context, open),
      checkIn(context, { ...GOOD, returnId: 99, scan: why }),
      undoCheckIn(context, { pieceId: 99, why }),
      countBack(context, { returnId: 99, model: why, back: 1, unused: 0 }),
      addPhoto(context, { pieceId: 99, fileName: why, bytes: PNG }),
      removePhoto(context, { photoId: 99, removed: 'yes' }),
    ])
      expect(refused(answer)).toBe(!isStaff);
    const decides = role === 'desk' || role === 'administrator';
    const word = { number, key: why, proposedMinor: 0, decision: null };
    for (const answer of [
      decideCharge(context, word),
      sayCause(context, { number, about: why, cause: { kind: 'covered' } }),
      await issueReturnNote(context, { number }),
    ])
      expect(refused(answer)).toBe(!decides);
    const works = role === 'yard' || role === 'administrator';
    const end = { number: why, result: 'fit', done: why, hours: 0, partsMinor: 0, dueOn: null } as const;
    for (const answer of [
      beginWork(context, why),
      endWork(context, end),
      openWorkOrder(context, { scan: why, kind: 'repair', reason: why }),
    ])
      expect(refused(answer)).toBe(!works);
  });
});

describe('two bookings at once', () => {
  it('keep their pieces apart', async () => {
    const { context, number, serials } = await outHouse();
    const returnId = declare(context, number);
    const other = await bookAgain({ ...context, actor: as(context, 'desk').actor }, '2026-05-04');
    const [theirs = ''] = other.serials.filter((serial) => !serials.includes(serial));
    if (theirs !== '')
      expect(scanned({ context, number }, { kind: 'look', code: theirs, return: returnId })).toMatchObject(
        REFUSED('not-of-this-booking'),
      );
    expect(granted(openBack(context, other.number)).awaited).toEqual([]);
  });
});
