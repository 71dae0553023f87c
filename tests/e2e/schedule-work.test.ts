import type { Page } from '@playwright/test';
import { PEOPLE } from '#tests/support/houses/people.ts';
import { barriers } from './accessible.ts';
import { expect, PASSWORD, patient, test } from './signed-in.ts';

const LIST = [
  'Tag,Type,Size,Driven by,Location',
  'WK-1,gate,DN 80,key cap,Mill Lane',
  'WK-2,gate,DN 100,key cap,Mill Lane',
  'WK-3,globe,DN 50,handwheel,Weir Road',
  'WK-4,butterfly,DN 200,handwheel,Weir Road',
].join('\n');

async function readList(page: Page, text: string): Promise<void> {
  await page
    .getByLabel('Valve list', { exact: false })
    .setInputFiles({ name: 'list.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
  await page.getByRole('button', { name: 'Read the list' }).click();
}

/** A new enquiry with four lines; answers with its address. */
async function schedule(page: Page, title: string): Promise<string> {
  await page.goto('/enquiries/new');
  await page.getByLabel('Place or job').fill(title);
  await page.getByLabel('Customer', { exact: false }).fill('Alder Brook Parish Works');
  await page.getByRole('button', { name: 'Open the enquiry' }).click();
  await readList(page, LIST);
  await page.getByRole('button', { name: 'Take the lines' }).click();
  await expect(page.getByText('4 lines, saved')).toBeVisible();
  return new URL(page.url()).pathname;
}

const cell = (page: Page, row: number, column: number) => page.locator(`[data-row="${row}"][data-column="${column}"]`);
const box = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });

async function column(page: Page, at: number): Promise<readonly string[]> {
  return page
    .locator(`input[data-column="${at}"]`)
    .evaluateAll((cells) => cells.map((one) => (one instanceof HTMLInputElement ? one.value : '')));
}

