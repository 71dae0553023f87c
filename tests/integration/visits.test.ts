import { describe, expect, it } from 'vitest';
import { auditOf } from '#db/queries/audit.ts';
import type { FoundCells } from '#lib/found/found-columns.ts';
import type { Context } from '#lib/services/context.ts';
import { createEnquiry } from '#lib/services/enquiries/create-enquiry.ts';
import { openLine } from '#lib/services/lines/open-line.ts';
import { planState, prepareInput } from '#lib/services/plans/plan-enquiry.ts';
import { addLines } from '#lib/services/schedule/change-lines.ts';
import { listAllLines } from '#lib/services/schedule/list-lines.ts';
import { importVisits, visitTemplate } from '#lib/services/visits/import-visits.ts';
import { openVisits } from '#lib/services/visits/open-visits.ts';
import { recordVisits } from '#lib/services/visits/record-visits.ts';
import { setVisitAside } from '#lib/services/visits/set-visit-aside.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';

const SITE = { name: 'Fallow Beck works', starts_on: '2026-02-16', days: 5 };
const NEXT = { ...SITE, starts_on: '2026-09-07' };

/** A visit that is over, and the same site asked for again, its tags written differently; both invented. */
async function twoEnquiries(
  next: { readonly site?: typeof NEXT; readonly cells?: Readonly<Record<string, string>> } = {},
) {
  const context = await demoHouseContext();
  const first = granted(createEnquiry(context, { title: 'First', customer: { id: 1 }, site: SITE }));
  const cells = { tag: 'FB-12', valve_type: 'gate', size: 'DN 150' };
  granted(addLines(context, { enquiryId: first.id, lines: [{ cells }, { cells: { ...cells, tag: 'FB-13' } }] }));
  const second = granted(createEnquiry(context, { title: 'Again', customer: { id: 1 }, site: next.site ?? NEXT }));
  const again = { ...cells, tag: 'fb 12', ...next.cells };
  const { lineIds } = granted(
    addLines(context, { enquiryId: second.id, lines: [{ cells: again }, { cells: { ...cells, tag: 'FB-13' } }] }),
  );
  return { context, first: first.id, second: second.id, lineId: lineIds[0] ?? 0 };
}

function record(context: Context, enquiryId: number, cells: FoundCells) {
  const whole = { tag: 'FB-12', visited_on: '2026-02-18', by: 'T. Marl', ...cells };
  return granted(recordVisits(context, { enquiryId, rows: [{ row: 2, cells: whole }] }));
}

