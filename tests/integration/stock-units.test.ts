import { describe, expect, it } from 'vitest';
import { unitEvents } from '#db/queries/unit-events.ts';
import { addDays, rangeOfDays } from '#lib/kernel/date-range.ts';
import type { Context } from '#lib/services/context.ts';
import { freePieces } from '#lib/services/house/house-facts.ts';
import { addUnit } from '#lib/services/stock/add-unit.ts';
import { listHouseBays, saveHouseBay } from '#lib/services/stock/bays.ts';
import { removeBay, renameBay } from '#lib/services/stock/change-bay.ts';
import { changeUnitNote } from '#lib/services/stock/change-unit.ts';
import { changeUnitState } from '#lib/services/stock/change-unit-state.ts';
import { listCounted, setCount } from '#lib/services/stock/counted.ts';
import { EVERY_UNIT, findUnits } from '#lib/services/stock/find-units.ts';
import { moveUnit } from '#lib/services/stock/move-unit.ts';
import { openBays } from '#lib/services/stock/open-bays.ts';
import { openStocktake } from '#lib/services/stock/open-stocktake.ts';
import { openUnit } from '#lib/services/stock/open-unit.ts';
import { recordCheck } from '#lib/services/stock/record-check.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext, HOUSE_DAY } from '#tests/support/houses/demo-house.ts';

const yard = () => demoHouseContext('yard');
const code = (result: { readonly ok: boolean; readonly reason?: { readonly code: string } }) =>
  'reason' in result ? result.reason?.code : 'granted';

/** A drive that stands ready, with both its checks. */
function drive(context: Context): string {
  return String(
    context.database.raw
      .prepare(
        "SELECT serial FROM unit WHERE state = 'ready' AND depot = 'VEN' AND calibration_due_on > ? ORDER BY serial LIMIT 1",
      )
      .pluck()
      .get(addDays(HOUSE_DAY, 200)),
  );
}

const NEW = {
  serial: 'd112-77',
  model: 'D-112',
  depot: 'VEN',
  bay: 'A01',
  inspectionDueOn: '2027-01-01',
  calibrationDueOn: '',
  note: '',
} as const;

describe('the list of units', () => {
  it('is found by part of a serial number, and filtered by role, depot, state and what falls due', async () => {
    const context = await yard();
    const all = granted(findUnits(context, EVERY_UNIT));
    expect(all.total).toBeGreaterThan(400);
    expect(all.rows.length).toBe(60);
    const serial = drive(context);
    expect(granted(findUnits(context, { ...EVERY_UNIT, words: serial.toLowerCase() })).rows).toMatchObject([
      { serial },
    ]);
    const hal = granted(findUnits(context, { ...EVERY_UNIT, role: 'restraint', depot: 'HAL' }));
    expect(hal.rows.every(({ depot }) => depot === 'HAL')).toBe(true);
    expect(hal.total).toBeLessThan(all.total);
    context.database.raw.prepare('UPDATE unit SET inspection_due_on = ? WHERE serial = ?').run(HOUSE_DAY, serial);
    expect(granted(findUnits(context, { ...EVERY_UNIT, due: 'overdue' })).rows).toMatchObject([
      { serial, overdue: true },
    ]);
    expect(granted(findUnits(context, { ...EVERY_UNIT, due: 'month' })).total).toBeGreaterThan(1);
    expect(granted(findUnits(context, { ...EVERY_UNIT, page: 9999 })).page).toBe(all.pages);
    const { raw } = context.database;
    const lost = Number(raw.prepare("SELECT count(*) FROM unit WHERE state = 'workshop'").pluck().get());
    expect(granted(findUnits(context, { ...EVERY_UNIT, state: 'workshop' })).total).toBe(lost);
  });
});

