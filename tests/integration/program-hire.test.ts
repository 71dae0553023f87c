import { beforeEach, describe, expect, it } from 'vitest';
import { statusOf } from '#app/_lib/respond.ts';
import { openDatabase } from '#db/client.ts';
import { openApiDocument } from '#lib/contracts/openapi.ts';
import { extensionSchema, offHireSchema, orderHireSchema } from '#lib/contracts/order-hire.ts';
import type { Result } from '#lib/kernel/result.ts';
import { type Context, NOBODY } from '#lib/services/context.ts';
import { acceptOrder } from '#lib/services/self-service/accept-order.ts';
import { answerWish, listAskedByLink } from '#lib/services/self-service/answer-wish.ts';
import { once } from '#lib/services/self-service/once.ts';
import { readOrderPaper } from '#lib/services/self-service/order-papers.ts';
import {
  programExtension,
  programExtensionTried,
  programHire,
  programOffHire,
} from '#lib/services/self-service/program-hire.ts';
import type { KeySent } from '#lib/services/self-service/program-orders.ts';
import { quoteOrder } from '#lib/services/self-service/quote-order.ts';
import { confirmBooking } from '#lib/services/yard/confirm-booking.ts';
import { codeOf, granted } from '#tests/support/granted.ts';
import { onDay } from '#tests/support/houses/booked-house.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';
import { as, backGood, confirmedAndSent, declare, noteIssued } from '#tests/support/houses/out-and-back.ts';
import { CONTACT, programKey, readyProgramOrder } from '#tests/support/houses/program-order.ts';

const ADDRESS = '192.0.2.20';
const PLACE = { starts_on: '2026-03-16', days: 5, zone: 'none' as const };

interface House {
  readonly desk: Context;
  readonly own: KeySent & { readonly enquiryId: number };
  /** A key of another customer. */
  readonly other: KeySent & { readonly enquiryId: number };
  /** An order of the same key that is not accepted. */
  readonly draft: number;
  readonly booking: string;
}

let kept: (House & { readonly image: Buffer }) | undefined;

/** Made once and cloned. */
async function accepted(): Promise<House> {
  kept ??= await makeHouse();
  const { image, ...house } = kept;
  return { ...house, desk: { ...house.desk, database: openDatabase(Buffer.from(image)) } };
}

async function makeHouse() {
  const desk = await demoHouseContext();
  const program = { ...desk, actor: NOBODY };
  const rows = desk.database.raw.prepare('SELECT id FROM customer ORDER BY id LIMIT 2').all();
  const [first = 0, second = 0] = (rows as readonly { readonly id: number }[]).map(({ id }) => id);
  const key = programKey(desk, { customerId: first, address: ADDRESS });
  const { id: draft } = await readyProgramOrder(program, { ...key, place: { ...PLACE, name: 'Later' } });
  const { id: enquiryId } = await readyProgramOrder(program, { ...key, place: PLACE });
  const own = { ...key, enquiryId };
  const { quote } = granted(await quoteOrder(program, { ...own, contact: CONTACT }));
  const acceptance = { quote, name: CONTACT.name, order_number: 'PO-9', terms: 'accepted' as const };
  const { booking } = granted(acceptOrder(program, { ...own, acceptance }));
  const other = { ...programKey(desk, { customerId: second, address: ADDRESS }), enquiryId };
  return { desk, own, other, draft, booking, image: desk.database.raw.serialize() };
}

const count = (table: string): unknown =>
  house.desk.database.raw.prepare(`SELECT count(*) FROM ${table}`).pluck().get();
const programOn = (moment: string): Context => ({ ...onDay(house.desk, moment), actor: NOBODY });
const sendOut = () => confirmedAndSent(house.desk, { number: house.booking, day: PLACE.starts_on });

/** As its route does: carried out once for an idempotency key. */
function underKey<Value>(program: Context, deed: { readonly request: unknown; readonly run: () => Result<Value> }) {
  return once(program, { scope: 'key 1', key: 'k-1', request: deed.request, run: () => Promise.resolve(deed.run()) });
}

let house: House;
beforeEach(async () => {
  house = await accepted();
});

