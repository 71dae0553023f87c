import { describe, expect, it } from 'vitest';
import { rangeOfDays } from '#lib/kernel/date-range.ts';
import type { Context } from '#lib/services/context.ts';
import { freePieces } from '#lib/services/house/house-facts.ts';
import { closeStocktake } from '#lib/services/stock/close-stocktake.ts';
import {
  giveUpStocktake,
  listHouseStocktakes,
  openStocktake,
  viewStocktake,
} from '#lib/services/stock/open-stocktake.ts';
import { openUnit } from '#lib/services/stock/open-unit.ts';
import { countStocktake, scanStocktake, unscanStocktake } from '#lib/services/stock/scan-stocktake.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext, HOUSE_DAY } from '#tests/support/houses/demo-house.ts';

const code = (result: { readonly ok: boolean; readonly reason?: { readonly code: string } }) =>
  'reason' in result ? result.reason?.code : 'granted';

function serialsAt(
  context: Context,
  { depot, bay }: { readonly depot: string; readonly bay: string },
): readonly string[] {
  return context.database.raw
    .prepare("SELECT serial FROM unit WHERE depot = ? AND bay = ? AND state <> 'lost' ORDER BY serial")
    .pluck()
    .all(depot, bay)
    .map(String);
}

/** A bay of the first depot with at least three units. */
function fullBay(context: Context): string {
  return String(
    context.database.raw
      .prepare("SELECT bay FROM unit WHERE depot = 'VEN' GROUP BY bay HAVING count(*) >= 3 ORDER BY bay LIMIT 1")
      .pluck()
      .get(),
  );
}

describe('a stocktake of a bay', () => {
  it('finds what is there, moves what stands wrong, leaves what is missing, and changes nothing before it is closed', async () => {
    const context = await demoHouseContext('yard');
    const bay = fullBay(context);
    const here = serialsAt(context, { depot: 'VEN', bay });
    const [missing = '', ...found] = here;
    const stray = String(
      context.database.raw.prepare("SELECT serial FROM unit WHERE depot = 'HAL' LIMIT 1").pluck().get(),
    );
    const { number } = granted(openStocktake(context, { depot: 'VEN', bay: bay.toLowerCase() }));
    const scan = (text: string) => scanStocktake(context, { number, code: text, bay: '' });
    for (const serial of found) expect(granted(scan(serial)), serial).toMatchObject({ kind: 'unit', tone: 'good' });
    expect(granted(scan(`]C0${stray.toLowerCase()}\r`))).toMatchObject({
      kind: 'unit',
      serial: stray,
      tone: 'warning',
    });
    const view = granted(viewStocktake(context, number));
    expect(view.findings.missing.map(({ serial }) => serial)).toEqual([missing]);
    expect(view.findings.misplaced.map(({ serial }) => serial)).toEqual([stray]);
    expect(granted(openUnit(context, stray)).unit.depot).toBe('HAL');
    const outcome = granted(closeStocktake(context, { number, lost: [] }));
    expect(outcome).toMatchObject({ inPlace: found.length, moved: 1, lost: [], left: [missing] });
    expect(granted(openUnit(context, stray)).unit).toMatchObject({ depot: 'VEN', bay });
    expect(granted(openUnit(context, missing)).unit.state).not.toBe('lost');
    expect(granted(openUnit(context, missing)).history[0]).toMatchObject({
      kind: 'missing',
      after: '',
      reference: number,
    });
    expect(granted(openUnit(context, found[0] ?? '')).history[0]).toMatchObject({ kind: 'found', reference: number });
    expect(code(scan(stray))).toBe('stocktake-ended');
    expect(granted(viewStocktake(context, number)).stocktake.state).toBe('closed');
  });

  it('gives up what is missing with a reason, and what was lost and stands there waits in quarantine', async () => {
    const context = await demoHouseContext('yard');
    const bay = fullBay(context);
    const [first = '', second = ''] = serialsAt(context, { depot: 'VEN', bay });
    context.database.raw.prepare("UPDATE unit SET state = 'lost', bay = 'G18' WHERE serial = ?").run(second);
    const { number } = granted(openStocktake(context, { depot: 'VEN', bay }));
    expect(granted(scanStocktake(context, { number, code: second, bay }))).toMatchObject({ tone: 'warning' });
    expect(code(closeStocktake(context, { number, lost: [{ serial: first, reason: ' ' }] }))).toBe('reason-missing');
    expect(code(closeStocktake(context, { number, lost: [{ serial: second, reason: 'x' }] }))).toBe('not-missing');
    const outcome = granted(
      closeStocktake(context, { number, lost: [{ serial: first, reason: 'not seen since March' }] }),
    );
    expect(outcome).toMatchObject({ lost: [first], foundAgain: [second] });
    expect(granted(openUnit(context, first))).toMatchObject({
      unit: { state: 'lost' },
      history: [{ kind: 'missing', after: 'lost', reason: 'not seen since March' }, {}],
    });
    expect(granted(openUnit(context, second)).unit).toMatchObject({ state: 'quarantine', bay });
  });

  it('keeps out what does not belong: another bay, a case, nonsense, a unit nobody knows', async () => {
    const context = await demoHouseContext('yard');
    const bay = fullBay(context);
    const { number } = granted(openStocktake(context, { depot: 'VEN', bay }));
    const scan = (text: string) => code(scanStocktake(context, { number, code: text, bay: '' }));
    expect(scan(`BAY:VEN/${bay}`)).toBe('granted');
    expect(scan('BAY:VEN/Q01')).toBe('bay-outside');
    expect(scan('BAY:HAL/A01')).toBe('bay-outside');
    expect(scan('CASE:B-00001/1')).toBe('scan-not-here');
    expect(scan('hello')).toBe('scan-unreadable');
    expect(scan('NO-SUCH-1')).toBe('no-such-unit');
    expect(scan('MODEL:D-112')).toBe('model-has-units');
    expect(code(viewStocktake(context, 'ST-9'))).toBe('no-such-stocktake');
    expect(code(scanStocktake(context, { number: 'ST-9', code: 'A-1', bay: '' }))).toBe('no-such-stocktake');
    expect(code(openStocktake(context, { depot: 'VEN', bay: '' }))).toBe('stocktake-open');
    expect(code(openStocktake(context, { depot: 'HAL', bay: 'Q01' }))).toBe('no-such-bay');
    granted(giveUpStocktake(context, number));
    expect(code(giveUpStocktake(context, number))).toBe('stocktake-ended');
    expect(granted(listHouseStocktakes(context)).rows).toMatchObject([{ number, state: 'given up' }]);
  });
});

