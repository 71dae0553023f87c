/** Interaction latency and memory of an enquiry of 10 000 lines, in a real browser against the built server: reported, never gated. */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from '@playwright/test';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openDatabase } from '#db/client.ts';
import { type Context, HOUSE_ITSELF } from '#lib/services/context.ts';
import { createEnquiry } from '#lib/services/enquiries/create-enquiry.ts';
import { prepareHouse } from '#lib/services/house/prepare-house.ts';
import { addLines } from '#lib/services/schedule/change-lines.ts';
import { granted } from '#tests/support/granted.ts';
import { addPerson } from '#tests/support/house-people.ts';
import { longSchedule } from '#tests/support/long-schedule.ts';
import { PEOPLE } from '#tests/support/people.ts';

const LINES = 10_000;
const NEXT = 'node_modules/next/dist/bin/next';
const PASSWORD = 'a-long-bench-passphrase-7';
const folder = mkdtempSync(join(tmpdir(), 'kitwright-long-'));
let server: ChildProcess;
let browser: Browser;
let page: Page;
let address = '';

beforeAll(async () => {
  if (!existsSync('.next/BUILD_ID')) spawnSync(process.execPath, [NEXT, 'build'], { stdio: 'ignore' });
  const databasePath = join(folder, 'house.sqlite');
  await prepareHouse({ databasePath, now: new Date() });
  const context: Context = { database: openDatabase(databasePath), now: () => new Date(), actor: HOUSE_ITSELF };
  await addPerson(context, { role: 'desk', password: PASSWORD });
  const { id } = granted(createEnquiry(context, { title: 'Long', customer: { name: 'Long Works' }, site: {} }));
  granted(addLines(context, { enquiryId: id, lines: longSchedule(LINES) }));
  context.database.raw.close();
  const port = await freePort();
  const env = { ...process.env, KITWRIGHT_DATABASE: databasePath, NODE_ENV: 'production' as const };
  server = spawn(process.execPath, [NEXT, 'start', '-p', `${port}`, '-H', '127.0.0.1'], { env, stdio: 'ignore' });
  address = `http://127.0.0.1:${port}/enquiries/${id}`;
  browser = await chromium.launch({
    executablePath: process.env.CHROMIUM_PATH ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--enable-precise-memory-info'],
  });
  const visit = await browser.newContext({ permissions: ['clipboard-read', 'clipboard-write'] });
  page = await visit.newPage();
  while (!(await answers(`http://127.0.0.1:${port}/api/ping`))) await new Promise((resolve) => setTimeout(resolve, 200));
  // The torque to start stands beside the duty, so that an edit can be followed to its answer.
  await page.addInitScript(() =>
    window.localStorage.setItem(
      'kitwright-columns',
      JSON.stringify(['tag', 'qty', 'valve_type', 'size', 'driven_by', 'starting_torque']),
    ),
  );
  await page.goto(`http://127.0.0.1:${port}/sign-in`);
  await page.getByLabel('Email').fill(PEOPLE.desk.email);
  await page.getByLabel('Password').fill(PASSWORD);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.waitForURL((url) => !url.pathname.includes('sign-in'));
});

afterAll(async () => {
  await browser?.close();
  server?.kill();
  rmSync(folder, { recursive: true, force: true });
});

