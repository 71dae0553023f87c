import { describe, expect, it } from 'vitest';
import { LIMITS } from '#lib/kernel/limits.ts';
import type { Context } from '#lib/services/context.ts';
import { checkIn, type PieceSeen } from '#lib/services/yard/back/check-in.ts';
import { countBack } from '#lib/services/yard/back/count-back.ts';
import { decideCharge } from '#lib/services/yard/back/decide-charge.ts';
import { issueReturnNote } from '#lib/services/yard/back/issue-return-note.ts';
import { openBack } from '#lib/services/yard/back/open-back.ts';
import { openCharges } from '#lib/services/yard/back/open-charges.ts';
import { openReturn } from '#lib/services/yard/back/open-return.ts';
import { addPhoto, readPhoto, removePhoto } from '#lib/services/yard/back/return-photos.ts';
import { undoCheckIn } from '#lib/services/yard/back/undo-check-in.ts';
import { readDespatch } from '#lib/services/yard/out/delivery-despatch.ts';
import { beginDelivery, countLoad, scanLoad, takeOff } from '#lib/services/yard/out/load-delivery.ts';
import { openOut } from '#lib/services/yard/out/open-out.ts';
import { type Leaving, sendDelivery } from '#lib/services/yard/out/send-delivery.ts';
import { takeBackDelivery } from '#lib/services/yard/out/take-back-delivery.ts';
import { beginWork } from '#lib/services/yard/work/step-work-order.ts';
import { granted } from '#tests/support/granted.ts';
import {
  as,
  backGood,
  declare,
  GOOD,
  LEAVING,
  outHouse,
  pickedHouse,
  send,
  yes,
} from '#tests/support/houses/out-and-back.ts';
import { scanned } from '#tests/support/houses/yard-scans.ts';

const REFUSED = (code: string) => ({ ok: false, reason: { code } });
const PNG = Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 1, 2, 3]);

function first(context: Context, sql: string): string {
  return String(context.database.raw.prepare(sql).pluck().get());
}

