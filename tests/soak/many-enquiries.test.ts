/** Interaction latency and memory of a house of 5 000 enquiries, in a real browser against the built server: reported, never gated. */
import type { Page } from '@playwright/test';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ENQUIRIES, fillHouse } from '#tests/support/houses/filled-house.ts';
import { type MeasuredHouse, measuredHouse } from '#tests/support/houses/measured-house.ts';

let house: MeasuredHouse;
let page: Page;

beforeAll(async () => {
  house = await measuredHouse(({ database }) => fillHouse(database.raw));
  ({ page } = house);
});

afterAll(() => house?.end());

describe(`a house of ${ENQUIRIES} enquiries`, () => {
  it('shows its home, its list, filters and the search', async () => {
    const { report } = house;
    await report('home, cold', () => goTo('/'));
    await report('home again', () => goTo('/'));
    await report('list, cold', () => goTo('/enquiries'));
    for (const round of [1, 2, 3]) await report(`list again ${round}`, () => goTo('/enquiries'));
    await report('list, quoted and late, by due day', () => goTo('/enquiries?state=quoted&due=late&order=due&way=up'));
    await report('list, one common word', () => goTo('/enquiries?words=sallow'));
    await report('customers', () => goTo('/customers'));
    for (const words of ['sallow', 'Sa-4711-7', 'sallow tunnel basin', 'zzyzx'])
      await report(`search for ${words}`, () => search(words));
    await report('an enquiry from the list', async () => {
      await goTo('/enquiries');
      await page.getByRole('link', { name: /Y-\d+/ }).first().click();
      await page
        .getByText(/lines, saved/)
        .filter({ visible: true })
        .waitFor();
    });
    expect(page.url()).toMatch(/\/enquiries\/\d+/);
  });
});

async function goTo(path: string): Promise<void> {
  await page.goto(`${house.address}${path}`);
  await page.getByRole('heading', { level: 1 }).waitFor();
}

async function search(words: string): Promise<void> {
  await page.getByRole('searchbox', { name: 'Search everything' }).fill(words);
  await page.keyboard.press('Enter');
  await page.waitForURL((url) => url.searchParams.get('q') === words);
  await page.getByRole('heading', { level: 1 }).waitFor();
}
