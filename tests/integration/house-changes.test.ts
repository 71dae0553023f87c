import { describe, expect, it } from 'vitest';
import { readHouse } from '#db/queries/house.ts';
import type { HouseRuleJson } from '#lib/contracts/house.ts';
import { type Context, USER_ROLES } from '#lib/services/context.ts';
import { openModel } from '#lib/services/equipment/open-model.ts';
import { putRateCards } from '#lib/services/equipment/rate-cards.ts';
import { retireModel } from '#lib/services/equipment/retire-model.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';
import {
  readHouseRecord,
  saveHousePrices,
  saveHouseRules,
  saveHouseStanding,
  takeOffHousePrices,
} from '#lib/services/house/house-record.ts';
import { awaitTrial, haltTrial, readTrial, startTrial } from '#lib/services/house/try-change.ts';
import { planState } from '#lib/services/plans/plan-enquiry.ts';
import { issueQuote } from '#lib/services/quotes/issue-quote.ts';
import { readPaper } from '#lib/services/quotes/read-paper.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';
import { planOneValve } from '#tests/support/houses/one-valve.ts';
import { readPdf } from '#tests/support/papers/read-pdf.ts';

const REFUSED = (code: string) => ({ ok: false, reason: { code } });
const STARTS = '2026-03-16';
const NO_BATTERY: HouseRuleJson = {
  id: 'no-battery',
  kind: 'no-source',
  value: 'battery',
  sentence: 'No battery drive is sent out.',
};

async function oneValve(context: Context): Promise<number> {
  const site = { sources_allowed: ['battery'], crews: 1, days: 2, starts_on: STARTS };
  const id = await planOneValve(context, { site });
  return id;
}

/** Two demo enquiries stay open; the others are closed, and no trial looks at them. */
async function withFewOpen(): Promise<Context> {
  const context = await demoHouseContext('administrator');
  context.database.raw.exec("UPDATE enquiry SET state = 'declined' WHERE number NOT IN ('E-00005', 'E-00007')");
  return context;
}

const record = (context: Context) => granted(readHouseRecord(context));

describe('who may change the house', () => {
  it.each(USER_ROLES.filter((role) => role !== 'administrator'))('not a %s', async (role) => {
    const context = await demoHouseContext(role);
    const no = REFUSED('not-allowed');
    expect(saveHouseStanding(context, { version: 1, standing: {} })).toMatchObject(no);
    expect(saveHouseRules(context, { version: 1, rules: [] })).toMatchObject(no);
    expect(saveHousePrices(context, { starts_on: STARTS, note: '', held: {} })).toMatchObject(no);
    expect(takeOffHousePrices(context, STARTS)).toMatchObject(no);
    expect(startTrial(context, { kind: 'rules', rules: [] })).toMatchObject(no);
    expect(readTrial(context)).toMatchObject(no);
    expect(haltTrial(context)).toMatchObject(no);
    expect(readHouseRecord(context).ok).toBe(role !== 'contractor');
  });
});