describe('what a visit found', () => {
  it('is used at the next enquiry of that customer and site, and on no other valve anywhere', async () => {
    const { context, first, second, lineId } = await twoEnquiries();
    const others = () =>
      [1, 2, 3, 4, 5, 6, 7, first, second].flatMap((id) =>
        granted(listAllLines(context, id)).filter((line) => line.id !== lineId),
      );
    const before = others();
    expect(record(context, first, { turns: '23', highest_torque: '95 N·m', closes: 'anticlockwise' })).toEqual({
      rows: [2],
      problems: [],
    });
    const { duty, line } = granted(openLine(context, { enquiryId: second, lineId }));
    expect(duty.turns).toMatchObject({ low: 23, high: 23, basis: 'measured' });
    expect(duty.turns.source).toMatch(/^Counted on site on 18 February 2026 by T\. Marl, enquiry E-\d+/);
    expect(duty.opening.starting.high).toBe(95);
    expect(duty.closes).toBe('anticlockwise');
    expect(line.visits).toMatchObject([{ on: '2026-02-18', by: 'T. Marl', setAside: '' }]);
    // The line of the visit itself is of the day before it and stays as it was, but for the record that it shows.
    const after = others().map((one) => (one.tag === 'FB-12' ? { ...one, visits: [] } : one));
    expect(after).toEqual(before);
    expect(before.length).toBeGreaterThan(50);
  });

  it('makes a plan that was worked out before it stale', async () => {
    const { context, first, second } = await twoEnquiries();
    const before = granted(prepareInput(context, second)).hash;
    record(context, first, { turns: '23' });
    expect(granted(prepareInput(context, second)).hash).not.toBe(before);
    expect(granted(planState(context, second))).toEqual({ kind: 'none' });
  });

  it('against the list covers both and is told', async () => {
    const { context, first, second, lineId } = await twoEnquiries({ cells: { turns: '40' } });
    record(context, first, { turns: '23' });
    const { duty, line } = granted(openLine(context, { enquiryId: second, lineId }));
    expect(duty.turns).toMatchObject({ low: 23, nominal: 40, high: 40 });
    expect(duty.findings.map(({ id }) => id)).toContain('visit-against-list-turns');
    expect(line.known).toMatchObject([{ column: 'turns', use: 'covered beside the list' }]);
  });

  it.each([
    ['another site', { ...NEXT, name: 'Fallow Beck reservoir' }],
    ['a site without a name', { starts_on: '2026-09-07', days: 5 } as typeof NEXT],
    ['a hire that began before the visit', { ...NEXT, starts_on: '2026-02-18' }],
  ])('is not used for %s', async (_what, site) => {
    const { context, first, second, lineId } = await twoEnquiries({ site });
    record(context, first, { turns: '23' });
    expect(granted(openLine(context, { enquiryId: second, lineId })).duty.turns.basis).not.toBe('measured');
  });

  it('is not used where the schedule has the tag twice, and says so', async () => {
    const { context, first, second, lineId } = await twoEnquiries();
    record(context, first, { turns: '23' });
    granted(addLines(context, { enquiryId: second, lines: [{ cells: { tag: 'FB12', size: 'DN 100' } }] }));
    const { duty } = granted(openLine(context, { enquiryId: second, lineId }));
    expect(duty.turns.basis).not.toBe('measured');
    expect(duty.findings.map(({ id }) => id)).toContain('visit-of-which-valve');
  });

  it('recorded again for the same day is corrected, not doubled, and the log keeps both', async () => {
    const { context, first, second, lineId } = await twoEnquiries();
    record(context, first, { turns: '23' });
    record(context, first, { turns: '24' });
    const { duty, line } = granted(openLine(context, { enquiryId: second, lineId }));
    expect(duty.turns.low).toBe(24);
    expect(line.visits).toHaveLength(1);
    const [newest] = auditOf(context.database.db, `enquiry ${first}`);
    expect(newest).toMatchObject({ action: 'visits recorded', who: 'Test desk' });
    expect(newest?.detail_json).toContain('24');
    expect(newest?.detail_json).toContain('23');
  });

  it('set aside with a reason is not used, shows why, and can be used again', async () => {
    const { context, first, second, lineId } = await twoEnquiries();
    record(context, first, { turns: '23' });
    const key = { enquiryId: second, lineId };
    const visitId = granted(openLine(context, key)).line.visits[0]?.id ?? 0;
    expect(setVisitAside(context, { visitId, use: 'no', reason: ' ' })).toMatchObject({
      ok: false,
      reason: { code: 'reason-missing' },
    });
    granted(setVisitAside(context, { visitId, use: 'no', reason: 'wrong valve' }));
    const aside = granted(openLine(context, key));
    expect(aside.duty.turns.basis).not.toBe('measured');
    expect(aside.line.visits).toMatchObject([{ setAside: 'wrong valve' }]);
    granted(setVisitAside(context, { visitId, use: 'yes', reason: '' }));
    expect(granted(openLine(context, key)).duty.turns.low).toBe(23);
    expect(auditOf(context.database.db, `enquiry ${first}`).map(({ action }) => action)).toEqual(
      expect.arrayContaining(['visit set aside', 'visit used again']),
    );
  });

  it('that is nonsense is refused by row and column; the good rows are kept', async () => {
    const { context, first } = await twoEnquiries();
    const plain = { visited_on: '2026-02-18', by: 'T. Marl' };
    const answer = granted(
      recordVisits(context, {
        enquiryId: first,
        rows: [
          { row: 2, cells: { ...plain, tag: 'FB-12', turns: '23' } },
          { row: 3, cells: { ...plain, tag: 'FB-13', turns: 'lots' } },
          { row: 4, cells: { ...plain, tag: 'FB-99', turns: '20' } },
          { row: 5, cells: { ...plain, tag: 'FB-13', turns: '20', number: '2' } },
          { row: 6, cells: { ...plain, tag: 'fb12', turns: '25' } },
        ],
      }),
    );
    expect(answer.rows).toEqual([2]);
    expect(answer.problems.map(({ row, column }) => `${row} ${column}`)).toEqual([
      '3 turns',
      '4 tag',
      '5 number',
      '6 tag',
    ]);
  });

  it('needs a site with a name', async () => {
    const { context, second } = await twoEnquiries({ site: { starts_on: '2026-09-07', days: 5 } as typeof NEXT });
    expect(recordVisits(context, { enquiryId: second, rows: [] })).toMatchObject({
      ok: false,
      reason: { code: 'site-without-name' },
    });
  });

  it('is recorded by desk and yard, not by a contractor', async () => {
    const yard = await demoHouseContext('yard');
    expect(granted(openVisits(yard, 1)).valves.length).toBeGreaterThan(0);
    const contractor = await demoHouseContext('contractor');
    const no = { ok: false, reason: { code: 'not-allowed' } };
    expect(openVisits(contractor, 1)).toMatchObject(no);
    expect(recordVisits(contractor, { enquiryId: 1, rows: [] })).toMatchObject(no);
    expect(setVisitAside(contractor, { visitId: 1, use: 'no', reason: 'x' })).toMatchObject(no);
    expect(await importVisits(contractor, { enquiryId: 1, fileName: 'x.csv', bytes: new Uint8Array() })).toMatchObject(
      no,
    );
  });
});

