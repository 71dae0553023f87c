import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { readPrintedBarcodes } from '#tests/support/papers/read-barcodes.ts';
import { readPdf } from '#tests/support/papers/read-pdf.ts';
import { bookedByTheDesk, deskRequest } from './booked-by-the-desk.ts';
import { expect, stands, test } from './signed-in.ts';

test.use({ who: 'yard' });

async function accessible(page: Page): Promise<void> {
  await stands(page);
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => `${id} ${nodes[0]?.html ?? ''}`)).toEqual([]);
}

/** Light and dark, on a tablet held upright and on a telephone. */
async function everyLook(page: Page): Promise<void> {
  for (const colorScheme of ['light', 'dark'] as const) {
    for (const width of [820, 390]) {
      await page.setViewportSize({ width, height: 1100 });
      await page.emulateMedia({ colorScheme });
      await accessible(page);
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(wide, `${colorScheme} ${width}`).toBeLessThanOrEqual(0);
      await expectLargeTargets(page);
    }
  }
  await page.emulateMedia({ colorScheme: 'light' });
  await page.setViewportSize({ width: 820, height: 1100 });
}

async function expectLargeTargets(page: Page): Promise<void> {
  const low = await page
    .locator('.yard-work :is(button, a.button, input, select)')
    .evaluateAll((all) => all.filter((one) => one.getBoundingClientRect().height < 47.5).map((one) => one.outerHTML));
  expect(low).toEqual([]);
}

async function scan(page: Page, code: string): Promise<void> {
  const field = page.getByRole('textbox', { name: /^Scan a piece/ });
  await field.fill(code);
  await field.press('Enter');
}

test('an accepted quote is picked by scan, tried, tested, packed and labelled', async ({ page, browser, baseURL }) => {
  test.setTimeout(400_000);
  const desk = await deskRequest(browser, baseURL ?? '');
  const number = await bookedByTheDesk(desk, 'Ring main');
  await page.setViewportSize({ width: 820, height: 1100 });
  await page.goto(`/yard/pick/${number}`);
  const pieces = page.getByRole('region', { name: 'Pieces in walking order' });
  await expect(pieces.getByText('to pick')).toHaveCount(10);
  await everyLook(page);

  await scan(page, 'D999-99');
  await expect(page.getByRole('status').first()).toContainText('D999-99 is no unit of the house.');
  await page.getByRole('button', { name: 'Seen: D999-99' }).click();

  const serials = await pieces.locator('strong.tag').allTextContents();
  for (const serial of serials.filter((text) => !text.includes('×'))) {
    await scan(page, serial);
    await expect(page.getByRole('button', { name: `Undo ${serial}` })).toBeVisible();
  }
  await page.getByRole('button', { name: 'All picked' }).click();
  await expect(page.getByText(/Cannot be left behind: 1 × S-309/).first()).toBeVisible();
  await page.getByLabel('Counted S-309').fill('1');
  await page.getByLabel('Counted S-309').press('Enter');
  await expect(page.getByRole('button', { name: 'Undo S-309' })).toBeVisible();

  const chains = page.getByRole('region', { name: 'Tried together' });
  while ((await chains.getByRole('button').count()) > 0) {
    const left = await chains.getByRole('button').count();
    await chains.getByRole('button').first().click();
    await expect(chains.getByRole('button')).toHaveCount(left - 1);
  }
  const tests = page.getByRole('region', { name: 'Function test at torque' });
  await tests.getByLabel('Instrument').fill('Torque bench 7');
  const asked = await tests
    .getByRole('button', { name: /^Record / })
    .evaluateAll((all) => all.map((one) => one.getAttribute('aria-label') ?? ''));
  for (const record of asked) {
    const serial = record.replace('Record ', '');
    const set = tests.getByLabel(`Set, N·m of ${serial}`);
    if ((await set.count()) > 0) await set.fill('40');
    await tests.getByLabel(`Read, N·m of ${serial}`).fill('41');
    await tests.getByLabel(`Read, N·m of ${serial}`).press('Enter');
    await expect(tests.getByRole('listitem').filter({ hasText: serial }).getByText('✓ passed')).toBeVisible();
  }
  await page.getByRole('button', { name: 'All picked' }).click();
  await expect(page.getByRole('region', { name: 'Picked' })).toBeVisible();
  await accessible(page);

  await page.getByRole('link', { name: 'Pack', exact: true }).click();
  await expect(page.getByRole('heading', { name: `Pack ${number}` })).toBeVisible();
  await everyLook(page);
  await scan(page, `CASE:${number}/1`);
  await expect(page.getByRole('button', { name: 'Packing into case 1' })).toBeVisible();
  const first = page.getByRole('region', { name: /^Case 1 of/ });
  const inside = await first.locator('strong.tag').allTextContents();
  for (const code of inside) await scan(page, code.includes('×') ? `MODEL:${code.split('× ')[1] ?? ''}` : code);
  await expect(first.getByText('✓ packed')).toHaveCount(inside.length);
  await expect(first.getByText(/Lift: one person/)).toBeVisible();

  const labels = await page.request.get(`/api/v1/yard/bookings/${number}/papers/case-labels`);
  const codes = await readPrintedBarcodes(await labels.body());
  expect(codes.map(({ text }) => text)).toContain(`CASE:${number}/1`);
  const list = await page.request.get(`/api/v1/yard/bookings/${number}/papers/packing-list`);
  const { text } = await readPdf(await list.body());
  for (const serial of serials.filter((one) => !one.includes('×'))) expect(text).toContain(serial);
});

test('scans wait while the line is down, survive a reload, and are sent once and in order when it is back', async ({
  page,
  browser,
  baseURL,
  context,
}) => {
  test.setTimeout(400_000);
  const desk = await deskRequest(browser, baseURL ?? '');
  const number = await bookedByTheDesk(desk, 'North main');
  await page.goto(`/yard/pick/${number}`);
  const pieces = page.getByRole('region', { name: 'Pieces in walking order' });
  const serials = (await pieces.locator('strong.tag').allTextContents())
    .filter((text) => !text.includes('×'))
    .slice(0, 3);
  await context.setOffline(true);
  for (const serial of [...serials, 'D999-99']) await scan(page, serial);
  const waiting = page.getByRole('region', { name: 'Scans' });
  await expect(waiting.getByRole('heading', { name: /^4 scans wait/ })).toContainText('no connection');
  await expect(pieces.getByText('waiting')).toHaveCount(3);
  await accessible(page);

  // The line is back for the page, but the house takes no scans yet: what waited is still there after a reload.
  const sent: string[] = [];
  await page.route('**/scans', (route) => route.abort());
  await context.setOffline(false);
  await page.reload();
  await stands(page);
  await expect(page.getByRole('heading', { name: /^4 scans wait/ })).toBeVisible();

  await page.unroute('**/scans');
  page.on('request', (request) => {
    if (request.url().endsWith('/scans')) sent.push(String(request.postDataJSON().code));
  });
  await expect(pieces.getByText('✓ picked')).toHaveCount(3);
  await expect(page.getByRole('region', { name: 'Scans' }).getByText('D999-99 is no unit of the house.')).toBeVisible();
  expect(sent).toEqual([...serials, 'D999-99']);
  await page.reload();
  await expect(pieces.getByText('✓ picked')).toHaveCount(3);
  expect(sent.length).toBe(4);
});
