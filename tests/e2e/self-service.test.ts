import { forgetTries } from './forgotten-tries.ts';
import {
  answerAll,
  beginIn,
  isAccessible,
  KNOWN,
  PHONE,
  startWith,
  tellWho,
  toAnswer,
  untilAnswered,
} from './hire-steps.ts';
import { expect, test } from './signed-in.ts';

test.beforeEach(forgetTries);

/** Scripts take their time on a slow connection; nothing that is done here may wait for them. */
const SCRIPTS_LATE_MS = 4_000;

test.describe('a contractor with a telephone whose scripts come late', () => {
  test.use({ who: 'nobody', viewport: PHONE });

  test.beforeEach(async ({ page }) => {
    await page.route('**/_next/static/**/*.js*', async (route) => {
      await new Promise((resolve) => setTimeout(resolve, SCRIPTS_LATE_MS));
      await route.continue().catch(() => undefined);
    });
  });

  test('finds what turns a buried valve, with a price, its cautions and what was assumed', async ({ page }) => {
    await startWith(page, { turned: 'A cap or square under the ground, by a key', size: 'DN 150', inDays: 21 });
    await isAccessible(page);
    await answerAll(page, {
      differential_pressure: '4 bar',
      depth_to_nut: '1.2 m',
      nut_size: '38 mm',
      service: 'potable',
    });
    await expect(page.getByText('Nothing more needs to be asked about this valve.')).toBeVisible();
    await toAnswer(page);
    await expect(page.getByRole('heading', { name: 'This fits' })).toBeVisible();
    await expect(page.getByText('Everything is free on these days.')).toBeVisible();
    await expect(page.getByText('Assumed, because nobody said')).toBeVisible();
    await expect(page.getByText('Start low, raise the limiter in steps')).toBeVisible();
    await isAccessible(page);
  });

  test('sends a list of twelve, hands two of them to the house, and can order the other ten', async ({ page }) => {
    const row = (tag: string, condition: string) =>
      `${tag},gate,DN 100,handwheel,non-rising,4 bar,${condition},1 year,250 mm`;
    const rows = Array.from({ length: 12 }, (_, index) =>
      row(`L-${index + 1}`, index === 4 || index === 9 ? 'seized' : 'free'),
    );
    await page.goto('/hire');
    await page.getByRole('group', { name: 'Is it a hazardous area' }).getByLabel('No', { exact: true }).check();
    await beginIn(page, 35);
    await page.getByLabel('Days').fill('3');
    await page.getByText('More than one valve?').click();
    await page
      .getByLabel('Or paste rows here')
      .fill(
        [
          'tag,valve type,size,driven by,stem,differential pressure,condition,last operated,wheel diameter',
          ...rows,
        ].join('\n'),
      );
    await page.waitForTimeout(2_100);
    await page.getByRole('button', { name: 'Read the list' }).click();
    await untilAnswered(page);
    await expect(page.getByRole('heading', { name: 'The house has a look first' })).toBeVisible();
    const reasons = page.locator('li', { hasText: 'It does not move at all' });
    await expect(reasons).toHaveCount(2);
    await expect(reasons.first()).toContainText('L-5');
    await isAccessible(page);
    await tellWho(page, 'Hand over to the house');
    await expect(page.getByText('The house has the valves that need a look')).toBeVisible();
    await untilAnswered(page);
    await expect(page.getByRole('heading', { name: 'This fits' })).toBeVisible();
    await expect(page.getByText('L-5', { exact: true })).toHaveCount(0);
    await tellWho(page, 'Make the quote');
    await expect(page.getByRole('heading', { name: /^Quote Q-\d+ A$/ })).toBeVisible();
  });

  test('is told what cannot be read, and need not say the rest again', async ({ page }) => {
    await page.goto('/hire');
    await page.getByRole('group', { name: 'What kind of valve is it?' }).getByLabel('Gate valve').check();
    await page.getByLabel('Size, such as DN 150 or 6 in').fill('banana');
    await page.getByLabel('Days').fill('3');
    await page.waitForTimeout(2_100);
    await page.getByRole('button', { name: 'Show what fits' }).click();
    await expect(page.getByRole('alert').filter({ hasText: 'That answer cannot be read' })).toBeVisible();
    await expect(page.getByLabel('Gate valve')).toBeChecked();
    await expect(page.getByLabel('Size, such as DN 150 or 6 in')).toHaveValue('banana');
    await expect(page.getByLabel('Days')).toHaveValue('3');

    await page.getByText('More than one valve?').click();
    const picture = {
      name: 'valves.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from('89504e470d0a1a0a00000000', 'hex'),
    };
    await page.locator('input[name="list"]').setInputFiles(picture);
    await page.waitForTimeout(2_100);
    await page.locator('button[name="what"][value="list"]').click();
    await expect(page.getByText('That file is no list that can be read.')).toBeVisible();
  });

  test('reads German, and a link that nobody gave out tells nothing', async ({ page }) => {
    await page.goto('/hire');
    await page.getByRole('button', { name: 'Deutsch' }).click();
    await expect(page.getByRole('heading', { name: 'Welche Armatur soll gedreht werden?' })).toBeVisible();
    await expect(page.locator('html')).toHaveAttribute('lang', 'de');
    await isAccessible(page);
    await page.goto(`/hire/${'Z'.repeat(43)}`);
    await expect(page.getByText('Dieser Link führt nirgendwohin.', { exact: false })).toBeVisible();
  });
});

