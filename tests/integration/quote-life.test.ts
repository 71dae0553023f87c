import { describe, expect, it } from 'vitest';
import { openDatabase } from '#db/client.ts';
import { type PriceChoices, priceChoicesSchema } from '#lib/contracts/price-choices.ts';
import type { Context } from '#lib/services/context.ts';
import { awaitPlan, startPlan } from '#lib/services/plans/plan-enquiry.ts';
import { acceptQuote } from '#lib/services/quotes/accept-quote.ts';
import { cancelAcceptance } from '#lib/services/quotes/cancel-acceptance.ts';
import { addOption, changePrice, keepOption } from '#lib/services/quotes/change-price.ts';
import { askForDiscount, decideDiscount } from '#lib/services/quotes/decide-discount.ts';
import { issueQuote } from '#lib/services/quotes/issue-quote.ts';
import { listIssuedQuotes } from '#lib/services/quotes/list-issued-quotes.ts';
import { readPriceView } from '#lib/services/quotes/price-view.ts';
import { readPaper } from '#lib/services/quotes/read-paper.ts';
import { redrawQuote } from '#lib/services/quotes/redraw-quote.ts';
import { setQuoteState } from '#lib/services/quotes/set-quote-state.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';
import { planOneValve } from '#tests/support/houses/one-valve.ts';
import { readPdf } from '#tests/support/papers/read-pdf.ts';
import { textsAt } from '#tests/support/papers/xml-schema.ts';

let made: { readonly enquiryId: number; readonly image: Buffer; readonly context: Context } | undefined;

/** A house of its own a test, all alike: one valve, planned twice: as asked, and with two crews. */
async function planned(): Promise<{ readonly context: Context; readonly enquiryId: number }> {
  if (!made) {
    const context = await demoHouseContext();
    const site = { sources_allowed: ['battery', 'air'], crews: 1, days: 2, starts_on: '2026-03-16' };
    const id = await planOneValve(context, { site });
    made = { enquiryId: id, context, image: context.database.raw.serialize() };
  }
  return { enquiryId: made.enquiryId, context: { ...made.context, database: openDatabase(Buffer.from(made.image)) } };
}

const other = (context: Context): Context => ({ ...context, actor: { id: 'u-2', name: 'Second desk', role: 'desk' } });
const on = (context: Context, date: string): Context => ({ ...context, now: () => new Date(`${date}T09:00:00Z`) });
const REFUSED = (code: string) => ({ ok: false, reason: { code } });

const TRAINING = {
  id: 'training',
  kind: 'training',
  text: 'Instruction on site',
  quantity: 1.5,
  unit: 'hour',
  unit_minor: 8000,
  per: 'once',
  tax: 'S',
} as const;

function choices(change: Record<string, unknown> = {}): PriceChoices {
  return priceChoicesSchema.parse({ lines: [TRAINING], ...change });
}
const whole = (percent: number) => ({ discounts: { groups: [], whole: { percent, reason: 'frame agreement' } } });

function put(
  context: Context,
  at: { readonly enquiryId: number; readonly version: number; readonly choices: unknown },
) {
  return changePrice(context, { ...at, slot: 0 });
}

async function words(context: Context, quoteId: number): Promise<string> {
  const { bytes } = granted(readPaper(context, { quoteId, kind: 'quote' }));
  return readPdf(Buffer.from(bytes)).text.replace(/\s+/g, ' ');
}

