import { type Browser, test as bare, expect, type Page } from '@playwright/test';
import type { UserRole } from '#lib/services/context.ts';
import { PEOPLE } from '#tests/support/houses/people.ts';

export { expect };
export const PASSWORD = process.env.E2E_PASSWORD ?? '';

type State = Awaited<ReturnType<Awaited<ReturnType<Browser['newContext']>>['storageState']>>;

interface Who {
  /** Who the story is about; `test.use({ who: 'yard' })` chooses another, 'nobody' a stranger. */
  readonly who: UserRole | 'nobody';
}

interface Keys {
  readonly sessions: Map<UserRole, State>;
}

/** Playwright's test with somebody signed in, the Desk unless the story says otherwise; one session a role and run. */
export const test = bare.extend<Who, Keys>({
  who: ['desk', { option: true }],
  // biome-ignore lint/correctness/noEmptyPattern: the runner reads the names of fixtures from this pattern.
  sessions: [async ({}, use) => use(new Map()), { scope: 'worker' }],
  storageState: async ({ who, sessions, browser, baseURL }, use) => {
    if (who === 'nobody') return use({ cookies: [], origins: [] });
    const state = sessions.get(who) ?? (await signedIn({ browser, baseURL: baseURL ?? '', role: who }));
    sessions.set(who, state);
    await use(state);
  },
  page: async ({ page, javaScriptEnabled }, use) => {
    if (javaScriptEnabled !== false) patient(page);
    await use(page);
  },
});

/**
 * A page that is gone to is waited for until it stands, and a text is looked for only where it is to stay:
 * a screen that streams in, also after a click, is for a moment there twice, once hidden.
 */
export function patient(page: Page): Page {
  const goTo = page.goto.bind(page);
  page.goto = async (url, options) => {
    const answer = await goTo(url, options);
    await stands(page);
    return answer;
  };
  const again = page.reload.bind(page);
  page.reload = async (options) => {
    const answer = await again(options);
    await stands(page);
    return answer;
  };
  const byText = page.getByText.bind(page);
  page.getByText = (text, options) => byText(text, options).and(page.locator(':not([hidden][id^="S:"] *)'));
  return page;
}

/** Until nothing of the page is still on its way: it answers to clicks, no placeholder is shown, no part waits hidden for its place. */
export async function stands(page: Page): Promise<void> {
  await page.waitForFunction(() => {
    const answers = Object.keys(document).some((key) => key.startsWith('__reactContainer'));
    const isWhole =
      document.querySelector('main > .waiting') === null && document.querySelector('[hidden][id^="S:"]') === null;
    return (answers || document.querySelector('main') === null) && isWhole;
  });
}

interface SigningIn {
  readonly browser: Browser;
  readonly baseURL: string;
  readonly role: UserRole;
}

async function signedIn({ browser, baseURL, role }: SigningIn): Promise<State> {
  const context = await browser.newContext({ baseURL, storageState: { cookies: [], origins: [] } });
  const page = patient(await context.newPage());
  await page.goto('/sign-in');
  await page.getByLabel('Email').fill(PEOPLE[role].email);
  await page.getByLabel('Password').fill(PASSWORD);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await expect(page).not.toHaveURL(/sign-in/);
  const state = await context.storageState();
  await context.close();
  return state;
}
