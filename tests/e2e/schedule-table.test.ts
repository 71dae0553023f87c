import { expect, test } from './signed-in.ts';

test('the schedule is walked, typed into and taken back from the keyboard', async ({ page }) => {
  await page.goto('/enquiries/5');
  const saved = page.getByText(/lines, saved/);
  await expect(saved).toBeVisible();
  const cell = (row: number, column: number) => page.locator(`input[data-row="${row}"][data-column="${column}"]`);
  await cell(0, 2).click();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowDown');
  await expect(cell(1, 3)).toBeFocused();
  const before = await cell(1, 3).inputValue();
  await page.keyboard.type('DN 125');
  await page.keyboard.press('Tab');
  await page.keyboard.type('half a wo');
  await expect(saved).toBeVisible();
  await expect(cell(1, 4), 'the answer to one edit leaves the next one alone').toHaveValue('half a wo');
  await page.keyboard.press('Escape');
  await page.keyboard.press('Control+z');
  await expect(cell(1, 3)).toHaveValue(before);
});

test('removed lines come back where they stood', async ({ page }) => {
  await page.goto('/enquiries/5');
  const tags = () =>
    page
      .locator('input[data-column="0"]')
      .evaluateAll((cells) => cells.map((cell) => (cell instanceof HTMLInputElement ? cell.value : '')));
  await expect(page.getByText(/lines, saved/)).toBeVisible();
  const before = await tags();
  const picks = page.getByRole('checkbox', { name: /^Choose / });
  await picks.nth(1).check();
  await picks.nth(2).check();
  await page.getByRole('button', { name: 'Remove 2 lines' }).click();
  await expect.poll(tags).toEqual(before.filter((_, index) => index !== 1 && index !== 2));
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(tags).toEqual(before);
});

test('a list of twelve hundred valves is walked to its end, and prints whole', async ({ page }) => {
  const rows = Array.from({ length: 1200 }, (_, index) => `LV-${index + 1},gate,DN ${80 + (index % 4) * 50},key cap`);
  await page.goto('/enquiries/new');
  await page.getByLabel('Place or job').fill('Long list');
  await page.getByLabel('Customer', { exact: false }).fill('Alder Brook Parish Works');
  await page.getByRole('button', { name: 'Open the enquiry' }).click();
  await page.getByLabel('Valve list', { exact: false }).setInputFiles({
    name: 'long.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(['Tag,Type,Size,Driven by', ...rows].join('\n')),
  });
  await page.getByRole('button', { name: 'Read the list' }).click();
  await page.getByRole('button', { name: 'Take the lines' }).click();
  await expect(page.getByText('1200 lines, saved')).toBeVisible();
  const first = page.getByRole('textbox', { name: 'Tag, LV-1', exact: true });
  await expect(first).toBeVisible();
  await page.getByRole('region', { name: 'Lines of the schedule' }).evaluate((frame) => {
    frame.scrollTop = frame.scrollHeight;
  });
  await expect(page.getByRole('textbox', { name: 'Tag, LV-1200' })).toBeVisible();
  await expect(first).toHaveCount(0);

  await page.getByRole('link', { name: 'To print' }).click();
  await expect(page.getByRole('heading', { name: 'Schedule, 1200 lines' })).toBeVisible();
  await expect(page.getByRole('table').getByRole('row')).toHaveCount(1201);
  await page.emulateMedia({ media: 'print' });
  await expect(page.getByRole('cell', { name: 'LV-1200', exact: true })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Print' })).toBeHidden();
});

test('a tag leads to its line at once, and one that is gone to the schedule that says so', async ({ page }) => {
  const first = await page.request.get('/api/v1/enquiries/1/lines?count=1');
  const { lines } = (await first.json()) as {
    readonly lines: readonly { readonly id: number; readonly tag: string }[];
  };
  const line = lines[0];
  expect(line).toBeDefined();
  const led = await page.request.get(`/enquiries/1/lines?tag=${encodeURIComponent(line?.tag ?? '')}`, {
    maxRedirects: 0,
  });
  expect(led.status()).toBe(303);
  expect(led.headers().location).toBe(`/enquiries/1/lines/${line?.id}`);
  await page.goto('/enquiries/1/lines?tag=NOT-THERE');
  await expect(page).toHaveURL(/\/enquiries\/1\?text=NOT-THERE$/);
  await expect(page.getByText(/No line/)).toBeVisible();
});