describe('lines added by hand', () => {
  it('stand on the quote, in the XML, in the table and in the workbook, and add up', async () => {
    const { context, enquiryId } = await planned();
    const before = granted(readPriceView(context, { enquiryId, slot: 0 })).shown.price?.net_minor ?? 0;
    granted(put(context, { enquiryId, version: 0, choices: choices() }));
    const { price } = granted(readPriceView(context, { enquiryId, slot: 0 })).shown;
    expect(price?.net_minor).toBe(before + 12_000);
    const quote = granted(await issueQuote(context, { enquiryId }));
    expect(await words(context, quote.id)).toContain('Instruction on site');
    const xml = Buffer.from(granted(readPaper(context, { quoteId: quote.id, kind: 'quotation-xml' })).bytes).toString();
    expect(textsAt(xml, '//cac:Item/cbc:Name')).toContain('Instruction on site');
    expect(xml).toContain('unitCode="HUR">1.5<');
    const csv = Buffer.from(granted(readPaper(context, { quoteId: quote.id, kind: 'price-csv' })).bytes).toString();
    expect(csv).toContain('Instruction on site,1.5,hour,S,120,');
  });

  it('are refused with a sentence when they cannot be read, and when somebody changed the price meanwhile', async () => {
    const { context, enquiryId } = await planned();
    const bad = put(context, { enquiryId, version: 0, choices: { lines: [{ ...TRAINING, unit_minor: -5 }] } });
    expect(bad).toMatchObject(REFUSED('price-choices-unreadable'));
    expect(bad.ok ? '' : bad.reason.sentence).toBe('Line 1, price, is below nought: give a discount instead.');
    expect(put(context, { enquiryId, version: 0, choices: { lines: [{ ...TRAINING, tax: 'AE' }] } })).toMatchObject(
      REFUSED('tax-unknown'),
    );
    granted(put(context, { enquiryId, version: 0, choices: choices() }));
    expect(put(other(context), { enquiryId, version: 0, choices: choices(whole(3)) })).toMatchObject(
      REFUSED('changed-meanwhile'),
    );
    granted(put(other(context), { enquiryId, version: 1, choices: choices(whole(3)) }));
  });

  it('warn of a re-hired piece that is not there on all days of the hire', async () => {
    const { context, enquiryId } = await planned();
    const rehired = { house: 'Wharfside Hire', starts_on: '2026-03-16', ends_before: '2026-03-17', cost_minor: 9000 };
    const line = { ...TRAINING, kind: 're-hired', text: 'Compressor', rehired };
    granted(put(context, { enquiryId, version: 0, choices: { lines: [line] } }));
    const { warnings } = granted(readPriceView(context, { enquiryId, slot: 0 })).shown;
    expect(warnings).toEqual([
      '“Compressor” from Wharfside Hire is there 16 March 2026 (1 day), which does not cover the hire, 16 March 2026 to 17 March 2026 (2 days).',
    ]);
  });
});

describe('a plan that serves no valve', () => {
  it('is no quote, since accepted it would be a booking of nothing; with a line by hand it is one', async () => {
    const context = await demoHouseContext();
    const site = { sources_allowed: ['petrol'], enclosed: true, crews: 1, days: 2, starts_on: '2026-03-16' };
    const enquiryId = await planOneValve(context, { site });
    const refused = await issueQuote(context, { enquiryId });
    expect(refused).toMatchObject(REFUSED('nothing-to-quote'));
    expect(refused.ok ? '' : refused.reason.sentence).toContain('The plan serves no valve');
    expect(listIssuedQuotes(context, enquiryId)).toEqual([]);
    granted(put(context, { enquiryId, version: 0, choices: choices() }));
    granted(await issueQuote(context, { enquiryId }));
  });
});