describe('a stocktake of a depot', () => {
  it('asks for the bay first, goes on after an interruption, and a scan can be taken back', async () => {
    const context = await demoHouseContext('yard');
    const bay = fullBay(context);
    const [serial = ''] = serialsAt(context, { depot: 'VEN', bay });
    const { number } = granted(openStocktake(context, { depot: 'VEN', bay: '' }));
    expect(code(scanStocktake(context, { number, code: serial, bay: '' }))).toBe('bay-first');
    granted(scanStocktake(context, { number, code: serial, bay }));
    granted(scanStocktake(context, { number, code: serial, bay }));
    // Somebody else, or the same person after the tablet fell into a puddle, opens it again: the scan is there.
    expect(granted(viewStocktake(context, number)).scanned).toMatchObject([{ serial, bay }]);
    granted(unscanStocktake(context, { number, serial }));
    expect(code(unscanStocktake(context, { number, serial }))).toBe('not-scanned');
    expect(granted(viewStocktake(context, number)).scanned).toEqual([]);
  });

  it('counts pieces by number and writes what was counted when it is closed; what nobody counted stays', async () => {
    const context = await demoHouseContext('yard');
    const { number } = granted(openStocktake(context, { depot: 'VEN', bay: '' }));
    expect(granted(scanStocktake(context, { number, code: 'model:s-303', bay: '' }))).toMatchObject({
      kind: 'count',
      model: 'S-303',
    });
    expect(granted(scanStocktake(context, { number, code: 's-303', bay: '' }))).toMatchObject({
      kind: 'count',
      model: 'S-303',
    });
    granted(countStocktake(context, { number, model: 'S-303', count: 31 }));
    granted(countStocktake(context, { number, model: 'S-303', count: 33 }));
    const free = () => freePieces(context, { window: rangeOfDays(HOUSE_DAY, 1) })['S-303'];
    expect(free()).toBe(60);
    const outcome = granted(closeStocktake(context, { number, lost: [] }));
    expect(outcome.counted).toEqual([{ model: 'S-303', before: 40, after: 33 }]);
    expect(free()).toBe(53);
    expect(code(countStocktake(context, { number, model: 'S-303', count: 1 }))).toBe('stocktake-ended');
    expect(code(countStocktake(context, { number, model: 'D-112', count: 1 }))).toBe('model-has-units');
  });
});

describe('who may take stock', () => {
  it.each(['desk', 'contractor'] as const)('not a %s', async (role) => {
    const context = await demoHouseContext(role);
    const tries = [
      openStocktake(context, { depot: 'VEN', bay: '' }),
      giveUpStocktake(context, 'ST-1'),
      scanStocktake(context, { number: 'ST-1', code: 'A-1', bay: '' }),
      countStocktake(context, { number: 'ST-1', model: 'S-303', count: 1 }),
      unscanStocktake(context, { number: 'ST-1', serial: 'A-1' }),
      closeStocktake(context, { number: 'ST-1', lost: [] }),
    ];
    expect(tries.map(code)).toEqual(tries.map(() => 'not-allowed'));
    const reads = [listHouseStocktakes(context), viewStocktake(context, 'ST-1')].map(code);
    expect(reads).toEqual(role === 'desk' ? ['granted', 'no-such-stocktake'] : ['not-allowed', 'not-allowed']);
  });
});