describe('the house', () => {
  it('is saved in its parts, with its version and what changed', async () => {
    const context = await demoHouseContext('administrator');
    const { standing, version } = record(context);
    const changed = { ...standing, terms: { ...standing.terms, quote_valid_days: 30 } };
    granted(saveHouseStanding(context, { version, standing: changed }));
    expect(houseFacts(context).terms.quoteValidDays).toBe(30);
    expect(houseFacts(context).houseRules).toHaveLength(2);
    expect(saveHouseStanding(context, { version, standing })).toMatchObject(REFUSED('changed-meanwhile'));
    expect(record(context).changes[0]?.differences).toEqual([
      { name: 'Quotes are valid, days', before: '21', after: '30' },
    ]);
    const bad = saveHouseStanding(context, { version: 2, standing: { ...standing, turnaround_days: -1 } });
    expect(bad).toMatchObject({
      ok: false,
      reason: { code: 'house-invalid', problems: [{ path: 'turnaround_days' }] },
    });
    expect(saveHouseStanding(context, { version: 2, standing: { ...standing, currency: 'GBP' } })).toMatchObject(
      REFUSED('house-invalid'),
    );
  });

  it('charges other prices from their day on, and those before for earlier hires', async () => {
    const context = await demoHouseContext('administrator');
    const [opening] = record(context).prices;
    const held = { ...opening?.held, labour_minor_per_hour: 9900 };
    granted(saveHousePrices(context, { starts_on: '2026-06-01', note: 'summer', held }));
    expect(houseFacts(context, '2026-05-31').labourMinorPerHour).toBe(7400);
    expect(houseFacts(context, '2026-06-01').labourMinorPerHour).toBe(9900);
    const taxless = { ...held, tax_of: { ...opening?.held.tax_of, hire: 'AE' } };
    expect(saveHousePrices(context, { starts_on: '2026-06-01', note: '', held: taxless })).toMatchObject({
      reason: { code: 'house-invalid', problems: [{ path: 'tax_of.hire' }] },
    });
    expect(saveHousePrices(context, { starts_on: '2026-01-01', note: '', held })).toMatchObject(
      REFUSED('rate-day-past'),
    );
    granted(takeOffHousePrices(context, '2026-06-01'));
    expect(takeOffHousePrices(context, '2026-06-01')).toMatchObject(REFUSED('no-such-prices'));
    granted(saveHousePrices(context, { starts_on: '2026-03-02', note: '', held }));
    expect(takeOffHousePrices(context, '2026-03-02')).toMatchObject(REFUSED('prices-begun'));
  });

  it('refuses a rule whose value its kind cannot read, and keeps one that is switched off without asking it', async () => {
    const context = await demoHouseContext('administrator');
    const { rules, version } = record(context);
    for (const wrong of [
      { ...NO_BATTERY, value: 'steam' },
      { ...NO_BATTERY, kind: 'max-lift' as const, value: 'heavy' },
      { ...NO_BATTERY, id: 'Not A Name' },
      { ...NO_BATTERY, id: rules[0]?.id ?? '' },
    ]) {
      expect(saveHouseRules(context, { version, rules: [...rules, wrong] })).toMatchObject(REFUSED('house-invalid'));
    }
    granted(saveHouseRules(context, { version, rules: [...rules, { ...NO_BATTERY, off: true }] }));
    expect(record(context).rules).toHaveLength(3);
    expect(houseFacts(context).houseRules.map(({ id }) => id)).not.toContain('no-battery');
  });
});

