import { describe, expect, it } from 'vitest';
import type { Context } from '#lib/services/context.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';
import { checkIn } from '#lib/services/yard/back/check-in.ts';
import { countBack } from '#lib/services/yard/back/count-back.ts';
import { decideCharge } from '#lib/services/yard/back/decide-charge.ts';
import { issueReturnNote } from '#lib/services/yard/back/issue-return-note.ts';
import { openBack } from '#lib/services/yard/back/open-back.ts';
import { type ChargeView, openCharges } from '#lib/services/yard/back/open-charges.ts';
import { openReturn } from '#lib/services/yard/back/open-return.ts';
import { readReturnNote } from '#lib/services/yard/back/read-return-note.ts';
import { sayCause } from '#lib/services/yard/back/say-cause.ts';
import { undoCheckIn } from '#lib/services/yard/back/undo-check-in.ts';
import { listWorkOrders } from '#lib/services/yard/work/list-work-orders.ts';
import { beginWork, endWork } from '#lib/services/yard/work/step-work-order.ts';
import { granted } from '#tests/support/granted.ts';
import { onDay } from '#tests/support/houses/booked-house.ts';
import { as, backGood, declare, GOOD, outHouse } from '#tests/support/houses/out-and-back.ts';
import { readPdf } from '#tests/support/papers/read-pdf.ts';

const REFUSED = (code: string) => ({ ok: false, reason: { code } });
const LEFT_OUT = { kind: 'left out', words: 'equipment lost in water or in the ground' } as const;

function one(context: Context, sql: string, ...values: readonly string[]): unknown {
  return context.database.raw.prepare(sql).pluck().get(values);
}

function approveAll(context: Context, number: string): void {
  for (const { key, proposedMinor } of granted(openCharges(context, number)).charges)
    granted(decideCharge(context, { number, key, proposedMinor, decision: { kind: 'approved' } }));
}

/** The drive, which has a rate of its own, and the rest. */
function driveOf(serials: readonly string[]) {
  const lost = serials.find((serial) => serial.startsWith('D112')) ?? '';
  return { lost, rest: serials.filter((serial) => serial !== lost) };
}

/** The drive lost in the ground, the others back, everything charged and the booking closed, on the last day of the hire. */
async function lostHouse(cause: typeof LEFT_OUT | { readonly kind: 'covered' } = LEFT_OUT) {
  const { context, number, serials } = await outHouse();
  const { lost, rest } = driveOf(serials);
  const returnId = declare(context, number);
  const { pieceId } = granted(checkIn(context, { ...GOOD, returnId, scan: lost, condition: 'missing' }));
  backGood(context, { returnId, serials: rest });
  const desk = as(context, 'desk');
  granted(sayCause(desk, { number, about: `piece ${pieceId}`, cause }));
  for (const { key, proposedMinor, label } of granted(openCharges(desk, number)).charges)
    granted(
      decideCharge(desk, {
        number,
        key,
        proposedMinor,
        decision: label === 'Loss' ? { kind: 'approved' } : { kind: 'struck', reason: 'not what this is about' },
      }),
    );
  const note = granted(await issueReturnNote(desk, { number }));
  expect(note.isClosed).toBe(true);
  return { context: onDay(context, '2026-04-02'), number, serials, lost, returnId, note: note.number };
}

function charge(context: Context, number: string, label: string): ChargeView | undefined {
  return granted(openCharges(context, number)).charges.find((line) => line.label === label);
}