describe('a unit', () => {
  it('is added once, in capitals, with its history', async () => {
    const context = await yard();
    expect(granted(addUnit(context, NEW))).toEqual({ serial: 'D112-77' });
    const { unit, history, model } = granted(openUnit(context, 'd112-77'));
    expect(unit).toMatchObject({ serial: 'D112-77', state: 'ready', depot: 'VEN', bay: 'A01' });
    expect(model.name).toContain('Battery drive');
    expect(history).toMatchObject([{ kind: 'added', after: 'VEN A01, ready', who: 'Test desk' }]);
    expect(code(addUnit(context, NEW))).toBe('serial-taken');
  });

  it.each([
    ['serial-unreadable', { serial: 'hello' }],
    ['no-such-model', { model: 'Z-999' }],
    ['model-without-units', { model: 'S-303' }],
    ['date-unreadable', { inspectionDueOn: 'soon' }],
    ['no-such-depot', { depot: 'XXX' }],
    ['no-such-bay', { bay: 'Z99' }],
  ])('is refused with %s', async (refused, change) => {
    expect(code(addUnit(await yard(), { ...NEW, ...change }))).toBe(refused);
  });

  it('moves to a bay that is known, by its name or its label, and to no other depot', async () => {
    const context = await yard();
    const serial = drive(context);
    expect(granted(moveUnit(context, { serial, to: 'bay:ven/b02' }))).toEqual({ bay: 'B02' });
    expect(granted(moveUnit(context, { serial, to: 'b02' }))).toEqual({ bay: 'B02' });
    expect(granted(openUnit(context, serial)).history.filter(({ kind }) => kind === 'moved').length).toBe(1);
    expect(code(moveUnit(context, { serial, to: 'BAY:HAL/A01' }))).toBe('other-depot');
    expect(code(moveUnit(context, { serial, to: 'Q77' }))).toBe('no-such-bay');
    expect(code(moveUnit(context, { serial: 'NO-1', to: 'A01' }))).toBe('no-such-unit');
  });

  it('changes its state with a reason, is free no more, and whoever counted on it is named', async () => {
    const context = await yard();
    const serial = drive(context);
    const { raw } = context.database;
    const model = String(raw.prepare('SELECT model_number FROM unit WHERE serial = ?').pluck().get(serial));
    raw.exec("INSERT INTO booking (id, number, state) VALUES (1, 'B-1', 'confirmed')");
    raw
      .prepare(
        'INSERT INTO booking_unit (booking_id, unit_serial, starts_on, ends_before, free_again_on) VALUES (1, ?, ?, ?, ?)',
      )
      .run(serial, '2026-05-01', '2026-05-05', '2026-05-06');
    const window = rangeOfDays(HOUSE_DAY, 3);
    const before = freePieces(context, { window })[model] ?? 0;
    expect(code(changeUnitState(context, { serial, to: 'quarantine', reason: ' ' }))).toBe('reason-missing');
    const changed = granted(changeUnitState(context, { serial, to: 'quarantine', reason: 'housing cracked' }));
    expect(changed.hits).toMatchObject([{ booking: 'B-1', startsOn: '2026-05-01' }]);
    expect(freePieces(context, { window })[model]).toBe(before - 1);
    expect(code(changeUnitState(context, { serial, to: 'quarantine', reason: 'again' }))).toBe('unit-state-already');
    raw.prepare('UPDATE unit SET calibration_due_on = ? WHERE serial = ?').run(HOUSE_DAY, serial);
    expect(code(changeUnitState(context, { serial, to: 'ready', reason: 'glued' }))).toBe('certificate-overdue');
    granted(recordCheck(context, { serial, kind: 'calibration', doneOn: HOUSE_DAY, certificate: 'C-1' }));
    granted(changeUnitState(context, { serial, to: 'ready', reason: 'housing replaced' }));
    expect(freePieces(context, { window })[model]).toBe(before);
    raw.prepare("UPDATE unit SET state = 'out' WHERE serial = ?").run(serial);
    expect(code(changeUnitState(context, { serial, to: 'workshop', reason: 'x' }))).toBe('unit-out');
    raw.prepare("UPDATE unit SET state = 'on the way' WHERE serial = ?").run(serial);
    expect(code(changeUnitState(context, { serial, to: 'workshop', reason: 'x' }))).toBe('unit-on-the-way');
    expect(
      unitEvents(context.database.db, serial)
        .map(({ kind, after, reason }) => [kind, after, reason])
        .slice(0, 3),
    ).toEqual([
      ['state', 'ready', 'housing replaced'],
      ['calibration', '2027-03-02', 'C-1'],
      ['state', 'quarantine', 'housing cracked'],
    ]);
  });

  it('has its inspection and calibration recorded, which sets the next day', async () => {
    const context = await yard();
    const serial = drive(context);
    const check = { serial, kind: 'inspection', doneOn: HOUSE_DAY, certificate: 'I-7, R. Gauge' } as const;
    expect(granted(recordCheck(context, check))).toEqual({ dueOn: '2027-03-02' });
    expect(granted(recordCheck(context, { ...check, dueOn: '2026-06-01' }))).toEqual({ dueOn: '2026-06-01' });
    expect(granted(openUnit(context, serial)).unit).toMatchObject({
      inspection_done_on: HOUSE_DAY,
      inspection_due_on: '2026-06-01',
    });
    const sling = String(
      context.database.raw.prepare("SELECT serial FROM unit WHERE model_number = 'S-318' LIMIT 1").pluck().get(),
    );
    expect(granted(recordCheck(context, { ...check, serial: sling }))).toEqual({ dueOn: '2026-09-02' });
    expect(code(recordCheck(context, { ...check, doneOn: '2026-02-30' }))).toBe('date-unreadable');
    expect(code(recordCheck(context, { ...check, doneOn: addDays(HOUSE_DAY, 1) }))).toBe('date-ahead');
    expect(code(recordCheck(context, { ...check, dueOn: HOUSE_DAY }))).toBe('due-before-done');
    expect(code(recordCheck(context, { ...check, certificate: '' }))).toBe('certificate-missing');
  });

  it('keeps run hours that only grow without a reason, and a note', async () => {
    const context = await yard();
    const serial = drive(context);
    granted(changeUnitNote(context, { serial, runHours: 500, note: 'pulls to the left', reason: '' }));
    expect(code(changeUnitNote(context, { serial, runHours: 499, reason: '' }))).toBe('hours-lower');
    granted(changeUnitNote(context, { serial, runHours: 0, reason: 'counter replaced' }));
    const { unit, history } = granted(openUnit(context, serial));
    expect(unit).toMatchObject({ run_hours: 0, note: 'pulls to the left' });
    expect(history.map(({ kind, after }) => [kind, after]).slice(0, 3)).toEqual([
      ['run hours', '0 h'],
      ['changed', 'pulls to the left'],
      ['run hours', '500 h'],
    ]);
  });
});

