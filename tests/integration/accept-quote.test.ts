import { describe, expect, it } from 'vitest';
import { openDatabase } from '#db/client.ts';
import type { Context } from '#lib/services/context.ts';
import { planState } from '#lib/services/plans/plan-enquiry.ts';
import { acceptQuote } from '#lib/services/quotes/accept-quote.ts';
import { bookedPaper } from '#lib/services/quotes/booked-papers.ts';
import { issueQuote } from '#lib/services/quotes/issue-quote.ts';
import { listIssuedQuotes } from '#lib/services/quotes/list-issued-quotes.ts';
import { readPaper } from '#lib/services/quotes/read-paper.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';
import { planOneValve } from '#tests/support/houses/one-valve.ts';
import { readPdf } from '#tests/support/papers/read-pdf.ts';
import { textsAt } from '#tests/support/papers/xml-schema.ts';

const STARTS = '2026-03-16';

type Quoted = Awaited<ReturnType<typeof quoteOneValve>>;
let made: (Quoted & { readonly image: Buffer }) | undefined;

/** A house of its own a test, all alike: a planned enquiry of one valve with its first quote. */
async function quoted(): Promise<Quoted> {
  if (!made) {
    const first = await quoteOneValve();
    made = { ...first, image: first.context.database.raw.serialize() };
  }
  return { ...made, context: { ...made.context, database: openDatabase(Buffer.from(made.image)) } };
}

async function quoteOneValve() {
  const context = await demoHouseContext();
  const site = { sources_allowed: ['battery'], crews: 1, days: 2, starts_on: STARTS };
  const id = await planOneValve(context, { site });
  const quote = granted(await issueQuote(context, { enquiryId: id }));
  return { context, enquiryId: id, quote };
}

function on(context: Context, date: string): Context {
  return { ...context, now: () => new Date(`${date}T09:00:00Z`) };
}

function count(context: Context, table: 'booking' | 'booking_unit' | 'paper'): unknown {
  return context.database.raw.prepare(`SELECT count(*) FROM ${table}`).pluck().get();
}

const REFUSED = (code: string) => ({ ok: false, reason: { code } });