describe('a piece that was charged as lost and is found after its booking closed', () => {
  it('is checked in into quarantine, looked over before it is hired again, and given back less the hire until it was found', async () => {
    const { context, number, lost, note } = await lostHouse();
    const value = Number(
      one(
        context,
        "SELECT json_extract(facts_json, '$.replacement_minor') FROM model JOIN unit ON model_number = number WHERE serial = ?",
        lost,
      ),
    );
    const bytes = granted(readReturnNote(context, note)).bytes;
    expect(granted(openBack(context, number))).toMatchObject({
      hasEnded: true,
      taking: null,
      awaited: [{ serial: lost }],
    });
    const returnId = declare(context, number);
    expect(granted(openBack(context, number)).taking).toBe(returnId);
    const found = granted(checkIn(context, { ...GOOD, returnId, scan: lost }));
    expect(found.unitState).toBe('quarantine');
    expect(granted(listWorkOrders(context)).open).toContainEqual(
      expect.objectContaining({ serial: lost, kind: 'inspection', reason: 'was charged as lost and has been found' }),
    );
    const desk = as(context, 'desk');
    const given = charge(desk, number, 'Loss given back');
    const charged = Number(one(context, "SELECT net_minor FROM return_decision WHERE charge LIKE 'loss piece%'"));
    expect(charged).toBe(value);
    expect(given).toMatchObject({ proposedMinor: -value, quantity: -1, open: null, asksCause: false });
    expect(given?.sentence).toContain(`charged as lost on return note ${note}`);
    const hire = charge(desk, number, 'Hire until found');
    expect(hire?.proposedMinor).toBeGreaterThan(0);
    expect(hire?.sentence).toContain('On hire from 2026-03-16 to 2026-04-02, when it came back.');
    expect(granted(openCharges(desk, number)).charges.map(({ label }) => label)).toEqual([
      'Loss given back',
      'Hire until found',
    ]);
    approveAll(desk, number);
    const credit = granted(await issueReturnNote(desk, { number }));
    expect(credit).toMatchObject({ isClosed: false });
    expect(credit.number).not.toBe(note);
    expect(credit.grossMinor).toBeLessThan(0);
    const text = readPdf(granted(readReturnNote(desk, credit.number)).bytes).text.replace(/\s+/g, ' ');
    for (const part of [
      credit.number,
      `return note ${note}`,
      lost,
      'Loss given back',
      'Total given back',
      '2026-04-02'.slice(0, 4),
    ])
      expect(text).toContain(part);
    expect(granted(readReturnNote(context, note)).bytes).toEqual(bytes);
    expect(one(context, 'SELECT state FROM booking WHERE number = ?', number)).toBe('closed');
    expect(await issueReturnNote(desk, { number })).toMatchObject(REFUSED('booking-ended'));
    expect(openReturn(context, { number, depot: 'VEN', broughtBy: '', contamination: 'none', note: '' })).toMatchObject(
      REFUSED('booking-ended'),
    );
  });

  it('is hired again once it was looked over', async () => {
    const { context, number, lost } = await lostHouse();
    const { orders } = granted(checkIn(context, { ...GOOD, returnId: declare(context, number), scan: lost }));
    const [order = ''] = orders;
    granted(beginWork(context, order));
    const end = {
      number: order,
      result: 'fit',
      done: 'sound',
      hours: 0.5,
      partsMinor: 0,
      dueOn: '2027-04-02',
    } as const;
    expect(granted(endWork(context, end)).unitState).toBe('ready');
  });

  it('gives nothing back where nothing was charged, and then charges no hire for it', async () => {
    const { context, number, lost } = await lostHouse({ kind: 'covered' });
    granted(checkIn(context, { ...GOOD, returnId: declare(context, number), scan: lost }));
    const desk = as(context, 'desk');
    expect(granted(openCharges(desk, number)).charges).toEqual([]);
    expect(granted(await issueReturnNote(desk, { number }))).toMatchObject({ grossMinor: 0 });
  });

  it('is charged for dirt and damage as any other, by how it was lost', async () => {
    const { context, number, lost } = await lostHouse();
    const returnId = declare(context, number, 'sewage');
    granted(
      checkIn(context, {
        ...GOOD,
        returnId,
        scan: lost,
        condition: 'damaged',
        note: 'housing cracked',
        repairHours: 1,
      }),
    );
    const desk = as(context, 'desk');
    expect(charge(desk, number, 'Cleaning')?.proposedMinor).toBeGreaterThan(0);
    expect(charge(desk, number, 'Repair')?.proposedMinor).toBeGreaterThan(0);
    expect(charge(desk, number, 'Repair')?.sentence).toContain(`leaves out ${LEFT_OUT.words}`);
  });

  it('never has more hire taken off than is given back', async () => {
    const { context, number, lost } = await lostHouse();
    const later = onDay(context, '2029-03-02');
    granted(checkIn(later, { ...GOOD, returnId: declare(later, number), scan: lost }));
    const desk = as(later, 'desk');
    const given = charge(desk, number, 'Loss given back')?.proposedMinor ?? 0;
    const hire = charge(desk, number, 'Hire until found');
    expect((hire?.proposedMinor ?? 0) + given).toBe(0);
    expect(hire?.sentence).toContain('No more is taken than is given back');
  });

  it('is given back whole where the terms leave the hire free', async () => {
    const { context, number, lost } = await lostHouse();
    expect(houseFacts(context).terms.hireUntilFound).toBe('charged');
    context.database.raw.exec('DROP TRIGGER quote_frozen_update');
    context.database.raw.exec(
      "UPDATE quote SET frozen_json = json_set(frozen_json, '$.house.terms.hireUntilFound', 'free')",
    );
    granted(checkIn(context, { ...GOOD, returnId: declare(context, number), scan: lost }));
    const { charges } = granted(openCharges(as(context, 'desk'), number));
    expect(charges.map(({ label }) => label)).toEqual(['Loss given back']);
  });
});