describe('a discount above the limit', () => {
  it('is issued only after somebody else approved it, and needs it anew when the price falls', async () => {
    const { context, enquiryId } = await planned();
    granted(put(context, { enquiryId, version: 0, choices: choices(whole(12)) }));
    const refused = await issueQuote(context, { enquiryId });
    expect(refused).toMatchObject(REFUSED('discount-not-approved'));
    expect(refused.ok ? '' : refused.reason.sentence).toContain('Ask for approval, or lower it.');
    expect(askForDiscount(context, { enquiryId, slot: 0, reason: ' ' })).toMatchObject(REFUSED('reason-missing'));
    const { id } = granted(askForDiscount(context, { enquiryId, slot: 0, reason: 'They hire every month' }));
    expect(askForDiscount(context, { enquiryId, slot: 0, reason: 'again' })).toMatchObject(
      REFUSED('approval-not-needed'),
    );
    expect(await issueQuote(context, { enquiryId })).toMatchObject(REFUSED('discount-not-approved'));
    const yes = { approvalId: id, decision: 'approved', reason: 'agreed' } as const;
    expect(decideDiscount(context, yes)).toMatchObject(REFUSED('approval-own'));
    const yard: Context = { ...context, actor: { id: 'u-3', name: 'Yard', role: 'yard' } };
    expect(decideDiscount(yard, yes)).toMatchObject(REFUSED('not-allowed'));
    granted(decideDiscount(other(context), yes));
    expect(decideDiscount(other(context), yes)).toMatchObject(REFUSED('approval-decided'));
    granted(await issueQuote(context, { enquiryId }));
    granted(put(context, { enquiryId, version: 1, choices: choices({ ...whole(12), lines: [] }) }));
    expect(await issueQuote(context, { enquiryId })).toMatchObject(REFUSED('discount-not-approved'));
    expect(granted(readPriceView(context, { enquiryId, slot: 0 })).shown.discount?.standing).toMatchObject({
      kind: 'to ask',
      because: 'lower since',
    });
  });

  it('can be refused with a reason, and an approval can be withdrawn', async () => {
    const { context, enquiryId } = await planned();
    granted(put(context, { enquiryId, version: 0, choices: choices(whole(20)) }));
    const first = granted(askForDiscount(context, { enquiryId, slot: 0, reason: 'big customer' })).id;
    const no = { approvalId: first, decision: 'refused', reason: '' } as const;
    expect(decideDiscount(other(context), no)).toMatchObject(REFUSED('reason-missing'));
    granted(decideDiscount(other(context), { ...no, reason: 'too much' }));
    const second = granted(askForDiscount(context, { enquiryId, slot: 0, reason: 'please' })).id;
    granted(decideDiscount(other(context), { approvalId: second, decision: 'approved', reason: '' }));
    granted(decideDiscount(context, { approvalId: second, decision: 'withdrawn', reason: 'not needed' }));
    expect(await issueQuote(context, { enquiryId })).toMatchObject(REFUSED('discount-not-approved'));
    expect(decideDiscount(context, { approvalId: 99, decision: 'withdrawn', reason: '' })).toMatchObject(
      REFUSED('no-such-approval'),
    );
    const log = context.database.raw.prepare(
      "SELECT action FROM audit_entry WHERE action LIKE 'discount %' ORDER BY id",
    );
    expect(log.pluck().all()).toEqual([
      'discount asked for',
      'discount refused',
      'discount asked for',
      'discount approved',
      'discount withdrawn',
    ]);
  });
});

describe('several options', () => {
  const plan = { crews: 2, days: 1, sources_allowed: ['battery'], preference: 'time', constraints: {} };

  async function twoOptions() {
    const { context, enquiryId } = await planned();
    const { slot } = granted(addOption(context, { enquiryId, choices: { name: 'Two crews, one day', plan } }));
    const key = { enquiryId, slot };
    granted(startPlan(context, key));
    expect(granted(await awaitPlan(context, key))).toMatchObject({ kind: 'ready', current: true });
    return { context, enquiryId, slot };
  }

  it('are printed side by side, have a quotation each, and the acceptance names the one that is booked', async () => {
    const { context, enquiryId, slot } = await twoOptions();
    const quote = granted(await issueQuote(context, { enquiryId }));
    const view = granted(readPriceView(context, { enquiryId, slot }));
    const [own, air] = view.options.map(({ figures }) => figures?.gross_minor ?? 0);
    expect(own).not.toBe(air);
    const text = await words(context, quote.id);
    for (const told of ['Option 1: As asked', 'Option 2: Two crews, one day', 'offers 2 options'])
      expect(text).toContain(told);
    const totals = ['quotation-xml', 'quotation-xml-option-2'].map((kind) => {
      const xml = Buffer.from(granted(readPaper(context, { quoteId: quote.id, kind })).bytes).toString();
      return Math.round(Number(textsAt(xml, '//cac:QuotedMonetaryTotal/cbc:PayableAmount')[0]) * 100);
    });
    expect(totals).toEqual([own, air]);
    const mail = Buffer.from(granted(readPaper(context, { quoteId: quote.id, kind: 'mail-text' })).bytes).toString();
    expect(mail).toContain('It offers 2 options');
    expect(acceptQuote(context, { quoteId: quote.id })).toMatchObject(REFUSED('option-missing'));
    const held = granted(acceptQuote(context, { quoteId: quote.id, option: slot }));
    const row = context.database.raw
      .prepare('SELECT option_slot FROM booking WHERE number = ?')
      .pluck()
      .get(held.number);
    expect(row).toBe(slot);
    const [shown] = listIssuedQuotes(context, enquiryId);
    expect(shown?.booking?.window).toEqual({ starts_on: '2026-03-16', ends_before: '2026-03-17' });
    expect(shown?.options.map(({ name, total_minor }) => [name, total_minor])).toEqual([
      ['As asked', own],
      ['Two crews, one day', air],
    ]);
  });

  it('are not issued while one of them is not planned, and one can be taken out and put back', async () => {
    const { context, enquiryId, slot } = await twoOptions();
    const unplanned = granted(
      addOption(context, { enquiryId, choices: { name: 'Three days', plan: { ...plan, days: 3 } } }),
    );
    const refused = await issueQuote(context, { enquiryId });
    expect(refused).toMatchObject(REFUSED('plan-not-current'));
    expect(refused.ok ? '' : refused.reason.sentence).toContain('“Three days” has no plan');
    granted(keepOption(context, { enquiryId, slot: unplanned.slot, keep: 'out' }));
    granted(keepOption(context, { enquiryId, slot, keep: 'out' }));
    expect(granted(readPriceView(context, { enquiryId, slot })).options).toHaveLength(1);
    granted(keepOption(context, { enquiryId, slot, keep: 'back' }));
    expect(granted(readPriceView(context, { enquiryId, slot })).shown.slot).toBe(slot);
  });

  it('are limited, need a plan of their own, and an unknown one is told apart', async () => {
    const { context, enquiryId } = await planned();
    const add = () => addOption(context, { enquiryId, choices: { name: 'One more', plan } });
    for (let more = 0; more < 3; more += 1) granted(add());
    expect(add()).toMatchObject(REFUSED('too-many-options'));
    expect(addOption(context, { enquiryId, choices: { name: 'No plan' } })).toMatchObject(
      REFUSED('option-plan-misplaced'),
    );
    expect(put(context, { enquiryId, version: 0, choices: { plan } })).toMatchObject(REFUSED('option-plan-misplaced'));
    expect(keepOption(context, { enquiryId, slot: 40, keep: 'out' })).toMatchObject(REFUSED('no-such-option'));
    expect(startPlan(context, { enquiryId, slot: 40 })).toMatchObject(REFUSED('no-such-option'));
    const petrol = granted(
      changePrice(context, {
        enquiryId,
        slot: 1,
        version: 1,
        choices: { name: 'Petrol', plan: { ...plan, sources_allowed: ['petrol'] } },
      }),
    );
    expect(startPlan(context, { enquiryId, slot: petrol.slot })).toMatchObject(REFUSED('option-without-source'));
  });
});

