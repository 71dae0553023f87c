import { beforeEach, describe, expect, it } from 'vitest';
import { openDatabase } from '#db/client.ts';
import type { Context } from '#lib/services/context.ts';
import { NOBODY } from '#lib/services/context.ts';
import { awaitPlan, startPlan } from '#lib/services/plans/plan-enquiry.ts';
import { issueQuote } from '#lib/services/quotes/issue-quote.ts';
import { acceptOrder } from '#lib/services/self-service/accept-order.ts';
import { answerWish, listAskedByLink } from '#lib/services/self-service/answer-wish.ts';
import { extendOrder, tryOrderExtension } from '#lib/services/self-service/extend-order.ts';
import { handOverOrder } from '#lib/services/self-service/hand-over-order.ts';
import { giveOrderOffHire } from '#lib/services/self-service/off-hire-order.ts';
import { openOrder } from '#lib/services/self-service/open-link.ts';
import { openPart } from '#lib/services/self-service/open-part.ts';
import { addValve } from '#lib/services/self-service/order-lines.ts';
import { readOrderPaper } from '#lib/services/self-service/order-papers.ts';
import { openOrderView } from '#lib/services/self-service/order-view.ts';
import { quoteOrder } from '#lib/services/self-service/quote-order.ts';
import { startOrder } from '#lib/services/self-service/start-order.ts';
import { sendBackOrder, takeOverOrder } from '#lib/services/self-service/take-over.ts';
import { workOrder } from '#lib/services/self-service/work-order.ts';
import { confirmBooking } from '#lib/services/yard/confirm-booking.ts';
import { expireHolds } from '#lib/services/yard/expire-holds.ts';
import { codeOf, granted } from '#tests/support/granted.ts';
import { onDay } from '#tests/support/houses/booked-house.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';
import { answersOf, CONTACT, KNOWN } from '#tests/support/houses/known-valve.ts';
import { as, backGood, confirmedAndSent, declare, noteIssued } from '#tests/support/houses/out-and-back.ts';

const ADDRESS = '192.0.2.20';
const SITE = { starts_on: '2026-03-16', days: 5, zone: 'none' };

interface Ordered {
  readonly desk: Context;
  readonly asked: { readonly token: string; readonly address: string };
  readonly enquiryId: number;
  readonly booking: string;
}

let kept: (Omit<Ordered, 'desk'> & { readonly desk: Context; readonly image: Buffer }) | undefined;

/** An order that a stranger accepted; made once and cloned. */
async function ordered(): Promise<Ordered> {
  kept ??= await makeOrder();
  const { image, ...rest } = kept;
  return { ...rest, desk: { ...rest.desk, database: openDatabase(Buffer.from(image)) } };
}

async function makeOrder() {
  const desk = await demoHouseContext();
  const stranger = { ...desk, actor: NOBODY };
  const made = granted(startOrder(stranger, { language: 'en', address: ADDRESS, site: SITE, title: 'Self-service' }));
  const asked = { token: made.token, address: ADDRESS };
  granted(addValve(stranger, { ...asked, answers: answersOf(KNOWN) }));
  await settle(stranger, asked);
  const { quote } = granted(await quoteOrder(stranger, { ...asked, contact: CONTACT }));
  const acceptance = { quote, name: CONTACT.name, order_number: 'PO-7', terms: 'accepted' as const };
  const { booking } = granted(acceptOrder(stranger, { ...asked, acceptance }));
  return { desk, asked, enquiryId: made.enquiryId, booking, image: desk.database.raw.serialize() };
}

async function settle(stranger: Context, asked: Ordered['asked']) {
  for (let turn = 0; turn < 5; turn += 1) {
    const state = granted(await workOrder(stranger, granted(openOrder(stranger, asked))));
    if (state.kind === 'ready' && state.current) return;
  }
}

function strangerOn(house: Ordered, moment: string): Context {
  return { ...onDay(house.desk, moment), actor: NOBODY };
}

async function viewOn(house: Ordered, moment: string) {
  return granted(await openOrderView(strangerOn(house, moment), house.asked));
}

/** Answers the serial numbers that left. */
function sendOut({ desk, booking }: Ordered): readonly string[] {
  return confirmedAndSent(desk, { number: booking, day: SITE.starts_on });
}

let house: Ordered;
beforeEach(async () => {
  house = await ordered();
});

