import type { Browser, Page } from '@playwright/test';
import { PEOPLE } from '#tests/support/houses/people.ts';
import { readPdf } from '#tests/support/papers/read-pdf.ts';
import { barriers } from './accessible.ts';
import { expect, PASSWORD, patient, test } from './signed-in.ts';

/** An enquiry of one valve, planned; what the story is about begins at its price. */
async function plannedEnquiry(page: Page): Promise<number> {
  const { request } = page;
  const site = { sources_allowed: ['battery'], crews: 1, days: 2 };
  const made = await request.post('/api/v1/enquiries', {
    data: { title: 'Weir gate trial', customer: { name: 'Tern Weir Trust' }, site },
  });
  const { id } = await made.json();
  const cells = { tag: 'TW-1', valve_type: 'gate', size: 'DN 100', driven_by: 'key cap', depth_to_nut: '0.9 m' };
  await request.post(`/api/v1/enquiries/${id}/lines`, { data: { lines: [{ cells }] } });
  await request.post(`/api/v1/enquiries/${id}/plan`);
  await expect
    .poll(async () => (await (await request.get(`/api/v1/enquiries/${id}/plan`)).json()).kind, { timeout: 120_000 })
    .toBe('ready');
  return id;
}

async function otherPerson(browser: Browser, baseURL: string): Promise<Page> {
  const context = await browser.newContext({ baseURL, storageState: { cookies: [], origins: [] } });
  const page = patient(await context.newPage());
  await page.goto('/sign-in');
  await page.getByLabel('Email').fill(PEOPLE.administrator.email);
  await page.getByLabel('Password').fill(PASSWORD);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await expect(page).not.toHaveURL(/sign-in/);
  return page;
}

async function issue(page: Page, revision: 'A' | 'B' | 'C'): Promise<void> {
  const name = revision === 'A' ? 'Issue quote' : 'Issue a new revision';
  await page.getByRole('button', { name }).first().click();
  await page.getByRole('dialog').getByRole('button', { name }).click();
  await expect(page.getByText(new RegExp(`Issued Q-\\d+ ${revision}`))).toBeVisible({ timeout: 60_000 });
}

async function accessible(page: Page): Promise<void> {
  expect(await barriers(page)).toEqual([]);
}

test('a line by hand and an approved discount, two revisions that say what changed, and an acceptance', async ({
  page,
  browser,
  baseURL,
}) => {
  test.setTimeout(300_000);
  const id = await plannedEnquiry(page);
  await page.goto(`/enquiries/${id}/papers`);

  await page.getByRole('button', { name: 'Add a line' }).click();
  const form = page.getByRole('dialog', { name: 'Add a line' });
  await form.getByLabel('From the price list').selectOption({ label: 'Instruction on site, up to eight persons' });
  await expect(form.getByLabel('Price each')).toHaveValue('480.00');
  await form.getByRole('button', { name: 'Add the line' }).click();
  await expect(page.getByText('Added “Instruction on site, up to eight persons”.')).toBeVisible();
  await page.getByRole('button', { name: 'Remove Instruction on site' }).click();
  await expect(page.getByText('None yet.', { exact: false })).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByRole('button', { name: 'Edit Instruction on site' })).toBeVisible();

  await page.getByRole('button', { name: 'Change the discount' }).click();
  const whole = page.getByRole('group', { name: 'On the whole quote' });
  await whole.getByLabel('Percent').fill('12');
  await whole.getByLabel('Reason').fill('frame agreement');
  await page.getByRole('button', { name: 'Keep the discount' }).click();
  const approval = page.getByRole('region', { name: 'Discount above the limit' });
  await expect(approval).toContainText('above the limit of 8 %');
  await expect(page.getByRole('button', { name: 'Issue quote' })).toBeDisabled();
  await accessible(page);
  await approval.getByLabel('Why it should be given').fill('They hire every month');
  await approval.getByRole('button', { name: 'Ask for approval' }).click();
  await expect(page.getByRole('region', { name: 'Discount waits for approval' })).toContainText('You asked');
  await expect(page.getByRole('button', { name: 'Approve the discount' })).toHaveCount(0);

  const ada = await otherPerson(browser, baseURL ?? '');
  await ada.goto(`/enquiries/${id}/papers`);
  await expect(ada.getByRole('region', { name: 'Discount waits for approval' })).toContainText('They hire every month');
  await ada.getByRole('button', { name: 'Approve the discount' }).click();
  await expect(ada.getByRole('region', { name: 'Discount approved' })).toContainText(PEOPLE.administrator.name);
  await ada.context().close();

  await page.reload();
  await issue(page, 'A');
  await page.getByRole('button', { name: 'Edit Instruction on site' }).click();
  await page.getByRole('dialog').getByLabel('Quantity').fill('2');
  await page.getByRole('dialog').getByRole('button', { name: 'Keep the change' }).click();
  await expect(page.getByRole('region', { name: /Changed since Q-\d+ A/ })).toContainText('960.00 in place of 480.00');
  await expect(page.getByRole('region', { name: 'Discount above the limit' })).toContainText('another price');
  await page.getByRole('button', { name: 'Change the discount' }).click();
  await whole.getByLabel('Percent').fill('7');
  await page.getByRole('button', { name: 'Keep the discount' }).click();
  await expect(page.getByRole('button', { name: 'Issue a new revision' })).toBeEnabled();
  await issue(page, 'B');
  await page.getByRole('checkbox', { name: 'Damage waiver is taken' }).click();
  await expect(page.getByRole('region', { name: /Changed since Q-\d+ B/ })).toContainText('Gone: Damage waiver');
  await issue(page, 'C');

  const third = page.getByRole('article', { name: /Q-\d+ C/ });
  const href = (await third.getByRole('link', { name: /^Quote of/ }).getAttribute('href')) ?? '';
  const words = readPdf(await (await page.request.get(href)).body()).text;
  expect(words).toMatch(/Changed since Q-\d+ B/);
  expect(words).toContain('Instruction on site');
  await third.getByText('Kept byte for byte', { exact: false }).click();
  await third.getByRole('button', { name: /Draw Q-\d+ C again/ }).click();
  await expect(third.getByText('come out identical', { exact: false })).toBeVisible({ timeout: 60_000 });
  await third.getByRole('button', { name: 'Accepted by the customer' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Yes, book the units' }).click();
  await expect(third).toContainText('accepted');
  await expect(third.getByRole('button', { name: /Cancel the acceptance/ })).toBeVisible();
  await accessible(page);
});