describe('revisions', () => {
  it('are numbered without gaps whatever fails in between, and say what changed', async () => {
    const { context, enquiryId } = await planned();
    granted(put(context, { enquiryId, version: 0, choices: choices(whole(50)) }));
    expect((await issueQuote(context, { enquiryId })).ok).toBe(false);
    granted(put(context, { enquiryId, version: 1, choices: choices() }));
    expect(await issueQuote(context, { enquiryId })).toMatchObject({ value: { number: 'Q-00001', revision: 'A' } });
    const two = await Promise.all([issueQuote(context, { enquiryId }), issueQuote(context, { enquiryId })]);
    expect(two.filter(({ ok }) => ok)).toHaveLength(1);
    expect(two.find(({ ok }) => !ok)).toMatchObject(REFUSED('changed-meanwhile'));
    granted(put(context, { enquiryId, version: 2, choices: choices({ lines: [{ ...TRAINING, quantity: 3 }] }) }));
    const third = granted(await issueQuote(context, { enquiryId }));
    expect(third).toMatchObject({ number: 'Q-00001', revision: 'C' });
    const text = await words(context, third.id);
    expect(text).toContain('Changed since Q-00001 B');
    expect(text).toContain('Instruction on site: 240.00 in place of 120.00.');
    const numbers = context.database.raw.prepare("SELECT next FROM number_series WHERE name = 'quote'").pluck().get();
    expect(numbers).toBe(2);
  });

  it('after an acceptance wait for it to be cancelled, which frees the units, and are then accepted', async () => {
    const { context, enquiryId } = await planned();
    const first = granted(await issueQuote(context, { enquiryId }));
    const held = granted(acceptQuote(context, { quoteId: first.id }));
    const second = granted(await issueQuote(context, { enquiryId }));
    expect(acceptQuote(context, { quoteId: second.id })).toMatchObject(REFUSED('accepted-already'));
    expect(cancelAcceptance(context, { quoteId: first.id, reason: '' })).toMatchObject(REFUSED('reason-missing'));
    expect(granted(cancelAcceptance(context, { quoteId: first.id, reason: 'another crew' })).freed).toEqual(
      held.serials,
    );
    const active = context.database.raw.prepare("SELECT count(*) FROM booking_unit WHERE state = 'held'").pluck();
    const before = Number(active.get());
    expect(cancelAcceptance(context, { quoteId: first.id, reason: 'twice' })).toMatchObject(REFUSED('no-such-booking'));
    const again = granted(acceptQuote(context, { quoteId: second.id }));
    expect(again.number).not.toBe(held.number);
    expect(Number(active.get())).toBe(before + again.serials.length);
    context.database.raw.exec("UPDATE booking SET state = 'out' WHERE state = 'held'");
    expect(cancelAcceptance(context, { quoteId: second.id, reason: 'late' })).toMatchObject(
      REFUSED('booking-under-way'),
    );
  });

  it('are declined and withdrawn with a reason, opened again, and re-issued after they lapsed', async () => {
    const { context, enquiryId } = await planned();
    const { id } = granted(await issueQuote(context, { enquiryId }));
    const move = (to: 'declined' | 'withdrawn' | 'issued', reason = '') =>
      setQuoteState(context, { quoteId: id, to, reason });
    const standing = (at = context) => listIssuedQuotes(at, enquiryId)[0]?.standing.kind;
    expect(move('issued')).toMatchObject(REFUSED('quote-not-open'));
    expect(move('declined')).toMatchObject(REFUSED('reason-missing'));
    expect(setQuoteState(context, { quoteId: 99, to: 'declined', reason: 'x' })).toMatchObject(
      REFUSED('no-such-quote'),
    );
    granted(move('declined', 'too dear'));
    expect(standing()).toBe('declined');
    expect(acceptQuote(context, { quoteId: id })).toMatchObject(REFUSED('quote-declined'));
    granted(move('issued'));
    granted(move('withdrawn', 'wrong dates'));
    expect(acceptQuote(context, { quoteId: id })).toMatchObject(REFUSED('quote-withdrawn'));
    granted(move('issued'));
    expect(standing()).toBe('open');
    const later = on(context, '2026-03-25');
    expect(standing(later)).toBe('lapsed');
    granted(await issueQuote(later, { enquiryId }));
    expect(listIssuedQuotes(later, enquiryId).map(({ standing: { kind } }) => kind)).toEqual(['open', 'superseded']);
  });
});

