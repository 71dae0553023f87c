import { execFileSync } from 'node:child_process';
import AxeBuilder from '@axe-core/playwright';
import type { APIRequestContext, Browser, Page } from '@playwright/test';
import { PEOPLE } from '#tests/support/houses/people.ts';
import { readPdf } from '#tests/support/papers/read-pdf.ts';
import { expect, PASSWORD, test } from './signed-in.ts';

/** A quote of one valve that the customer accepted, picked by the yard's own services: the story begins at the gate. */
async function pickedBooking(request: APIRequestContext): Promise<string> {
  const site = { sources_allowed: ['battery'], crews: 1, days: 3 };
  const made = await request.post('/api/v1/enquiries', {
    data: { title: 'Sluice at the old lock', customer: { name: 'Sandpiper Drainage' }, site },
  });
  const { id } = await made.json();
  const cells = { tag: 'OL-1', valve_type: 'gate', size: 'DN 100', driven_by: 'key cap', depth_to_nut: '0.9 m' };
  await request.post(`/api/v1/enquiries/${id}/lines`, { data: { lines: [{ cells }] } });
  await request.post(`/api/v1/enquiries/${id}/plan`);
  await expect
    .poll(async () => (await (await request.get(`/api/v1/enquiries/${id}/plan`)).json()).kind, { timeout: 120_000 })
    .toBe('ready');
  const quote = await (await request.post(`/api/v1/enquiries/${id}/quotes`, { data: {} })).json();
  const held = await (
    await request.post(`/api/v1/quotes/${quote.id}/accept`, { data: { acceptedBy: 'R. Dunlin' } })
  ).json();
  execFileSync(process.execPath, ['--import', 'tsx', 'tests/support/houses/pick-booking.ts', held.number], {
    stdio: 'pipe',
  });
  return held.number;
}

async function signedIn(browser: Browser, baseURL: string): Promise<Page> {
  const context = await browser.newContext({ baseURL, storageState: { cookies: [], origins: [] } });
  const page = await context.newPage();
  await page.goto('/sign-in');
  await page.getByLabel('Email').fill(PEOPLE.yard.email);
  await page.getByLabel('Password').fill(PASSWORD);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await expect(page).not.toHaveURL(/sign-in/);
  return page;
}