test('blocks are pasted, copied, filled down and emptied, and every step is taken back', async ({ page, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await schedule(page, 'Blocks');
  const before = await column(page, 3);
  await cell(page, 0, 3).click();
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('Control+d');
  await expect.poll(() => column(page, 3)).toEqual(['DN 80', 'DN 80', 'DN 80', 'DN 200']);

  await page.keyboard.press('Control+c');
  await expect.poll(() => page.evaluate(() => navigator.clipboard.readText())).toBe('DN 80\nDN 80\nDN 80');
  await page.evaluate(() => navigator.clipboard.writeText('globe\tDN 65\ngate\tDN 90\r\n'));
  await cell(page, 3, 2).click();
  await page.keyboard.press('Control+v');
  await expect(page.getByText('5 lines, saved')).toBeVisible();
  await expect.poll(() => column(page, 3)).toEqual(['DN 80', 'DN 80', 'DN 80', 'DN 65', 'DN 90']);

  await cell(page, 0, 3).click();
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('Delete');
  await expect.poll(() => column(page, 3)).toEqual(['', '', 'DN 80', 'DN 65', 'DN 90']);
  for (let step = 0; step < 3; step += 1) await page.keyboard.press('Control+z');
  await expect.poll(() => column(page, 3)).toEqual(before);
  await expect(page.getByText('4 lines, saved')).toBeVisible();
  for (let step = 0; step < 3; step += 1) await page.keyboard.press('Control+y');
  await expect.poll(() => column(page, 3)).toEqual(['', '', 'DN 80', 'DN 65', 'DN 90']);
});

test('a text is found and replaced in all lines, counted first, and a column is written for lines filtered in the address', async ({
  page,
}) => {
  await schedule(page, 'Replacing');
  await cell(page, 0, 0).click();
  await page.keyboard.press('Control+f');
  await page.getByLabel('Find', { exact: true }).fill('lane');
  await expect(page.getByText('Found in 2 cells of 2 lines.')).toBeVisible();
  await page.getByLabel('It is').selectOption('whole');
  await expect(page.getByText('Found nowhere.')).toBeVisible();
  await page.getByLabel('It is').selectOption('part');
  await page.getByLabel('Put in its place').fill('Street');
  await page.getByRole('button', { name: 'Replace all 2' }).click();
  await expect(page.getByText('2 cells written.')).toBeVisible();
  await page.getByRole('button', { name: 'Close' }).click();

  await page.getByRole('button', { name: 'Size', exact: true }).click();
  await page.getByLabel('this text').fill('DN 2');
  await page.getByRole('button', { name: 'Show these' }).click();
  await expect(page.getByText('1 of 4 lines, saved')).toBeVisible();
  await page.reload();
  await expect(page.getByText('1 of 4 lines, saved')).toBeVisible();
  await page.getByRole('button', { name: 'Write a column' }).click();
  await page.getByLabel('Let the column').selectOption('notes');
  await page.getByLabel('Text (nothing').fill('large');
  await page.getByRole('button', { name: 'Write 1 cells' }).click();
  await expect(page.getByText('1 cell written.')).toBeVisible();
  await page.getByRole('button', { name: 'Drop: Size holds “DN 2”' }).click();
  await expect(page.getByText('4 lines, saved')).toBeVisible();

  await page.getByRole('button', { name: 'Columns' }).click();
  await page.getByRole('button', { name: 'All that hold something' }).click();
  await expect(box(page, 'Location, WK-1')).toHaveValue('Mill Street');
  await expect(page.getByRole('textbox', { name: /^(Notes|Remarks?), WK-4$/ })).toHaveValue('large');
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(box(page, 'Location, WK-1')).toHaveValue('Mill Lane');
});

test('a corrected list is compared, taken without what the Desk wrote, and taken back', async ({ page }) => {
  const path = await schedule(page, 'Corrected');
  await box(page, 'Size, WK-2').fill('DN 125');
  await page.keyboard.press('Enter');
  await expect(page.getByText('4 lines, saved')).toBeVisible();
  await page.getByRole('link', { name: 'List', exact: true }).click();
  await readList(
    page,
    LIST.replace('DN 80', 'DN 90')
      .replace('DN 100', 'DN 150')
      .replace(/WK-3.*\n/, 'WK-9,gate,DN 65,key cap,Hill\n'),
  );
  await page.getByRole('button', { name: 'Compare' }).click();
  await expect(page.getByRole('heading', { name: '1 added, 1 gone, 2 changed, 1 the same' })).toBeVisible();
  await expect(page.getByRole('checkbox', { name: 'Size of WK-1' })).toBeChecked();
  await expect(page.getByRole('checkbox', { name: 'Size of WK-2' }), 'the Desk wrote it').not.toBeChecked();
  expect(await barriers(page)).toEqual([]);
  await page.getByRole('button', { name: 'Take 3 differences' }).click();
  await expect(box(page, 'Size, WK-1')).toHaveValue('DN 90');
  await expect(box(page, 'Size, WK-2')).toHaveValue('DN 125');
  await expect(box(page, 'Tag, WK-9')).toBeVisible();
  await expect(box(page, 'Tag, WK-3')).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(box(page, 'Tag, WK-3')).toBeVisible();
  await expect(box(page, 'Size, WK-1')).toHaveValue('DN 80');
  await page.goto(`${path}/list`);
  await expect(page.getByRole('link', { name: 'list.csv' })).toHaveCount(2);
});

test('two people on one enquiry see each other’s cells, and choose where both wrote one', async ({
  page,
  browser,
  baseURL,
}) => {
  const path = await schedule(page, 'Two people');
  const other = await browser.newContext({ baseURL: baseURL ?? '', storageState: { cookies: [], origins: [] } });
  const ada = patient(await other.newPage());
  await ada.goto('/sign-in');
  await ada.getByLabel('Email').fill(PEOPLE.administrator.email);
  await ada.getByLabel('Password').fill(PASSWORD);
  await ada.getByRole('button', { name: 'Sign in' }).click();
  await expect(ada).not.toHaveURL(/sign-in/);
  await ada.goto(path);
  await expect(page.getByText(`${PEOPLE.administrator.name} here too`)).toBeVisible();

  await box(ada, 'Size, WK-1').fill('DN 95');
  await ada.keyboard.press('Enter');
  await expect(box(page, 'Size, WK-1')).toHaveValue('DN 95');
  await expect(page.getByText(`${PEOPLE.administrator.name}: 1 cell written.`)).toBeVisible();

  await other.setOffline(true);
  await box(ada, 'Size, WK-2').fill('DN 111');
  await ada.keyboard.press('Enter');
  await expect(ada.getByText('It is kept here and tried again by itself.')).toBeVisible();
  await expect(box(ada, 'Size, WK-2')).toHaveValue('DN 111');
  await box(page, 'Size, WK-2').fill('DN 222');
  await page.keyboard.press('Enter');
  await expect(page.getByText('4 lines, saved')).toBeVisible();
  await other.setOffline(false);
  const choice = ada.getByRole('alert').filter({ hasText: 'changed by somebody else' });
  await expect(choice).toContainText(`yours “DN 111”, ${PEOPLE.desk.name} wrote “DN 222”`);
  await expect(box(ada, 'Size, WK-2')).toHaveValue('DN 222');
  await choice.getByRole('button', { name: 'Take mine' }).click();
  await expect(box(page, 'Size, WK-2')).toHaveValue('DN 111');

  await page.getByRole('link', { name: 'Site', exact: true }).click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Two people');
  await box(ada, 'Size, WK-3').fill('DN 70');
  await ada.keyboard.press('Enter');
  await expect(page.getByText('changed this enquiry since this screen was opened')).toBeVisible();
  await other.close();
});

test('the sheet and its tools have no fault for assistive technology, light, dark and on a phone', async ({ page }) => {
  await page.goto('/enquiries/5?sort=-size');
  await expect(page.getByRole('region', { name: 'Schedule', exact: true }).getByText(/lines, saved/)).toBeVisible();
  for (const tool of ['Find and replace', 'Write a column', 'Columns', 'Go to', 'Changes']) {
    await page.getByRole('button', { name: tool, exact: true }).click();
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
      expect(await barriers(page, `${tool}, ${colorScheme}`)).toEqual([]);
    }
  }
  await page.setViewportSize({ width: 390, height: 844 });
  await page.getByRole('button', { name: 'Close' }).click();
  await page.getByRole('button', { name: 'Size', exact: true }).click();
  await expect(page.getByRole('dialog')).toBeVisible();
  expect(await barriers(page)).toEqual([]);
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  expect(wide, 'the page itself does not scroll sideways').toBeLessThanOrEqual(390);
});
