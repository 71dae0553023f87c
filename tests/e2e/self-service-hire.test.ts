import { execFileSync } from 'node:child_process';
import type { Page } from '@playwright/test';
import { readPdf } from '#tests/support/papers/read-pdf.ts';
import { personBeside, pickedByTheYard } from './booked-by-the-desk.ts';
import { strikeAll } from './desk-decides.ts';
import { forgetTries } from './forgotten-tries.ts';
import { answerAll, isAccessible, KNOWN, PHONE, startWith, tellWho, toAnswer } from './hire-steps.ts';
import { expect, test } from './signed-in.ts';

test.beforeEach(forgetTries);
test.use({ who: 'nobody', viewport: PHONE });

test('an order is followed by its link to its end: delivered, kept longer, given notice of, back with a piece missing, and charged', async ({
  page,
  browser,
  baseURL,
}) => {
  test.setTimeout(400_000);
  const desk = await personBeside({ browser, baseURL, role: 'desk' });
  const number = await ordered(page);
  const link = page.url();
  await desk.request.post(`/api/v1/yard/bookings/${number}/confirm`);
  await page.goto(link);
  await standsAt(page, 'confirmed by the house');
  await expect(page.getByText('The site sheets can be opened here')).toHaveCount(0);

  pickedByTheYard(number);
  const serials = moved(number, 'out');
  await page.goto(link);
  await standsAt(page, 'on hire');
  const delivered = page.locator('details').filter({ has: page.getByText('Delivered', { exact: true }) });
  for (const serial of serials) await expect(delivered).toContainText(serial);
  await opensPaper(page, { name: /^Site sheets for the crew/, words: 'V1' });

  await keptLonger(page, link);
  await noticeGiven(page, serials);

  const [missing = ''] = moved(number, 'back');
  await page.goto(link);
  await standsAt(page, 'back at the house');
  const back = page.getByRole('region', { name: 'Back at the house' });
  await expect(back.getByRole('listitem').filter({ hasText: missing })).toContainText('noted as lost');
  for (const serial of serials.filter((one) => one !== missing))
    await expect(back.getByRole('listitem').filter({ hasText: serial })).toContainText('in good order');

  await desk.goto(`/yard/charges/${number}`);
  await strikeAll(desk);
  await desk.getByRole('button', { name: 'Issue the note and close the booking' }).click();
  await expect(desk.getByText(/Return note R-\d+ is issued/)).toBeVisible({ timeout: 60_000 });
  await page.goto(link);
  await expect(page.getByRole('region', { name: 'Charges after the return' })).toBeVisible();
  await standsAt(page, 'finished');
  await opensPaper(page, { name: /^Return note as PDF/, words: missing });
  await desk.context().close();
});

/** A wheel valve from the first form to the booking. */
async function ordered(page: Page): Promise<string> {
  await startWith(page, { turned: 'A handwheel', size: 'DN 150', inDays: 63 });
  await answerAll(page, KNOWN);
  await toAnswer(page);
  await tellWho(page, 'Make the quote');
  await page.getByLabel('Your order number').fill('PO-12');
  await page.getByLabel('I have read the quote and accept its terms.').check();
  await page.getByRole('button', { name: /^Order for / }).click();
  const booked = page.getByRole('heading', { name: /^Ordered: booking B-\d+$/ });
  await expect(booked).toBeVisible();
  await standsAt(page, 'held for you');
  return /B-\d+/.exec((await booked.textContent()) ?? '')?.[0] ?? '';
}

async function standsAt(page: Page, state: string): Promise<void> {
  await expect(page.getByText(`Where it stands: ${state}`)).toBeVisible();
  await isAccessible(page);
}

function moved(number: string, where: 'out' | 'back'): readonly string[] {
  const script = 'tests/support/houses/move-booking.ts';
  const told = execFileSync(process.execPath, ['--import', 'tsx', script, number, where], { encoding: 'utf8' });
  return told.trim().split('\n');
}

async function opensPaper(page: Page, { name, words }: { readonly name: RegExp; readonly words: string }) {
  const address = (await page.getByRole('link', { name }).getAttribute('href')) ?? '';
  const paper = await page.request.get(address);
  expect(paper.headers()['content-type']).toBe('application/pdf');
  expect(readPdf(await paper.body()).text).toContain(words);
}

/** The price is looked at before it is taken, and looking changes nothing. */
async function keptLonger(page: Page, link: string): Promise<void> {
  await page.getByText('Keep it longer', { exact: true }).click();
  const field = page.getByLabel('New last day');
  const day = (await field.getAttribute('min')) ?? '';
  await field.fill(day);
  await page.getByRole('button', { name: 'Show what it costs' }).click();
  const take = page.getByRole('button', { name: /^Keep it until / });
  await expect(page.getByText(/it stays free for you: [\d.,]+ EUR more for the hire/)).toBeVisible();
  await isAccessible(page);
  const days = await page.getByText(/^Hire from /).textContent();
  await take.click();
  await expect(page.getByText('Extended: the last day of hire is', { exact: false })).toHaveCount(1);
  await page.goto(link);
  expect(await page.getByText(/^Hire from /).textContent()).not.toBe(days);
  await expect(page.getByLabel('New last day')).not.toHaveAttribute('min', day);
  await isAccessible(page);
}

/** Pressed twice at once: one notice, which names every piece. */
async function noticeGiven(page: Page, serials: readonly string[]): Promise<void> {
  await page.getByText('End the hire', { exact: true }).click();
  await isAccessible(page);
  const form = page.locator('form').filter({ has: page.getByRole('button', { name: 'Give off-hire notice' }) });
  const address = (await form.getAttribute('action')) ?? '';
  const data = new URLSearchParams(serials.map((serial) => ['serial', serial]));
  data.set('name', 'Mara Quist');
  const press = () =>
    page.request.post(address, {
      data: data.toString(),
      headers: { 'content-type': 'application/x-www-form-urlencoded', origin: new URL(page.url()).origin },
      maxRedirects: 0,
    });
  const pressed = await Promise.all([press(), press()]);
  for (const answer of pressed) expect(answer.headers().location).not.toContain('refused');
  await page.goto(new URL(page.url()).pathname);
  const given = page.getByRole('status').filter({ hasText: /^Off-hire notice / });
  await expect(given).toHaveCount(1);
  for (const serial of serials) await expect(given).toContainText(serial);
  await expect(page.getByRole('button', { name: 'Give off-hire notice' })).toHaveCount(0);
  await isAccessible(page);
}