describe('the hire of an order by program', () => {
  it('tells what left by serial number, nobody else’s, and nothing but what its schema names', () => {
    const serials = sendOut();
    const hire = granted(programHire(programOn('2026-03-17'), house.own));
    expect(hire).toMatchObject({
      ...{ booking: house.booking, state: 'out', starts_on: '2026-03-16', last_day: '2026-03-20', late: false },
      ...{ notices: [], extensions: [], asked: null, may_extend: true, returns: [], return_notes: [] },
    });
    const left = hire.deliveries.flatMap(({ pieces }) => pieces.flatMap(({ serial }) => serial ?? []));
    expect(left.toSorted()).toEqual(serials.toSorted());
    expect(hire.to_notice.map(({ serial }) => serial).toSorted()).toEqual(serials.toSorted());
    expect(Object.keys(hire).toSorted()).toEqual(Object.keys(orderHireSchema.shape).toSorted());
    const others = house.desk.database.raw.prepare('SELECT serial FROM unit').pluck().all() as readonly string[];
    const text = JSON.stringify(hire);
    expect(others.filter((serial) => !serials.includes(serial) && text.includes(`"${serial}"`))).toEqual([]);
    expect(granted(programHire(programOn('2026-03-22'), house.own)).late).toBe(true);
  });

  it('tells what came back and how, and what is missing', () => {
    const [first = '', ...rest] = sendOut();
    const yard = as(onDay(house.desk, '2026-03-20'), 'yard');
    backGood(yard, { returnId: declare(yard, house.booking), serials: rest });
    const { returns, missing } = granted(programHire(programOn('2026-03-20'), house.own));
    expect(returns).toMatchObject([{ arrived_on: '2026-03-20' }]);
    const back = returns.flatMap(({ pieces }) => pieces).filter(({ serial }) => serial !== null);
    expect(back.map(({ serial }) => serial).toSorted()).toEqual(rest.toSorted());
    expect(back.every(({ condition, missing_parts }) => condition === 'good' && missing_parts === '')).toBe(true);
    expect(missing).toContainEqual(expect.objectContaining({ serial: first, lost: 'awaited', count: 1 }));
  });

  it('tells charges once they were issued, and opens the note', async () => {
    const serials = sendOut();
    const yard = as(onDay(house.desk, '2026-03-20'), 'yard');
    backGood(yard, { returnId: declare(yard, house.booking), serials });
    const program = programOn('2026-03-21');
    expect(granted(programHire(program, house.own)).return_notes).toEqual([]);
    const { number } = await noteIssued(onDay(house.desk, '2026-03-21'), house.booking);
    const hire = granted(programHire(program, house.own));
    expect(hire).toMatchObject({ state: 'closed', missing: [], to_notice: [], may_extend: false });
    expect(hire.return_notes).toMatchObject([{ number, issued_on: '2026-03-21' }]);
    expect(hire.papers).toContain(number);
    const paper = { ...house.own, kind: number, language: 'en' as const };
    expect(granted(await readOrderPaper(program, paper)).mime).toBe('application/pdf');
    expect(codeOf(await readOrderPaper(program, { ...paper, ...house.other }))).toBe('no-such-order');
  });

  it('is refused where nothing is booked, and to other customers’ keys as to a stranger', () => {
    const program = programOn('2026-03-17');
    expect(codeOf(programHire(program, { ...house.own, enquiryId: house.draft }))).toBe('no-such-booking');
    expect(codeOf(programHire(program, house.other))).toBe('no-such-order');
    expect(codeOf(programHire(program, { ...house.own, enquiryId: 999_999 }))).toBe('no-such-order');
    expect(codeOf(programHire(program, { ...house.own, token: 'kw_' }))).toBe('no-key');
  });
});

