import { describe, expect, it } from 'vitest';
import { readTables } from '#lib/intake/read-table.ts';
import { listCustomers } from '#lib/services/customers/list-customers.ts';
import { createEnquiry } from '#lib/services/enquiries/create-enquiry.ts';
import { awaitPlan, startPlan } from '#lib/services/plans/plan-enquiry.ts';
import { readPlanView } from '#lib/services/plans/plan-view.ts';
import { acceptQuote } from '#lib/services/quotes/accept-quote.ts';
import { issueQuote } from '#lib/services/quotes/issue-quote.ts';
import { readPaper } from '#lib/services/quotes/read-paper.ts';
import { editCells } from '#lib/services/schedule/edit-cells.ts';
import { listLines } from '#lib/services/schedule/list-lines.ts';
import { receiveList } from '#lib/services/schedule/receive-list.ts';
import { takeList } from '#lib/services/schedule/take-list.ts';
import { demoHouse } from '#seeds/load.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';
import { textsAt } from '#tests/support/papers/xml-schema.ts';

/** The smallest of the demo enquiries. */
const CONTRACTOR = 7;

const LIST = `tag,type,size,driven by,nut size,depth,qty
V1,gate,DN 100,key cap,,0.9 m,2
V2,gate,150 mm,key cap,,1.1 m,1
V3,air valve,50,,,,1
V4,gate,"DN 80
",key cap,,0.9 m,1
`;

describe('from a list to papers, through the services', () => {
  it('keeps the list, accounts for every row, plans with nothing for the checker to find, and freezes the quote', async () => {
    const context = await demoHouseContext();
    const site = { sources_allowed: ['battery'], crews: 1, days: 3, starts_on: '2026-03-16', mains_voltage: 230 };
    const { id } = granted(createEnquiry(context, { title: 'Test main', customer: { name: 'Test customer' }, site }));
    const received = granted(
      await receiveList(context, { enquiryId: id, fileName: 'list.csv', bytes: new TextEncoder().encode(LIST) }),
    );
    const [table] = received.tables;
    const counts = granted(
      await takeList(context, {
        enquiryId: id,
        fileId: received.fileId,
        table: table?.name ?? '',
        mapping: table?.mapping ?? { headerRow: null, columns: [] },
        existing: 'keep',
      }),
    );
    expect(counts).toMatchObject({ rows: 4, lines: 3, setAside: 1, refused: 0, blank: 0 });

    granted(startPlan(context, id));
    expect(granted(await awaitPlan(context, id))).toMatchObject({ kind: 'ready', current: true });
    const view = granted(readPlanView(context, { enquiryId: id }));
    expect(view?.summaries.map(({ preference }) => preference)).toEqual(['cost', 'pieces', 'time', 'surest']);
    expect(view?.summaries[0]).toMatchObject({ served: 4, asked: 4 });

    expect(view?.summaries[0]?.gap).toBeCloseTo(0, 9);
    expect(view?.price?.notes.join(' ')).toContain("the house's first band is assumed");
    expect(view?.price?.deposit_minor).toBe(Math.round((view?.price?.gross_minor ?? 0) * 0.3));

    const quote = granted(await issueQuote(context, { enquiryId: id }));
    expect(quote).toMatchObject({
      number: 'Q-00001',
      revision: 'A',
      currency: 'EUR',
      total_minor: view?.price?.gross_minor,
    });
    const first = granted(readPaper(context, { quoteId: quote.id, kind: 'quote' }));
    expect(new TextDecoder('latin1').decode(first.bytes.slice(0, 5))).toBe('%PDF-');

    const xml = new TextDecoder().decode(
      granted(readPaper(context, { quoteId: quote.id, kind: 'quotation-xml' })).bytes,
    );
    const due = textsAt(xml, '/*/cac:QuotedMonetaryTotal/cbc:PayableAmount');
    expect(due).toEqual([(quote.total_minor / 100).toFixed(2)]);
    const csv = granted(readPaper(context, { quoteId: quote.id, kind: 'lines-csv' }));
    expect(csv).toMatchObject({ fileName: 'Q-00001-A-lines.csv', mime: 'text/csv; charset=utf-8' });
    expect(granted(await readTables({ bytes: csv.bytes, fileName: csv.fileName }))[0]?.rows).toHaveLength(1 + 3);
    const workbook = granted(readPaper(context, { quoteId: quote.id, kind: 'lines-xlsx' }));
    expect(granted(await readTables({ bytes: workbook.bytes, fileName: 'lines.xlsx' }))[0]?.rows[1]?.cells[0]).toBe(
      'V1',
    );
    const mail = new TextDecoder().decode(granted(readPaper(context, { quoteId: quote.id, kind: 'mail-text' })).bytes);
    expect(mail).toContain('serves 4 of the 4 valves');

    const edited = granted(
      editCells(context, {
        enquiryId: id,
        edits: [
          {
            lineId: granted(listLines(context, { enquiryId: id, from: 0, count: 1 })).lines[0]?.id ?? 0,
            column: 'size',
            text: 'DN 200',
          },
        ],
      }),
    );
    expect(edited.undo[0]?.text).toBe('DN 100');
    expect(await issueQuote(context, { enquiryId: id })).toMatchObject({
      ok: false,
      reason: { code: 'plan-not-current' },
    });
    expect(granted(readPaper(context, { quoteId: quote.id, kind: 'quote' })).bytes).toEqual(first.bytes);
  });

  it('holds the units of an accepted quote once, however often it is pressed', async () => {
    const context = await demoHouseContext();
    granted(startPlan(context, CONTRACTOR));
    granted(await awaitPlan(context, CONTRACTOR));
    const quote = granted(await issueQuote(context, { enquiryId: CONTRACTOR }));
    const held = granted(acceptQuote(context, { quoteId: quote.id }));
    expect(held.serials.length).toBeGreaterThan(3);
    expect(new Set(held.serials).size).toBe(held.serials.length);
    expect(granted(acceptQuote(context, { quoteId: quote.id }))).toEqual(held);
    const rows = context.database.raw.prepare('SELECT count(*) AS n FROM booking_unit').get();
    expect(rows).toEqual({ n: held.serials.length });
  });
});

