import type { Page } from '@playwright/test';
import { isOpenPath, OPEN_PAGES, OPEN_ROOTS, OPEN_ROUTES } from '#app/_lib/open-paths.ts';
import { PEOPLE } from '#tests/support/houses/people.ts';
import { repositoryFiles } from '#tests/support/repository.ts';
import { barriers } from './accessible.ts';
import { expect, PASSWORD, patient, test } from './signed-in.ts';

async function fillSignIn(page: Page, { email, password }: { readonly email: string; readonly password: string }) {
  await page.getByLabel('Email').fill(email);
  await page.getByLabel('Password').fill(password);
  await page.getByRole('button', { name: 'Sign in' }).click();
}

/** Lets somebody in on the Users screen; answers their one-time password. */
async function letIn(
  page: Page,
  { name, email, role }: { readonly name: string; readonly email: string; readonly role: string },
) {
  await page.goto('/users');
  await page.getByLabel('Name').fill(name);
  await page.getByLabel('Email').fill(email);
  await page.getByLabel('Role').selectOption(role);
  await page.getByRole('button', { name: 'Add with a one-time password' }).click();
  await expect(page.getByText(`${name} may sign in now.`, { exact: false })).toBeVisible();
  return (await page.locator('.one-time').textContent()) ?? '';
}

test.describe('nobody is signed in', () => {
  test.use({ who: 'nobody' });

  test('every page leads to signing in and every route says 401; only the door itself is open', async ({ request }) => {
    const filled = (path: string) => `/${path.replace(/\[[^\]]+\]/g, '1').replace(/\([^)]*\)\//g, '')}`;
    const files = repositoryFiles();
    const pages = files.filter((path) => /^app\/(.*\/)?page\.tsx$/.test(path));
    expect([...OPEN_ROUTES, ...OPEN_PAGES, ...OPEN_ROOTS]).toEqual([
      '/api/ping',
      '/sign-in',
      '/hire',
      '/api/v1/orders',
      '/api/v1/openapi.json',
    ]);
    const handlers = files.filter((path) => /^app\/(.*\/)?route\.ts$/.test(path));
    const routes = handlers.filter((path) => path.startsWith('app/api/'));
    // A handler outside the routes leads from one page to another, so it is a page to whoever follows a link.
    for (const path of [...pages, ...handlers.filter((other) => !routes.includes(other))]) {
      const address = filled(path.slice('app/'.length).replace(/\/(page\.tsx|route\.ts)$/, ''));
      // Self-service asks for a link or a key by itself; its own story shows what a stranger gets there.
      if (isOpenPath(address)) continue;
      const answer = await request.get(address, { maxRedirects: 0 });
      expect(`${address} ${answer.status()} ${answer.headers().location ?? ''}`).toMatch(/ 303 \S*\/sign-in(\?to=|$)/);
    }
    for (const path of routes) {
      const address = filled(path.slice('app/'.length, -'/route.ts'.length));
      // What is for customers' programs asks for a key by itself; the story of self-service walks all of it without one.
      if (isOpenPath(address)) continue;
      for (const method of ['GET', 'POST', 'PATCH', 'DELETE'] as const) {
        const answer = await request.fetch(address, { method });
        expect(`${method} ${address} ${answer.status()}`).toBe(`${method} ${address} 401`);
        expect(answer.headers()['content-type']).toContain('application/problem+json');
      }
    }
    expect(pages.length + routes.length).toBeGreaterThan(40);
  });

  test('a made-up session opens no route, and another site changes nothing', async ({ request }) => {
    const headers = { cookie: 'kitwright.session_token=made.up' };
    expect((await request.get('/api/v1/enquiries', { headers })).status()).toBe(401);
    expect((await request.get('/enquiries', { headers })).url()).toContain('/sign-in');
    const elsewhere = { ...headers, origin: 'http://elsewhere.example' };
    expect((await request.post('/api/v1/enquiries', { headers: elsewhere, data: {} })).status()).toBe(403);
  });

  test('one comes back to where one wanted to go, and never to another site', async ({ page }) => {
    await page.goto('/equipment');
    await expect(page).toHaveURL(/\/sign-in\?to=/);
    await fillSignIn(page, { email: PEOPLE.desk.email, password: PASSWORD });
    await expect(page).toHaveURL(/\/equipment$/);
    await page.getByText(PEOPLE.desk.name, { exact: true }).click();
    await page.getByRole('button', { name: 'Sign out' }).click();
    await page.goto('/sign-in?to=//elsewhere.example/');
    await fillSignIn(page, { email: PEOPLE.desk.email, password: PASSWORD });
    await expect(page).toHaveURL(/^http:\/\/127\.0\.0\.1:\d+\/$/);
  });

  test('wrong passwords are refused with a sentence, and after five one must wait', async ({ page }) => {
    await page.goto('/sign-in');
    for (let count = 0; count < 5; count += 1) {
      await fillSignIn(page, { email: 'guess@house.example', password: `a wrong guess ${count}` });
      await expect(page.getByText('do not go together', { exact: false })).toBeVisible();
      await expect(page.getByRole('button', { name: 'Sign in' })).toBeEnabled();
    }
    await fillSignIn(page, { email: 'guess@house.example', password: 'a wrong guess again' });
    await expect(page.getByText(/Wait 1[45] minutes/)).toBeVisible();
  });

  test('signing in passes the accessibility rules, light and dark', async ({ page }) => {
    await accessible(page, ['/sign-in']);
  });
});

