import { describe, expect, it } from 'vitest';
import { findModel } from '#db/queries/equipment.ts';
import { flatOf } from '#lib/contracts/equipment-flat.ts';
import { ROLES } from '#lib/equipment/model.ts';
import type { Context, UserRole } from '#lib/services/context.ts';
import { USER_ROLES } from '#lib/services/context.ts';
import { exportCatalogue, previewCatalogue, takeCatalogue } from '#lib/services/equipment/catalogue-csv.ts';
import { jsonOf } from '#lib/services/equipment/model-record.ts';
import { openModel } from '#lib/services/equipment/open-model.ts';
import { previewRaise, takeRaise } from '#lib/services/equipment/raise-rates.ts';
import { putRateCards, takeOffRateCard } from '#lib/services/equipment/rate-cards.ts';
import { exportRates, previewRates, takeRates } from '#lib/services/equipment/rates-csv.ts';
import { bringBackModel, retireModel, undoModelChange } from '#lib/services/equipment/retire-model.ts';
import { type ModelToSave, saveModel } from '#lib/services/equipment/save-model.ts';
import { houseModels, knownModels } from '#lib/services/house/house-facts.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext, HOUSE_DAY } from '#tests/support/houses/demo-house.ts';

const REFUSED = (code: string) => ({ ok: false, reason: { code } });
const LATER = '2026-06-01';

function opened(context: Context) {
  return granted(openModel(context, { number: 'H-101', system: 'si' }));
}

function head(context: Context, change: Readonly<Record<string, string>> = {}): ModelToSave {
  const row = findModel(context.database.db, 'H-101');
  if (row === undefined) throw new Error('H-101 is not in the demo house.');
  return {
    role: 'head',
    fields: { ...flatOf(jsonOf(row), 'EUR'), ...change },
    existing: { number: 'H-101', version: row.version },
  };
}

const card = (number: string, starts_on: string, day_minor = 9900) => ({
  number,
  starts_on,
  day_minor,
  week_minor: 30_000,
  four_weeks_minor: 80_000,
  minimum_days: 1,
  note: 'agreed',
});

const rateOn = (context: Context, number: string, day: string) =>
  houseModels(context, day).find((model) => model.number === number)?.rates.day_minor;

describe('who may change equipment', () => {
  it.each(USER_ROLES.filter((role) => role !== 'administrator'))('not a %s', async (role: UserRole) => {
    const context = await demoHouseContext(role);
    const no = REFUSED('not-allowed');
    expect(saveModel(context, head(context, { name: 'x' }))).toMatchObject(no);
    expect(retireModel(context, { number: 'H-101', version: 1 })).toMatchObject(no);
    expect(bringBackModel(context, { number: 'H-101', version: 1 })).toMatchObject(no);
    expect(undoModelChange(context, { number: 'H-101', version: 1 })).toMatchObject(no);
    expect(putRateCards(context, { cards: [card('H-101', LATER)], action: 'x' })).toMatchObject(no);
    expect(takeOffRateCard(context, { number: 'H-101', startsOn: LATER })).toMatchObject(no);
    expect(takeRaise(context, { percent: 5, step_minor: 50, starts_on: LATER })).toMatchObject(no);
    expect(takeCatalogue(context, { role: 'head', text: '', seen: '' })).toMatchObject(no);
    if (role === 'contractor') {
      expect(exportCatalogue(context, 'head')).toMatchObject(no);
      expect(exportRates(context)).toMatchObject(no);
      expect(previewRates(context, '')).toMatchObject(no);
    } else expect(exportCatalogue(context, 'head').ok).toBe(true);
  });
});