describe('of a closed booking', () => {
  it('nothing else is taken in: no other piece, nothing counted, nothing under an earlier return, nothing twice', async () => {
    const { context, number, lost, serials, returnId: earlier } = await lostHouse();
    expect(checkIn(context, { ...GOOD, returnId: earlier, scan: lost })).toMatchObject(REFUSED('return-too-old'));
    const returnId = declare(context, number);
    const [other = ''] = serials;
    expect(checkIn(context, { ...GOOD, returnId, scan: other })).toMatchObject(REFUSED('piece-in-already'));
    expect(checkIn(context, { ...GOOD, returnId, scan: lost, condition: 'missing' })).toMatchObject(
      REFUSED('piece-in-already'),
    );
    expect(countBack(context, { returnId, model: 'X501', back: 1, unused: 0 })).toMatchObject(REFUSED('booking-ended'));
    granted(checkIn(context, { ...GOOD, returnId, scan: lost }));
    expect(checkIn(context, { ...GOOD, returnId, scan: lost })).toMatchObject(REFUSED('piece-in-already'));
  });

  it('a check-in of a found piece is taken back as long as it has not gone on', async () => {
    const { context, number, lost } = await lostHouse();
    const returnId = declare(context, number);
    const { pieceId } = granted(checkIn(context, { ...GOOD, returnId, scan: lost }));
    granted(undoCheckIn(context, { pieceId, why: 'it was another' }));
    expect(one(context, 'SELECT state FROM unit WHERE serial = ?', lost)).toBe('lost');
    expect(granted(openBack(context, number)).awaited).toMatchObject([{ serial: lost }]);
    const again = granted(checkIn(context, { ...GOOD, returnId, scan: lost }));
    context.database.raw.prepare("UPDATE unit SET state = 'ready' WHERE serial = ?").run(lost);
    expect(undoCheckIn(context, { pieceId: again.pieceId, why: 'x' })).toMatchObject(REFUSED('unit-taken-again'));
  });

  it('a piece that is in stock again by other ways stays as it is: only the money is settled', async () => {
    const { context, number, lost } = await lostHouse();
    context.database.raw.prepare("UPDATE unit SET state = 'ready' WHERE serial = ?").run(lost);
    const found = granted(checkIn(context, { ...GOOD, returnId: declare(context, number), scan: lost }));
    expect(found).toMatchObject({ unitState: 'ready', orders: [] });
    expect(charge(as(context, 'desk'), number, 'Loss given back')).toBeDefined();
  });
});

describe('a piece that was charged as lost while others are still out', () => {
  it('is given back with a later return, and its hire is not charged twice', async () => {
    const { context, number, serials } = await outHouse();
    const { lost, rest } = driveOf(serials);
    const first = declare(context, number);
    const { pieceId } = granted(checkIn(context, { ...GOOD, returnId: first, scan: lost, condition: 'missing' }));
    const desk = as(context, 'desk');
    granted(sayCause(desk, { number, about: `piece ${pieceId}`, cause: LEFT_OUT }));
    approveAll(desk, number);
    granted(await issueReturnNote(desk, { number }));
    const late = onDay(context, '2026-03-23');
    const second = declare(late, number);
    granted(checkIn(late, { ...GOOD, returnId: second, scan: lost }));
    backGood(late, { returnId: second, serials: rest });
    const { charges, closes } = granted(openCharges(as(late, 'desk'), number));
    expect(closes).toBe(true);
    const mine = charges.filter(({ mark }) => mark === lost).map(({ label }) => label);
    expect(mine).toEqual(['Loss given back', 'Hire until found']);
    approveAll(as(late, 'desk'), number);
    expect(granted(await issueReturnNote(as(late, 'desk'), { number })).isClosed).toBe(true);
  });
});