describe('an off-hire notice by program', () => {
  it('is one notice for the same idempotency key, and one without any', async () => {
    const serials = sendOut();
    const program = programOn('2026-03-18T14:05:00Z');
    const request = { said_by: 'Ivo Brandt', serials: [] };
    const ask = () => underKey(program, { request, run: () => programOffHire(program, { ...house.own, ...request }) });
    const first = granted(await ask());
    expect(first.serials.toSorted()).toEqual(serials.toSorted());
    expect(granted(await ask())).toEqual(first);
    expect(granted(programOffHire(program, { ...house.own, ...request }))).toEqual({
      notice: first.notice,
      serials: [],
    });
    expect(count('off_hire_notice')).toBe(1);
    const { notices, to_notice } = granted(programHire(program, house.own));
    expect(notices).toEqual([{ number: first.notice, at: '2026-03-18T14:05:00.000Z', said_by: 'Ivo Brandt', serials }]);
    expect(to_notice).toEqual([]);
    expect(granted(listAskedByLink(house.desk)).map(({ kind }) => kind)).toEqual(['off-hire']);
    const note = house.desk.database.raw.prepare('SELECT note FROM off_hire_notice').pluck().get();
    expect(note).toBe('Given by a program of the customer.');
  });

  it('may name some pieces; the others stay on hire', () => {
    const [first = '', ...rest] = sendOut();
    const program = programOn('2026-03-18');
    expect(granted(programOffHire(program, { ...house.own, said_by: 'I', serials: [first] })).serials).toEqual([first]);
    const left = granted(programHire(program, house.own)).to_notice.map(({ serial }) => serial);
    expect(left.toSorted()).toEqual(rest.toSorted());
  });

  it('is refused before anything left, without a name, for pieces of others, and to other customers', () => {
    const off = { ...house.own, said_by: 'I', serials: [] };
    expect(codeOf(programOffHire(programOn('2026-03-10'), { ...off, enquiryId: house.draft }))).toBe('no-such-booking');
    expect(codeOf(programOffHire(programOn('2026-03-10'), off))).toBe('not-on-hire');
    sendOut();
    const program = programOn('2026-03-18');
    expect(codeOf(programOffHire(program, { ...off, said_by: ' ' }))).toBe('said-by-missing');
    expect(codeOf(programOffHire(program, { ...off, serials: ['X-1'] }))).toBe('not-on-hire');
    expect(codeOf(programOffHire(program, { ...off, ...house.other }))).toBe('no-such-order');
    expect(codeOf(programOffHire(program, { ...off, token: 'kw_' }))).toBe('no-key');
    expect(statusOf('not-on-hire')).toBe(409);
    expect(offHireSchema.safeParse({ said_by: ' ' }).success).toBe(false);
    expect(offHireSchema.safeParse({ said_by: 'I', serial: 'X-1' }).success).toBe(false);
    expect(count('off_hire_notice')).toBe(0);
  });
});

describe('keeping it longer by program', () => {
  it('is priced first without writing, then given once for the same idempotency key', async () => {
    sendOut();
    const program = programOn('2026-03-18');
    const request = { until: '2026-03-24', asked_by: 'Ivo Brandt' };
    const tried = granted(programExtensionTried(program, { ...house.own, until: request.until }));
    expect(tried).toMatchObject({ given: true, until: '2026-03-24', currency: expect.stringMatching(/^[A-Z]{3}$/) });
    expect(tried.more_minor).toBeGreaterThan(0);
    expect(granted(programHire(program, house.own))).toMatchObject({ last_day: '2026-03-20', extensions: [] });
    const ask = () =>
      underKey(program, { request, run: () => programExtension(program, { ...house.own, ...request }) });
    expect(granted(await ask())).toEqual(tried);
    expect(granted(await ask())).toEqual(tried);
    expect(granted(programHire(program, house.own))).toMatchObject({
      last_day: '2026-03-24',
      extensions: [{ until: '2026-03-24' }],
    });
    expect(codeOf(programExtension(program, { ...house.own, ...request }))).toBe('extension-shorter');
    const why = house.desk.database.raw.prepare('SELECT why FROM booking_extension').pluck().get();
    expect(why).toBe('asked for by a program of the customer');
  });

  it('goes to the Desk where it is not free on the same terms, once, and the Desk’s answer is told', () => {
    sendOut();
    const program = programOn('2026-03-18');
    const far = { ...house.own, until: '2027-06-30', asked_by: 'Ivo' };
    const waits = { given: false, until: '2027-06-30', more_minor: null, currency: null };
    expect(granted(programExtensionTried(program, far))).toEqual(waits);
    expect(count('extension_wish')).toBe(0);
    expect(granted(programExtension(program, far))).toEqual(waits);
    expect(granted(programExtension(program, far))).toEqual(waits);
    expect(count('extension_wish')).toBe(1);
    expect(granted(programHire(program, house.own)).asked).toMatchObject({ state: 'waits', until: '2027-06-30' });
    granted(answerWish(house.desk, { enquiryId: house.own.enquiryId, answer: 'It is booked elsewhere from April.' }));
    expect(granted(programHire(program, house.own)).asked).toMatchObject({
      state: 'declined',
      answer: 'It is booked elsewhere from April.',
    });
  });

  it('is refused before the house confirmed, for a day that is none or no later, and to other customers', () => {
    const longer = { ...house.own, until: '2026-03-24', asked_by: 'I' };
    expect(codeOf(programExtensionTried(programOn('2026-03-10'), longer))).toBe('not-to-extend');
    expect(codeOf(programExtension(programOn('2026-03-10'), longer))).toBe('not-to-extend');
    sendOut();
    const program = programOn('2026-03-18');
    for (const ask of [programExtensionTried, programExtension]) {
      const run = (changed: object) => codeOf(ask(program, { ...longer, ...changed }));
      expect(run({ until: '2026-03-20' })).toBe('extension-shorter');
      expect(run({ until: '' })).toBe('form-unreadable');
      expect(run(house.other)).toBe('no-such-order');
      expect(run({ token: 'kw_' })).toBe('no-key');
    }
    expect(statusOf('not-to-extend')).toBe(409);
    expect(extensionSchema.safeParse({ until: 'soon', asked_by: 'I' }).success).toBe(false);
    expect(extensionSchema.safeParse({ until: '2026-03-24', asked_by: ' ' }).success).toBe(false);
  });
});

