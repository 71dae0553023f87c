import type { Page } from '@playwright/test';
import { barriers } from './accessible.ts';
import { expect, test } from './signed-in.ts';

const LOOKS = [
  { width: 1280, colorScheme: 'light' },
  { width: 1280, colorScheme: 'dark' },
  { width: 390, colorScheme: 'light' },
] as const;

/** Sound for everybody, light and dark, wide and narrow, and nothing runs out of the screen. */
async function isSound(page: Page, what: string): Promise<void> {
  for (const { width, colorScheme } of LOOKS) {
    await page.setViewportSize({ width, height: 900 });
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    expect(await barriers(page, `${what}, ${width} ${colorScheme}`)).toEqual([]);
    const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(over, `${what} at ${width} px runs out of the screen`).toBeLessThanOrEqual(0);
  }
  await page.setViewportSize({ width: 1280, height: 900 });
  await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' });
}

/** As a reader does: the code, then Enter. */
async function scan(page: Page, label: string, code: string): Promise<void> {
  await page.getByLabel(label).fill(code);
  await page.getByLabel(label).press('Enter');
}

test.describe('the yard', () => {
  test.use({ who: 'yard' });

  test('finds a unit, holds it back with a reason, inspects it and sets it ready again', async ({ page }) => {
    await page.goto('/');
    await expect(page.getByRole('heading', { level: 1, name: 'Today in the yard' })).toBeVisible();
    await isSound(page, 'today');
    await page.getByRole('navigation', { name: 'Yard' }).getByRole('link', { name: 'Stock', exact: true }).click();
    await page.getByLabel('Serial number or words').fill('d138-02');
    await page.getByRole('button', { name: 'Show', exact: true }).click();
    await expect(page).toHaveURL(/q=d138-02/);
    await isSound(page, 'stock');
    await page.getByRole('link', { name: 'D138-02' }).click();
    await expect(page.getByRole('heading', { level: 1, name: 'D138-02' })).toBeVisible();
    await page.getByLabel('State').selectOption('quarantine');
    await page.getByLabel('Why', { exact: true }).fill('housing cracked');
    await page.getByRole('button', { name: 'Set state' }).click();
    await expect(page.getByText('D138-02 is quarantine now.')).toBeVisible();
    await expect(page.getByRole('cell', { name: 'housing cracked' })).toBeVisible();
    await page.getByLabel('Certificate, by whom').fill('I-204, R. Gauge');
    await page.getByRole('button', { name: 'Record' }).click();
    await expect(page.getByText('The inspection is recorded.')).toBeVisible();
    await page.getByLabel('State').selectOption('ready');
    await page.getByLabel('Why', { exact: true }).fill('housing replaced');
    await page.getByRole('button', { name: 'Set state' }).click();
    await expect(page.getByText('D138-02 is ready now.')).toBeVisible();
    await isSound(page, 'unit');
  });

  test('takes stock of a bay by scanning; a reload loses nothing, what is missing is left on record', async ({
    page,
  }) => {
    await page.goto('/yard/stock?depot=HAL&role=restraint');
    const row = page.getByRole('row').nth(1);
    const serial = (await row.getByRole('link').first().textContent()) ?? '';
    const bay = ((await row.getByRole('cell').nth(1).textContent()) ?? '').split(' ')[1] ?? '';
    await page.getByRole('navigation', { name: 'Yard' }).getByRole('link', { name: 'Stocktake' }).click();
    await isSound(page, 'stocktakes');
    await scan(page, 'Scan a bay to count it', `]Q1bay:hal/${bay.toLowerCase()}`);
    await expect(page.getByText(`You are at HAL ${bay}.`)).toBeVisible();
    await scan(page, 'Scan a bay, a unit or a box', serial.toLowerCase());
    await expect(page.getByText(`${serial} is in its place.`)).toBeVisible();
    await scan(page, 'Scan a bay, a unit or a box', 'hello');
    await expect(page.getByText('HELLO is no serial number', { exact: false })).toBeVisible();
    await page.reload();
    await expect(page.getByRole('region', { name: 'Found' }).getByText(serial)).toBeVisible();
    await isSound(page, 'stocktake');
    await page.getByRole('button', { name: 'Close the stocktake' }).click();
    await expect(page.getByRole('region', { name: 'What came of it' })).toBeVisible();
    await isSound(page, 'stocktake closed');
  });

  test('corrects a number of counted pieces, sends some with a unit to the other depot and takes them in', async ({
    page,
  }) => {
    await page.goto('/yard/stock?kind=counted');
    const pins = page.getByRole('region', { name: 'Retaining pins and rings, set' });
    await pins.getByText('Change', { exact: true }).first().click();
    await pins.getByLabel('Pieces').first().fill('38');
    await pins.getByLabel('Why', { exact: true }).first().fill('two bent');
    await pins.getByRole('button', { name: 'Save' }).first().click();
    await expect(pins.getByText('38 at VEN now.')).toBeVisible();
    await isSound(page, 'counted pieces');
    await page.goto('/yard/stock?depot=VEN&role=head&state=ready');
    const serial = (await page.getByRole('row').nth(1).getByRole('link').first().textContent()) ?? '';
    await page.goto('/yard/transfers');
    await scan(page, 'Scan what goes along', serial);
    await scan(page, 'Scan what goes along', 'model:s-303');
    await page.getByLabel('Pieces of S-303').fill('5');
    await page.getByRole('button', { name: 'Send 2 to HAL' }).click();
    await expect(page.getByText(/T-\d+ is on its way to HAL\./)).toBeVisible();
    await isSound(page, 'transfers');
    await page.getByText('Take in at HAL').first().click();
    await page.getByLabel('Into bay').selectOption({ index: 1 });
    await scan(page, 'Scan what goes into', serial);
    await expect(page.getByText(`${serial} stands in HAL`, { exact: false })).toBeVisible();
    await page.getByRole('button', { name: 'Arrived' }).click();
    await expect(page.getByText('Nothing is on its way between depots.')).toBeVisible();
  });

  test('sees a month of availability, steps by a week, opens a model, and prints labels', async ({ page }) => {
    await page.goto('/yard/availability');
    await expect(page.getByRole('region', { name: 'Free pieces by model and day' })).toBeVisible();
    await expect(page.getByRole('columnheader', { name: /today$/ })).toBeVisible();
    await isSound(page, 'availability');
    await page.getByLabel('Role').selectOption('accessory');
    await page.getByLabel('For a hire of').selectOption('7');
    await page.getByRole('button', { name: 'Show', exact: true }).click();
    await expect(page.getByRole('rowheader', { name: /S-303/ })).toBeVisible();
    await page.getByRole('link', { name: 'A week later' }).click();
    await page.getByLabel('Role').selectOption('drive');
    await page.getByRole('button', { name: 'Show', exact: true }).click();
    await page.getByRole('link', { name: 'D-112' }).click();
    await expect(page.getByRole('heading', { level: 1, name: /D-112/ })).toBeVisible();
    await isSound(page, 'availability of a model');
    await page.goto('/yard/labels');
    await isSound(page, 'labels');
    const sheet = await page.request.get('/api/v1/labels?kind=unit&model=D-112');
    expect(sheet.headers()['content-type']).toBe('application/pdf');
    expect((await sheet.body()).subarray(0, 5).toString()).toBe('%PDF-');
    await page.goto('/yard/stock/new');
    await isSound(page, 'new unit');
  });
});

test('the Desk sees the stock and may not change it', async ({ page }) => {
  await page.goto('/yard/stock/D138-01');
  await expect(page.getByRole('heading', { level: 1, name: 'D138-01' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Set state' })).toHaveCount(0);
  const answer = await page.request.post('/api/v1/stock/D138-01', { data: { act: 'state', to: 'lost', reason: 'x' } });
  expect(answer.status()).toBe(403);
});
