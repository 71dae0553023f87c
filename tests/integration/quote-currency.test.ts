import { describe, expect, it } from 'vitest';
import { NO_CHOICES } from '#lib/contracts/price-choices.ts';
import type { Context } from '#lib/services/context.ts';
import { openCustomer } from '#lib/services/customers/open-customer.ts';
import { changeCustomer } from '#lib/services/customers/save-customer.ts';
import { openEnquiry } from '#lib/services/enquiries/open-enquiry.ts';
import { awaitPlan, startPlan } from '#lib/services/plans/plan-enquiry.ts';
import { readPlanView } from '#lib/services/plans/plan-view.ts';
import { changePrice } from '#lib/services/quotes/change-price.ts';
import { issueQuote } from '#lib/services/quotes/issue-quote.ts';
import { readPriceView } from '#lib/services/quotes/price-view.ts';
import { readPaper } from '#lib/services/quotes/read-paper.ts';
import { redrawQuote } from '#lib/services/quotes/redraw-quote.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';
import { readPdf } from '#tests/support/papers/read-pdf.ts';
import { textsAt } from '#tests/support/papers/xml-schema.ts';

const ENQUIRY = 7;

function asksFor(context: Context, currency: string | null): void {
  const customerId = granted(openEnquiry(context, ENQUIRY)).customer.id;
  const { version } = granted(openCustomer(context, customerId));
  granted(changeCustomer(context, { customerId, version, facts: { currency } }));
}

function keepRate(context: Context, currency: string, rate: number): void {
  context.database.raw
    .prepare("UPDATE house SET facts_json = json_set(facts_json, '$.exchange', json(?))")
    .run(JSON.stringify([{ currency, rate }]));
}

const view = (context: Context) => granted(readPriceView(context, { enquiryId: ENQUIRY, slot: 0 }));

describe('a customer who asks for another currency', () => {
  it('is quoted in it at the house’s rate, line by line, in every file, and frozen so', async () => {
    const context = await demoHouseContext();
    granted(startPlan(context, ENQUIRY));
    granted(await awaitPlan(context, ENQUIRY));
    const line = { id: 'a', kind: 'training', text: 'Instruction', quantity: 1, unit: 'hour', unit_minor: 8000 };
    const choices = { ...NO_CHOICES, lines: [{ ...line, per: 'once', tax: 'S' }] };
    granted(changePrice(context, { enquiryId: ENQUIRY, slot: 0, version: 0, choices }));
    const euro = view(context).shown;

    context.database.raw.exec("UPDATE house SET facts_json = json_remove(facts_json, '$.exchange')");
    asksFor(context, 'USD');
    expect(view(context)).toMatchObject({ currency: 'EUR' });
    expect(view(context).shown.warnings[0]).toContain('keeps no exchange rate for it on 16 March 2026');

    keepRate(context, 'USD', 1.25);
    const { currency, shown } = view(context);
    expect(currency).toBe('USD');
    expect(shown.warnings).toEqual([]);
    expect(shown.choices).toMatchObject({ currency: 'USD', lines: [{ unit_minor: 10_000 }] });
    expect(shown.price?.currency).toBe('USD');
    expect(shown.price?.notes.at(-1)).toContain('1 EUR is 1.25 USD');
    const hire = (of: typeof euro) => of.price?.lines.filter(({ kind }) => kind === 'hire') ?? [];
    // Rates are turned over first: the sums agree to a cent a rate.
    const [before, after] = [euro, shown].map((of) => hire(of).reduce((sum, { net_minor }) => sum + net_minor, 0));
    expect(Math.abs((after ?? 0) - (before ?? 0) * 1.25)).toBeLessThan(hire(shown).length * 5);
    const plans = granted(readPlanView(context, { enquiryId: ENQUIRY }));
    expect(plans).toMatchObject({ currency: 'EUR', priceCurrency: 'USD', state: { current: true } });

    const quote = granted(await issueQuote(context, { enquiryId: ENQUIRY }));
    expect(quote.currency).toBe('USD');
    const bytes = (kind: string) => granted(readPaper(context, { quoteId: quote.id, kind })).bytes;
    const xml = Buffer.from(bytes('quotation-xml')).toString();
    expect(textsAt(xml, '//cbc:PricingCurrencyCode')).toEqual(['USD']);
    expect(new Set([...xml.matchAll(/currencyID="([A-Z]+)"/g)].map(([, code]) => code))).toEqual(new Set(['USD']));
    const net = textsAt(xml, '//cac:QuotationLine/cac:LineItem/cbc:LineExtensionAmount').map(Number);
    expect(Math.round(net.reduce((sum, one) => sum + one, 0) * 100)).toBe(shown.price?.net_minor);
    expect(readPdf(bytes('quote')).text).toContain('1 EUR is 1.25 USD');

    keepRate(context, 'USD', 2);
    const { papers } = granted(await redrawQuote(context, { quoteId: quote.id }));
    expect(papers.map(({ answer }) => answer)).toEqual(papers.map(() => 'identical'));
  }, 240_000);

  it('amounts typed in one currency come back as they were, and are told apart where no rate is kept any more', async () => {
    const context = await demoHouseContext();
    keepRate(context, 'JPY', 160);
    asksFor(context, 'JPY');
    const line = { id: 'a', kind: 'training', text: 'Instruction', quantity: 1, unit: 'hour', unit_minor: 12_800 };
    const choices = { ...NO_CHOICES, lines: [{ ...line, per: 'once', tax: 'S' }] };
    granted(changePrice(context, { enquiryId: ENQUIRY, slot: 0, version: 0, choices }));
    expect(view(context).shown.choices.lines[0]?.unit_minor).toBe(12_800);
    asksFor(context, null);
    expect(view(context)).toMatchObject({ currency: 'EUR', shown: { choices: { currency: null } } });
    expect(view(context).shown.choices.lines[0]?.unit_minor).toBe(8000);
    keepRate(context, 'USD', 1.25);
    const without = readPriceView(context, { enquiryId: ENQUIRY, slot: 0 });
    expect(without).toMatchObject({ ok: false, reason: { code: 'no-exchange-rate' } });
  });
});