describe('papers by program', () => {
  it('are those that its hire names, as PDF, and no others', async () => {
    const program = programOn('2026-03-03');
    const paper = (kind: string, asked = house.own) => readOrderPaper(program, { ...asked, kind, language: 'en' });
    expect(granted(programHire(program, house.own)).papers).toEqual(['quote', 'summary']);
    expect(codeOf(await paper('site-sheet'))).toBe('no-such-paper');
    granted(confirmBooking(house.desk, { number: house.booking }));
    const { papers } = granted(programHire(program, house.own));
    expect(papers).toEqual(['quote', 'summary', 'site-sheet']);
    for (const kind of papers) {
      const { mime, bytes } = granted(await paper(kind));
      expect(mime).toBe('application/pdf');
      expect(Buffer.from(bytes).subarray(0, 5).toString()).toBe('%PDF-');
    }
    expect(codeOf(await paper('R-99999'))).toBe('no-such-paper');
    expect(codeOf(await paper('packing-list'))).toBe('no-such-paper');
    expect(codeOf(await paper('quote', house.other))).toBe('no-such-order');
    expect(codeOf(await paper('quote', { ...house.own, token: 'kw_' }))).toBe('no-key');
  });
});

describe('the OpenAPI document of the hire', () => {
  it('names the routes with their parameters and what they answer', () => {
    const { paths } = openApiDocument() as {
      readonly paths: Readonly<
        Record<string, Readonly<Record<string, { parameters: { name: string }[]; responses: Record<string, object> }>>>
      >;
    };
    const told = (path: string, method: string) => paths[`/api/v1/orders/{id}${path}`]?.[method];
    const named = (path: string, method: string) => told(path, method)?.parameters.map(({ name }) => name);
    expect(named('/hire', 'get')).toEqual(['id']);
    expect(named('/off-hire', 'post')).toEqual(['id', 'Idempotency-Key']);
    expect(named('/extension', 'get')).toEqual(['id', 'until']);
    expect(named('/extension', 'post')).toEqual(['id', 'Idempotency-Key']);
    expect(named('/papers/{kind}', 'get')).toEqual(['id', 'kind']);
    expect(told('/papers/{kind}', 'get')?.responses['200']).toHaveProperty(['content', 'application/pdf']);
    expect(told('/hire', 'get')?.responses['200']).toHaveProperty(
      ['content', 'application/json', 'schema', '$ref'],
      '#/components/schemas/OrderHire',
    );
  });
});