describe('an order number', () => {
  it('is asked for at acceptance where the terms of the customer say so, and the quote says it', async () => {
    const { context, enquiryId } = await planned();
    context.database.raw.exec(
      `UPDATE customer SET facts_json = json_set(facts_json, '$.order_number', 'asked for', '$.payment_days', 14)
       WHERE id = (SELECT customer_id FROM enquiry WHERE id = ${enquiryId})`,
    );
    const { id } = granted(await issueQuote(context, { enquiryId }));
    const text = await words(context, id);
    expect(text).toContain('A deposit of 30 %');
    expect(text).toContain('within 14 days of the invoice');
    expect(text).toContain('We need your order number');
    expect(acceptQuote(context, { quoteId: id })).toMatchObject(REFUSED('order-number-missing'));
    granted(acceptQuote(context, { quoteId: id, orderNumber: 'PO 12' }));
  });
});

describe('an issued quote', () => {
  it('keeps its bytes and draws the same again, whatever changes in catalogue, rates, house and customer', async () => {
    const { context, enquiryId } = await planned();
    granted(put(context, { enquiryId, version: 0, choices: choices({ ...whole(5), purchase: 'shown' }) }));
    const { id } = granted(await issueQuote(context, { enquiryId }));
    const kinds = ['quote', 'quotation-xml', 'lines-xlsx'];
    const bytes = () => kinds.map((kind) => Buffer.from(granted(readPaper(context, { quoteId: id, kind })).bytes));
    const before = bytes();
    const { raw } = context.database;
    raw.exec("UPDATE model SET facts_json = json_set(facts_json, '$.name', 'Renamed', '$.rates.day_minor', 1)");
    raw.exec(
      "UPDATE house SET facts_json = json_set(facts_json, '$.name', 'Renamed house', '$.terms.discount_limit_percent', 1, '$.house_rules', json_array())",
    );
    raw.exec("UPDATE customer SET name = 'Renamed customer'");
    raw.exec('DELETE FROM schedule_line');
    expect(bytes()).toEqual(before);
    const again = granted(await redrawQuote(context, { quoteId: id }));
    expect(again.papers.length).toBeGreaterThan(7);
    expect(again.papers.filter(({ answer }) => answer !== 'identical')).toEqual([]);
    expect(again.drawnBy).toBe(again.program);
    expect(await redrawQuote(context, { quoteId: 99 })).toMatchObject(REFUSED('no-such-quote'));
  });
});
