import type { Page } from '@playwright/test';
import { readPdf } from '#tests/support/papers/read-pdf.ts';
import { barriers } from './accessible.ts';
import { expect, test } from './signed-in.ts';

const LIST = [
  'Valve no;Kind;DN;Operated by;Depth to nut (m);Qty',
  'AL-1;gate valve;100;key cap;0,9;1',
  'AL-2;gate valve;150;key cap;1,1;2',
  'AL-3;air valve;50;;;1',
  'AL-4;gate valve;80;key cap;0,9;1',
].join('\n');

/** Every screen of the Desk. */
const SCREENS = [
  '/enquiries',
  '/enquiries/new',
  '/enquiries/1',
  '/enquiries/1/schedule',
  '/enquiries/1/list',
  '/enquiries/1/site',
  '/enquiries/1/kits',
  '/enquiries/1/papers',
  '/enquiries/1/lines/1',
  '/equipment',
  '/rules',
];

async function openEnquiry(page: Page, title: string): Promise<void> {
  await page.goto('/enquiries');
  await page.getByRole('link', { name: 'New enquiry' }).click();
  await page.getByLabel('Place or job').fill(title);
  await page.getByLabel('Customer', { exact: false }).fill('Alder Brook Parish Works');
  await page.getByLabel('Days').fill('3');
  await page.getByRole('button', { name: 'Open the enquiry' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText(title);
}

async function takeList(page: Page, list: { readonly name: string; readonly text: string }): Promise<void> {
  await page
    .getByLabel('Valve list', { exact: false })
    .setInputFiles({ name: list.name, mimeType: 'text/csv', buffer: Buffer.from(list.text) });
  await page.getByRole('button', { name: 'Read the list' }).click();
}

test('a list becomes lines, a plan, and a quote whose words can be read back', async ({ page, request }) => {
  await openEnquiry(page, 'Alder Brook mains');
  await takeList(page, { name: 'alder.csv', text: LIST });
  await expect(page.getByRole('combobox', { name: 'Meaning of Kind' })).toHaveValue('valve_type');
  await page.getByRole('button', { name: 'Show what comes of it' }).click();
  await expect(page.getByText('4 rows: 3 lines, 1 set aside, 0 refused, 0 blank.')).toBeVisible();
  await page.getByRole('button', { name: 'Take the lines' }).click();
  await expect(page.getByRole('textbox', { name: 'Tag, AL-1' })).toHaveValue('AL-1');

  const size = page.getByRole('textbox', { name: 'Size, AL-1' });
  await size.fill('DN 125');
  await size.press('Enter');
  await expect(page.getByText('3 lines, saved')).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByRole('textbox', { name: 'Size, AL-1' })).not.toHaveValue('DN 125');

  await page.getByRole('link', { name: 'Kits' }).click();
  await page.getByRole('button', { name: 'Start planning' }).click();
  await expect(page.getByText('4 of 4').first()).toBeVisible({ timeout: 90_000 });

  await page.getByRole('link', { name: 'Price & papers' }).click();
  await page.getByRole('button', { name: 'Issue', exact: false }).first().click();
  await page.getByRole('dialog').getByRole('button', { name: 'Issue', exact: false }).click();
  const paper = page.getByRole('link', { name: /Quote of Q-\d+/ });
  await expect(paper).toBeVisible({ timeout: 60_000 });
  const answer = await request.get((await paper.getAttribute('href')) ?? '');
  expect(answer.headers()['content-type']).toBe('application/pdf');
  const words = readPdf(await answer.body()).text;
  expect(words).toContain('Alder Brook Parish Works');
  expect(words).toContain('AL-2');
  expect(words).toMatch(/Q-\d{5} A/);

  await page.getByRole('button', { name: 'Accepted by the customer' }).click();
  const asked = page.getByRole('dialog', { name: /Has the customer accepted Q-\d{5} A/ });
  await expect(asked).toContainText('booked by serial number');
  await asked.getByLabel('Who said yes').fill('R. Dunlin');
  await asked.getByRole('button', { name: 'Yes, book the units' }).click();
  const acceptance = page.getByRole('region', { name: /Acceptance of Q-\d{5} A/ });
  await expect(acceptance).toContainText('by R. Dunlin');
  await expect(page.getByRole('button', { name: 'Accepted by the customer' })).toHaveCount(0);
  await acceptance.getByText('Booked units').click();
  const booked = await acceptance.getByRole('row').nth(1).getByRole('cell').textContent();
  const serial = booked?.split(', ')[0] ?? '';
  expect(serial).not.toBe('');
  const packing = acceptance.getByRole('link', { name: 'Packing list with serial numbers' });
  const list = await request.get((await packing.getAttribute('href')) ?? '');
  expect(readPdf(await list.body()).text).toContain(serial);
  expect(await barriers(page)).toEqual([]);
});

test('a file that is no list gets an answer that says what to do', async ({ page }) => {
  await openEnquiry(page, 'Wrong file');
  await takeList(page, { name: 'picture.csv', text: '\u0000\u0001\u0002\u0003PNG\u0000\u0000\u0000\u0000' });
  await expect(page.getByText('The file is not a text that can be read as a list', { exact: false })).toBeVisible();
});

test('every screen of an enquiry passes the accessibility rules', async ({ page }) => {
  for (const path of SCREENS) {
    await page.goto(path);
    await page.getByRole('heading', { level: 1 }).first().waitFor();
    expect(await barriers(page, path)).toEqual([]);
  }
});

test('on a phone no screen scrolls sideways', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 800 });
  for (const path of SCREENS) {
    await page.goto(path);
    const wider = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(wider, path).toBe(0);
  }
});
