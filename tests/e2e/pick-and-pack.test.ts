import { bookedByTheDesk, personBeside } from './booked-by-the-desk.ts';
import { expect, stands, test } from './signed-in.ts';
import { accessible, everyLook } from './yard-look.ts';
import { scan, serialsToPick } from './yard-steps.ts';

test.use({ who: 'yard' });

test('what does not belong is refused by name, what is obligatory cannot be left behind, and the lists are sound on every screen', async ({
  page,
  browser,
  baseURL,
}) => {
  test.setTimeout(400_000);
  const desk = await personBeside({ browser, baseURL, role: 'desk' });
  const number = await bookedByTheDesk(desk.request, 'Ring main');
  await page.setViewportSize({ width: 820, height: 1100 });
  await page.goto(`/yard/pick/${number}`);
  const pieces = page.getByRole('region', { name: 'Pieces in walking order' });
  await expect(pieces.getByText('to pick').nth(5)).toBeVisible();
  await everyLook(page);

  await scan(page, 'D999-99');
  await expect(page.getByRole('status').first()).toContainText('D999-99 is no unit of the house.');
  await page.getByRole('button', { name: 'Seen: D999-99' }).click();
  for (const serial of await serialsToPick(page)) {
    await scan(page, serial);
    await expect(page.getByRole('button', { name: `Undo ${serial}` })).toBeVisible();
  }
  await page.getByRole('button', { name: 'All picked' }).click();
  await expect(page.getByText(/Cannot be left behind: 1 × S-309/).first()).toBeVisible();
  await accessible(page);

  await page.getByRole('link', { name: 'Pack', exact: true }).click();
  await expect(page.getByRole('heading', { name: `Pack ${number}` })).toBeVisible();
  const first = page.getByRole('region', { name: /^Case 1 of/ });
  await expect(first.getByText(/^Lift: (one person|two persons|lifting aid)/)).toBeVisible();
  await scan(page, `CASE:${number}/99`);
  await expect(page.getByText(`${number} has no case 99.`)).toBeVisible();
  await everyLook(page);
});

test('scans wait while the line is down, survive a reload, and are sent once and in order when it is back', async ({
  page,
  browser,
  baseURL,
  context,
}) => {
  test.setTimeout(400_000);
  const desk = await personBeside({ browser, baseURL, role: 'desk' });
  const number = await bookedByTheDesk(desk.request, 'North main');
  await page.goto(`/yard/pick/${number}`);
  const pieces = page.getByRole('region', { name: 'Pieces in walking order' });
  const serials = (await serialsToPick(page)).slice(0, 3);
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

  page.on('requestfinished', (request) => {
    if (request.url().endsWith('/scans')) sent.push(String(request.postDataJSON().code));
  });
  await page.unroute('**/scans');
  await expect(pieces.getByText('✓ picked')).toHaveCount(3);
  await expect(page.getByRole('region', { name: 'Scans' }).getByText('D999-99 is no unit of the house.')).toBeVisible();
  await expect.poll(() => sent).toEqual([...serials, 'D999-99']);
  await page.reload();
  await expect(pieces.getByText('✓ picked')).toHaveCount(3);
  expect(sent.length).toBe(4);
});