describe('the terms agreed with a customer', () => {
  it('set the delivery band and spare an account holder the deposit', async () => {
    const context = await demoHouseContext();
    const refinery = granted(listCustomers(context)).find(({ code }) => code === 'C-1018');
    const site = { sources_allowed: ['battery'], crews: 1, days: 1, starts_on: '2026-03-16' };
    const customer = { id: refinery?.id ?? 0 };
    const { id } = granted(createEnquiry(context, { title: 'One valve', customer, site }));
    const bytes = new TextEncoder().encode('tag,type,size,driven by,depth\nV1,gate,DN 100,key cap,0.9 m\n');
    const { fileId, tables } = granted(await receiveList(context, { enquiryId: id, fileName: 'one.csv', bytes }));
    const [table] = tables;
    const mapping = table?.mapping ?? { headerRow: null, columns: [] };
    granted(await takeList(context, { enquiryId: id, fileId, table: table?.name ?? '', mapping, existing: 'keep' }));
    granted(startPlan(context, id));
    granted(await awaitPlan(context, id));
    const price = granted(readPlanView(context, { enquiryId: id }))?.price;
    const band = demoHouse().deliveryBands.find((one) => one.id === 'far');
    expect(price?.lines.find(({ kind }) => kind === 'delivery')?.net_minor).toBe(band?.delivery_minor);
    expect(price?.deposit_minor).toBe(0);
    expect(price?.notes.join(' ')).not.toContain('assumed');
  });
});

describe('an edit that cannot be read', () => {
  it('keeps the text and says what is wrong', async () => {
    const context = await demoHouseContext();
    const [line] = granted(listLines(context, { enquiryId: 1, from: 0, count: 1 })).lines;
    const edited = granted(
      editCells(context, { enquiryId: 1, edits: [{ lineId: line?.id ?? 0, column: 'size', text: 'purple' }] }),
    );
    expect(edited.lines[0]?.cells.size).toBe('purple');
    expect(edited.lines[0]?.problems.some(({ column }) => column === 'size')).toBe(true);
  });
});