/** Sound for a reader of screens, in light and dark, on a tablet and on a telephone, and nothing wider than the screen. */
async function sound(page: Page): Promise<void> {
  for (const [width, colorScheme] of [
    [820, 'light'],
    [390, 'dark'],
  ] as const) {
    await page.setViewportSize({ width, height: 1100 });
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id} ${nodes[0]?.html ?? ''}`)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  }
  await page.setViewportSize({ width: 820, height: 1100 });
}

/** A finger in a glove hits nothing smaller. */
async function wideTargets(page: Page): Promise<void> {
  const small = await page
    .getByRole('main')
    .evaluate((main) =>
      [
        ...main.querySelectorAll(
          'button, a.button, summary, select, input:not([type=checkbox], [type=radio], [type=file])',
        ),
      ]
        .filter((one) => one.checkVisibility() && one.getBoundingClientRect().height < 47.5)
        .map((one) => `${one.tagName} ${one.textContent}`),
    );
  expect(small).toEqual([]);
}

async function scan(page: Page, text: string): Promise<void> {
  await page.getByLabel('Scan a piece', { exact: false }).fill(text);
  await page.keyboard.press('Enter');
}

test('a booking goes out, comes back in two parts with a damaged and a missing piece, is charged, noted and closed', async ({
  page: desk,
  browser,
  baseURL,
}) => {
  test.setTimeout(300_000);
  const number = await pickedBooking(desk.request);
  const page = await signedIn(browser, baseURL ?? '');
  await page.setViewportSize({ width: 820, height: 1100 });

  await page.goto(`/yard/out/${number}`);
  await page.getByRole('button', { name: 'Begin loading' }).click();
  const waiting = page.getByRole('button', { name: /^Load / });
  await expect(waiting.first()).toBeVisible();
  const serials = await waiting.evaluateAll((all) =>
    all.map((one) => one.getAttribute('aria-label')?.replace('Load ', '') ?? ''),
  );
  expect(serials.length).toBeGreaterThan(3);
  const [damaged = '', missing = '', ...rest] = serials;
  await scan(page, 'NOT-HERE-1');
  await expect(page.getByText('does not belong to booking', { exact: false })).toBeVisible();
  for (const serial of serials) {
    await scan(page, serial);
    await expect(page.getByText(`${serial} is on it.`)).toBeVisible();
  }
  await sound(page);
  await wideTargets(page);
  const leaving = page.getByRole('form', { name: 'Before it leaves' });
  await leaving.getByRole('button', { name: 'It leaves' }).click();
  await expect(page.getByText('Not looked at yet', { exact: false })).toBeVisible();
  for (const box of await leaving.getByRole('checkbox').all()) await box.check();
  await leaving.getByLabel('Loaded by').fill('Yard Hand');
  await leaving.getByLabel('Instruction given by').fill('Yard Hand');
  await leaving.getByLabel('Handed over to').fill('R. Dunlin');
  await leaving.getByLabel('Name of who signs').fill('R. Dunlin');
  const pad = leaving.getByRole('img', { name: 'Pad to sign on, empty' });
  await pad.scrollIntoViewIfNeeded();
  const box = await pad.boundingBox();
  if (!box) throw new Error('The pad has no place on the screen.');
  await page.mouse.move(box.x + 60, box.y + 90);
  await page.mouse.down();
  await page.mouse.move(box.x + 180, box.y + 40, { steps: 5 });
  await page.mouse.move(box.x + 260, box.y + 110, { steps: 5 });
  await page.mouse.up();
  await leaving.getByRole('button', { name: 'It leaves' }).click();
  const left = page.getByRole('region', { name: 'Deliveries' });
  await expect(left).toContainText('signed on the pad: R. Dunlin');
  await expect(left.getByRole('img', { name: 'Signature of R. Dunlin' })).toBeVisible();
  const href = (await left.getByRole('link', { name: /Despatch advice/ }).getAttribute('href')) ?? '';
  const advice = await (await page.request.get(href)).text();
  for (const serial of serials) expect(advice).toContain(`<cbc:SerialID>${serial}</cbc:SerialID>`);

  await page.getByRole('link', { name: 'Take back' }).click();
  await expect(page.getByRole('button', { name: 'That is declared' })).toBeDisabled();
  await sound(page);
  await page.getByRole('radio', { name: 'Nothing' }).check();
  await page.getByRole('button', { name: 'That is declared' }).click();
  await scan(page, damaged);
  const piece = page.getByRole('form', { name: `Check in ${damaged}` });
  await piece.getByRole('radio', { name: /Damaged/ }).check();
  await piece.getByLabel('What is broken').fill('lever housing cracked');
  await piece.getByLabel('Repair, hours (a guess)').fill('1.5');
  await piece.getByRole('button', { name: 'Check it in' }).click();
  await expect(page.getByText(`${damaged}: quarantine`, { exact: false })).toBeVisible();
  await page.getByRole('button', { name: `${missing} is not as it should be` }).click();
  const gone = page.getByRole('form', { name: `Check in ${missing}` });
  await gone.getByRole('radio', { name: /Missing/ }).check();
  await gone.getByRole('button', { name: 'Check it in' }).click();
  await expect(page.getByText(`${missing}: lost`, { exact: false })).toBeVisible();
  await scan(page, damaged);
  await expect(page.getByText('is checked in already', { exact: false })).toBeVisible();
  await page.getByLabel(`Photograph of ${damaged}`).setInputFiles({
    name: 'crack.png',
    mimeType: 'image/png',
    buffer: Buffer.from(
      'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
      'base64',
    ),
  });
  await expect(page.getByRole('img', { name: new RegExp(`${damaged}, photograph P-`) })).toBeVisible();
  await sound(page);
  await wideTargets(page);

  await page.goto(`/yard/charges/${number}`);
  await expect(page.getByText('The Desk decides charges', { exact: false })).toBeVisible();
  await page.goto('/yard/work-orders');
  const order = page.getByRole('listitem').filter({ hasText: damaged });
  await expect(order).toContainText('lever housing cracked');
  await sound(page);

  await decide(desk, { number, damaged, missing });
  await expect(desk.getByText(/Return note N-\d+ is issued\./)).toBeVisible({ timeout: 60_000 });
  const paper = (await desk.getByRole('link', { name: /Return note N-/ }).getAttribute('href')) ?? '';
  const words = readPdf(await (await desk.request.get(paper)).body()).text;
  for (const part of [damaged, missing, 'DAMAGED', 'MISSING', 'lever housing cracked', 'Still with you'])
    expect(words).toContain(part);

  await page.goto(`/yard/back/${number}`);
  for (const serial of rest) {
    await page.getByRole('button', { name: `${serial} is good` }).click();
    await expect(page.getByText(`${serial}: ready.`)).toBeVisible();
  }
  await desk.goto(`/yard/charges/${number}`);
  await strikeAll(desk);
  await desk.getByRole('button', { name: 'Issue the note and close the booking' }).click();
  await expect(desk.getByText(/is issued and the booking is closed/)).toBeVisible({ timeout: 60_000 });
  await page.reload();
  await expect(page.getByText('This booking is closed', { exact: false })).toBeVisible();
  await page.context().close();
});

interface Deciding {
  readonly number: string;
  readonly damaged: string;
  readonly missing: string;
}

async function decide(desk: Page, { number, damaged, missing }: Deciding): Promise<void> {
  await desk.goto(`/yard/charges/${number}`);
  const repair = desk.getByRole('article', { name: new RegExp(`Repair: .*${damaged}`) });
  await expect(repair.getByRole('button', { name: /^Approve/ })).toBeDisabled();
  await repair.getByLabel('How did it happen?').selectOption({ index: 3 });
  await expect(repair.getByRole('button', { name: /^Approve/ })).toBeEnabled();
  await sound(desk);
  await repair.getByRole('button', { name: /^Approve/ }).click();
  await expect(repair.getByText('approved', { exact: true })).toBeVisible();
  const loss = desk.getByRole('article', { name: new RegExp(`Loss: .*${missing}`) });
  await loss.getByText('Change or strike it').click();
  await loss.getByLabel(/^Amount instead/).fill('20.00');
  await loss.getByLabel(/^Reason/).fill('half of an old one');
  await loss.getByRole('button', { name: /^Change/ }).click();
  await expect(loss.getByText('half of an old one', { exact: false })).toBeVisible();
  await strikeAll(desk);
  await desk.getByRole('button', { name: 'Issue the return note' }).click();
}

/** What is not what the story is about is struck, with a reason. */
async function strikeAll(desk: Page): Promise<void> {
  const open = desk.getByRole('article').filter({ has: desk.getByRole('button', { name: /^Approve/ }) });
  for (let left = await open.count(); left > 0; left = await open.count()) {
    const one = open.first();
    await one.getByText('Change or strike it').click();
    await one.getByLabel(/^Reason/).fill('not in this story');
    await one.getByRole('button', { name: /^Strike/ }).click();
    await expect(open).toHaveCount(left - 1);
  }
}
