import { expect, test } from '@playwright/test';

test('the house answers at its address and names itself', async ({ page }) => {
  await page.goto('/');
  await expect(page).toHaveTitle(/Kitwright/);
});
