import type { Page } from '@playwright/test';
import { barriers } from './accessible.ts';
import { dayIn } from './days.ts';
import { expect } from './signed-in.ts';

/** What a contractor does on the pages of self-service, step by step, for the stories that go through them. */

/** A telephone in the hand. */
export const PHONE = { width: 390, height: 844 };

/** What is known of a gate valve with a rising stem, by the field that asks it. */
export const KNOWN: Readonly<Record<string, string>> = {
  differential_pressure: '4 bar',
  stem: 'rising through the wheel',
  wheel_diameter: '350 mm',
  last_operated: '1 year',
  faces: 'up',
  service: 'other',
  locked: 'no',
};

interface FirstValve {
  readonly turned: string;
  readonly size: string;
  /** Days from today to the first of the hire; the day that the form proposes where nothing is said. */
  readonly inDays?: number;
}

/** A story that asks what is free chooses days on which no other story has taken anything. */
export async function beginIn(page: Page, days: number) {
  await page.getByLabel('First day of hire', { exact: true }).fill(dayIn(days));
}

export async function startWith(page: Page, { turned, size, inDays }: FirstValve) {
  await page.goto('/hire');
  await page.getByRole('group', { name: 'What does a person turn?' }).getByLabel(turned).check();
  await page.getByRole('group', { name: 'What kind of valve is it?' }).getByLabel('Gate valve').check();
  await page.getByLabel('Size, such as DN 150 or 6 in').fill(size);
  await page.getByRole('group', { name: 'How does it move by hand?' }).getByLabel('Freely').check();
  await page.getByRole('group', { name: 'Is it a hazardous area' }).getByLabel('No', { exact: true }).check();
  if (inDays !== undefined) await beginIn(page, inDays);
  // Faster than this no person fills the form in, and the house says so.
  await page.waitForTimeout(2_100);
  await page.getByRole('button', { name: 'Show what fits' }).click();
  await expect(page.getByRole('heading', { name: 'Valve V1' })).toBeVisible();
}

/** Answers what is asked from what is known, and “I don't know” to everything else, until nothing is asked any more. */
export async function answerAll(page: Page, known: Readonly<Record<string, string>>) {
  for (let turn = 0; turn < 20; turn += 1) {
    // Between two documents nothing is asked, either: what stands below the question says that the page is all there.
    await expect(page.getByRole('link', { name: 'Enough, show the answer' })).toBeVisible();
    const question = page.locator('form[aria-labelledby^="ask-"]');
    if ((await question.count()) === 0) return;
    const column = await question.locator('input[name="column"]').inputValue();
    const answer = known[column];
    const choice = question.locator(`button[name="answer"][value="${answer ?? 'nothing'}"]`);
    if (answer === undefined) await question.getByRole('button', { name: 'I don’t know' }).click();
    else if ((await choice.count()) > 0) await choice.click();
    else {
      await question.getByRole('textbox').fill(answer);
      await question.getByRole('button', { name: 'Answer' }).click();
    }
    await expect(page.locator(`#ask-${column}`)).toHaveCount(0);
  }
}

export async function toAnswer(page: Page) {
  await page.getByRole('link', { name: 'Enough, show the answer' }).click();
  await untilAnswered(page);
}

/** A page that is still working loads itself again; a telephone that does not may press the link. */
export async function untilAnswered(page: Page) {
  await expect(async () => {
    if ((await page.locator('#answer').count()) === 0) await page.reload();
    await expect(page.locator('#answer')).toBeVisible({ timeout: 2_000 });
  }).toPass({ timeout: 90_000 });
}

export async function tellWho(page: Page, button: string) {
  const form = page.locator('form').filter({ has: page.getByRole('button', { name: button }) });
  await form.getByLabel('Your name').fill('Mara Quist');
  await form.getByLabel('Firm').fill('Quist Pipework');
  await form.getByLabel('Mail address').fill('mara@quist.example');
  await form.getByRole('button', { name: button }).click();
}

export async function isAccessible(page: Page) {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    expect(await barriers(page)).toEqual([]);
  }
  const wider = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  expect(wider, 'The page is no wider than the telephone').toBeLessThanOrEqual(0);
}
