import { describe, expect, it } from 'vitest';
import { NO_CHOICES } from '#lib/contracts/price-choices.ts';
import type { Context } from '#lib/services/context.ts';
import { openCustomer } from '#lib/services/customers/open-customer.ts';
import { changeCustomer } from '#lib/services/customers/save-customer.ts';
import { createEnquiry } from '#lib/services/enquiries/create-enquiry.ts';
import { openEnquiry } from '#lib/services/enquiries/open-enquiry.ts';
import { awaitPlan, startPlan } from '#lib/services/plans/plan-enquiry.ts';
import { readPlanView } from '#lib/services/plans/plan-view.ts';
import { addOption, changePrice } from '#lib/services/quotes/change-price.ts';
import { draftPaper } from '#lib/services/quotes/draft-paper.ts';
import { readPriceView } from '#lib/services/quotes/price-view.ts';
import { receiveList } from '#lib/services/schedule/receive-list.ts';
import { takeList } from '#lib/services/schedule/take-list.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';
import { readPdf } from '#tests/support/papers/read-pdf.ts';

/** One valve that equipment fits, and three that nothing in the house turns. */
const LIST =
  'tag,qty,type,size,driven by,depth,torque\nV1,1,gate,DN 100,key cap,0.9 m,\nV2,3,gate,DN 100,key cap,0.9 m,90000 Nm\n';

async function planned(): Promise<{ readonly context: Context; readonly enquiryId: number }> {
  const context = await demoHouseContext();
  const site = { sources_allowed: ['battery', 'air'], crews: 1, days: 2, starts_on: '2026-03-16' };
  const { id } = granted(createEnquiry(context, { title: 'Two kinds', customer: { name: 'Test customer' }, site }));
  const bytes = new TextEncoder().encode(LIST);
  const { fileId, tables } = granted(await receiveList(context, { enquiryId: id, fileName: 'two.csv', bytes }));
  const [table] = tables;
  const mapping = table?.mapping ?? { headerRow: null, columns: [] };
  granted(await takeList(context, { enquiryId: id, fileId, table: table?.name ?? '', mapping, existing: 'keep' }));
  granted(startPlan(context, id));
  granted(await awaitPlan(context, id));
  return { context, enquiryId: id };
}

describe('the price on screen', () => {
  it('counts the same valves as the table of plans, those too that nothing fits', async () => {
    const { context, enquiryId } = await planned();
    const plans = granted(readPlanView(context, { enquiryId }));
    const price = granted(readPriceView(context, { enquiryId, slot: 0 }));
    expect(plans?.fittingNothing).toBe(3);
    expect(plans?.summaries.map(({ served, asked }) => [served, asked])).toEqual(plans?.summaries.map(() => [1, 4]));
    expect(price.options[0]?.figures).toMatchObject({ served: 1, asked: 4 });
  });

  it('offers the discount that the customer’s terms promise, under the same limit as any other', async () => {
    const { context, enquiryId } = await planned();
    const agreed = () => granted(readPriceView(context, { enquiryId, slot: 0 })).agreed;
    expect(agreed()).toBeNull();
    const customerId = granted(openEnquiry(context, enquiryId)).customer.id;
    const { version } = granted(openCustomer(context, customerId));
    granted(changeCustomer(context, { customerId, version, facts: { discount_percent: 12.5 } }));
    expect(agreed()).toEqual({ customer: 'Test customer', percent: 12.5 });

    const { shown } = granted(readPriceView(context, { enquiryId, slot: 0 }));
    const discounts = { groups: [], whole: { percent: 12.5, reason: 'as agreed in your terms' } };
    const change = { enquiryId, slot: shown.slot, version: shown.version, choices: { ...NO_CHOICES, discounts } };
    granted(changePrice(context, change));
    const given = granted(readPriceView(context, { enquiryId, slot: 0 }));
    expect(given.shown.discount?.standing.kind).toBe('to ask');
    expect(given.options[0]?.hindrance).not.toBe('');
  });

  it('drafts the papers of every option, and refuses those of one that is not there', async () => {
    const { context, enquiryId } = await planned();
    const plan = { crews: 2, days: 1, sources_allowed: ['battery'], preference: 'time', constraints: {} };
    const { slot } = granted(addOption(context, { enquiryId, choices: { name: 'Two crews', plan } }));
    granted(startPlan(context, { enquiryId, slot }));
    granted(await awaitPlan(context, { enquiryId, slot }));
    const text = async (kind: string) => readPdf(granted(await draftPaper(context, { enquiryId, kind })).bytes).text;
    for (const kind of ['packing-list', 'site-sheet', 'calculation']) {
      expect(await text(kind)).toContain('option 1');
      expect(await text(`${kind}-option-2`)).toContain('option 2');
    }
    for (const kind of ['site-sheet-option-3', 'site-sheet-option-x', 'quote-option-2'])
      expect(await draftPaper(context, { enquiryId, kind })).toMatchObject({
        ok: false,
        reason: { code: 'no-such-option' },
      });
  });
});
