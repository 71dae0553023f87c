import { expect, test } from '@playwright/test';

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