describe('counted pieces', () => {
  it('are held by number a depot, and every correction says why', async () => {
    const context = await yard();
    const pins = () => granted(listCounted(context)).models.find(({ model }) => model === 'S-303');
    expect(pins()).toMatchObject({ total: 60, freeToday: 60 });
    expect(code(setCount(context, { model: 'S-303', depot: 'HAL', count: 18, reason: '' }))).toBe('reason-missing');
    granted(setCount(context, { model: 'S-303', depot: 'HAL', count: 18, reason: 'two bent', bay: 'h03' }));
    expect(pins()).toMatchObject({
      total: 58,
      freeToday: 58,
      history: [{ before: 20, after: 18, reason: 'two bent' }],
    });
    expect(code(setCount(context, { model: 'D-112', depot: 'HAL', count: 1, reason: 'x' }))).toBe('model-has-units');
    expect(code(setCount(context, { model: 'Z-1', depot: 'HAL', count: 1, reason: 'x' }))).toBe('no-such-model');
    expect(code(setCount(context, { model: 'S-303', depot: 'XX', count: 1, reason: 'x' }))).toBe('no-such-depot');
    expect(code(setCount(context, { model: 'S-303', depot: 'HAL', count: 1, reason: 'x', bay: 'Q9' }))).toBe(
      'no-such-bay',
    );
  });
});