test.describe('a program without a key', () => {
  test.use({ who: 'nobody' });

  test('is told to send one, everywhere but at the description of what may be asked', async ({ request }) => {
    for (const path of [
      '/api/v1/orders',
      '/api/v1/orders/1/quote',
      '/api/v1/orders/1/accept',
      '/api/v1/orders/1/hand-over',
    ]) {
      const answer = await request.post(path, { data: {}, headers: { authorization: `Bearer kw_${'D'.repeat(43)}` } });
      expect(`${path} ${answer.status()}`).toBe(`${path} 401`);
      expect(answer.headers()['content-type']).toContain('application/problem+json');
    }
    expect((await request.get('/api/v1/orders/1')).status()).toBe(401);
    expect((await (await request.get('/api/v1/openapi.json')).json()).openapi).toBe('3.1.0');
  });
});

test.describe('a contractor whose telephone runs no scripts at all', () => {
  test.use({ who: 'nobody', viewport: PHONE, javaScriptEnabled: false });

  test('orders what turns a rising-stem wheel valve: five presses at once make one booking', async ({ page }) => {
    await startWith(page, { turned: 'A handwheel', size: 'DN 150', inDays: 28 });
    await answerAll(page, KNOWN);
    await toAnswer(page);
    await tellWho(page, 'Make the quote');
    await expect(page.getByRole('heading', { name: /^Quote Q-\d+ A$/ })).toBeVisible();
    const paper = await page.request.get(`${page.url()}/papers/quote`);
    expect(paper.headers()['content-type']).toBe('application/pdf');
    const quote = await page.locator('input[name="quote"]').inputValue();
    const form = { quote, name: 'Mara Quist', order_number: 'PO-11', terms: 'accepted' };
    const pressed = await Promise.all(
      Array.from({ length: 5 }, () => page.request.post(`${page.url()}/do/accept`, { form, maxRedirects: 0 })),
    );
    expect(pressed.map((answer) => [answer.status(), answer.headers().location?.includes('refused')])).toEqual(
      Array.from({ length: 5 }, () => [303, false]),
    );
    await page.reload();
    await expect(page.getByRole('heading', { name: /^Ordered: booking B-\d+$/ })).toHaveCount(1);
    await expect(page.getByText('Where it stands: held for you')).toBeVisible();
    await page.getByRole('button', { name: 'Cancel the order' }).click();
    await expect(page.getByText('This order was cancelled. Nothing is booked.')).toBeVisible();
  });
});

test('the Desk sees what came by self-service, takes it over and sends it back', async ({ page, browser, baseURL }) => {
  const phone = await browser.newContext({
    baseURL: baseURL ?? '',
    viewport: PHONE,
    storageState: { cookies: [], origins: [] },
  });
  const stranger = await phone.newPage();
  await startWith(stranger, { turned: 'A handwheel', size: 'DN 200', inDays: 42 });
  await stranger.getByRole('link', { name: 'Enough, show the answer' }).click();
  await untilAnswered(stranger);
  await stranger.getByText('Hand it over', { exact: true }).first().click();
  if (!(await stranger.getByLabel('Anything the house should know').isVisible()))
    await stranger.getByText('Hand it over', { exact: true }).first().click();
  await tellWho(stranger, 'Hand over to the house');
  await expect(stranger.getByText(/as enquiry E-\d+/)).toBeVisible();
  const number = /E-\d+/.exec((await stranger.getByText(/as enquiry E-\d+/).textContent()) ?? '')?.[0] ?? '';
  await page.goto('/');
  await page.getByRole('region', { name: 'Self-service' }).getByRole('link', { name: number }).click();
  const panel = page.getByRole('region', { name: 'Self-service' });
  await expect(panel).toContainText('Mara Quist, Quist Pipework');
  await panel.getByRole('button', { name: 'Take over' }).click();
  await expect(panel).toContainText('Taken over by');
  await panel.getByRole('button', { name: 'Send back' }).click();
  const link = (await panel.locator('code').textContent()) ?? '';
  expect(link).toContain('/hire/');
  await stranger.goto(link);
  await expect(stranger.getByRole('heading', { name: 'Your order' })).toBeVisible();
  await phone.close();
});
