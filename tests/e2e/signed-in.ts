import { type Browser, test as bare, expect, type Page } from '@playwright/test';
import type { UserRole } from '#lib/services/context.ts';
import { PEOPLE } from '#tests/support/people.ts';

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
  /** A page that is gone to is waited for until it stands: a screen that streams in is for a moment there twice, once hidden. */
  page: async ({ page, javaScriptEnabled }, use) => {
    const goTo = page.goto.bind(page);
    page.goto = async (url, options) => {
      const answer = await goTo(url, options);
      if (javaScriptEnabled !== false) await stands(page);
      return answer;
    };
    await use(page);
  },
});

/** Until nothing of the page is still on its way: no placeholder is shown, and no part waits hidden for its place. */
export async function stands(page: Page): Promise<void> {
  await page.waitForFunction(
    () => document.querySelector('main > .waiting') === null && document.querySelector('[hidden][id^="S:"]') === null,
  );
}

interface SigningIn {
  readonly browser: Browser;
  readonly baseURL: string;
  readonly role: UserRole;
}

async function signedIn({ browser, baseURL, role }: SigningIn): Promise<State> {
  const context = await browser.newContext({ baseURL, storageState: { cookies: [], origins: [] } });
  const page = await context.newPage();
  await page.goto('/sign-in');
  await page.getByLabel('Email').fill(PEOPLE[role].email);
  await page.getByLabel('Password').fill(PASSWORD);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await expect(page).not.toHaveURL(/sign-in/);
  const state = await context.storageState();
  await context.close();
  return state;
}