describe('a delivery', () => {
  it('is begun only where something is picked, and once', async () => {
    const { context, number } = await pickedHouse();
    expect(beginDelivery(context, { number: 'B-99999', transport: 'road' })).toMatchObject(REFUSED('no-such-booking'));
    const one = granted(beginDelivery(context, { number, transport: 'road' }));
    expect(granted(beginDelivery(context, { number, transport: 'air' }))).toEqual(one);
    const house = await outHouse();
    expect(beginDelivery(house.context, { number: house.number, transport: 'road' })).toMatchObject(
      REFUSED('nothing-picked'),
    );
    house.context.database.raw.exec(
      "UPDATE booking_unit SET state = 'checked'; UPDATE booking_item SET state = 'checked'; UPDATE booking SET state = 'cancelled'",
    );
    expect(beginDelivery(house.context, { number: house.number, transport: 'road' })).toMatchObject(
      REFUSED('booking-ended'),
    );
  });

  it('takes by scan what belongs to it and is picked, and says why it takes nothing else', async () => {
    const { context, number, serials } = await pickedHouse();
    const { id: deliveryId } = granted(beginDelivery(context, { number, transport: 'road' }));
    const scan = (text: string) => scanLoad(context, { deliveryId, scan: text });
    const other = first(context, 'SELECT serial FROM unit WHERE serial NOT IN (SELECT unit_serial FROM booking_unit)');
    expect(scan(other)).toMatchObject(REFUSED('not-of-this-booking'));
    expect(scan('CASE:B-77777/1')).toMatchObject(REFUSED('not-of-this-booking'));
    expect(scan(`CASE:${number}/9`)).toMatchObject(REFUSED('case-empty'));
    expect(scan('?')).toMatchObject(REFUSED('scan-unreadable'));
    expect(scan('BAY:VEN/A01')).toMatchObject(REFUSED('scan-not-loadable'));
    const [one = '', two = '', three = ''] = serials;
    context.database.raw.prepare("UPDATE booking_unit SET state = 'allocated' WHERE unit_serial = ?").run(two);
    context.database.raw.prepare("UPDATE booking_unit SET state = 'out' WHERE unit_serial = ?").run(three);
    expect(scan(two)).toMatchObject(REFUSED('unit-not-picked'));
    expect(scan(three)).toMatchObject(REFUSED('unit-out-already'));
    expect(granted(scan(one)).loaded).toEqual([one]);
    expect(granted(scan(one))).toEqual({ loaded: [], said: `${one} is on it already.` });
    expect(takeOff(context, { deliveryId, serial: two })).toMatchObject(REFUSED('not-loaded'));
    granted(takeOff(context, { deliveryId, serial: one }));
    expect(scanLoad(context, { deliveryId: 999, scan: one })).toMatchObject(REFUSED('no-such-delivery'));
  });

  it('takes a whole case by its label', async () => {
    const { context, number, serials } = await pickedHouse();
    context.database.raw.exec(
      `INSERT INTO load_case (booking_id, number, name, crew) VALUES (1, 1, 'case', 1);
       INSERT INTO load_piece (booking_id, case_number, unit_serial, model_number)
       SELECT booking_id, 1, unit_serial, model_number FROM booking_unit JOIN unit ON serial = unit_serial`,
    );
    const { id: deliveryId } = granted(beginDelivery(context, { number, transport: 'sea' }));
    expect([...granted(scanLoad(context, { deliveryId, scan: `case:${number}/1` })).loaded].sort()).toEqual(
      [...serials].sort(),
    );
    granted(sendDelivery(context, { ...LEAVING, deliveryId, checks: yes(context, number) }));
    const xml = Buffer.from(granted(readDespatch(context, deliveryId)).bytes).toString('utf8');
    expect(xml).toMatch(/<cbc:TotalTransportHandlingUnitQuantity[^>]*>1</);
  });

  it('counts counted pieces on, no more than are booked', async () => {
    const { context, number } = await pickedHouse();
    const { id: deliveryId } = granted(beginDelivery(context, { number, transport: 'road' }));
    const [counted] = granted(openOut(context, number)).counted;
    const model = counted?.model ?? '';
    expect(countLoad(context, { deliveryId, model: 'NONE', count: 1 })).toMatchObject(REFUSED('not-booked'));
    expect(countLoad(context, { deliveryId, model, count: (counted?.booked ?? 0) + 1 })).toMatchObject(
      REFUSED('more-than-booked'),
    );
    granted(countLoad(context, { deliveryId, model, count: counted?.booked ?? 0 }));
    granted(countLoad(context, { deliveryId, model, count: 0 }));
    expect(granted(openOut(context, number)).counted[0]?.onThis).toBe(0);
  });

  it('leaves only when all is looked at, gone through, named and signed', async () => {
    const { context, number, serials } = await pickedHouse();
    const { id: deliveryId } = granted(beginDelivery(context, { number, transport: 'road' }));
    const leave = (change: Partial<Leaving>) =>
      sendDelivery(context, { ...LEAVING, deliveryId, checks: yes(context, number), ...change });
    expect(leave({})).toMatchObject(REFUSED('nothing-loaded'));
    for (const scan of serials) granted(scanLoad(context, { deliveryId, scan }));
    expect(leave({ checks: [] })).toMatchObject(REFUSED('load-unchecked'));
    expect(leave({ loadedBy: ' ' })).toMatchObject(REFUSED('loader-unnamed'));
    expect(leave({ instruction: [] })).toMatchObject(REFUSED('instruction-open'));
    expect(leave({ instructedBy: '' })).toMatchObject(REFUSED('instructor-unnamed'));
    expect(leave({ handedTo: '' })).toMatchObject(REFUSED('receiver-unnamed'));
    expect(leave({ signature: { how: 'typed', name: '' } })).toMatchObject(REFUSED('signer-unnamed'));
    expect(leave({ signature: { how: 'drawn', name: 'R. Dunlin', strokes: [] } })).toMatchObject(
      REFUSED('signature-empty'),
    );
    expect(leave({ signature: { how: 'drawn', name: 'R. Dunlin', strokes: [[[9999, 1]]] } })).toMatchObject(
      REFUSED('signature-unreadable'),
    );
    expect(takeBackDelivery(context, { deliveryId, why: 'x' })).toMatchObject(REFUSED('delivery-not-left'));
    expect(readDespatch(context, deliveryId)).toMatchObject(REFUSED('no-such-paper'));
    granted(leave({}));
    expect(leave({})).toMatchObject(REFUSED('delivery-gone'));
  });

  it('is taken back as a whole with a reason, until something of it came back or somebody else holds a unit', async () => {
    const { context, number, serials } = await pickedHouse();
    send(context, { number, serials });
    const [{ id: deliveryId } = { id: 0 }] = granted(openOut(context, number)).sent;
    expect(takeBackDelivery(context, { deliveryId, why: '' })).toMatchObject(REFUSED('reason-missing'));
    granted(takeBackDelivery(context, { deliveryId, why: 'wrong vehicle' }));
    expect(granted(openOut(context, number)).waiting.map(({ serial }) => serial)).toEqual(serials);
    send(context, { number, serials });
    const again = granted(openOut(context, number)).sent.at(-1)?.id ?? 0;
    backGood(context, { returnId: declare(context, number), serials: serials.slice(0, 1) });
    expect(takeBackDelivery(context, { deliveryId: again, why: 'x' })).toMatchObject(REFUSED('unit-undo-not-allowed'));
  });
});

