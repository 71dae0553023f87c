import { describe, expect, it } from 'vitest';
import { USER_ROLES } from '#lib/services/context.ts';
import { changeEnquiry } from '#lib/services/enquiries/change-enquiry.ts';
import { createEnquiry } from '#lib/services/enquiries/create-enquiry.ts';
import { EVERY_ENQUIRY, findEnquiries } from '#lib/services/enquiries/find-enquiries.ts';
import { listModelsView } from '#lib/services/equipment/list-models-view.ts';
import { fieldGuide, fieldHelp } from '#lib/services/lines/field-guide.ts';
import { startPlan } from '#lib/services/plans/plan-enquiry.ts';
import { acceptQuote } from '#lib/services/quotes/accept-quote.ts';
import { BOOKED_PAPERS, bookedPaper } from '#lib/services/quotes/booked-papers.ts';
import { addLines, removeLines } from '#lib/services/schedule/change-lines.ts';
import { editCells } from '#lib/services/schedule/edit-cells.ts';
import { listLines } from '#lib/services/schedule/list-lines.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';

const DESK_ONLY = ['yard', 'contractor'] as const;

describe('who may do what', () => {
  it.each(DESK_ONLY)('a %s neither reads nor changes enquiries', async (role) => {
    const context = await demoHouseContext(role);
    const no = { ok: false, reason: { code: 'not-allowed' } };
    expect(findEnquiries(context, EVERY_ENQUIRY)).toMatchObject(no);
    expect(createEnquiry(context, { title: 'x', customer: { name: 'y' }, site: {} })).toMatchObject(no);
    expect(changeEnquiry(context, { enquiryId: 1, title: 'x' })).toMatchObject(no);
    expect(editCells(context, { enquiryId: 1, edits: [] })).toMatchObject(no);
    expect(addLines(context, { enquiryId: 1, lines: [] })).toMatchObject(no);
    expect(removeLines(context, { enquiryId: 1, lineIds: [] })).toMatchObject(no);
    expect(startPlan(context, 1)).toMatchObject(no);
    for (const kind of BOOKED_PAPERS) expect(await bookedPaper(context, { quoteId: 1, kind })).toMatchObject(no);
  });

  it.each(USER_ROLES.filter((role) => role !== 'contractor'))('a %s sees the equipment', async (role) => {
    expect(granted(listModelsView(await demoHouseContext(role))).length).toBeGreaterThan(100);
  });

  it.each(USER_ROLES)('a %s is helped with every field, and told where a field does not exist', async (role) => {
    const context = await demoHouseContext(role);
    const fields = granted(fieldGuide(context)).flatMap((section) => section.fields);
    expect(fields.length).toBeGreaterThan(100);
    for (const { field } of fields) expect(granted(fieldHelp(context, field)).measure.length).toBeGreaterThan(0);
    expect(fieldHelp(context, 'colour')).toMatchObject({ ok: false, reason: { code: 'no-such-field' } });
  });

  it('a contractor books nothing', async () => {
    expect(acceptQuote(await demoHouseContext('contractor'), { quoteId: 1 })).toMatchObject({
      ok: false,
      reason: { code: 'not-allowed' },
    });
  });
});

describe('two people on one enquiry', () => {
  it('the second to save gets a conflict and nothing is overwritten', async () => {
    const context = await demoHouseContext();
    granted(changeEnquiry(context, { enquiryId: 1, version: 1, title: 'First' }));
    expect(changeEnquiry(context, { enquiryId: 1, version: 1, title: 'Second' })).toMatchObject({
      ok: false,
      reason: { code: 'changed-meanwhile' },
    });
    expect(granted(findEnquiries(context, EVERY_ENQUIRY)).rows.find(({ id }) => id === 1)?.title).toBe('First');
  });
});

describe('lines removed', () => {
  it('come back whole when they are added again', async () => {
    const context = await demoHouseContext();
    const { lineIds } = granted(
      addLines(context, { enquiryId: 1, lines: [{ cells: { tag: 'X1', size: 'DN 90' }, measured: ['size'] }] }),
    );
    const { removed } = granted(removeLines(context, { enquiryId: 1, lineIds }));
    expect(removed).toMatchObject([{ cells: { tag: 'X1', size: 'DN 90' }, measured: ['size'] }]);
  });

  it('go back to the place where they stood', async () => {
    const context = await demoHouseContext();
    const tags = () =>
      granted(listLines(context, { enquiryId: 1, from: 0, count: 50 })).lines.map(({ tag, row }) => `${tag} ${row}`);
    const before = tags();
    const second = granted(listLines(context, { enquiryId: 1, from: 1, count: 1 })).lines.map(({ id }) => id);
    const { removed } = granted(removeLines(context, { enquiryId: 1, lineIds: second }));
    expect(tags()).toEqual(before.filter((_, index) => index !== 1));
    granted(addLines(context, { enquiryId: 1, lines: removed }));
    expect(tags()).toEqual(before);
  });
});
