import type { Page } from '@playwright/test';
import { barriers } from './accessible.ts';
import { dayIn } from './days.ts';
import { expect, test } from './signed-in.ts';

test.use({ who: 'administrator' });

const SCREENS = [
  '/equipment',
  '/equipment/D-131',
  '/equipment/D-131/edit',
  '/equipment/new?role=restraint',
  '/equipment/rates',
  '/equipment/files?role=head',
  '/house',
  '/rules',
  '/rules/house',
] as const;

/** What the house answers, asked from inside the page as its own screens do. */
async function ask<Value>(page: Page, message: { method: string; path: string; body?: unknown }): Promise<Value> {
  return page.evaluate(async ({ method, path, body }) => {
    const response = await fetch(path, {
      method,
      ...(body === undefined ? {} : { body: JSON.stringify(body), headers: { 'content-type': 'application/json' } }),
    });
    const answer = await response.json();
    if (!response.ok) throw new Error(`${path}: ${JSON.stringify(answer)}`);
    return answer;
  }, message);
}

async function bytesOf(page: Page, path: string): Promise<string> {
  return page.evaluate(async (address) => {
    const response = await fetch(address);
    if (!response.ok) throw new Error(`${address}: ${response.status}`);
    const digest = await crypto.subtle.digest('SHA-256', await response.arrayBuffer());
    return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  }, path);
}

/** An enquiry of one buried valve, planned and quoted. */
async function quoteOneValve(page: Page): Promise<{ readonly enquiryId: number; readonly quoteId: number }> {
  const site = { sources_allowed: ['battery'], crews: 1, days: 2, starts_on: dayIn(70) };
  const { id: enquiryId } = await ask<{ id: number }>(page, {
    method: 'POST',
    path: '/api/v1/enquiries',
    body: { title: 'One valve for the story of equipment', customer: { name: 'Heron Sluice Works' }, site },
  });
  const cells = { tag: 'V1', valve_type: 'gate', size: 'DN 100', driven_by: 'key cap', depth_to_nut: '0.9 m' };
  const path = `/api/v1/enquiries/${enquiryId}`;
  await ask(page, { method: 'POST', path: `${path}/lines`, body: { lines: [{ cells, measured: [] }] } });
  await ask(page, { method: 'POST', path: `${path}/plan` });
  await expect
    .poll(async () => (await ask<{ kind: string }>(page, { method: 'GET', path: `${path}/plan` })).kind, {
      timeout: 90_000,
    })
    .toBe('ready');
  const quote = await ask<{ id: number }>(page, { method: 'POST', path: `${path}/quotes`, body: {} });
  return { enquiryId, quoteId: quote.id };
}