describe('the as-found list', () => {
  const bytesOf = (text: string) => new TextEncoder().encode(text);

  it('is downloaded in working order, filled in, taken in, and taken in again without change', async () => {
    const { context, first, second, lineId } = await twoEnquiries();
    const [head = '', ...rows] = granted(visitTemplate(context, first)).trimEnd().split('\r\n');
    expect(rows.map((row) => row.split(',').slice(0, 2).join(','))).toEqual(['FB-12,1', 'FB-13,1']);
    const filled = `${head}\r\nFB-12,1,2026-02-18,T. Marl,open,23.5,,,,95 N·m,open,free,,,,\r\nFB-13,1,,,,,,,,,,,,,,`;
    const upload = { enquiryId: first, fileName: 'as-found.csv', bytes: bytesOf(filled) };
    const taken = granted(await importVisits(context, upload));
    expect(taken).toEqual({ rows: [2], problems: [], unknown: [] });
    const after = granted(openLine(context, { enquiryId: second, lineId })).duty;
    expect(after.turns.low).toBe(23.5);
    granted(await importVisits(context, upload));
    expect(granted(openLine(context, { enquiryId: second, lineId })).duty).toEqual(after);
  });

  it('reads other headers, orders and units, and names what it does not know', async () => {
    const { context, first, second, lineId } = await twoEnquiries();
    const text = 'As found list\nBy;Tag;Date;Peak torque (lbf·ft);Colour\nT. Marl;FB-12;18.2.2026;70 lbf·ft;green\n';
    const taken = granted(await importVisits(context, { enquiryId: first, fileName: 'x.csv', bytes: bytesOf(text) }));
    expect(taken).toEqual({ rows: [3], problems: [], unknown: ['Colour'] });
    expect(granted(openLine(context, { enquiryId: second, lineId })).duty.opening.starting.high).toBeCloseTo(94.907, 2);
  });

  it.each([
    ['Name,Turns\nFB-12,4\n', 'found-no-tags'],
    ['Valve,Turns\nFB-12,\n', 'found-nothing'],
  ])('%j is refused with a sentence', async (text, code) => {
    const { context, first } = await twoEnquiries();
    expect(await importVisits(context, { enquiryId: first, fileName: 'x.csv', bytes: bytesOf(text) })).toMatchObject({
      ok: false,
      reason: { code },
    });
  });
});
