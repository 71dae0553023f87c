import { bookedForToday, personBeside } from './booked-by-the-desk.ts';
import { expect, test } from './signed-in.ts';
import { everyLook } from './yard-look.ts';
import { scan } from './yard-steps.ts';

test.use({ who: 'yard' });

test('all that leaves today is picked in one walk, each piece into the crate of its booking, and the walk prints', async ({
  page,
  browser,
  baseURL,
}) => {
  test.setTimeout(400_000);
  const desk = await personBeside({ browser, baseURL, role: 'desk' });
  const one = await bookedForToday(desk.request, 'East main');
  const two = await bookedForToday(desk.request, 'West main');
  await page.setViewportSize({ width: 820, height: 1100 });
  await page.goto('/yard');
  await page.getByRole('link', { name: 'Pick all of today in one walk' }).click();
  await expect(page.getByRole('heading', { name: /^Walk for / })).toBeVisible();
  const stops = page.getByRole('region', { name: 'Stops' });
  const crates = page.getByRole('region', { name: 'Crates' });
  for (const number of [one, two]) await expect(crates.getByRole('link', { name: number, exact: true })).toBeVisible();
  await everyLook(page);

  for (const number of [one, two]) {
    const piece = stops.getByRole('listitem').filter({ hasText: `crate of ${number}`, hasNot: page.getByRole('list') });
    const serial = (await piece.first().locator('strong.tag').textContent()) ?? '';
    await scan(page, serial);
    await expect(page.getByRole('status').filter({ hasText: `Into the crate of ${number}` })).toContainText(serial);
    await expect(page.getByRole('button', { name: `Undo ${serial} of ${number}` })).toBeVisible();
  }
  const undo = page.getByRole('button', { name: new RegExp(`^Undo .* of ${two}$`) });
  await undo.click();
  await expect(undo).toHaveCount(0);
  await page.getByLabel(`Counted S-309 for ${two}`).fill('1');
  await page.getByLabel(`Counted S-309 for ${two}`).press('Enter');
  await expect(page.getByRole('button', { name: `Undo S-309 of ${two}` })).toBeVisible();
  await scan(page, 'D999-99');
  await expect(page.getByRole('region', { name: 'Scans', exact: true })).toContainText(
    'D999-99 is no unit of the house',
  );

  await page.emulateMedia({ media: 'print' });
  await expect(page.getByRole('textbox', { name: /^Scan a piece/ })).toBeHidden();
  await expect(page.getByRole('heading', { name: /^Walk for / })).toBeVisible();
  await expect(stops.getByText(one).first()).toBeVisible();
  await page.emulateMedia({ media: 'screen' });

  await page.goto('/yard/walk?day=2031-01-01');
  await expect(page.getByText('No booking leaves on this day', { exact: false })).toBeVisible();
  await everyLook(page);

  // What is free today is little, and other stories need of it, too.
  for (const number of [one, two]) {
    const given = await desk.request.post(`/api/v1/yard/bookings/${number}`, {
      data: { deed: 'cancel', reason: 'the walk is done' },
    });
    expect(given.ok(), await given.text()).toBe(true);
  }
});