describe(`an enquiry of ${LINES} lines`, () => {
  it('is opened, scrolled, edited, filtered, replaced in and pasted into', async () => {
    await report('first page, cold server', open);
    await report('first page again', open);
    await report('memory then', async () => undefined);
    await report('scroll to the end until its lines are there', () => scrollTo('end'));
    await report('scroll to the middle until its lines are there', () => scrollTo('middle'));
    await report('edit until the duty shows it, first', () => edit('999'));
    for (const torque of ['871', '743', '655']) await report('edit until the duty shows it', () => edit(torque));
    await report('filter by text', () => filter('LV-99'));
    await report('filter dropped', () => filter(''));
    await report('filter by column in the address, page anew', async () => {
      await page.goto(`${address}?where=valve_type:is:globe&sort=-size`);
      await page.getByText(/\d+ of 10000 lines, saved/).waitFor();
    });
    await report('filter by findings of the duty, cold', async () => {
      await page.goto(`${address}?only=clear`);
      await page.getByText(/\d+ of 10000 lines, saved/).waitFor();
      await page.getByText('duties worked out so far').waitFor({ state: 'hidden', timeout: 120_000 });
    });
    await open();
    await report('find counted in all lines', async () => {
      await page.getByRole('button', { name: 'Find and replace' }).click();
      await page.getByLabel('Find', { exact: true }).fill('Street');
      await page.getByText('Found in 10000 cells of 10000 lines.').waitFor();
    });
    await report('10 000 cells replaced', async () => {
      await page.getByLabel('Put in its place').fill('Road');
      await page.getByRole('button', { name: 'Replace all 10000' }).click();
      await page.getByText('10000 cells written.').waitFor();
      await page.getByText('10000 lines, saved').waitFor();
    });
    await report('10 000 cells taken back', async () => {
      await page.getByRole('button', { name: 'Undo' }).click();
      await page.getByText('Found in 10000 cells of 10000 lines.').waitFor();
    });
    await page.getByRole('button', { name: 'Close' }).click();
    await report('1 000 rows of 4 columns pasted and saved', paste);
    expect(await page.locator('[data-row="1"][data-column="3"]').inputValue()).toBe('DN 65');
  });
});

async function open(): Promise<void> {
  await page.goto(address);
  await page.getByText('10000 lines, saved').waitFor();
  await page.getByRole('textbox', { name: 'Tag, LV-1', exact: true }).waitFor();
}

async function scrollTo(where: 'end' | 'middle'): Promise<void> {
  await page.getByRole('region', { name: 'Lines of the schedule' }).evaluate((frame, to) => {
    frame.scrollTop = to === 'end' ? frame.scrollHeight : frame.scrollHeight / 2;
  }, where);
  const name = where === 'end' ? `Tag, LV-${LINES}` : `Tag, LV-${LINES / 2}`;
  await page.getByRole('textbox', { name, exact: true }).waitFor();
}

/** A stated torque is what the duty starts with, so that the answer shows in the row. */
async function edit(torque: string): Promise<void> {
  const row = LINES / 2 + 4;
  const cell = page.locator(`[data-row="${row}"][data-column="5"]`);
  await cell.click();
  await page.keyboard.type(`${torque} Nm`);
  await page.keyboard.press('Enter');
  await page.locator(`[data-row="${row}"][data-column="6"]`, { hasText: torque }).waitFor();
}

async function filter(text: string): Promise<void> {
  await page.getByLabel('Find in the schedule').fill(text);
  await page.getByText(text === '' ? /^10000 lines, saved/ : /^\d+ of 10000 lines, saved/).waitFor();
}

async function paste(): Promise<void> {
  const text = Array.from({ length: 1000 }, (_, at) => `PV-${at + 1}\t1\tgate\tDN 65`).join('\n');
  await page.evaluate((block) => navigator.clipboard.writeText(block), text);
  await page.locator('[data-row="0"][data-column="0"]').click();
  await page.keyboard.press('Control+v');
  await page.getByText('Pasted 1000 rows.').waitFor();
  await page.getByText('10000 lines, saved').waitFor();
}

async function report(what: string, work: () => Promise<void>): Promise<void> {
  const started = performance.now();
  await work();
  const taken = performance.now() - started;
  const heap = await page.evaluate(() => {
    const { memory } = performance as Performance & { readonly memory?: { readonly usedJSHeapSize: number } };
    return memory?.usedJSHeapSize ?? 0;
  });
  console.info(`${what}: ${taken.toFixed(0)} ms; page ${mega(heap)} MB, server ${mega(serverBytes())} MB`);
}

function mega(bytes: number): string {
  return (bytes / 1e6).toFixed(0);
}

function serverBytes(): number {
  const status = readFileSync(`/proc/${server.pid}/status`, 'utf8');
  return Number(/VmRSS:\s+(\d+)/.exec(status)?.[1] ?? 0) * 1024;
}

function answers(url: string): Promise<boolean> {
  return fetch(url).then(
    ({ ok }) => ok,
    () => false,
  );
}

function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const probe = createServer().listen(0, '127.0.0.1', () => {
      const at = probe.address();
      probe.close(() => resolve(typeof at === 'object' && at ? at.port : 0));
    });
  });
}