describe('a return', () => {
  it('is opened only with a declaration, in a depot, and where something is out', async () => {
    const picked = await pickedHouse();
    const open = { depot: 'VEN', broughtBy: '', contamination: 'none', note: '' } as const;
    expect(openReturn(picked.context, { ...open, number: picked.number })).toMatchObject(REFUSED('nothing-out'));
    const { context, number } = await outHouse();
    expect(openReturn(context, { ...open, number: 'B-99999' })).toMatchObject(REFUSED('no-such-booking'));
    expect(openReturn(context, { ...open, number, depot: 'NONE' })).toMatchObject(REFUSED('no-such-depot'));
    expect(openReturn(context, { ...open, number, contamination: 'product' })).toMatchObject(
      REFUSED('product-unnamed'),
    );
  });

  it('takes by scan what is awaited, and says why it takes nothing else', async () => {
    const { context, number, serials } = await pickedHouse();
    const [one = '', two = '', ...rest] = serials;
    send(context, { number, serials: [one, ...rest] });
    const returnId = declare(context, number);
    const look = (code: string) => scanned({ context, number }, { kind: 'look', code, return: returnId });
    expect(look('?')).toMatchObject(REFUSED('scan-unreadable'));
    expect(look('MODEL:X501')).toMatchObject(REFUSED('scan-not-a-unit'));
    expect(look('CASE:B-00001/1')).toMatchObject(REFUSED('scan-not-a-unit'));
    expect(look('ZZ-99')).toMatchObject(REFUSED('no-such-unit'));
    expect(look(two)).toMatchObject(REFUSED('piece-never-left'));
    const other = first(context, 'SELECT serial FROM unit WHERE serial NOT IN (SELECT unit_serial FROM booking_unit)');
    expect(look(other)).toMatchObject(REFUSED('not-of-this-booking'));
    expect(scanned({ context, number }, { kind: 'look', code: one, return: 999 })).toMatchObject(
      REFUSED('no-such-return'),
    );
    backGood(context, { returnId, serials: [one] });
    expect(checkIn(context, { ...GOOD, returnId, scan: one })).toMatchObject(REFUSED('piece-in-already'));
  });

  it('takes no damage without words and no run hours that cannot be', async () => {
    const { context, number, serials } = await outHouse();
    const returnId = declare(context, number);
    const [scan = ''] = serials;
    context.database.raw.prepare('UPDATE unit SET run_hours = 100 WHERE serial = ?').run(scan);
    const seen = (change: Partial<PieceSeen>) => checkIn(context, { ...GOOD, returnId, scan, ...change });
    expect(seen({ condition: 'damaged' })).toMatchObject(REFUSED('damage-unsaid'));
    expect(seen({ runHours: 99 })).toMatchObject(REFUSED('run-hours-lower'));
    // Out on 16 March, back on the 20th: five days have 120 hours.
    expect(seen({ runHours: 221 })).toMatchObject(REFUSED('run-hours-higher'));
    granted(seen({ runHours: 219.5 }));
    expect(first(context, `SELECT run_hours FROM unit WHERE serial = '${scan}'`)).toBe('219.5');
  });

  it('takes a missing piece that turns up; after it was charged only with a further return', async () => {
    const { context, number, serials } = await outHouse();
    const returnId = declare(context, number);
    const [scan = ''] = serials;
    const missing = { ...GOOD, returnId, scan, condition: 'missing' } as const;
    granted(checkIn(context, missing));
    expect(checkIn(context, missing)).toMatchObject(REFUSED('piece-in-already'));
    granted(checkIn(context, { ...GOOD, returnId, scan }));
    expect(granted(openBack(context, number)).returns[0]?.pieces).toMatchObject([
      { serial: scan, condition: 'good', unitState: 'ready' },
    ]);
    const [, other = ''] = serials;
    const { pieceId } = granted(checkIn(context, { ...missing, scan: other }));
    const desk = as(context, 'desk');
    for (const { key, proposedMinor } of granted(openCharges(desk, number)).charges)
      granted(decideCharge(desk, { number, key, proposedMinor, decision: { kind: 'struck', reason: 'no matter' } }));
    granted(await issueReturnNote(desk, { number }));
    expect(checkIn(context, { ...GOOD, returnId, scan: other })).toMatchObject(REFUSED('return-too-old'));
    expect(undoCheckIn(context, { pieceId, why: 'x' })).toMatchObject(REFUSED('piece-settled'));
    expect(addPhoto(context, { pieceId, fileName: 'a.png', bytes: PNG })).toMatchObject(REFUSED('piece-settled'));
    expect(await issueReturnNote(desk, { number })).toMatchObject(REFUSED('nothing-to-note'));
  });

  it('is not taken back where work has begun or the unit is somebody else’s by now', async () => {
    const { context, number, serials } = await outHouse();
    const returnId = declare(context, number, 'water');
    const [one = '', two = ''] = serials;
    const washed = granted(checkIn(context, { ...GOOD, returnId, scan: one }));
    granted(beginWork(context, washed.orders[0] ?? ''));
    expect(undoCheckIn(context, { pieceId: washed.pieceId, why: 'x' })).toMatchObject(REFUSED('work-begun'));
    const { pieceId } = granted(checkIn(context, { ...GOOD, returnId, scan: two }));
    context.database.raw.exec(
      `INSERT INTO booking (id, number, state) VALUES (900, 'B-00900', 'confirmed');
       INSERT INTO booking_unit (booking_id, unit_serial, starts_on, ends_before, free_again_on)
       VALUES (900, '${two}', '2026-03-20', '2026-03-22', '2026-03-24')`,
    );
    expect(undoCheckIn(context, { pieceId, why: 'x' })).toMatchObject(REFUSED('unit-taken-again'));
  });

  it('counts counted pieces back, no more than were sent, unused only of what is sold', async () => {
    const { context, number, serials } = await pickedHouse();
    const { id: deliveryId } = granted(beginDelivery(context, { number, transport: 'road' }));
    const [counted] = granted(openOut(context, number)).counted;
    const model = counted?.model ?? '';
    const sent = counted?.booked ?? 0;
    granted(countLoad(context, { deliveryId, model, count: sent }));
    for (const scan of serials) granted(scanLoad(context, { deliveryId, scan }));
    granted(sendDelivery(context, { ...LEAVING, deliveryId, checks: yes(context, number) }));
    const returnId = declare(context, number);
    const count = (change: object) => countBack(context, { returnId, model, back: sent, unused: 0, ...change });
    expect(count({ model: 'NONE' })).toMatchObject(REFUSED('not-sent'));
    expect(count({ back: sent + 1 })).toMatchObject(REFUSED('more-than-sent'));
    expect(count({ unused: sent + 1 })).toMatchObject(REFUSED('more-unused-than-back'));
    const isSold = granted(openBack(context, number)).counted[0]?.isSold ?? false;
    if (!isSold) expect(count({ unused: 1 })).toMatchObject(REFUSED('not-sold'));
    granted(count({}));
    expect(granted(openBack(context, number)).counted[0]).toMatchObject({ sent, back: sent });
  });

  it('names whom a late piece hits', async () => {
    const { context, number, serials } = await outHouse();
    const [late = ''] = serials;
    context.database.raw.exec(
      `UPDATE unit SET state = 'workshop' WHERE model_number = (SELECT model_number FROM unit WHERE serial = '${late}') AND serial <> '${late}';
       INSERT INTO booking (id, number, state) VALUES (900, 'B-00900', 'confirmed');
       INSERT INTO booking_unit (booking_id, unit_serial, starts_on, ends_before, free_again_on)
       VALUES (900, '${late}', '2026-03-24', '2026-03-26', '2026-03-28')`,
    );
    const day = { ...context, now: () => new Date('2026-03-25T09:00:00Z') };
    const back = granted(openBack(day, number));
    expect(back.awaited.every(({ isLate }) => isLate)).toBe(true);
    expect(back.hits).toMatchObject([{ booking: 'B-00900', serial: late, startsOn: '2026-03-24', instead: null }]);
  });
});

