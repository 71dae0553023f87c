import { describe, expect, it } from 'vitest';
import type { YardScanRequest } from '#lib/contracts/yard-scan.ts';
import type { Context } from '#lib/services/context.ts';
import { openBack } from '#lib/services/yard/back/open-back.ts';
import { type SentPhoto, takePhoto } from '#lib/services/yard/back/take-photo.ts';
import { beginDelivery } from '#lib/services/yard/out/load-delivery.ts';
import { openOut } from '#lib/services/yard/out/open-out.ts';
import { takeScan } from '#lib/services/yard/take-scan.ts';
import { granted } from '#tests/support/granted.ts';
import { bookAgain } from '#tests/support/houses/booked-house.ts';
import { as, declare, GOOD, outHouse, pickedHouse } from '#tests/support/houses/out-and-back.ts';
import { scanned } from '#tests/support/houses/yard-scans.ts';

const REFUSED = (code: string) => ({ ok: false, reason: { code } });
const PNG = Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 1, 2, 3]);

function count({ database }: Context, sql: string): unknown {
  return database.raw.prepare(sql).pluck().get();
}

function checkInScan(fields: {
  readonly key: string;
  readonly code: string;
  readonly return: number;
}): YardScanRequest {
  return { kind: 'check in', seen: GOOD, ...fields };
}

describe('scans that waited for the line', () => {
  it('load a delivery, take a piece off and count onto it, each once however often it is sent', async () => {
    const { context, number, serials } = await pickedHouse();
    const { id: delivery } = granted(beginDelivery(context, { number, transport: 'road' }));
    const [one = '', two = ''] = serials;
    const scan = { key: 'scan-key-1', kind: 'load', code: one, delivery } as const;
    const first = takeScan(context, { number, scan });
    expect(first).toEqual({ ok: true, value: { sentence: `${one} is on it.`, about: one } });
    granted(scanned({ context, number }, { kind: 'take off', code: one, delivery }));
    expect(takeScan(context, { number, scan })).toEqual(first);
    expect(granted(openOut(context, number)).loading?.units).toEqual([]);
    granted(scanned({ context, number }, { kind: 'load', code: two, delivery }));
    expect(granted(openOut(context, number)).loading?.units.map(({ serial }) => serial)).toEqual([two]);
    expect(scanned({ context, number }, { kind: 'take off', code: 'CASE:B-00001/1', delivery })).toMatchObject(
      REFUSED('scan-wrong-label'),
    );
    expect(scanned({ context, number }, { kind: 'count on', code: one, delivery, count: 1 })).toMatchObject(
      REFUSED('scan-wrong-label'),
    );
    for (const { model, booked } of granted(openOut(context, number)).counted)
      expect(
        granted(scanned({ context, number }, { kind: 'count on', code: `MODEL:${model}`, delivery, count: booked })),
      ).toEqual({ sentence: `${booked} of ${model} are on it.`, about: model });
  });

  it('check a piece in once, with one record and one answer, and tell a refusal alike whenever it is asked again', async () => {
    const { context, number, serials } = await outHouse();
    const returnId = declare(context, number);
    const [one = ''] = serials;
    const scan = checkInScan({ key: 'scan-key-2', code: one, return: returnId });
    const first = takeScan(context, { number, scan });
    expect(first).toEqual({ ok: true, value: { sentence: `${one}: ready.`, about: one } });
    expect(takeScan(context, { number, scan })).toEqual(first);
    expect(count(context, 'SELECT count(*) FROM return_piece')).toBe(1);
    const again = checkInScan({ key: 'scan-key-3', code: one, return: returnId });
    for (let time = 0; time < 2; time += 1)
      expect(takeScan(context, { number, scan: again })).toMatchObject(REFUSED('piece-in-already'));
    expect(scanned({ context, number }, { kind: 'look', code: serials[1] ?? '', return: returnId })).toMatchObject({
      ok: true,
      value: { sentence: `${serials[1]} is awaited: say how it is.` },
    });
    const box = { kind: 'count back', code: 'ZZ-1', return: returnId, back: 1, unused: 0 } as const;
    expect(scanned({ context, number }, box)).toMatchObject(REFUSED('scan-wrong-label'));
    for (const { model, sent } of granted(openBack(context, number)).counted.filter((each) => each.sent > 0))
      expect(granted(scanned({ context, number }, { ...box, code: `MODEL:${model}`, back: sent })).sentence).toBe(
        `${sent} of ${model} are back.`,
      );
  });

  it('are refused under a used key, at another booking and by who may not do the deed', async () => {
    const { context, number, serials } = await outHouse();
    const returnId = declare(context, number);
    const [one = '', two = ''] = serials;
    granted(takeScan(context, { number, scan: checkInScan({ key: 'scan-key-4', code: one, return: returnId }) }));
    const other = await bookAgain({ ...context, actor: as(context, 'desk').actor }, '2026-05-04');
    const moved = checkInScan({ key: 'scan-key-4', code: two, return: returnId });
    expect(takeScan(context, { number, scan: moved })).toMatchObject(REFUSED('scan-key-used'));
    const theirs = checkInScan({ key: 'scan-key-5', code: two, return: returnId });
    expect(takeScan(context, { number: other.number, scan: theirs })).toMatchObject(REFUSED('not-of-this-booking'));
    const elsewhere = { kind: 'load', code: two, delivery: 1 } as const;
    expect(scanned({ context, number: other.number }, elsewhere)).toMatchObject(REFUSED('not-of-this-booking'));
    expect(scanned({ context, number }, { ...elsewhere, delivery: 999 })).toMatchObject(REFUSED('no-such-delivery'));
    const contractor = as(context, 'contractor');
    expect(scanned({ context: contractor, number }, elsewhere)).toMatchObject(REFUSED('not-allowed'));
    expect(takeScan(contractor, { number, scan: theirs })).toMatchObject(REFUSED('not-allowed'));
  });
});

describe('a photograph that waited on a device', () => {
  it('is kept once with its piece, and refused with the reason where the piece is not in or who sends it may not', async () => {
    const { context, number, serials } = await outHouse();
    const returnId = declare(context, number);
    const [serial = ''] = serials;
    const photo: SentPhoto = { number, key: 'photo-key-1', serial, fileName: 'crack.png', bytes: PNG };
    expect(takePhoto(context, { ...photo, key: 'photo-key-0' })).toMatchObject(REFUSED('piece-not-in'));
    granted(takeScan(context, { number, scan: checkInScan({ key: 'scan-key-6', code: serial, return: returnId }) }));
    const first = takePhoto(context, photo);
    expect(first).toEqual({ ok: true, value: { sentence: `Photograph of ${serial} is kept.`, about: serial } });
    expect(takePhoto(context, photo)).toEqual(first);
    expect(count(context, 'SELECT count(*) FROM return_photo')).toBe(1);
    expect(takePhoto(context, { ...photo, bytes: Uint8Array.from([...PNG, 4]) })).toMatchObject(
      REFUSED('scan-key-used'),
    );
    expect(takePhoto(context, { ...photo, key: 'photo-key-2', number: 'B-99999' })).toMatchObject(
      REFUSED('no-such-booking'),
    );
    expect(takePhoto(context, { ...photo, key: 'photo-key-3', bytes: Uint8Array.from([1, 2, 3]) })).toMatchObject(
      REFUSED('photo-unreadable'),
    );
    expect(takePhoto(as(context, 'contractor'), photo)).toMatchObject(REFUSED('not-allowed'));
  });
});
