import { expect, test } from './signed-in.ts';

test('the house answers at its address and names itself', async ({ page }) => {
  await page.goto('/');
  await expect(page).toHaveTitle(/Kitwright/);
});
