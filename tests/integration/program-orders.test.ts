import { beforeEach, describe, expect, it } from 'vitest';
import { OPERATIONS, openApiDocument } from '#lib/contracts/openapi.ts';
import type { Result } from '#lib/kernel/result.ts';
import { type Context, NOBODY } from '#lib/services/context.ts';
import { acceptOrder } from '#lib/services/self-service/accept-order.ts';
import { once } from '#lib/services/self-service/once.ts';
import { listKeys, makeKey, openKey, revokeKey } from '#lib/services/self-service/open-key.ts';
import { type KeySent, newProgramOrder, programOrder } from '#lib/services/self-service/program-orders.ts';
import { quoteOrder } from '#lib/services/self-service/quote-order.ts';
import { TURNS } from '#lib/services/self-service/self-throttle.ts';
import { codeOf, granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';
import { CONTACT, programKey, readyProgramOrder, VALVE } from '#tests/support/houses/program-order.ts';
import { repositoryFiles } from '#tests/support/repository.ts';

const ADDRESS = '192.0.2.20';
const PLACE = { starts_on: '2026-03-09', days: 1, zone: 'none' as const };

let desk: Context;
let program: Context;
let customers: readonly number[];

const keyFor = (customerId: number) => programKey(desk, { customerId, address: ADDRESS });
const readyOrder = (sent: KeySent) => readyProgramOrder(program, { ...sent, place: PLACE });

beforeEach(async () => {
  desk = await demoHouseContext();
  program = { ...desk, actor: NOBODY };
  const rows = desk.database.raw.prepare('SELECT id FROM customer ORDER BY id LIMIT 2').all();
  customers = (rows as readonly { readonly id: number }[]).map(({ id }) => id);
});

describe('a key of a customer', () => {
  it('is answered once, kept as a hash, told apart by its end, and opens nothing after it was revoked', () => {
    const [customerId = 0] = customers;
    const sent = keyFor(customerId);
    expect(sent.token).toMatch(/^kw_[\w-]{43}$/);
    const [view] = granted(listKeys(desk, customerId));
    expect(view).toMatchObject({ name: 'Planner', shownEnd: sent.token.slice(-4), revokedAt: '' });
    expect(JSON.stringify(desk.database.raw.prepare('SELECT * FROM api_key').all())).not.toContain(sent.token.slice(3));
    expect(granted(openKey(program, sent)).customer_id).toBe(customerId);
    granted(revokeKey(desk, { customerId, keyId: view?.id ?? 0 }));
    expect(codeOf(openKey(program, sent))).toBe('no-key');
  });

  it('is made and revoked by the Desk only', () => {
    const [customerId = 0] = customers;
    expect(codeOf(makeKey(program, { customerId, name: 'x' }))).toBe('not-signed-in');
    expect(codeOf(listKeys(program, customerId))).toBe('not-signed-in');
    expect(codeOf(revokeKey(program, { customerId, keyId: 1 }))).toBe('not-signed-in');
    expect(codeOf(makeKey(desk, { customerId, name: ' ' }))).toBe('name-missing');
    expect(codeOf(makeKey(desk, { customerId: 9999, name: 'x' }))).toBe('no-such-customer');
    expect(codeOf(revokeKey(desk, { customerId, keyId: 99 }))).toBe('no-such-key');
  });

  it('that is guessed at too often is not looked up any more from that address', () => {
    const sent = { ...keyFor(customers[0] ?? 0), address: '192.0.2.77' };
    for (let turn = 0; turn < TURNS['use a wrong key'].most; turn += 1)
      expect(codeOf(openKey(program, { token: `kw_${'C'.repeat(43)}`, address: '192.0.2.77' }))).toBe('no-key');
    expect(codeOf(openKey(program, sent))).toBe('too-many-tries');
  });
});

describe('an order by program', () => {
  it('is answered, quoted and accepted by its own customer’s key, and by no other', async () => {
    const own = keyFor(customers[0] ?? 0);
    const other = keyFor(customers[1] ?? 0);
    const order = await readyOrder(own);
    expect(order).toMatchObject({ firm: true, stage: 'draft', availability: { kind: 'free' } });
    const asked = { ...own, enquiryId: order.id };
    expect(codeOf(await programOrder(program, { ...other, enquiryId: order.id }))).toBe('no-such-order');
    expect(codeOf(await programOrder(program, { token: 'kw_', address: ADDRESS, enquiryId: order.id }))).toBe('no-key');
    expect(codeOf(await quoteOrder(program, { ...other, enquiryId: order.id, contact: CONTACT }))).toBe(
      'no-such-order',
    );
    const { quote } = granted(await quoteOrder(program, { ...asked, contact: CONTACT }));
    const acceptance = { quote, name: 'Ivo Brandt', order_number: 'PO-9', terms: 'accepted' as const };
    expect(codeOf(acceptOrder(program, { ...other, enquiryId: order.id, acceptance }))).toBe('no-such-order');
    const first = granted(acceptOrder(program, { ...asked, acceptance }));
    expect(granted(acceptOrder(program, { ...asked, acceptance })).booking).toBe(first.booking);
    expect(granted(await programOrder(program, asked)).booking?.number).toBe(first.booking);
  });

  it('does not open enquiries of the Desk, of the same customer as little as of others', async () => {
    const row = desk.database.raw.prepare('SELECT id, customer_id FROM enquiry LIMIT 1').get();
    const { id, customer_id } = row as { readonly id: number; readonly customer_id: number };
    expect(codeOf(await programOrder(program, { ...keyFor(customer_id), enquiryId: id }))).toBe('no-such-order');
  });

  it('tells all that cannot be read by valve and column, and keeps nothing', async () => {
    const before = desk.database.raw.prepare('SELECT count(*) AS n FROM enquiry').get();
    const valves = [{ ...VALVE, wheel_diameter: 'wide' }, { colour: 'red' }];
    const refused = await newProgramOrder(program, {
      ...keyFor(customers[0] ?? 0),
      order: { place: PLACE, valves, language: 'en' },
    });
    expect(codeOf(refused)).toBe('valves-unreadable');
    expect(refused.ok ? '' : refused.reason.sentence).toMatch(
      /Valve 1, wheel_diameter:.*Valve 2: there is no column “colour”/s,
    );
    expect(desk.database.raw.prepare('SELECT count(*) AS n FROM enquiry').get()).toEqual(before);
  });

  it('holds nothing but what its schema names', async () => {
    const order = await readyOrder(keyFor(customers[0] ?? 0));
    expect(Object.keys(order).toSorted()).toEqual(
      'availability booking firm id number place price quote reasons stage valves work'.split(' ').toSorted(),
    );
    expect(JSON.stringify(order)).not.toMatch(/drawing|shapes|replacement|serial/);
  });
});

describe('an idempotency key', () => {
  it('carries a request out once, at once and again later, and refuses another request under it', async () => {
    let runs = 0;
    const ask = (request: unknown, key = 'k-1') =>
      once(program, {
        scope: 'test',
        key,
        request,
        run: async () => {
          runs += 1;
          await new Promise((resolve) => setTimeout(resolve, 5));
          return { ok: true as const, value: runs };
        },
      });
    const five = await Promise.all(Array.from({ length: 5 }, () => ask({ a: 1 })));
    expect(five.map(granted)).toEqual([1, 1, 1, 1, 1]);
    expect(granted(await ask({ a: 1 }))).toBe(1);
    expect(codeOf(await ask({ a: 2 }))).toBe('key-used-before');
    expect(codeOf(await ask({ a: 1 }, 'x'.repeat(201)))).toBe('key-too-long');
    expect(granted(await ask({ a: 1 }, ''))).toBe(2);
  });

  it('keeps no refusal: what was wrong is put right and sent again', async () => {
    const answers: readonly Result<number>[] = [
      { ok: false, reason: { code: 'no', sentence: 'No.' } },
      { ok: true, value: 7 },
    ];
    let turn = 0;
    const ask = () =>
      once(program, {
        scope: 'test',
        key: 'again',
        request: {},
        run: async () => answers[turn++] ?? { ok: true, value: 0 },
      });
    expect(codeOf(await ask())).toBe('no');
    expect(granted(await ask())).toBe(7);
    expect(granted(await ask())).toBe(7);
  });
});

describe('the OpenAPI document', () => {
  it('names a route for every operation, and every reference leads to a schema in it', () => {
    const document = openApiDocument();
    const text = JSON.stringify(document);
    const schemas = (document.components as { readonly schemas: Readonly<Record<string, unknown>> }).schemas;
    const named = [...text.matchAll(/#\/components\/schemas\/(\w+)/g)].map(([, name = '']) => name);
    expect(named.length).toBeGreaterThan(10);
    for (const name of named) expect(schemas, name).toHaveProperty(name);
    expect(text).not.toContain('Unnamed');
    const routes = repositoryFiles();
    for (const { path } of OPERATIONS)
      expect(routes).toContain(`app${path.replaceAll('{', '[').replaceAll('}', ']')}/route.ts`);
  });
});
