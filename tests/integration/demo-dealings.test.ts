import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openDatabase } from '#db/client.ts';
import { carryOutDemoDealings } from '#lib/services/house/demo-dealings.ts';
import { openHome } from '#lib/services/house/open-home.ts';
import { openHouseFigures } from '#lib/services/house/open-house-figures.ts';
import { prepareHouse } from '#lib/services/house/prepare-house.ts';
import { granted } from '#tests/support/granted.ts';

const LOADED = new Date('2026-03-02T08:00:00Z');

describe('the demo house on its first day', () => {
  it('has an answer that is due, a quote about to lapse, a hire that is out and one that is late, each made by the house’s own verbs', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'kitwright-'));
    const databasePath = join(folder, 'house.sqlite');
    try {
      expect(await prepareHouse({ databasePath, now: LOADED })).toBe('loaded');
      await carryOutDemoDealings({ databasePath, now: LOADED });
      expect(await prepareHouse({ databasePath, now: LOADED })).toBe('there');
      const database = openDatabase(databasePath);
      const context = { database, now: () => LOADED, actor: { id: 'x', name: 'Desk', role: 'desk' } } as const;
      const home = granted(openHome(context));
      expect(home.due).toMatchObject([{ title: 'Two sluices before the regatta', inDays: 1 }]);
      expect(home.lapsing).toMatchObject([{ quote: 'Q-00003 A', inDays: 3 }]);
      expect(home.late).toMatchObject([{ title: 'Spring flush at Tollgate', booking: 'B-00001' }]);
      expect(home.short).toEqual([]);
      const out = database.raw.prepare("SELECT unit_serial FROM booking_unit WHERE state = 'out'").pluck().all();
      expect(out.length).toBeGreaterThan(8);
      expect(new Set(out).size, 'no unit is out twice').toBe(out.length);
      const counted = database.raw.prepare('SELECT DISTINCT state FROM booking_item').pluck().all();
      expect(counted, 'what is counted left with the units').toEqual(['out']);
      const left = database.raw.prepare("SELECT count(*) FROM delivery WHERE state = 'left'").pluck().get();
      expect(left, 'each hire that is out left with a delivery').toBe(
        database.raw.prepare("SELECT count(*) FROM booking WHERE state = 'out'").pluck().get(),
      );
      const { income } = granted(openHouseFigures(context, { days: 90, depot: '' }));
      expect(income.months.filter(({ quotes }) => quotes > 0).length).toBeGreaterThan(0);
      database.raw.close();
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  }, 120_000);
});
