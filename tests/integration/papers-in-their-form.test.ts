import { describe, expect, it } from 'vitest';
import type { Context } from '#lib/services/context.ts';
import { openCustomer } from '#lib/services/customers/open-customer.ts';
import { changeCustomer } from '#lib/services/customers/save-customer.ts';
import { openEnquiry } from '#lib/services/enquiries/open-enquiry.ts';
import { awaitPlan, startPlan } from '#lib/services/plans/plan-enquiry.ts';
import { drawQuote } from '#lib/services/quotes/draw-quote.ts';
import { gatherPapers } from '#lib/services/quotes/enquiry-papers.ts';
import { issueQuote } from '#lib/services/quotes/issue-quote.ts';
import { PAPER_KINDS, type PapersInput, paperOf } from '#lib/services/quotes/papers-of.ts';
import { redrawQuote } from '#lib/services/quotes/redraw-quote.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';

const ENQUIRY = 7;

function writesAs(context: Context, facts: Readonly<Record<string, string | null>>): void {
  const customerId = granted(openEnquiry(context, ENQUIRY)).customer.id;
  const { version } = granted(openCustomer(context, customerId));
  granted(changeCustomer(context, { customerId, version, facts }));
}

function drafts(context: Context): PapersInput {
  return granted(gatherPapers(context, { enquiryId: ENQUIRY, number: 'Draft' }));
}

async function fileOf(papers: PapersInput, kind: string): Promise<string> {
  return (await drawQuote(papers)).find((drawn) => drawn.kind === kind)?.bytes.toString('utf8') ?? '';
}

describe('papers in the customer’s form', () => {
  it('say the same days and figures, written as the customer does, and are frozen with it', async () => {
    const context = await demoHouseContext();
    granted(startPlan(context, ENQUIRY));
    granted(await awaitPlan(context, ENQUIRY));
    const before = drafts(context);
    expect(before).not.toHaveProperty('forms');
    const first = granted(await issueQuote(context, { enquiryId: ENQUIRY }));

    writesAs(context, { date_format: '02.03.2026', number_format: '1.234,5' });
    const papers = drafts(context);
    expect(papers.forms).toEqual({ dates: 'day-month-year', numbers: 'point-comma', commas: 'rewritten' });
    let changed = 0;
    for (const kind of PAPER_KINDS) {
      const [was, is] = [before, papers].map((input) => JSON.stringify(paperOf(kind, input)));
      expect(is).not.toMatch(/\d{1,2} (January|February|March|April|May|June|July|August|September|October) \d{4}/);
      // A point before three digits parts thousands in this form.
      expect(is).not.toMatch(/\d\.(?!\d{3} )\d+ (N·m|kN|mm|kg|turns|%)/);
      expect(is).not.toMatch(/\d,\d{3} (N·m|mm)/);
      expect(is).toMatch(/\d,\d/);
      // Without marks, spaces and days the same digits and words are there, one for one.
      expect(bare(is ?? '')).toBe(bare(was ?? ''));
      changed += [...(is ?? '').matchAll(/\d,\d/g)].length;
    }
    console.info(`${changed} figures written with a comma, none lost`);

    expect(await fileOf(papers, 'mail-text')).toMatch(/EUR \d+,\d{2}; the quote holds until \d\d\.\d\d\.\d{4}\./);
    const csv = await fileOf(papers, 'price-csv');
    expect(csv.split('\r\n')[0]).toContain(';quantity;');
    expect(csv).toMatch(/;\d+,\d{1,2};/);
    expect(await fileOf(papers, 'quotation-xml')).toContain(`<cbc:IssueDate>${papers.issuedOn}</cbc:IssueDate>`);
    expect(await fileOf(papers, 'quotation-xml')).toMatch(/currencyID="EUR">\d+\.\d{2}</);

    const second = granted(await issueQuote(context, { enquiryId: ENQUIRY }));
    writesAs(context, { date_format: null, number_format: null });
    for (const quote of [first, second]) {
      const { papers: again } = granted(await redrawQuote(context, { quoteId: quote.id }));
      expect(again.map(({ answer }) => answer)).toEqual(again.map(() => 'identical'));
    }
  }, 240_000);
});

function bare(json: string): string {
  return json
    .replace(
      /\d{1,2} (January|February|March|April|May|June|July|August|September|October|November|December) \d{4}/g,
      '',
    )
    .replace(/\d{2}\.\d{2}\.\d{4}|\d{4}-\d{2}-\d{2}/g, '')
    .replace(/[., ]/g, '');
}
