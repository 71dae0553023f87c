/** Every address that is open to the world, by the file tree and the document for programs: what a stranger, another customer, and an expired or withdrawn link get there. */
import { randomUUID } from 'node:crypto';
import type { APIRequestContext } from '@playwright/test';
import { OPEN_PAGES, OPEN_ROOTS, OPEN_ROUTES } from '#app/_lib/open-paths.ts';
import { openDatabase } from '#db/client.ts';
import { OPERATIONS } from '#lib/contracts/openapi.ts';
import type { Context } from '#lib/services/context.ts';
import { NOBODY } from '#lib/services/context.ts';
import { makeKey, revokeKey } from '#lib/services/self-service/open-key.ts';
import { addValve } from '#lib/services/self-service/order-lines.ts';
import { TURNS } from '#lib/services/self-service/self-throttle.ts';
import { startOrder } from '#lib/services/self-service/start-order.ts';
import { readRepositoryFile, repositoryFiles } from '#tests/support/repository.ts';
import { forgetTries } from './forgotten-tries.ts';
import { expect, test } from './signed-in.ts';

type Caller = 'stranger' | 'other customer' | 'expired' | 'withdrawn';
const CALLERS: readonly Caller[] = ['stranger', 'other customer', 'expired', 'withdrawn'];
type Statuses = Readonly<Record<Caller, number>>;

/** Whoever holds no link to the order learns nothing; a link that was given out says what became of it. */
const BY_LINK: Statuses = { stranger: 404, 'other customer': 200, expired: 410, withdrawn: 410 };
/** The same where the address names a part of an order: another customer's link does not reach it. */
const PART_BY_LINK: Statuses = { ...BY_LINK, 'other customer': 404 };
const BY_KEY: Statuses = { stranger: 401, 'other customer': 404, expired: 401, withdrawn: 401 };
const FOR_ALL = (status: number): Statuses => ({
  stranger: status,
  'other customer': status,
  expired: status,
  withdrawn: status,
});

interface Door {
  readonly statuses: Statuses;
  /** Where a page answers otherwise than a form. */
  readonly onGet?: Statuses;
  /** The methods that it answers, each asked. */
  readonly methods: readonly ('GET' | 'POST')[];
  readonly form?: Readonly<Record<string, string>>;
  readonly body?: unknown;
}

const CONTACT = { name: 'Nobody', firm: 'Nobody', email: 'nobody@nobody.example' };
const PLACE = { starts_on: '2031-06-02', days: 1, zone: 'none' };

/** Each address under the open roots and beside them; one that is added to the tree fails until it stands here. */
const DOORS: Readonly<Record<string, Door>> = {
  '/hire': { statuses: FOR_ALL(200), methods: ['GET'] },
  '/hire/start': { statuses: FOR_ALL(200), methods: ['POST'], form: { starts_on: '2031-06-02', days: '1' } },
  '/hire/language': { statuses: FOR_ALL(200), methods: ['POST'], form: { language: 'en' } },
  '/hire/[token]': { statuses: BY_LINK, methods: ['GET'] },
  '/hire/[token]/valve/[lineId]': { statuses: PART_BY_LINK, methods: ['GET'] },
  '/hire/[token]/list/[fileId]': { statuses: PART_BY_LINK, methods: ['GET'] },
  '/hire/[token]/papers/[kind]': { statuses: PART_BY_LINK, methods: ['GET'] },
  // What is removed is a valve of another order; asked for as a page, the address leads to the order of the link.
  '/hire/[token]/do/[deed]': { statuses: PART_BY_LINK, onGet: BY_LINK, methods: ['POST', 'GET'] },
  '/api/v1/orders': {
    statuses: { ...FOR_ALL(401), 'other customer': 422 },
    methods: ['POST'],
    body: { place: { ...PLACE, starts_on: '2020-01-01' }, valves: [{ tag: 'V1' }] },
  },
  '/api/v1/orders/[id]': { statuses: BY_KEY, methods: ['GET'] },
  '/api/v1/orders/[id]/quote': { statuses: BY_KEY, methods: ['POST'], body: { contact: CONTACT } },
  '/api/v1/orders/[id]/accept': {
    statuses: BY_KEY,
    methods: ['POST'],
    body: { quote: 'Q-1 A', name: 'N', order_number: '1', terms: 'accepted' },
  },
  '/api/v1/orders/[id]/hand-over': { statuses: BY_KEY, methods: ['POST'], body: { contact: CONTACT } },
  '/api/v1/orders/[id]/hire': { statuses: BY_KEY, methods: ['GET'] },
  '/api/v1/orders/[id]/off-hire': { statuses: BY_KEY, methods: ['POST'], body: { said_by: 'N' } },
  '/api/v1/orders/[id]/extension': {
    statuses: BY_KEY,
    methods: ['GET', 'POST'],
    body: { until: '2031-06-09', asked_by: 'N' },
  },
  '/api/v1/orders/[id]/papers/[kind]': { statuses: BY_KEY, methods: ['GET'] },
  '/api/v1/openapi.json': { statuses: FOR_ALL(200), methods: ['GET'] },
  '/api/ping': { statuses: FOR_ALL(200), methods: ['GET'] },
  '/sign-in': { statuses: FOR_ALL(200), methods: ['GET'] },
};