describe('a quote that the customer accepts', () => {
  it('tells who accepted, under which order, and every unit that is booked, and its plan stays current', async () => {
    const { context, enquiryId, quote } = await quoted();
    const held = granted(acceptQuote(context, { quoteId: quote.id, acceptedBy: 'R. Dunlin', orderNumber: 'PO 4711' }));
    const [shown] = listIssuedQuotes(context, enquiryId);
    expect(shown).toMatchObject({ state: 'accepted', standing: { kind: 'accepted' } });
    expect(shown?.booking).toMatchObject({
      number: held.number,
      acceptedOn: context.now().toISOString().slice(0, 10),
      acceptedBy: 'R. Dunlin',
      orderNumber: 'PO 4711',
      window: { starts_on: STARTS, ends_before: '2026-03-18' },
    });
    const serials = shown?.booking?.models.flatMap((model) => model.serials) ?? [];
    expect(serials.toSorted()).toEqual([...held.serials].sort());
    expect(granted(planState(context, enquiryId))).toMatchObject({ kind: 'ready', current: true });
  });

  it('gets a packing list with the booked serials, a paper of its own, drawn once and kept', async () => {
    const { context, quote } = await quoted();
    const issued = granted(readPaper(context, { quoteId: quote.id, kind: 'packing-list' })).bytes;
    expect(await bookedPaper(context, { quoteId: quote.id, kind: 'booked-packing-list' })).toMatchObject(
      REFUSED('no-such-paper'),
    );
    const held = granted(acceptQuote(context, { quoteId: quote.id }));
    const papers = Number(count(context, 'paper'));
    const [one, two] = await Promise.all([
      bookedPaper(context, { quoteId: quote.id, kind: 'booked-packing-list' }),
      bookedPaper(on(context, '2026-03-09'), { quoteId: quote.id, kind: 'booked-packing-list' }),
    ]);
    expect(granted(two)).toEqual(granted(one));
    expect(count(context, 'paper')).toBe(papers + 1);
    const words = readPdf(Buffer.from(granted(one).bytes)).text;
    const before = readPdf(Buffer.from(issued)).text;
    expect(held.serials.length).toBeGreaterThan(2);
    for (const serial of held.serials) {
      expect(words).toContain(serial);
      expect(before).not.toContain(serial);
    }
    expect(words).toContain(held.number);
    expect(granted(readPaper(context, { quoteId: quote.id, kind: 'packing-list' })).bytes).toEqual(issued);
  });

  it('gets a despatch advice with the customer’s order, the booked serials and the masses of the cases', async () => {
    const { context, quote } = await quoted();
    const kind = 'despatch-xml';
    expect(await bookedPaper(context, { quoteId: quote.id, kind })).toMatchObject(REFUSED('no-such-paper'));
    const held = granted(acceptQuote(context, { quoteId: quote.id, orderNumber: 'PO 4711' }));
    const advice = granted(await bookedPaper(context, { quoteId: quote.id, kind }));
    expect(advice).toMatchObject({ fileName: 'Q-00001-A-despatch.xml', mime: 'application/xml' });
    const xml = Buffer.from(advice.bytes).toString('utf8');
    expect(textsAt(xml, '/*/cbc:ID')).toEqual([held.number]);
    expect(textsAt(xml, '/*/cac:OrderReference/cbc:ID')).toEqual(['PO 4711']);
    expect(textsAt(xml, '//cbc:SerialID').toSorted()).toEqual([...held.serials].sort());
    const masses = textsAt(xml, '//cac:TransportHandlingUnit/cac:MeasurementDimension/cbc:Measure').map(Number);
    const [gross] = textsAt(xml, '/*/cac:Shipment/cbc:GrossWeightMeasure').map(Number);
    expect(masses.reduce((sum, mass) => sum + mass, 0)).toBeCloseTo(gross ?? 0, 0);
  });

  it('books nothing and stays open when a unit was taken meanwhile', async () => {
    const { context, enquiryId, quote } = await quoted();
    context.database.raw.exec("INSERT INTO booking (id, number, state) VALUES (900, 'B-900', 'held')");
    context.database.raw.exec(
      `INSERT INTO booking_unit (booking_id, unit_serial, starts_on, ends_before, free_again_on)
       SELECT 900, serial, '${STARTS}', '2026-03-17', '2026-03-17' FROM unit`,
    );
    const rows = count(context, 'booking_unit');
    const answer = acceptQuote(context, { quoteId: quote.id });
    expect(answer).toMatchObject(REFUSED('units-not-free'));
    expect(answer.ok ? '' : answer.reason.sentence).toMatch(/^Equipment was taken meanwhile, so nothing was booked\. /);
    expect([count(context, 'booking'), count(context, 'booking_unit')]).toEqual([1, rows]);
    expect(listIssuedQuotes(context, enquiryId)[0]).toMatchObject({ state: 'issued', standing: { kind: 'open' } });
  });

  it('is the only one of its enquiry: neither an older nor a newer revision books the units again', async () => {
    const { context, enquiryId, quote: first } = await quoted();
    const second = granted(await issueQuote(context, { enquiryId }));
    expect(acceptQuote(context, { quoteId: first.id })).toMatchObject(REFUSED('quote-superseded'));
    granted(acceptQuote(context, { quoteId: second.id }));
    const third = granted(await issueQuote(context, { enquiryId }));
    expect(acceptQuote(context, { quoteId: third.id })).toMatchObject(REFUSED('accepted-already'));
    expect(acceptQuote(context, { quoteId: first.id })).toMatchObject(REFUSED('accepted-already'));
    expect(listIssuedQuotes(context, enquiryId).map(({ standing }) => standing.kind)).toEqual([
      'superseded',
      'accepted',
      'superseded',
    ]);
    expect(count(context, 'booking')).toBe(1);
  });

  it('is refused once it lapsed or its dates have gone by', async () => {
    const { context, quote } = await quoted();
    expect(acceptQuote(on(context, '2026-03-18'), { quoteId: quote.id })).toMatchObject(REFUSED('dates-past'));
    expect(acceptQuote(on(context, '2027-03-18'), { quoteId: quote.id })).toMatchObject(REFUSED('quote-lapsed'));
    expect(acceptQuote(context, { quoteId: 999 })).toMatchObject(REFUSED('no-such-quote'));
    expect(count(context, 'booking')).toBe(0);
  });
});
