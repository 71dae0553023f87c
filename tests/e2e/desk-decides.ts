import type { Page } from '@playwright/test';
import { expect } from './signed-in.ts';

/** The Desk's word on the charges of a return, on its page. */

/** How it happened is said first where the waiver may cover it; then every charge is approved as it stands. */
export async function approveAll(desk: Page): Promise<number> {
  const open = desk.getByRole('article').filter({ has: desk.getByRole('button', { name: /^Approve/ }) });
  await expect(open.first()).toBeVisible();
  const all = await open.count();
  for (let left = all; left > 0; left = await open.count()) {
    const one = open.first();
    const approve = one.getByRole('button', { name: /^Approve/ });
    if (await approve.isDisabled()) await one.getByLabel('How did it happen?').selectOption({ index: 3 });
    await expect(approve).toBeEnabled();
    await approve.click();
    await expect(open).toHaveCount(left - 1);
  }
  return all;
}

/** What is not what the story is about is struck, with a reason. */
export async function strikeAll(desk: Page): Promise<void> {
  const open = desk.getByRole('article').filter({ has: desk.getByRole('button', { name: /^Approve/ }) });
  for (let left = await open.count(); left > 0; left = await open.count()) {
    const one = open.first();
    await one.getByText('Change or strike it').click();
    await one.getByLabel(/^Reason/).fill('not in this story');
    await one.getByRole('button', { name: /^Strike/ }).click();
    await expect(open).toHaveCount(left - 1);
  }
}