function addressOf(path: string): string {
  const folders = path.split('/').slice(1, -1);
  return `/${folders.filter((folder) => !folder.startsWith('(')).join('/')}`;
}

/** What the tree opens to the world. */
function openAddresses(): readonly string[] {
  const isOpen = (address: string) =>
    [...OPEN_ROUTES, ...OPEN_PAGES].includes(address) ||
    OPEN_ROOTS.some((root) => address === root || address.startsWith(`${root}/`));
  return repositoryFiles()
    .filter((path) => /^app\/(.*\/)?(page\.tsx|route\.ts)$/.test(path))
    .map(addressOf)
    .filter(isOpen);
}

function deeds(): readonly string[] {
  const text = readRepositoryFile('app/(selfserve)/hire/_blocks/order-deeds.ts');
  return [...text.matchAll(/^ {4}case '([a-z-]+)':/gm)].map(([, deed = '']) => deed);
}

interface House {
  readonly context: Context;
  /** A line and an order that none of the callers may reach. */
  readonly lineId: number;
  readonly orderId: number;
  readonly tokens: Readonly<Record<Caller, string>>;
  readonly keys: Readonly<Record<Caller, string>>;
}

let house: House;

test.use({ who: 'nobody' });
test.describe.configure({ mode: 'serial' });

test.beforeAll(() => {
  house = makeHouse();
});
test.beforeEach(() => forgetTries());
test.afterAll(() => {
  forgetTries();
  house.context.database.raw.close();
});

function makeHouse(): House {
  const database = openDatabase(process.env.KITWRIGHT_DATABASE ?? '');
  const desk: Context = {
    database,
    now: () => new Date(),
    actor: { id: 'walk', name: 'Walk', role: 'administrator' },
  };
  const mine = order(desk);
  const expired = order(desk);
  const withdrawn = order(desk);
  const run = (sql: string, id: number) => database.raw.prepare(sql).run(id);
  run("UPDATE order_link SET expires_at = '2020-01-01T00:00:00.000Z' WHERE enquiry_id = ?", expired.enquiryId);
  run("UPDATE order_link SET withdrawn_at = '2020-01-01T00:00:00.000Z' WHERE enquiry_id = ?", withdrawn.enquiryId);
  const customers = database.raw.prepare('SELECT id FROM customer ORDER BY id LIMIT 2').all() as readonly {
    readonly id: number;
  }[];
  const [first = 0, second = 0] = customers.map(({ id }) => id);
  const key = (customerId: number) => granted(makeKey(desk, { customerId, name: randomUUID() })).key;
  const revoked = key(second);
  const { id: keyId } = database.raw.prepare('SELECT max(id) AS id FROM api_key').get() as { readonly id: number };
  granted(revokeKey(desk, { customerId: second, keyId }));
  key(first);
  const { id: firstKey } = database.raw.prepare('SELECT max(id) AS id FROM api_key').get() as { readonly id: number };
  const byKey = order(desk);
  run(`UPDATE self_order SET by_key_id = ${firstKey} WHERE enquiry_id = ?`, byKey.enquiryId);
  run(`UPDATE enquiry SET customer_id = ${first} WHERE id = ?`, byKey.enquiryId);
  const none = 'E'.repeat(43);
  return {
    context: desk,
    lineId: mine.lineId,
    orderId: byKey.enquiryId,
    tokens: { stranger: none, 'other customer': order(desk).token, expired: expired.token, withdrawn: withdrawn.token },
    // A key does not expire; one that was revoked stands for both.
    keys: { stranger: `kw_${none}`, 'other customer': key(second), expired: revoked, withdrawn: revoked },
  };
}

function order(desk: Context) {
  const stranger = { ...desk, actor: NOBODY };
  const address = `walk ${randomUUID()}`;
  const made = granted(startOrder(stranger, { language: 'en', address, site: PLACE, title: 'Self-service' }));
  const { lineId } = granted(addValve(stranger, { token: made.token, address, answers: [] }));
  return { ...made, lineId };
}

function granted<Value>(
  result:
    | { readonly ok: true; readonly value: Value }
    | { readonly ok: false; readonly reason: { readonly sentence: string } },
): Value {
  if (!result.ok) throw new Error(result.reason.sentence);
  return result.value;
}

interface Asking {
  readonly request: APIRequestContext;
  readonly address: string;
  readonly method: 'GET' | 'POST';
  readonly door: Door;
  readonly caller: Caller;
  readonly deed?: string;
}

async function ask({ request, address, method, door, caller, deed = 'remove' }: Asking) {
  const path = address
    .replace('[token]', house.tokens[caller])
    .replace('[lineId]', String(house.lineId))
    .replace('[fileId]', '1')
    .replace('[kind]', 'quote')
    .replace('[deed]', deed)
    .replace('[id]', String(house.orderId));
  const headers = address.startsWith('/api/v1/') ? { authorization: `Bearer ${house.keys[caller]}` } : {};
  return request.fetch(path, {
    method,
    headers,
    ...(door.body === undefined || method === 'GET' ? {} : { data: door.body }),
    ...(method === 'POST' && door.body === undefined ? { form: { line: String(house.lineId), ...door.form } } : {}),
  });
}