describe('a model', () => {
  it('is changed with its version, keeps who changed what, and takes the last change back', async () => {
    const context = await demoHouseContext('administrator');
    granted(saveModel(context, head(context, { 'facts.torque_rating_nm': '70' })));
    expect(saveModel(context, { ...head(context), existing: { number: 'H-101', version: 1 } })).toMatchObject(
      REFUSED('changed-meanwhile'),
    );
    const [change] = opened(context).changes;
    expect(change).toMatchObject({ who: 'Test desk', action: 'model changed', version: 2 });
    expect(change?.differences).toEqual([
      { name: expect.stringMatching(/torque .*\[N·m\]$/), before: '62', after: '70' },
    ]);
    granted(undoModelChange(context, { number: 'H-101', version: 2 }));
    expect(head(context).fields['facts.torque_rating_nm']).toBe('62');
    granted(undoModelChange(context, { number: 'H-101', version: 3 }));
    expect(head(context).fields['facts.torque_rating_nm']).toBe('70');
  });

  it('is added as a copy, and warned of where it joins nothing', async () => {
    const context = await demoHouseContext('administrator');
    const { fields } = head(context, { number: 'H-999', name: 'Trial head', 'facts.output': 'house face 140 female' });
    const added = granted(saveModel(context, { role: 'head', fields }));
    expect(added.version).toBe(1);
    expect(added.warnings.join(' ')).toContain('its output house face 140 female joins nothing in the catalogue');
    expect(saveModel(context, { role: 'head', fields })).toMatchObject(REFUSED('model-invalid'));
    expect(undoModelChange(context, { number: 'H-999', version: 1 })).toMatchObject(REFUSED('nothing-to-undo'));
    expect(saveModel(context, { role: 'head', fields, existing: { number: 'H-998', version: 1 } })).toMatchObject(
      REFUSED('no-such-model'),
    );
  });

  it('keeps its number, and its rates except on dated cards', async () => {
    const context = await demoHouseContext('administrator');
    for (const change of [{ number: 'H-102' }, { 'rates.day_minor': '1.00' }]) {
      expect(saveModel(context, head(context, change))).toMatchObject(REFUSED('model-invalid'));
    }
  });

  it('that is retired is no longer chosen, keeps its name, and comes back', async () => {
    const context = await demoHouseContext('administrator');
    granted(retireModel(context, { number: 'H-101', version: 1 }));
    expect(houseModels(context).some(({ number }) => number === 'H-101')).toBe(false);
    expect(knownModels(context).some(({ number }) => number === 'H-101')).toBe(true);
    expect(retireModel(context, { number: 'H-101', version: 2 })).toMatchObject(REFUSED('retired-already'));
    granted(bringBackModel(context, { number: 'H-101', version: 2 }));
    expect(bringBackModel(context, { number: 'H-101', version: 3 })).toMatchObject(REFUSED('not-retired'));
    expect(houseModels(context).some(({ number }) => number === 'H-101')).toBe(true);
    expect(() => context.database.raw.exec("DELETE FROM model WHERE number = 'H-101'")).toThrow('never deleted');
  });
});

describe('rate cards', () => {
  it('hold from their day on, and the rates before them stay for earlier hires', async () => {
    const context = await demoHouseContext('administrator');
    const before = rateOn(context, 'H-101', HOUSE_DAY);
    granted(putRateCards(context, { cards: [card('H-101', LATER)], action: 'rate card put on' }));
    expect(rateOn(context, 'H-101', '2026-05-31')).toBe(before);
    expect(rateOn(context, 'H-101', LATER)).toBe(9900);
    // What was made ready for a list of models serves again while models and rates are the same.
    expect(houseModels(context, LATER)).toBe(houseModels(context, LATER));
    expect(houseModels(context, LATER)).not.toBe(houseModels(context, HOUSE_DAY));
    expect(rateOn(context, 'H-101', '2027-01-01')).toBe(9900);
    granted(takeOffRateCard(context, { number: 'H-101', startsOn: LATER }));
    expect(rateOn(context, 'H-101', LATER)).toBe(before);
    expect(opened(context).rateChanges.map(({ action }) => action)).toEqual([
      'rate card taken off',
      'rate card put on',
    ]);
  });

  it('never begin in the past, and stay once they have begun', async () => {
    const context = await demoHouseContext('administrator');
    const put = (starts_on: string) => putRateCards(context, { cards: [card('H-101', starts_on)], action: 'x' });
    expect(put('2026-03-01')).toMatchObject(REFUSED('rate-day-past'));
    expect(put('tomorrow')).toMatchObject(REFUSED('rate-day-unreadable'));
    expect(putRateCards(context, { cards: [card('H-900', LATER)], action: 'x' })).toMatchObject(
      REFUSED('no-such-model'),
    );
    granted(put(HOUSE_DAY));
    expect(takeOffRateCard(context, { number: 'H-101', startsOn: HOUSE_DAY })).toMatchObject(
      REFUSED('rate-card-begun'),
    );
    expect(takeOffRateCard(context, { number: 'H-101', startsOn: LATER })).toMatchObject(REFUSED('no-such-rate-card'));
  });

  it('of a role rise together by some per cent, rounded to a step, as they were shown', async () => {
    const context = await demoHouseContext('administrator');
    const asked = { role: 'drive', percent: 4, step_minor: 50, starts_on: LATER } as const;
    const shown = granted(previewRaise(context, asked));
    const drive = shown.find(({ number }) => number === 'D-112');
    expect(drive).toMatchObject({ before: { day_minor: 3400 }, after: { day_minor: 3550 } });
    expect(granted(takeRaise(context, asked)).put).toBe(shown.length);
    for (const { number, after } of shown) expect(rateOn(context, number, LATER)).toBe(after.day_minor);
    expect(rateOn(context, 'H-101', LATER)).toBe(rateOn(context, 'H-101', HOUSE_DAY));
  });
});

