import { expect, test } from './signed-in.ts';

/** A range of torque; what a source cites stays as it is printed there. */
const IN_SI = /\d…[\d.]+ N·m/;
const IN_US = /\d…[\d.]+ lbf·ft/;

test('the screens switch between SI and US customary units and back, and the list keeps what the customer wrote', async ({
  page,
}) => {
  await page.goto('/enquiries/7');
  const units = page.getByRole('form', { name: 'Units shown' });
  await expect(page.getByText(/lines, saved/)).toBeVisible();
  const first = page.locator('[role="row"][aria-rowindex="2"]');
  const written = await first
    .getByRole('textbox')
    .evaluateAll((cells) => cells.map((cell) => (cell instanceof HTMLInputElement ? cell.value : '')));
  const shown = await first.textContent();
  expect(shown).toMatch(IN_SI);

  await units.getByRole('button', { name: 'US customary units' }).click();
  await expect(first).toContainText(IN_US);
  await expect(first).not.toContainText(IN_SI);
  const kept = await first
    .getByRole('textbox')
    .evaluateAll((cells) => cells.map((cell) => (cell instanceof HTMLInputElement ? cell.value : '')));
  expect(kept).toEqual(written);

  await page.reload();
  await expect(first).toContainText(IN_US);
  await units.getByRole('button', { name: 'SI units' }).click();
  await expect(first).toContainText(IN_SI);
  await expect.poll(() => first.textContent()).toBe(shown);
});