describe('the test bench', () => {
  it('tells which lines of open enquiries a rule would change, and why, and saves nothing', async () => {
    const context = await withFewOpen();
    const enquiryId = await oneValve(context);
    const before = readHouse(context.database.db);
    granted(startTrial(context, { kind: 'rules', rules: [...record(context).rules, NO_BATTERY] }));
    const done = granted(await awaitTrial(context));
    expect(done).toMatchObject({ kind: 'done', asked: done.enquiries.length });
    const own = done.enquiries.find((one) => one.enquiryId === enquiryId);
    expect(own?.classes).toMatchObject([{ kind: 'no longer served', tags: ['V1'], after: [] }]);
    expect(own?.classes[0]?.why.map(({ sentence }) => sentence).join(' ')).toContain('No battery drive is sent out.');
    const air = done.enquiries.flatMap(({ classes }) => classes).filter(({ kind }) => kind === 'another kit');
    for (const { before: old, after } of air) expect(old).not.toEqual(after);
    expect(readHouse(context.database.db)).toBe(before);
    console.info(
      `test bench: ${done.enquiries.map(({ number, lines, same }) => `${number} ${lines - same}/${lines}`).join(', ')}`,
    );
  });

  it('tells the same of a model that is retired, and finds nothing where nothing changes', async () => {
    const context = await withFewOpen();
    granted(startTrial(context, { kind: 'rules', rules: record(context).rules }));
    const none = granted(await awaitTrial(context));
    expect(none.enquiries.flatMap(({ classes }) => classes)).toEqual([]);
    expect(none.enquiries.length).toBe(2);
    granted(startTrial(context, { kind: 'retire', number: 'D-131' }));
    const retired = granted(await awaitTrial(context));
    const kinds = new Set(retired.enquiries.flatMap(({ classes }) => classes.map(({ kind }) => kind)));
    expect([...kinds].every((kind) => ['no longer served', 'another kit', 'fewer ways'].includes(kind))).toBe(true);
    expect(kinds.size).toBeGreaterThan(0);
    const fields = granted(openModel(context, { number: 'D-131', system: 'si' })).fields;
    granted(startTrial(context, { kind: 'model', role: 'drive', fields }));
    expect(granted(await awaitTrial(context)).enquiries.flatMap(({ classes }) => classes)).toEqual([]);
    expect(startTrial(context, { kind: 'model', role: 'drive', fields: {} })).toMatchObject(REFUSED('model-invalid'));
    expect(startTrial(context, { kind: 'rules', rules: [{}] })).toMatchObject(REFUSED('house-invalid'));
    granted(startTrial(context, { kind: 'retire', number: 'D-131' }));
    expect(granted(haltTrial(context)).kind).toBe('none');
  });
});

describe('an issued quote', () => {
  it('keeps every byte when equipment, rates, prices and rules change; a plan that is open is no longer current', {
    timeout: 240_000,
  }, async () => {
    const context = await demoHouseContext('administrator');
    const enquiryId = await oneValve(context);
    const quote = granted(await issueQuote(context, { enquiryId }));
    const kinds = ['quote', 'packing-list', 'site-sheet', 'calculation', 'quotation-xml'] as const;
    const bytes = () =>
      kinds.map((kind) => Buffer.from(granted(readPaper(context, { quoteId: quote.id, kind })).bytes));
    const before = bytes();
    expect(readPdf(before[0] ?? Buffer.alloc(0)).text.replace(/\s+/g, ' ')).toContain(
      'Rates and charges are those that hold on 16 March 2026, the first day of hire.',
    );
    const isCurrent = () => {
      const state = granted(planState(context, enquiryId));
      return state.kind === 'ready' && state.current;
    };
    expect(isCurrent()).toBe(true);
    const used = granted(openModel(context, { number: 'D-112', system: 'si' }));
    const rates = { day_minor: 1, week_minor: 1, four_weeks_minor: 1, minimum_days: 1, note: '' };
    granted(putRateCards(context, { cards: [{ number: 'D-112', starts_on: '2026-04-01', ...rates }], action: 'x' }));
    expect(isCurrent()).toBe(true);
    granted(putRateCards(context, { cards: [{ number: 'D-112', starts_on: STARTS, ...rates }], action: 'x' }));
    expect(isCurrent()).toBe(false);
    granted(retireModel(context, { number: 'D-112', version: used.version }));
    const { rules, version, prices } = record(context);
    granted(saveHouseRules(context, { version, rules: [...rules, NO_BATTERY] }));
    granted(
      saveHousePrices(context, { starts_on: STARTS, note: '', held: { ...prices[0]?.held, labour_minor_per_hour: 1 } }),
    );
    expect(isCurrent()).toBe(false);
    for (const [index, after] of bytes().entries()) expect(after.equals(before[index] ?? Buffer.alloc(0))).toBe(true);
  });

  it('goes out of date by a rule alone', async () => {
    const context = await demoHouseContext('administrator');
    const enquiryId = await oneValve(context);
    const { rules, version } = record(context);
    granted(saveHouseRules(context, { version, rules: [...rules, NO_BATTERY] }));
    expect(granted(planState(context, enquiryId))).toMatchObject({ kind: 'ready', current: false });
  });
});
