import { describe, expect, it } from 'vitest';
import type { Context } from '#lib/services/context.ts';
import { changeEnquiry } from '#lib/services/enquiries/change-enquiry.ts';
import { openEnquiry } from '#lib/services/enquiries/open-enquiry.ts';
import { openLine } from '#lib/services/lines/open-line.ts';
import { awaitPlan, startPlan } from '#lib/services/plans/plan-enquiry.ts';
import { gatherPapers } from '#lib/services/quotes/enquiry-papers.ts';
import { issueQuote } from '#lib/services/quotes/issue-quote.ts';
import { paperOf } from '#lib/services/quotes/papers-of.ts';
import { readPaper } from '#lib/services/quotes/read-paper.ts';
import { editCells } from '#lib/services/schedule/edit-cells.ts';
import { listLines } from '#lib/services/schedule/list-lines.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';
import { readPdf } from '#tests/support/papers/read-pdf.ts';

/** The smallest of the demo enquiries. */
const CONTRACTOR = 7;

/** The draft before it is drawn. */
function siteSheet(context: Context): string {
  return JSON.stringify(
    paperOf('site-sheet', granted(gatherPapers(context, { enquiryId: CONTRACTOR, number: 'Draft' }))),
  );
}

describe('units', () => {
  it('on papers are chosen for an enquiry, leave its plan current, and are frozen in what is issued', async () => {
    const context = await demoHouseContext();
    const enquiryId = CONTRACTOR;
    granted(startPlan(context, enquiryId));
    granted(await awaitPlan(context, enquiryId));
    expect(granted(openEnquiry(context, enquiryId)).paperUnits).toBe('si');
    const si = siteSheet(context);
    expect(si).not.toContain('lbf·ft');

    granted(changeEnquiry(context, { enquiryId, paper_units: 'us' }));
    expect(granted(openEnquiry(context, enquiryId))).toMatchObject({ paperUnits: 'us', plan: { current: true } });
    const quote = granted(await issueQuote(context, { enquiryId }));
    const issued = granted(readPaper(context, { quoteId: quote.id, kind: 'site-sheet' }));
    expect(readPdf(issued.bytes).text).toContain('lbf·ft');

    granted(changeEnquiry(context, { enquiryId, paper_units: 'si' }));
    const kept = granted(readPaper(context, { quoteId: quote.id, kind: 'site-sheet' }));
    expect(Buffer.compare(Buffer.from(kept.bytes), Buffer.from(issued.bytes))).toBe(0);
    expect(siteSheet(context)).toBe(si);
  }, 180_000);

  it('letter the pictures of a line without touching what is worked out, and an untouched cell saves the same bits', async () => {
    const context = await demoHouseContext();
    const listed = granted(listLines(context, { enquiryId: CONTRACTOR, from: 0, count: 200 })).lines;
    const [first] = listed;
    expect(first).toBeDefined();
    if (first === undefined) return;
    const key = { enquiryId: CONTRACTOR, lineId: first.id };
    const before = granted(openLine(context, key));
    const us = granted(openLine(context, { ...key, system: 'us' }));
    expect(JSON.stringify(us.ladder)).toContain('lbf·ft');
    expect(JSON.stringify(us.ladder)).not.toMatch(/\d.N·m/);
    expect(us.duty).toEqual(before.duty);

    const edits = listed.flatMap((line) =>
      Object.entries(line.cells).map(([column, text]) => ({ lineId: line.id, column, text: text ?? '' })),
    );
    const duties = JSON.stringify(listed.map(({ duty }) => duty));
    granted(editCells(context, { enquiryId: CONTRACTOR, edits }));
    const after = granted(listLines(context, { enquiryId: CONTRACTOR, from: 0, count: 200 })).lines;
    expect(JSON.stringify(after.map(({ duty }) => duty))).toBe(duties);
    console.info(`${edits.length} untouched cells saved again`);
    expect(edits.length).toBeGreaterThan(20);
  });
});
