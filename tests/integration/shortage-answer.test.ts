import { describe, expect, it } from 'vitest';
import type { Context } from '#lib/services/context.ts';
import { shortAhead } from '#lib/services/house/home-shortages.ts';
import { readPlan } from '#lib/services/plans/plan-enquiry.ts';
import { shortageAnswer } from '#lib/services/stock/shortage-answer.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';
import { planOneValve } from '#tests/support/houses/one-valve.ts';

const STARTS = '2026-03-16';

async function planned() {
  const context = await demoHouseContext();
  const site = { sources_allowed: ['battery'], crews: 1, days: 2, starts_on: STARTS };
  const id = await planOneValve(context, { site });
  const outcome = readPlan(context, id)?.plans[0];
  const items = (outcome?.kits ?? []).flatMap((kit) => kit.items).map(({ item }) => item);
  return { context, enquiryId: id, items };
}

/** Everything of a model that stands ready is booked by somebody else over the days. */
function takeAll(context: Context, { model, state }: { readonly model: string; readonly state: 'held' | 'out' }): void {
  const { raw } = context.database;
  raw.exec("INSERT INTO booking (id, number, state, depot) VALUES (900, 'B-00900', 'confirmed', 'VEN')");
  const insert = raw.prepare(
    `INSERT INTO booking_unit (booking_id, unit_serial, starts_on, ends_before, free_again_on, state)
     VALUES (900, ?, '2026-03-15', '2026-03-20', '2026-03-21', ?)`,
  );
  for (const serial of raw.prepare('SELECT serial FROM unit WHERE model_number = ?').pluck().all(model))
    insert.run(serial, state);
}

describe('the answer to a shortage', () => {
  it('names who could wait and from when, and what could stand in by the same rules', async () => {
    const { context, enquiryId, items } = await planned();
    const asked = { enquiryId, preference: 'cost' } as const;
    expect(granted(shortageAnswer(context, asked)).short).toEqual([]);
    const drive = items.find((item) => item.startsWith('D-')) ?? '';
    takeAll(context, { model: drive, state: 'held' });
    const { short } = granted(shortageAnswer(context, asked));
    expect(short.map(({ model }) => model)).toEqual([drive]);
    const [answer] = short;
    expect(answer?.waiters).toMatchObject([{ number: 'B-00900', startsOn: '2026-03-15' }]);
    expect((answer?.waiters[0]?.couldStartOn ?? '') > '2026-03-18').toBe(true);
    expect(answer?.standIns.length).toBeGreaterThan(0);
    expect(answer?.standIns.every(({ model, free }) => model.startsWith('D-') && model !== drive && free > 0)).toBe(
      true,
    );
    // The home page says the same in a sentence.
    const home = shortAhead(context).find((entry) => entry.enquiryId === enquiryId);
    expect(home?.sentences.join(' ')).toContain('Booking B-00900 would free');
    // With that booking out of the way nothing is short any more, as the answer promised.
    context.database.raw.exec("UPDATE booking_unit SET state = 'released'");
    expect(granted(shortageAnswer(context, asked)).short).toEqual([]);
  });

  it('names nobody whose equipment has left', async () => {
    const { context, enquiryId, items } = await planned();
    takeAll(context, { model: items.find((item) => item.startsWith('D-')) ?? '', state: 'out' });
    const { short } = granted(shortageAnswer(context, { enquiryId, preference: 'cost' }));
    expect(short.length).toBe(1);
    expect(short[0]?.waiters).toEqual([]);
  });

  it.each(['yard', 'contractor'] as const)('is not for a %s, who reads no enquiries', async (role) => {
    const context = await demoHouseContext(role);
    expect(shortageAnswer(context, { enquiryId: 1, preference: 'cost' })).toMatchObject({
      reason: { code: 'not-allowed' },
    });
  });
});