test('the list of open addresses is the tree’s and the document’s', () => {
  expect([...new Set(openAddresses())].toSorted()).toEqual(Object.keys(DOORS).toSorted());
  const documented = OPERATIONS.map(
    ({ method, path }) => `${method.toUpperCase()} ${path.replaceAll('{', '[').replaceAll('}', ']')}`,
  );
  const walked = Object.entries(DOORS)
    .filter(([address]) => address.startsWith('/api/v1/orders'))
    .flatMap(([address, { methods }]) => methods.map((method) => `${method} ${address}`));
  expect(documented.toSorted()).toEqual(walked.toSorted());
  expect(deeds()).toContain('off-hire');
});

for (const [address, door] of Object.entries(DOORS))
  test(`${address} answers each who has no right to the order as it should`, async ({ request }) => {
    const asked = await Promise.all(
      CALLERS.flatMap((caller) =>
        door.methods.map(async (method) => {
          const answer = await ask({ request, address, method, door, caller });
          return [`${caller} ${method}`, answer.status()] as const;
        }),
      ),
    );
    const wanted = CALLERS.flatMap((caller) =>
      door.methods.map((method) => {
        const statuses = method === 'GET' ? (door.onGet ?? door.statuses) : door.statuses;
        return [`${caller} ${method}`, statuses[caller]] as const;
      }),
    );
    expect(asked).toEqual(wanted);
  });

test('no deed of an order is done for whoever has no link to it', async ({ request }) => {
  const door = DOORS['/hire/[token]/do/[deed]'];
  if (door === undefined) throw new Error('There is no such door.');
  const { raw } = house.context.database;
  const mine = () =>
    JSON.stringify([
      raw.prepare('SELECT * FROM schedule_line WHERE id = ?').all(house.lineId),
      raw.prepare('SELECT count(*) AS n FROM booking').get(),
      raw.prepare('SELECT count(*) AS n FROM off_hire_notice').get(),
    ]);
  const before = mine();
  for (const deed of deeds())
    for (const caller of ['stranger', 'expired', 'withdrawn'] as const) {
      const asked = { request, address: '/hire/[token]/do/[deed]', method: 'POST' as const, door, caller, deed };
      const status = (await ask(asked)).status();
      forgetTries();
      expect(`${deed} ${caller} ${status}`).toBe(`${deed} ${caller} ${door.statuses[caller]}`);
    }
  expect(mine()).toBe(before);
});

test('an expired and a withdrawn link say so on a page, and what to do; a program is told in a problem document', async ({
  page,
  request,
}) => {
  await page.goto(`/hire/${house.tokens.expired}`);
  await expect(page.getByText('This link has expired. Ask the house for a new one, or start anew.')).toBeVisible();
  await expect(page.getByRole('link', { name: 'Start anew' })).toBeVisible();
  await page.goto(`/hire/${house.tokens.withdrawn}`);
  await expect(page.getByText('This link was withdrawn. Ask the house for a new one.')).toBeVisible();
  const answer = await request.get(`/api/v1/orders/${house.orderId}`);
  expect(answer.headers()['content-type']).toBe('application/problem+json');
  expect(await answer.json()).toMatchObject({ status: 401, code: 'no-key' });
});

test('whoever asks too often is told for how many seconds to wait, on a page and as a program', async ({ request }) => {
  for (let turn = 0; turn < TURNS['open a wrong link'].most; turn += 1)
    await request.get(`/hire/${house.tokens.stranger}`);
  const page = await request.get(`/hire/${house.tokens.stranger}`);
  expect(page.status()).toBe(429);
  expect(Number(page.headers()['retry-after'])).toBeGreaterThan(600);
  const headers = { authorization: `Bearer ${house.keys.stranger}` };
  for (let turn = 0; turn < TURNS['use a wrong key'].most; turn += 1)
    await request.get('/api/v1/orders/1', { headers });
  const program = await request.get('/api/v1/orders/1', { headers });
  expect(program.status()).toBe(429);
  expect(Number(program.headers()['retry-after'])).toBeGreaterThan(600);
});

test('what is too large is refused with 413, in a form and from a program', async ({ request }) => {
  const list = { name: 'list.csv', mimeType: 'text/csv', buffer: Buffer.alloc(9 * 1024 * 1024, 'a') };
  const address = `/hire/${house.tokens['other customer']}/do/list`;
  const form = await request.post(address, { multipart: { list } });
  expect(form.status()).toBe(413);
  expect(await form.text()).toContain('8 MB at most');
  const first = await request.post('/hire/start', { multipart: { what: 'list', list } });
  expect(first.status()).toBe(413);
  const headers = { authorization: `Bearer ${house.keys['other customer']}` };
  const program = await request.post('/api/v1/orders', { headers, data: { much: 'a'.repeat(9 * 1024 * 1024) } });
  expect(program.status()).toBe(413);
});
