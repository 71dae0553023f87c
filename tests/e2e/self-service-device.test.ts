import { forgetTries } from './forgotten-tries.ts';
import { expect, test } from './signed-in.ts';

test.beforeEach(forgetTries);

test.use({ who: 'nobody', viewport: { width: 390, height: 844 } });

const kind = (page: import('@playwright/test').Page) => page.getByRole('group', { name: 'What kind of valve is it?' });

test('a valve half described survives closing the page, and enquiries begun here are offered until they are forgotten', async ({
  page,
  context,
}) => {
  await page.goto('/hire');
  await expect(page.getByText('What you fill in here is kept on this device until it is sent.')).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Go on with' })).toBeHidden();
  await kind(page).getByLabel('Gate valve').check();
  await page.getByLabel('Size, such as DN 150 or 6 in').fill('DN 200');
  await page.getByLabel('Days').fill('4');
  await page.close();

  const again = await context.newPage();
  await again.goto('/hire');
  await expect(kind(again).getByLabel('Gate valve')).toBeChecked();
  await expect(again.getByLabel('Size, such as DN 150 or 6 in')).toHaveValue('DN 200');
  await expect(again.getByLabel('Days')).toHaveValue('4');
  await again.waitForTimeout(2_100);
  await again.getByRole('button', { name: 'Show what fits' }).click();
  await expect(again.getByRole('heading', { name: 'Valve V1' })).toBeVisible();
  await again.getByRole('link', { name: 'Enough, show the answer' }).click();
  await expect(again.getByText('This device keeps the link', { exact: false })).toBeVisible();
  const order = new URL(again.url()).pathname;
  await again.close();

  const later = await context.newPage();
  await later.goto('/hire');
  await expect(later.getByLabel('Size, such as DN 150 or 6 in'), 'What was sent is kept no longer').toHaveValue('');
  await expect(later.getByRole('heading', { name: 'Go on with' })).toBeVisible();
  const link = later.getByRole('link', { name: /^E-\d+/ });
  await expect(link).toHaveAttribute('href', order);
  await link.click();
  await expect(later.getByRole('heading', { name: 'Your order' })).toBeVisible();
  await later.goto('/hire');
  await later.getByRole('button', { name: 'Forget everything on this device' }).click();
  await expect(later.getByRole('heading', { name: 'Go on with' })).toBeHidden();
  await later.goto(order);
  await later.goto('/hire');
  await expect(later.getByRole('heading', { name: 'Go on with' })).toBeHidden();
  expect(
    await later.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith('kitwright-hire'))),
  ).toEqual([]);
});

test.describe('without scripts', () => {
  test.use({ javaScriptEnabled: false });

  test('nothing of it is shown, and the first form is as usable', async ({ page }) => {
    await page.goto('/hire');
    await expect(page.getByText('kept on this device')).toBeHidden();
    await expect(page.getByRole('button', { name: 'Forget everything on this device' })).toBeHidden();
    await expect(page.getByRole('button', { name: 'Show what fits' })).toBeVisible();
  });
});

test('a list with a column that nobody knows shows its columns and is taken as they are chosen, without scripts', async ({
  browser,
  baseURL,
}) => {
  const phone = await browser.newContext({
    baseURL: baseURL ?? '',
    viewport: { width: 390, height: 844 },
    javaScriptEnabled: false,
    locale: 'en-GB',
  });
  const page = await phone.newPage();
  await page.goto('/hire');
  await page.getByRole('group', { name: 'Is it a hazardous area' }).getByLabel('No', { exact: true }).check();
  await page.getByText('More than one valve?').click();
  await page
    .getByLabel('Or paste rows here')
    .fill('tag,size,zxqv,driven by\nA1,DN 100,350 mm,handwheel\nA2,purple,400 mm,handwheel');
  await page.waitForTimeout(2_100);
  await page.getByRole('button', { name: 'Read the list' }).click();
  await expect(page.getByRole('heading', { name: 'What do the columns mean?' })).toBeVisible();
  await expect(page.getByText('350 mm · 400 mm')).toBeVisible();
  await expect(page.getByText('Row 3, size:')).toBeVisible();
  await page.getByLabel('zxqv').selectOption({ label: 'Wheel' });
  await page.getByRole('button', { name: 'Show again' }).click();
  await expect(page.getByLabel('zxqv')).toHaveValue('wheel_diameter');
  await page.getByRole('button', { name: 'Take the list' }).click();
  await expect(page.getByRole('heading', { name: 'Your order' })).toBeVisible();
  await expect(page.getByText('A1', { exact: true })).toBeVisible();
  await phone.close();
});
