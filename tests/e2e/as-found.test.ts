import { expect, test } from './signed-in.ts';

test('a value is tried on a line and taken back; what a crew found is recorded, and nonsense is named', async ({
  page,
}) => {
  await page.goto('/enquiries/1/lines/2');
  const panel = page.getByRole('region', { name: 'What if' });
  const value = panel.getByLabel('What if it were');
  await value.fill('a lot');
  await expect(panel.getByText('cannot be read', { exact: false })).toBeVisible();
  await value.fill('16 bar');
  await expect(panel.getByRole('row', { name: /Torque to start opening/ })).toBeVisible();
  await panel.getByRole('button', { name: 'Take this value into the line' }).click();
  await expect(panel.getByText('Taken into the line')).toBeVisible();
  await panel.getByRole('button', { name: 'Undo what was taken' }).click();
  await expect(panel.getByText('The line is as it was.')).toBeVisible();

  await page.getByRole('link', { name: 'As found' }).click();
  await page.getByLabel('Who', { exact: true }).fill('T. Marl');
  const first = page.getByRole('group', { name: /SV-101 \(1 of 6\)/ });
  const second = page.getByRole('group', { name: /SV-101 \(2 of 6\)/ });
  await first.getByLabel('Turns').fill('lots');
  await second.getByLabel('Turns').fill('18');
  await page.getByRole('button', { name: 'Record 2 valves' }).click();
  await expect(page.getByText('1 valve recorded.')).toBeVisible();
  await expect(page.getByText('Turns “lots” cannot be read', { exact: false })).toBeVisible();
  await expect(first.getByLabel('Turns')).toHaveValue('lots');
});