describe('photographs of a piece', () => {
  it('are kept byte for byte, are pictures, bounded in size and number, and can be put away', async () => {
    const { context, number, serials } = await outHouse();
    const [scan = ''] = serials;
    const { pieceId } = granted(checkIn(context, { ...GOOD, returnId: declare(context, number), scan }));
    const add = (bytes: Uint8Array) => addPhoto(context, { pieceId, fileName: '../crack.png', bytes });
    expect(add(new TextEncoder().encode('<svg onload=alert(1)>'))).toMatchObject(REFUSED('photo-unreadable'));
    expect(add(new Uint8Array(LIMITS.photo_bytes + 1))).toMatchObject(REFUSED('photo-too-large'));
    expect(addPhoto(context, { pieceId: 999, fileName: 'a', bytes: PNG })).toMatchObject(REFUSED('no-such-piece'));
    const { id } = granted(add(PNG));
    expect(new Uint8Array(granted(readPhoto(context, id)).bytes)).toEqual(PNG);
    expect(() => context.database.raw.exec("UPDATE return_photo SET sha256 = 'x'")).toThrow('kept as it came');
    granted(removePhoto(context, { photoId: id, removed: 'yes' }));
    expect(granted(openBack(context, number)).returns[0]?.pieces[0]?.photos).toEqual([]);
    granted(removePhoto(context, { photoId: id, removed: 'no' }));
    for (let held = 1; held < LIMITS.photos_of_piece; held += 1) granted(add(PNG));
    expect(add(PNG)).toMatchObject(REFUSED('photos-enough'));
    expect(readPhoto(context, 999)).toMatchObject(REFUSED('no-such-photograph'));
  });
});
