import type { Page } from '@playwright/test';
import { bookedByTheDesk } from './booked-by-the-desk.ts';
import { expect, test } from './signed-in.ts';
import { sweep } from './sweep.ts';
import { lowTargets } from './yard-look.ts';

/**
 * Every screen of the house, found by following its own links from its front pages: a new page is visited as soon as something leads to it,
 * and one that nothing leads to fails here.
 */
const ENQUIRY = '/enquiries/7';

test.use({ who: 'administrator' });

test('every page of the Desk is reached by links, and is sound in light and dark, wide and narrow, and by keyboard', async ({
  page,
}) => {
  test.setTimeout(540_000);
  await planAndQuote(page);
  // The enquiry with a plan and a quote comes first, so that its pages are the ones looked at.
  await sweep(page, { folder: 'app/(desk)', start: [ENQUIRY, `${ENQUIRY}/kits`, '/', '/blocks'] });
});

test('every page of the yard is reached by links, and is sound too, with targets for gloves on a telephone', async ({
  page,
}) => {
  test.setTimeout(540_000);
  const number = await bookedByTheDesk(page.request, 'Sweep of the yard');
  const counted = await page.request.post('/api/v1/stocktakes', { data: { depot: 'VEN', bay: '' } });
  expect(counted.ok()).toBe(true);
  await sweep(page, {
    folder: 'app/(yard)',
    start: [`/yard/bookings/${number}`, `/yard/pick/${number}`, `/yard/pack/${number}`, '/yard'],
    also: async (shown) => (await lowTargets(shown)).map((target) => `lower than 48 px: ${target}`),
  });
});

test.describe('a stranger', () => {
  test.use({ who: 'nobody' });

  test('finds every page of self-service sound, from the first question to the answer', async ({ page }) => {
    test.setTimeout(540_000);
    await page.goto('/hire');
    await page.getByRole('group', { name: 'What does a person turn?' }).getByLabel('A handwheel').check();
    await page.getByRole('group', { name: 'What kind of valve is it?' }).getByLabel('Gate valve').check();
    await page.getByLabel('Size, such as DN 150 or 6 in').fill('DN 150');
    await page.getByRole('group', { name: 'How does it move by hand?' }).getByLabel('Freely').check();
    await page.getByRole('group', { name: 'Is it a hazardous area' }).getByLabel('No', { exact: true }).check();
    // Faster than this no person fills the form in, and the house says so.
    await page.waitForTimeout(2_100);
    await page.getByRole('button', { name: 'Show what fits' }).click();
    await expect(page.getByRole('heading', { name: 'Valve V1' })).toBeVisible();
    const valve = new URL(page.url()).pathname;
    const order = valve.replace(/\/valve\/.*/, '');
    const columns = await unclearList(page, order);
    await sweep(page, { folder: 'app/(selfserve)', start: ['/hire', valve, order, columns] });
  });
});

/** A list with a column that nobody knows, which asks what its columns mean. */
async function unclearList(page: Page, order: string): Promise<string> {
  await page.goto(order);
  await page.getByText('Add a list').click();
  await page
    .getByLabel('Or paste rows here, with the names of the columns in the first row')
    .fill('tag,size,zxqv,driven by\nA1,DN 100,350 mm,handwheel\nA2,purple,400 mm,handwheel');
  await page.getByRole('button', { name: 'Read the list' }).click();
  await expect(page.getByRole('heading', { name: 'What do the columns mean?' })).toBeVisible();
  return new URL(page.url()).pathname;
}

async function planAndQuote(page: Page): Promise<void> {
  const base = `/api/v1${ENQUIRY}`;
  expect((await page.request.post(`${base}/plan`)).ok()).toBe(true);
  await expect
    .poll(async () => JSON.stringify(await (await page.request.get(`${base}/plan`)).json()), { timeout: 90_000 })
    .toContain('"ready"');
  expect((await page.request.post(`${base}/quotes`, { data: {} })).ok()).toBe(true);
}
