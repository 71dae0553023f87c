/** Minor units by ISO 4217:2015, table A.1, from memory: JPY has none, KWD three, EUR two. */
import { describe, expect, it } from 'vitest';
import type { Context } from '#lib/services/context.ts';
import { openCustomer } from '#lib/services/customers/open-customer.ts';
import { changeCustomer } from '#lib/services/customers/save-customer.ts';
import { openEnquiry } from '#lib/services/enquiries/open-enquiry.ts';
import { acceptQuote } from '#lib/services/quotes/accept-quote.ts';
import { issueQuote } from '#lib/services/quotes/issue-quote.ts';
import { checkIn } from '#lib/services/yard/back/check-in.ts';
import { decideCharge } from '#lib/services/yard/back/decide-charge.ts';
import { issueReturnNote } from '#lib/services/yard/back/issue-return-note.ts';
import { openCharges } from '#lib/services/yard/back/open-charges.ts';
import { readReturnNote } from '#lib/services/yard/back/read-return-note.ts';
import { sayCause } from '#lib/services/yard/back/say-cause.ts';
import { confirmBooking } from '#lib/services/yard/confirm-booking.ts';
import { granted } from '#tests/support/granted.ts';
import { HIRE, onDay, takeUnits } from '#tests/support/houses/booked-house.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';
import { planOneValve } from '#tests/support/houses/one-valve.ts';
import { as, backGood, declare, GOOD, send } from '#tests/support/houses/out-and-back.ts';
import { readPdf } from '#tests/support/papers/read-pdf.ts';

const LEFT_OUT = { kind: 'left out', words: 'equipment lost in water or in the ground' } as const;

function keepRate(context: Context, currency: string, rate: number): void {
  context.database.raw
    .prepare("UPDATE house SET facts_json = json_set(facts_json, '$.exchange', json(?))")
    .run(JSON.stringify([{ currency, rate }]));
}

/** Everything out that was quoted in another currency, on the last day of the hire. */
async function outInto(currency: string, rate: number) {
  const context = await demoHouseContext();
  keepRate(context, currency, rate);
  const site = { sources_allowed: ['battery'], crews: 1, days: 5, starts_on: HIRE.starts_on };
  const id = await planOneValve(context, { title: 'One valve abroad', customer: 'Sandling Water', site });
  const customerId = granted(openEnquiry(context, id)).customer.id;
  const { version } = granted(openCustomer(context, customerId));
  granted(changeCustomer(context, { customerId, version, facts: { currency } }));
  const quote = granted(await issueQuote(context, { enquiryId: id }));
  expect(quote.currency).toBe(currency);
  const { number, serials } = granted(acceptQuote(context, { quoteId: quote.id }));
  granted(confirmBooking(context, { number }));
  const yard = as(onDay(context, HIRE.starts_on), 'yard');
  takeUnits(yard, { number, to: 'picked' });
  send(yard, { number, serials });
  return { context: onDay(yard, '2026-03-20'), number, serials };
}

describe.each([
  // What one costs in the house, turned over at the rate by hand: 78.00 EUR, 1.5 h of 68.00 EUR and parts for 12.35 EUR.
  {
    currency: 'JPY',
    rate: 160,
    sewage: 12_480,
    repair: 1.5 * 10_880 + 1976,
    worth: (cents: number) => (cents * 160) / 100,
  },
  { currency: 'KWD', rate: 0.334, sewage: 26_052, repair: 34_068 + 4125, worth: (cents: number) => cents * 3.34 },
])('a return of what was quoted in $currency', ({ currency, rate, sewage, repair, worth }) => {
  it('is charged in it at the rate that was frozen with the quote, and the note says at which', async () => {
    const { context, number, serials } = await outInto(currency, rate);
    const desk = as(context, 'desk');
    // The house keeps another rate by now; the quote's own holds.
    keepRate(context, currency, rate * 2);
    const drive = serials.find((serial) => serial.startsWith('D112')) ?? '';
    const head = serials.find((serial) => serial.startsWith('H104')) ?? '';
    const returnId = declare(context, number, 'sewage');
    const seen = { ...GOOD, returnId, scan: drive, condition: 'damaged', note: 'cracked' } as const;
    const broken = granted(checkIn(context, { ...seen, repairHours: 1.5, repairPartsMinor: 1235 }));
    const lost = granted(checkIn(context, { ...GOOD, returnId, scan: head, condition: 'missing' }));
    backGood(context, { returnId, serials: serials.filter((serial) => serial !== drive && serial !== head) });
    for (const { pieceId } of [broken, lost])
      granted(sayCause(desk, { number, about: `piece ${pieceId}`, cause: LEFT_OUT }));
    const view = granted(openCharges(desk, number));
    expect(view).toMatchObject({ currency, exchange: { from: 'EUR', to: currency, rate } });
    const of = (label: string) => view.charges.filter((charge) => charge.label === label);
    expect(of('Cleaning').map(({ proposedMinor }) => proposedMinor)).toEqual(of('Cleaning').map(() => sewage));
    expect(of('Repair').map(({ proposedMinor }) => proposedMinor)).toEqual([repair]);
    const replacement = Number(
      context.database.raw
        .prepare("SELECT json_extract(facts_json, '$.replacement_minor') FROM model WHERE number = 'H-104'")
        .pluck()
        .get(),
    );
    expect(of('Loss').map(({ proposedMinor }) => proposedMinor)).toEqual([Math.round(worth(replacement))]);
    expect(view.charges.filter(({ label }) => label === 'More hire' || label === 'Hire given back')).toEqual([]);
    for (const { key, proposedMinor } of view.charges)
      granted(decideCharge(desk, { number, key, proposedMinor, decision: { kind: 'approved' } }));
    const note = granted(await issueReturnNote(desk, { number }));
    expect(note.currency).toBe(currency);
    const text = readPdf(granted(readReturnNote(desk, note.number)).bytes).text.replace(/\s+/g, ' ');
    expect(text).toContain(`1 EUR is ${rate} ${currency}`);
    expect(text).not.toContain('EUR 78.00');
  });
});
