import type { Page } from '@playwright/test';
import { barriers } from './accessible.ts';
import { expect, stands } from './signed-in.ts';

export async function accessible(page: Page): Promise<void> {
  await stands(page);
  expect(await barriers(page)).toEqual([]);
}

/** A screen of the yard in light and dark, on a tablet held upright and on a telephone: sound, not too wide, and made for gloves. */
export async function everyLook(page: Page): Promise<void> {
  for (const colorScheme of ['light', 'dark'] as const) {
    for (const width of [820, 390]) {
      await page.setViewportSize({ width, height: 1100 });
      await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
      await accessible(page);
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(wide, `${colorScheme} ${width}`).toBeLessThanOrEqual(0);
      expect(await lowTargets(page), `${colorScheme} ${width}`).toEqual([]);
    }
  }
  await page.emulateMedia({ colorScheme: 'light' });
  await page.setViewportSize({ width: 820, height: 1100 });
}

/** What a finger in a glove would miss: everything to press or to type in that is lower than 48 px; a tick counts with its label. */
export async function lowTargets(page: Page): Promise<readonly string[]> {
  return page.getByRole('main').evaluate((main) =>
    [...main.querySelectorAll('button, a.button, a.tag, summary, select, textarea, input:not([type=file])')]
      .map((one) => (one.matches('[type=checkbox], [type=radio]') ? (one.closest('label') ?? one) : one))
      .filter((one) => one.checkVisibility() && one.getBoundingClientRect().height < 47.5)
      .map((one) => `${one.tagName} ${one.getAttribute('aria-label') ?? one.textContent} ${one.className}`),
  );
}
