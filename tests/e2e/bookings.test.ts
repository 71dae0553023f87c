import type { Page } from '@playwright/test';
import { barriers } from './accessible.ts';
import { expect, test } from './signed-in.ts';

/** A quote of one valve, accepted; answers the number of its booking and the enquiry. */
async function booked(page: Page): Promise<{ readonly enquiryId: number; readonly number: string }> {
  const { request } = page;
  const site = { sources_allowed: ['battery'], crews: 1, days: 3 };
  const made = await request.post('/api/v1/enquiries', {
    data: { title: 'Lock gate paddles', customer: { name: 'Sedge Lock Trust' }, site },
  });
  const { id: enquiryId } = await made.json();
  const cells = { tag: 'SL-1', valve_type: 'gate', size: 'DN 100', driven_by: 'key cap', depth_to_nut: '0.9 m' };
  await request.post(`/api/v1/enquiries/${enquiryId}/lines`, { data: { lines: [{ cells }] } });
  await request.post(`/api/v1/enquiries/${enquiryId}/plan`);
  await expect
    .poll(async () => (await (await request.get(`/api/v1/enquiries/${enquiryId}/plan`)).json()).kind, {
      timeout: 120_000,
    })
    .toBe('ready');
  const quote = await (await request.post(`/api/v1/enquiries/${enquiryId}/quotes`, { data: {} })).json();
  const accepted = await request.post(`/api/v1/quotes/${quote.id}/accept`, { data: { acceptedBy: 'S. Reed' } });
  const { number } = await accepted.json();
  return { enquiryId, number };
}

async function accessible(page: Page): Promise<void> {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    expect(await barriers(page)).toEqual([]);
  }
  await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' });
}

test('a booking is found from its quote, confirmed, extended after seeing what it means, and cancelled with a reason', async ({
  page,
}) => {
  test.setTimeout(300_000);
  const { enquiryId, number } = await booked(page);
  await page.goto(`/enquiries/${enquiryId}/papers`);
  await page.getByRole('link', { name: number }).click();
  await expect(page.getByRole('heading', { level: 1, name: `Booking ${number}` })).toBeVisible();
  await expect(page.getByText('held', { exact: true }).first()).toBeVisible();
  await accessible(page);

  await page.getByRole('button', { name: 'Confirm' }).click();
  await expect(page.getByText('Confirmed: it no longer lapses.')).toBeVisible();

  await page.getByText('Extend', { exact: true }).first().click();
  await page.getByLabel('Asked for by').fill('S. Reed');
  await page.getByRole('button', { name: 'See what it means' }).click();
  await expect(page.getByText(/Nothing is changed yet. It can be extended. The hire comes to/)).toBeVisible();
  await page.getByRole('button', { name: 'Extend', exact: true }).click();
  await expect(page.getByText(/Extended. The hire comes to/)).toBeVisible();
  await expect(
    page.getByRole('region', { name: 'What happened' }).getByText('asked for by S. Reed').first(),
  ).toBeVisible();

  await page.setViewportSize({ width: 390, height: 844 });
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  await accessible(page);

  await page.getByText('Cancel the booking').click();
  await page.getByRole('group').filter({ hasText: 'Cancel the booking' }).getByLabel('Why').fill('works put off');
  await page.getByRole('button', { name: `Cancel booking ${number}` }).click();
  await expect(page.getByText('This booking is cancelled.')).toBeVisible();

  await page.goto(`/yard/bookings?state=cancelled&q=${number}`);
  await expect(page.getByRole('link', { name: number })).toBeVisible();
  await accessible(page);
});