describe('bays', () => {
  it('are walked in their order, and a new one stands at the end unless it is given a place', async () => {
    const context = await yard();
    granted(saveHouseBay(context, { depot: 'VEN', bay: 'z01', note: 'by the gate' }));
    const ven = granted(listHouseBays(context)).filter(({ depot }) => depot === 'VEN');
    expect(ven.at(-1)).toMatchObject({ code: 'Z01', note: 'by the gate' });
    granted(saveHouseBay(context, { depot: 'VEN', bay: 'Z01', walkOrder: 0, note: '' }));
    expect(granted(listHouseBays(context)).filter(({ depot }) => depot === 'VEN')[0]).toMatchObject({ code: 'Z01' });
    expect(code(saveHouseBay(context, { depot: 'VEN', bay: 'by the gate!', note: '' }))).toBe('bay-unreadable');
    expect(code(saveHouseBay(context, { depot: 'XX', bay: 'A01', note: '' }))).toBe('no-such-depot');
  });

  it('tell what stands in each, are found by name or note, and come a page at a time', async () => {
    const context = await yard();
    const asked = { depot: 'VEN', bay: 'a01', words: '', page: 1 };
    const view = granted(openBays(context, asked));
    const standing = context.database.raw
      .prepare("SELECT count(*) FROM unit WHERE depot = 'VEN' AND bay = 'A01' AND state NOT IN ('lost', 'retired')")
      .pluck()
      .get();
    expect(view.open).toMatchObject({ code: 'A01', units: standing });
    expect(view.open?.stands).toHaveLength(Number(standing));
    for (let bay = 100; bay < 200; bay += 1)
      granted(saveHouseBay(context, { depot: 'VEN', bay: `L${bay}`, note: 'loft' }));
    const many = granted(openBays(context, { ...asked, words: 'loft', page: 99 }));
    expect(many).toMatchObject({ total: 100, pages: 3, page: 3 });
    expect(many.bays).toHaveLength(20);
    expect(granted(openBays(context, { ...asked, depot: 'nowhere', bay: 'Q99' })).open).toBeNull();
  });

  it('are renamed with all that stands in them, each unit and box with its line of history', async () => {
    const context = await yard();
    const { raw } = context.database;
    const before = granted(openBays(context, { depot: 'VEN', bay: 'A01', words: '', page: 1 })).open;
    raw.prepare("UPDATE counted_shelf SET bay = 'A01' WHERE model_number = 'S-303' AND depot = 'VEN'").run();
    expect(granted(renameBay(context, { depot: 'VEN', bay: 'a01', to: 'n07' }))).toEqual({ depot: 'VEN', bay: 'N07' });
    const after = granted(openBays(context, { depot: 'VEN', bay: 'N07', words: '', page: 1 })).open;
    expect(after?.stands.map(({ serial }) => serial)).toEqual(before?.stands.map(({ serial }) => serial));
    expect(after).toMatchObject({ walkOrder: before?.walkOrder, note: before?.note });
    expect(after?.counted.map(({ model }) => model)).toContain('S-303');
    const [first] = after?.stands ?? [];
    expect(unitEvents(context.database.db, first?.serial ?? '')[0]).toMatchObject({
      kind: 'moved',
      before: 'VEN A01',
      after: 'VEN N07',
      reason: 'the bay was renamed',
    });
    expect(raw.prepare("SELECT count(*) FROM bay WHERE depot = 'VEN' AND code = 'A01'").pluck().get()).toBe(0);
    expect(code(renameBay(context, { depot: 'VEN', bay: 'A01', to: 'X01' }))).toBe('no-such-bay');
    expect(code(renameBay(context, { depot: 'VEN', bay: 'N07', to: 'B02' }))).toBe('bay-there-already');
    expect(code(renameBay(context, { depot: 'VEN', bay: 'N07', to: 'by the gate!' }))).toBe('bay-unreadable');
  });

  it('are taken away only when they are empty, and stay as they are while the depot is counted', async () => {
    const context = await yard();
    granted(saveHouseBay(context, { depot: 'VEN', bay: 'Z01', note: '' }));
    const serial = drive(context);
    granted(moveUnit(context, { serial, to: 'BAY:VEN/Z01' }));
    expect(code(removeBay(context, { depot: 'VEN', bay: 'Z01' }))).toBe('bay-not-empty');
    granted(moveUnit(context, { serial, to: 'A01' }));
    const { raw } = context.database;
    raw.prepare("UPDATE counted_shelf SET bay = 'Z01' WHERE model_number = 'S-303' AND depot = 'VEN'").run();
    expect(code(removeBay(context, { depot: 'VEN', bay: 'Z01' }))).toBe('bay-not-empty');
    raw.prepare("UPDATE counted_shelf SET bay = 'A01' WHERE model_number = 'S-303' AND depot = 'VEN'").run();
    const { number } = granted(openStocktake(context, { depot: 'VEN', bay: '' }));
    expect(code(removeBay(context, { depot: 'VEN', bay: 'Z01' }))).toBe('stocktake-open');
    expect(code(renameBay(context, { depot: 'VEN', bay: 'Z01', to: 'Z02' }))).toBe('stocktake-open');
    raw.prepare("UPDATE stocktake SET state = 'given up' WHERE number = ?").run(number);
    granted(removeBay(context, { depot: 'VEN', bay: 'Z01' }));
    expect(code(moveUnit(context, { serial, to: 'Z01' }))).toBe('no-such-bay');
  });
});

describe('who may work with stock', () => {
  it.each(['desk', 'contractor'] as const)('a %s changes none of it', async (role) => {
    const context = await demoHouseContext(role);
    const tries = [
      addUnit(context, NEW),
      moveUnit(context, { serial: 'X-1', to: 'A01' }),
      changeUnitState(context, { serial: 'X-1', to: 'lost', reason: 'x' }),
      recordCheck(context, { serial: 'X-1', kind: 'inspection', doneOn: HOUSE_DAY, certificate: 'x' }),
      changeUnitNote(context, { serial: 'X-1', reason: '' }),
      setCount(context, { model: 'S-303', depot: 'VEN', count: 1, reason: 'x' }),
      saveHouseBay(context, { depot: 'VEN', bay: 'A01', note: '' }),
      renameBay(context, { depot: 'VEN', bay: 'A01', to: 'A99' }),
      removeBay(context, { depot: 'VEN', bay: 'A01' }),
    ];
    expect(tries.map(code)).toEqual(tries.map(() => 'not-allowed'));
  });

  it('the Desk reads it, a contractor does not', async () => {
    for (const [role, answer] of [
      ['desk', 'granted'],
      ['contractor', 'not-allowed'],
    ] as const) {
      const context = await demoHouseContext(role);
      const reads = [
        findUnits(context, EVERY_UNIT),
        openUnit(context, drive(context)),
        listCounted(context),
        listHouseBays(context),
        openBays(context, { depot: 'VEN', bay: '', words: '', page: 1 }),
      ];
      expect(reads.map(code), role).toEqual(reads.map(() => answer));
    }
  });
});