describe('the link of an order that was accepted', () => {
  it('shows the hold and until when, and opens the site sheets once the house has confirmed', async () => {
    const held = await viewOn(house, '2026-03-03');
    expect(held.booking).toMatchObject({ state: 'held', hasSheets: false });
    expect(held.booking?.heldUntil).toMatch(/^2026-/);
    const paper = { ...house.asked, language: 'en' as const };
    const stranger = strangerOn(house, '2026-03-03');
    expect(codeOf(await readOrderPaper(stranger, { ...paper, kind: 'site-sheet' }))).toBe('no-such-paper');
    granted(confirmBooking(house.desk, { number: house.booking }));
    const sheet = granted(await readOrderPaper(stranger, { ...paper, kind: 'site-sheet' }));
    const frozen = house.desk.database.raw
      .prepare("SELECT bytes FROM paper WHERE kind = 'site-sheet' ORDER BY quote_id DESC LIMIT 1")
      .get() as { readonly bytes: Buffer };
    expect(Buffer.from(sheet.bytes).equals(frozen.bytes)).toBe(true);
    expect((await viewOn(house, '2026-03-03')).booking).toMatchObject({ state: 'confirmed', hasSheets: true });
  });

  it('opens the order until two months after the hire, longer than an order that is only begun', async () => {
    granted(confirmBooking(house.desk, { number: house.booking }));
    expect((await viewOn(house, '2026-05-01')).booking?.state).toBe('confirmed');
    expect(codeOf(openOrder(strangerOn(house, '2026-05-21'), house.asked))).toBe('link-expired');
  });

  it('says when the hold lapsed, and the same quote can be ordered again while it is valid', async () => {
    const { desk, asked } = house;
    const until = (await viewOn(house, '2026-03-03')).booking?.heldUntil ?? '';
    const after = new Date(Date.parse(until) + 60_000).toISOString();
    const stranger = strangerOn(house, after);
    expect(codeOf(confirmBooking({ ...desk, now: stranger.now }, { number: house.booking }))).not.toBe('');
    expireHolds({ ...desk, now: stranger.now });
    const view = await viewOn(house, after);
    expect(view).toMatchObject({ stage: 'quoted', booking: { state: 'lapsed' }, quote: { standing: 'open' } });
    const quote = view.quote?.name ?? '';
    const acceptance = { quote, name: 'M', order_number: '2', terms: 'accepted' as const };
    const again = granted(acceptOrder(stranger, { ...asked, acceptance }));
    expect(again.booking).not.toBe(house.booking);
  });

  it('shows what left with its serial numbers, and nobody else’s', async () => {
    const serials = sendOut(house);
    const view = await viewOn(house, '2026-03-17');
    expect(view.booking?.state).toBe('out');
    const told = view.booking?.hire.deliveries[0];
    expect(told?.leftAt).toMatch(/^2026-03-16T/);
    expect(told?.pieces.flatMap(({ serial }) => (serial === '' ? [] : [serial])).toSorted()).toEqual(
      serials.toSorted(),
    );
    const others = house.desk.database.raw.prepare('SELECT serial FROM unit').all() as readonly { serial: string }[];
    const text = JSON.stringify(view);
    expect(others.filter(({ serial }) => !serials.includes(serial) && text.includes(`"${serial}"`))).toEqual([]);
  });
});

describe('an off-hire notice by the link', () => {
  it('is numbered, timed at the press, and given once however often it is pressed', async () => {
    const serials = sendOut(house);
    const stranger = strangerOn(house, '2026-03-18T14:05:00Z');
    const off = { ...house.asked, saidBy: 'Mara Quist', serials };
    const pressed = await Promise.all(
      Array.from({ length: 5 }, () => Promise.resolve().then(() => granted(giveOrderOffHire(stranger, off)).notice)),
    );
    expect(new Set(pressed).size).toBe(1);
    const view = await viewOn(house, '2026-03-18T15:00:00Z');
    expect(view.booking?.hire.notices).toEqual([
      { number: pressed[0], at: '2026-03-18T14:05:00.000Z', saidBy: 'Mara Quist', serials },
    ]);
    expect(view.booking?.hire.toNotice).toEqual([]);
    expect(granted(listAskedByLink(house.desk)).map(({ kind }) => kind)).toEqual(['off-hire']);
  });

  it('may name some pieces; the others stay on hire', async () => {
    const serials = sendOut(house);
    const stranger = strangerOn(house, '2026-03-18');
    granted(giveOrderOffHire(stranger, { ...house.asked, saidBy: 'M', serials: serials.slice(0, 1) }));
    expect((await viewOn(house, '2026-03-18')).booking?.hire.toNotice.length).toBe(serials.length - 1);
  });

  it('is refused before anything left, without a name, and for pieces of others', () => {
    const off = { ...house.asked, saidBy: 'M', serials: [] };
    expect(codeOf(giveOrderOffHire(strangerOn(house, '2026-03-10'), off))).toBe('not-on-hire');
    sendOut(house);
    const stranger = strangerOn(house, '2026-03-18');
    expect(codeOf(giveOrderOffHire(stranger, { ...off, saidBy: ' ' }))).toBe('said-by-missing');
    expect(codeOf(giveOrderOffHire(stranger, { ...off, serials: ['X-1'] }))).toBe('not-on-hire');
    expect(codeOf(giveOrderOffHire(stranger, { ...off, token: 'C'.repeat(43) }))).toBe('no-such-link');
  });
});