describe('files', () => {
  it.each(ROLES)('of role %s that are saved and read again change nothing', async (role) => {
    const context = await demoHouseContext('administrator');
    const text = granted(exportCatalogue(context, role));
    const { rows, seen } = granted(previewCatalogue(context, { role, text }));
    expect(rows.length).toBeGreaterThan(2);
    expect(rows.filter(({ kind }) => kind !== 'same')).toEqual([]);
    expect(granted(takeCatalogue(context, { role, text, seen }))).toEqual({ added: 0, changed: 0 });
  });

  it('show what is added, changed, the same and refused, with row and column, and are taken whole or not at all', async () => {
    const context = await demoHouseContext('administrator');
    const text = granted(exportCatalogue(context, 'head'));
    const bad = text.replace('H-101,', 'H-990,').replace(/H-104,"[^"]*"/, 'H-104,Another name');
    const { rows, seen } = granted(previewCatalogue(context, { role: 'head', text: bad }));
    const kinds = new Map(rows.map((row) => [row.name, row]));
    expect(kinds.get('H-990')?.kind).toBe('added');
    expect(kinds.get('H-104')).toMatchObject({
      kind: 'changed',
      differences: [{ column: 'name', after: 'Another name' }],
    });
    const broken = bad.replace(/(H-122,.*?),yes|(H-122,.*?),no/, '$1$2,perhaps');
    const refused = granted(previewCatalogue(context, { role: 'head', text: broken }));
    const row = refused.rows.find(({ name }) => name === 'H-122');
    expect(row).toMatchObject({
      kind: 'refused',
      problems: [{ sentence: expect.stringContaining('neither yes nor no') }],
    });
    expect(row?.row).toBe(rows.findIndex(({ name }) => name === 'H-122') + 2);
    expect(takeCatalogue(context, { role: 'head', text: broken, seen })).toMatchObject(REFUSED('import-refused-rows'));
    expect(findModel(context.database.db, 'H-990')).toBeUndefined();
    expect(granted(takeCatalogue(context, { role: 'head', text: bad, seen }))).toEqual({ added: 1, changed: 1 });
    expect(takeCatalogue(context, { role: 'head', text: bad, seen })).toMatchObject(REFUSED('changed-meanwhile'));
  });

  it('that are no such table are refused as a whole', async () => {
    const context = await demoHouseContext('administrator');
    const of = (text: string) => previewCatalogue(context, { role: 'head', text });
    expect(of('')).toMatchObject(REFUSED('csv-unreadable'));
    expect(of('number,colour\nH-1,red')).toMatchObject(REFUSED('csv-column-unknown'));
    expect(of('number,number\nH-1,H-1')).toMatchObject(REFUSED('csv-column-twice'));
    expect(of(`number,name\n${'x'.repeat(11_000_000)}`)).toMatchObject(REFUSED('csv-too-large'));
    const names = (text: string) => granted(of(text)).rows.map(({ kind, problems }) => [kind, problems[0]?.sentence]);
    expect(names('number,name\nD-112,a drive\n')).toEqual([
      ['refused', 'Number D-112 is a model of role drive: give this one another number.'],
    ]);
    granted(retireModel(context, { number: 'H-101', version: 1 }));
    expect(names('number,name\nH-101,x\nH-500,x\nH-500,x')).toEqual([
      ['refused', `H-101 was retired on ${HOUSE_DAY}: bring it back first, or take the row out.`],
      ['refused', 'Mass is missing.'],
      ['refused', 'Number H-500 stands in this file twice: take one of the rows out.'],
    ]);
  });

  it('of rates that are saved and read again change nothing; coming cards are added, begun ones stay', async () => {
    const context = await demoHouseContext('administrator');
    granted(putRateCards(context, { cards: [card('H-101', LATER)], action: 'x' }));
    const text = granted(exportRates(context));
    const same = granted(previewRates(context, text));
    expect(same.rows.filter(({ kind }) => kind !== 'same')).toEqual([]);
    const more = `${text}H-104,2026-07-01,50.00,150.00,400.5,1,summer\r\n`;
    const shown = granted(previewRates(context, more));
    expect(shown.rows.at(-1)).toMatchObject({ kind: 'added', name: 'H-104 from 2026-07-01' });
    expect(granted(takeRates(context, { text: more, seen: shown.seen }))).toEqual({ put: 1 });
    expect(rateOn(context, 'H-104', '2026-07-01')).toBe(5000);
    expect(takeRates(context, { text: more, seen: shown.seen })).toMatchObject(REFUSED('changed-meanwhile'));
    const late = granted(previewRates(context, `${text}H-104,2026-01-01,50.00,150.00,400,1,\r\n`));
    expect(late.rows.at(-1)?.problems[0]?.sentence).toContain('has begun or has no day');
    expect(takeRates(context, { text: `${text}H-104,2026-01-01,5,5,5,1,\r\n`, seen: late.seen })).toMatchObject(
      REFUSED('import-refused-rows'),
    );
  });
});