test.describe('an administrator', () => {
  test.use({ who: 'administrator' });

  test('lets somebody in, who must choose a password, and ends their session again', async ({
    page,
    browser,
    baseURL,
  }) => {
    const email = 'newcomer@house.example';
    const password = await letIn(page, { name: 'Nora Newcomer', email, role: 'desk' });
    const other = await browser.newContext({ baseURL: baseURL ?? '', storageState: { cookies: [], origins: [] } });
    const theirs = patient(await other.newPage());
    await theirs.goto('/rules');
    await fillSignIn(theirs, { email, password });
    await expect(theirs.getByRole('heading', { name: 'Choose a password' })).toBeVisible();
    await theirs.goto('/enquiries');
    await expect(theirs).toHaveURL(/choose-password/);
    await theirs.getByLabel('Present password').fill(password);
    await theirs.getByLabel('New password', { exact: true }).fill('nine green lamps lit');
    await theirs.getByLabel('New password again').fill('nine green lamps lit');
    await theirs.getByRole('button', { name: 'Save the new password' }).click();
    await expect(theirs.getByRole('heading', { name: 'Enquiries', level: 1 })).toBeVisible();

    await page.goto('/users');
    await page.getByRole('link', { name: 'Nora Newcomer' }).click();
    await page.getByRole('button', { name: 'Sign out everywhere' }).click();
    await expect(page.getByText('No browser is signed in.')).toBeVisible();
    await theirs.goto('/enquiries');
    await expect(theirs).toHaveURL(/sign-in/);
    await theirs.context().close();

    await page.goto('/history?q=ended+all+sessions');
    await expect(page.getByRole('row', { name: /ended all sessions.*Nora Newcomer/ })).toBeVisible();
  });

  test('chooses how dates and figures are shown, and every screen follows', async ({ page }) => {
    await page.goto('/account');
    await page.getByLabel('Dates').selectOption('iso');
    await page.getByLabel('Decimal mark').selectOption('comma');
    await page.getByRole('button', { name: 'Save how figures are shown' }).click();
    await expect(page.getByText('Saved; every screen', { exact: false })).toBeVisible();
    await page.goto('/enquiries/1');
    await expect(
      page
        .getByText(/\d{4}-\d{2}-\d{2}/)
        .filter({ visible: true })
        .first(),
    ).toBeVisible();
    await page.goto('/account');
    await page.getByLabel('Dates').selectOption('written');
    await page.getByLabel('Decimal mark').selectOption('point');
    await page.getByRole('button', { name: 'Save how figures are shown' }).click();
    await expect(page.getByText('Saved; every screen', { exact: false })).toBeVisible();
  });

  test('finds users, account and history accessible, light and dark, and on a phone', async ({ page }) => {
    await page.goto('/users');
    const person = await page.getByRole('link', { name: PEOPLE.yard.name }).getAttribute('href');
    await accessible(page, ['/users', person ?? '', '/account', '/history', '/enquiries/1/history']);
    await page.setViewportSize({ width: 390, height: 800 });
    for (const path of ['/users', person ?? '', '/account', '/history', '/enquiries/1/history']) {
      await page.goto(path);
      expect(
        await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth),
      ).toBe(0);
    }
  });
});

test.describe('somebody of the yard', () => {
  test.use({ who: 'yard' });

  test('is refused what is the Desk’s and the administrator’s with a sentence', async ({ page, request }) => {
    await page.goto('/enquiries');
    await expect(page.getByText('ask desk or administrator', { exact: false }).first()).toBeVisible();
    await page.goto('/users');
    await expect(page.getByText('Your role (yard) may not manage users; ask administrator to do it.')).toBeVisible();
    const answer = await request.post('/api/v1/enquiries', {
      data: { title: 'x', customer: { name: 'y' }, site: {} },
    });
    expect(answer.status()).toBe(403);
    expect(await answer.json()).toMatchObject({ code: 'not-allowed' });
  });
});

async function accessible(page: Page, paths: readonly string[]): Promise<void> {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    for (const path of paths) {
      await page.goto(path);
      await page.getByRole('heading', { level: 1 }).first().waitFor();
      expect(await barriers(page, `${path} ${colorScheme}`)).toEqual([]);
    }
  }
}