describe('keeping it longer by the link', () => {
  it('says what it costs first and writes nothing, then is given at once and once', async () => {
    sendOut(house);
    const stranger = strangerOn(house, '2026-03-18');
    const longer = { ...house.asked, until: '2026-03-24' };
    const tried = granted(tryOrderExtension(stranger, longer));
    expect(tried).toMatchObject({ kind: 'given', until: '2026-03-24' });
    expect(tried.kind === 'given' ? tried.more_minor : 0).toBeGreaterThan(0);
    expect((await viewOn(house, '2026-03-18')).booking?.hire.lastDay).toBe('2026-03-20');
    expect(granted(extendOrder(stranger, { ...longer, askedBy: 'Mara' }))).toEqual(tried);
    const hire = (await viewOn(house, '2026-03-18')).booking?.hire;
    expect(hire).toMatchObject({ lastDay: '2026-03-24', extensions: [{ until: '2026-03-24' }] });
    expect(codeOf(extendOrder(stranger, { ...longer, askedBy: 'Mara' }))).toBe('extension-shorter');
  });

  it('goes to the Desk where it is not free on the same terms, once, and tells neither whom it hits nor how many', async () => {
    sendOut(house);
    const stranger = strangerOn(house, '2026-03-18');
    const far = { ...house.asked, until: '2027-06-30', askedBy: 'Mara' };
    expect(granted(tryOrderExtension(stranger, far))).toEqual({ kind: 'for the desk', until: '2027-06-30' });
    granted(extendOrder(stranger, far));
    granted(extendOrder(stranger, far));
    const waiting = granted(listAskedByLink(house.desk));
    expect(waiting).toMatchObject([{ kind: 'extension', until: '2027-06-30', booking: house.booking }]);
    expect((await viewOn(house, '2026-03-18')).booking?.hire.asked).toMatchObject({ state: 'waits', answer: '' });
    const yard = as(house.desk, 'yard');
    const no = { enquiryId: house.enquiryId, answer: 'It is booked elsewhere from April.' };
    expect(codeOf(answerWish(yard, no))).toBe('not-allowed');
    expect(codeOf(answerWish(house.desk, { ...no, answer: ' ' }))).toBe('reason-missing');
    granted(answerWish(house.desk, no));
    expect(codeOf(answerWish(house.desk, no))).toBe('no-such-wish');
    expect((await viewOn(house, '2026-03-18')).booking?.hire.asked).toMatchObject({
      state: 'declined',
      answer: no.answer,
    });
    expect(granted(listAskedByLink(house.desk))).toEqual([]);
  });

  it('is refused before the house confirmed, for a day that is no later, and by a link that may only look', () => {
    const stranger = strangerOn(house, '2026-03-10');
    expect(codeOf(tryOrderExtension(stranger, { ...house.asked, until: '2026-03-24' }))).toBe('not-to-extend');
    sendOut(house);
    expect(codeOf(tryOrderExtension(stranger, { ...house.asked, until: '2026-03-20' }))).toBe('extension-shorter');
    expect(codeOf(tryOrderExtension(stranger, { ...house.asked, until: 'soon' }))).toBe('form-unreadable');
    house.desk.database.raw.prepare("UPDATE order_link SET scope = 'look'").run();
    expect(codeOf(extendOrder(stranger, { ...house.asked, until: '2026-03-24', askedBy: 'M' }))).toBe(
      'link-only-looks',
    );
    expect(codeOf(giveOrderOffHire(stranger, { ...house.asked, saidBy: 'M', serials: [] }))).toBe('link-only-looks');
  });
});

