import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect } from './signed-in.ts';

/**
 * What the page as it stands has in the way of assistive technology, a line a rule, each begun with `about`.
 * The title is waited for: for a moment after a click it is on its way with the screen it names.
 */
export async function barriers(page: Page, about = ''): Promise<readonly string[]> {
  await expect(page).toHaveTitle(/\S/);
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.map(({ id, nodes }) => `${about} ${id}: ${nodes[0]?.html ?? ''}`.trim());
}
