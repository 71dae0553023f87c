import type { Page, Route } from '@playwright/test';
import { bookedByTheDesk, personBeside, pickedByTheYard } from './booked-by-the-desk.ts';
import { expect, stands, test } from './signed-in.ts';
import { accessible } from './yard-look.ts';
import { declareClean, loadAll, scan, signAndLeave } from './yard-steps.ts';

test.use({ who: 'yard' });

/** One grey dot: the smallest picture that is one. */
const DOT = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
  'base64',
);

/** The first message arrives and is done, but its answer is lost on the way back; all others pass. */
async function loseFirstAnswer(page: Page, sent: string[]): Promise<void> {
  let isFirst = true;
  await page.route('**/scans', async (route: Route) => {
    sent.push(String(route.request().postDataJSON().code));
    if (!isFirst) return route.continue();
    isFirst = false;
    await route.fetch();
    await route.abort();
  });
}

test('what is checked in while the line is down waits over a reload, arrives once, and a refusal says why', async ({
  page,
  browser,
  baseURL,
  context,
}) => {
  test.setTimeout(400_000);
  const desk = await personBeside({ browser, baseURL, role: 'desk' });
  const number = await bookedByTheDesk(desk.request, 'Meadow pumping main');
  pickedByTheYard(number);
  await page.setViewportSize({ width: 820, height: 1100 });
  await page.goto(`/yard/out/${number}`);
  const [good = '', damaged = '', doubled = '', kept = ''] = await loadAll(page);
  await signAndLeave(page);
  await page.goto(`/yard/back/${number}`);
  await declareClean(page);
  await expect(page.getByRole('button', { name: `${good} is good` })).toBeVisible();

  await context.setOffline(true);
  await page.getByRole('button', { name: `${good} is good` }).click();
  await scan(page, damaged);
  const piece = page.getByRole('form', { name: `Check in ${damaged}` });
  await piece.getByRole('radio', { name: /Damaged/ }).check();
  await piece.getByLabel('What is broken').fill('handle bent');
  await piece.getByRole('button', { name: 'Check it in' }).click();
  await page.getByRole('button', { name: `${doubled} is good` }).click();
  await page.getByRole('button', { name: `${kept} is good` }).click();
  await scan(page, 'D999-99');
  const queue = page.getByRole('region', { name: 'Scans', exact: true });
  await expect(queue.getByRole('heading', { name: /^5 scans wait/ })).toContainText('no connection');
  await queue.getByRole('button', { name: `Take away: ${kept}` }).click();
  await expect(page.getByRole('button', { name: `${kept} is good` })).toBeVisible();
  await page
    .getByLabel(`Photograph of ${damaged}`)
    .setInputFiles({ name: 'a.png', mimeType: 'image/png', buffer: DOT });
  const photographs = page.getByRole('region', { name: 'Photographs on this device' });
  await expect(photographs.getByRole('heading')).toContainText('1 photograph waits on this device');
  await accessible(page);

  // Without the line a reload shows nothing of the house; what waited is still there when the page can be opened again.
  await keepLineDown(page);
  await page.reload().catch(() => undefined);
  const refuseAll = (route: Route) => route.abort();
  await page.route('**/scans', refuseAll);
  await context.setOffline(false);
  await page.goto('/yard');
  await expect(page.getByRole('status').filter({ hasText: number })).toContainText('5 to send');
  await page.goto(`/yard/back/${number}`);
  await expect(queue.getByRole('heading', { name: /^4 scans wait/ })).toBeVisible();
  await expect(photographs).toContainText(damaged);

  await checkInElsewhere(desk, { number, serial: doubled });
  const sent: string[] = [];
  await loseFirstAnswer(page, sent);
  await page.unroute('**/scans', refuseAll);
  const inside = page.getByRole('region', { name: 'Checked in' });
  await expect(queue.getByText(`${doubled} is checked in already.`)).toBeVisible({ timeout: 40_000 });
  await expect(queue.getByText('There is no unit D999-99', { exact: false })).toBeVisible();
  await expect(inside.getByRole('img', { name: new RegExp(`${damaged}, photograph P-`) })).toBeVisible();
  expect(sent).toEqual([good, good, damaged, doubled, 'D999-99']);
  await expect(photographs).toHaveCount(0);

  for (const one of [doubled, 'D999-99']) await queue.getByRole('button', { name: `Seen: ${one}` }).click();
  await page.reload();
  await stands(page);
  for (const serial of [good, damaged, doubled])
    await expect(inside.getByRole('listitem').filter({ hasText: serial })).toHaveCount(1);
  await expect(inside.getByRole('img')).toHaveCount(1);
  await expect(page.getByRole('list', { name: 'Awaited' })).toContainText(kept);
  expect(sent.length).toBe(5);
});

/**
 * While a page is being left, the browser's switch of the line lets go of it before it is gone: it saw the line come back and sent a
 * scan, past every route. Its messages fail in the page itself, as without a line.
 */
async function keepLineDown(page: Page): Promise<void> {
  await page.evaluate(() => {
    window.fetch = () => Promise.reject(new TypeError('Failed to fetch'));
  });
}

/** At another screen somebody checks the same piece in first. */
async function checkInElsewhere(
  desk: Page,
  { number, serial }: { readonly number: string; readonly serial: string },
): Promise<void> {
  await desk.goto(`/yard/back/${number}`);
  await desk.getByRole('button', { name: `${serial} is good` }).click();
  await expect(desk.getByText(`${serial}: ready.`).first()).toBeVisible();
}