describe('the return as the link shows it', () => {
  it('says what came back and what is missing; charges only once they were issued, and then the note', async () => {
    const serials = sendOut(house);
    const yard = as(onDay(house.desk, '2026-03-20'), 'yard');
    const returnId = declare(yard, house.booking);
    backGood(yard, { returnId, serials: serials.slice(1) });
    const some = (await viewOn(house, '2026-03-20')).booking?.hire;
    expect(some?.returns[0]?.pieces.filter(({ serial }) => serial !== '').length).toBe(serials.length - 1);
    expect(some?.missing.map(({ serial }) => serial)).toContain(serials[0]);
    backGood(yard, { returnId, serials: serials.slice(0, 1) });
    const desk = onDay(house.desk, '2026-03-21');
    expect((await viewOn(house, '2026-03-21')).booking?.hire.notes).toEqual([]);
    const note = await noteIssued(desk, house.booking);
    const view = await viewOn(house, '2026-03-21');
    expect(view.booking).toMatchObject({ state: 'closed', hire: { missing: [], notes: [{ number: note.number }] } });
    const stranger = strangerOn(house, '2026-03-21');
    const paper = { ...house.asked, language: 'en' as const };
    expect(granted(await readOrderPaper(stranger, { ...paper, kind: note.number })).mime).toBe('application/pdf');
    expect(codeOf(await readOrderPaper(stranger, { ...paper, kind: 'R-99999' }))).toBe('no-such-paper');
  });
});

describe('an order that the Desk takes over, revises and sends back', () => {
  it('shows the revised quote at the same link, says what became of the old one, and refuses it', async () => {
    const desk = await demoHouseContext();
    const stranger = { ...desk, actor: NOBODY };
    const made = granted(startOrder(stranger, { language: 'en', address: ADDRESS, site: SITE, title: 'Self-service' }));
    const asked = { token: made.token, address: ADDRESS };
    granted(addValve(stranger, { ...asked, answers: answersOf(KNOWN) }));
    await settle(stranger, asked);
    const { quote: first } = granted(await quoteOrder(stranger, { ...asked, contact: CONTACT }));
    granted(takeOverOrder(desk, made.enquiryId));
    granted(startPlan(desk, made.enquiryId));
    granted(await awaitPlan(desk, made.enquiryId));
    const revised = granted(await issueQuote(desk, { enquiryId: made.enquiryId }));
    const second = `${revised.number} ${revised.revision}`;
    const accept = (quote: string) =>
      codeOf(
        acceptOrder(stranger, { ...asked, acceptance: { quote, name: 'M', order_number: '1', terms: 'accepted' } }),
      );
    expect(accept(second)).toBe('order-with-desk');
    granted(sendBackOrder(desk, made.enquiryId));
    const view = granted(await openOrderView(stranger, asked));
    expect(view.quote).toMatchObject({ name: second, standing: 'open' });
    expect(view.older).toEqual([{ name: first, standing: 'superseded' }]);
    expect(accept(first)).toBe('quote-superseded');
    expect(accept(second)).toBe('');
  });

  it('opens what was handed over apart from the order it came from, and only from there', async () => {
    const desk = await demoHouseContext();
    const stranger = { ...desk, actor: NOBODY };
    const start = () =>
      granted(startOrder(stranger, { language: 'en', address: ADDRESS, site: SITE, title: 'Self-service' }));
    const made = start();
    const other = start();
    const asked = { token: made.token, address: ADDRESS };
    granted(addValve(stranger, { ...asked, answers: answersOf(KNOWN) }));
    granted(addValve(stranger, { ...asked, answers: answersOf({ ...KNOWN, condition: 'seized' }) }));
    await settle(stranger, asked);
    const { number } = granted(handOverOrder(stranger, { ...asked, contact: CONTACT, which: 'marked', message: '' }));
    expect(granted(await openOrderView(stranger, asked)).apart).toEqual([{ number, stage: 'handed over' }]);
    const { token } = granted(openPart(stranger, { ...asked, number }));
    const part = granted(await openOrderView(stranger, { token, address: ADDRESS }));
    expect(part).toMatchObject({ number, stage: 'handed over', mayChange: false });
    expect(codeOf(openPart(stranger, { token: other.token, address: ADDRESS, number }))).toBe('no-such-order');
  });
});