test('an administrator copies, corrects, retires and brings back a model, and its history tells it', async ({
  page,
}) => {
  await page.goto('/equipment?role=head&text=open-centre');
  await expect(page.getByRole('heading', { name: 'Heads' })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Drives' })).toHaveCount(0);
  await page.getByRole('link', { name: 'H-323', exact: true }).click();
  await expect(page.getByRole('heading', { level: 1, name: /^H-323/ })).toBeVisible();
  await page.getByRole('link', { name: 'Copy as new' }).click();
  await page.getByLabel('number', { exact: true }).fill('H-991');
  await page.getByLabel(/^ratio/).fill('0');
  await page.getByRole('button', { name: 'Save' }).click();
  await expect(page.getByText('Ratio is 0, and plausible is 0.1 to 200.').first()).toBeVisible();
  await page.getByLabel(/^ratio/).fill('4.1');
  await page.getByLabel(/^swing radius/).fill('6 in');
  await page.getByRole('button', { name: 'Save' }).click();
  await expect(page.getByRole('heading', { level: 1, name: /^H-991/ })).toBeVisible();
  await expect(page.getByText('152 mm').filter({ visible: true }).first()).toBeVisible();
  await page.getByRole('button', { name: 'Retire', exact: true }).click();
  await expect(page.getByText(/Retired on/)).toBeVisible();
  await page.getByRole('button', { name: 'Take the last change back' }).click();
  await expect(page.getByText(/Retired on/)).toHaveCount(0);
  const history = page.getByRole('region', { name: 'What changed' });
  for (const action of ['model added', 'model retired', 'change taken back'])
    await expect(history.getByText(action)).toBeVisible();
  await page.getByRole('button', { name: 'Retire', exact: true }).click();
  await expect(page.getByText(/Retired on/)).toBeVisible();
});

test('rates come on a card with the day from which they hold, and a raise is shown before it is taken', async ({
  page,
}) => {
  await page.goto('/equipment/K-205');
  await page.getByText('Put a card on').click();
  await page.getByLabel('From').fill('2098-01-01');
  await page.getByLabel(/^Day/).fill('12.50');
  await page.getByRole('button', { name: 'Put on' }).click();
  const card = page.getByRole('row', { name: /1 January 2098/ });
  await expect(card).toContainText('12.50');
  await expect(card).toContainText('to come');
  await card.getByRole('button', { name: 'Take off' }).click();
  await expect(card).toHaveCount(0);
  await page.goto('/equipment/rates');
  await page.getByLabel('Role', { exact: true }).selectOption('option');
  await page.getByLabel('Per cent').fill('10');
  await page.getByLabel('From').fill('2098-01-01');
  await page.getByRole('button', { name: 'Show what it comes to' }).click();
  await expect(page.getByRole('button', { name: /cards on from 1 January 2098/ })).toBeVisible();
});

test('a change of equipment, rates and rules leaves an issued quote byte for byte, and its plan is no longer current', async ({
  page,
}) => {
  await page.goto('/equipment');
  const { enquiryId, quoteId } = await quoteOneValve(page);
  const papers = ['quote', 'quotation-xml'].map((kind) => `/api/v1/quotes/${quoteId}/papers/${kind}`);
  const before = await Promise.all(papers.map((path) => bytesOf(page, path)));

  await page.goto('/rules/house');
  await page.getByRole('button', { name: 'Add a rule' }).click();
  const rule = page
    .getByRole('listitem')
    .filter({ has: page.getByLabel('What it is about') })
    .last();
  await rule.getByLabel('Short name').fill('story-no-battery');
  await rule.getByLabel('Value').selectOption('battery');
  await page.getByRole('button', { name: 'What would this change?' }).click();
  await expect(page.getByText(/open enquir(y|ies) would change. Nothing has been saved./)).toBeVisible({
    timeout: 100_000,
  });
  await expect(page.getByText('no longer served').first()).toBeVisible();
  await page.getByRole('button', { name: 'Save the rules' }).click();
  await expect(page.getByText('house rules changed').first()).toBeVisible();

  const rates = {
    starts_on: '2099-05-01',
    day_minor: 1,
    week_minor: 1,
    four_weeks_minor: 1,
    minimum_days: 1,
    note: '',
  };
  await ask(page, { method: 'POST', path: '/api/v1/equipment/D-112/rates', body: rates });
  const state = await ask<{ current?: boolean }>(page, { method: 'GET', path: `/api/v1/enquiries/${enquiryId}/plan` });
  expect(state.current).toBe(false);
  expect(await Promise.all(papers.map((path) => bytesOf(page, path)))).toEqual(before);

  // Other stories find the house as it was.
  await page.reload();
  await page.getByRole('button', { name: 'Take the rule out' }).last().click();
  await page.getByRole('button', { name: 'Save the rules' }).click();
  await expect(page.getByText('house rules changed')).toHaveCount(2);
  await ask(page, { method: 'DELETE', path: '/api/v1/equipment/D-112/rates/2099-05-01' });
});

for (const scheme of ['light', 'dark'] as const) {
  test(`every screen of equipment, house and rules is accessible: ${scheme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme: scheme, reducedMotion: 'reduce' });
    for (const path of SCREENS) {
      await page.goto(path);
      await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
      expect(await barriers(page, path)).toEqual([]);
    }
  });
}

test.describe('somebody of the Desk', () => {
  test.use({ who: 'desk' });

  test('reads equipment, house and rules, and is offered no change', async ({ page }) => {
    await page.goto('/equipment/D-131');
    await expect(page.getByRole('heading', { name: 'Torque and speed' })).toBeVisible();
    await expect(page.getByRole('button', { name: 'Retire', exact: true })).toHaveCount(0);
    await page.goto('/equipment/D-131/edit');
    await expect(page.getByText('Only an administrator changes equipment')).toBeVisible();
    await page.goto('/rules/house');
    await expect(page.getByText('Only an administrator changes the rules of the house.')).toBeVisible();
    await page.goto('/house');
    await expect(page.getByRole('button', { name: 'Save the house' })).toHaveCount(0);
  });
});
