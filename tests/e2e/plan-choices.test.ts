import type { Page } from '@playwright/test';
import { barriers } from './accessible.ts';
import { dayIn } from './days.ts';
import { expect, test } from './signed-in.ts';

const BURIED = { valve_type: 'gate', driven_by: 'key cap', turns: '30', depth_to_nut: '1 m' };
const LINES = [
  { cells: { ...BURIED, tag: 'PN-1', size: 'DN 150' } },
  { cells: { ...BURIED, tag: 'PN-2', size: 'DN 100' } },
];

test('a line is pinned to a part and a part is left out: what that changes in the plan is told, and undone', async ({
  page,
  request,
}) => {
  const made = await request.post('/api/v1/enquiries', {
    data: {
      title: 'Pins',
      customer: { name: 'Alder Brook Parish Works' },
      site: {
        sources_allowed: ['battery'],
        starts_on: dayIn(56),
      },
    },
  });
  const { id } = await made.json();
  await request.post(`/api/v1/enquiries/${id}/lines`, { data: { lines: LINES } });
  await page.goto(`/enquiries/${id}/kits`);
  await page.getByRole('button', { name: 'Start planning' }).click();
  await expect(page.getByText('2 of 2').first()).toBeVisible({ timeout: 90_000 });
  await expect(page.getByText('Against the plan before:')).toHaveCount(0);
  const first = await shownCost(page);

  const drive = page.getByRole('button', { name: /^Pin lines to .* D-/ }).first();
  const named = ((await drive.getAttribute('aria-label')) ?? '').replace('Pin lines to ', '');
  await drive.click();
  const line = page.getByLabel('Line', { exact: true }).first();
  await line.fill('PN-9');
  await page.getByRole('button', { name: `Pin this line to ${named}` }).click();
  await expect(page.getByText('There is no line PN-9 here.')).toBeVisible();
  await line.fill('PN-1');
  await page.getByRole('button', { name: `Pin this line to ${named}` }).click();
  await expect(page.getByText(/^Line PN-1 is done with .*\.$/)).toBeVisible();
  await expect(page.getByText('Against the plan before: nothing changed.')).toBeVisible({ timeout: 90_000 });
  const served = await request.get(`/api/v1/enquiries/${id}`);
  expect((await served.json()).constraints.pins).toEqual([{ tag: 'PN-1', part: named.split(' ').at(-1) }]);

  await page.getByRole('button', { name: /^Take back: Line PN-1 is done with/ }).click();
  await expect(page.getByText(/^Taken back: Line PN-1/)).toBeVisible();
  await page.getByRole('button', { name: `Leave out ${named}` }).click();
  await expect(page.getByText(/is left out\.$/)).toBeVisible();
  await expect(page.getByText(/Against the plan before: .*equipment and time \+/)).toBeVisible({ timeout: 90_000 });
  expect(await shownCost(page), 'a part fewer never makes a plan cheaper').not.toBe(first);
  await page.getByLabel('Show differences from').selectOption({ label: 'The plan before this one' });
  await expect(page.getByRole('row', { name: /^Least cost/ })).toContainText('+');
  expect(await barriers(page)).toEqual([]);

  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(page.getByText(/Against the plan before: .*equipment and time −/)).toBeVisible({ timeout: 90_000 });
  expect(await shownCost(page)).toBe(first);
  await expect(page.getByText('changed this enquiry since this screen was opened'), 'it was this screen').toHaveCount(
    0,
  );
});

test('where another depot can no longer send in time, the hire begins later at one press, and back', async ({
  page,
  request,
}) => {
  test.setTimeout(400_000);
  const today = dayIn(0);
  const made = await request.post('/api/v1/enquiries', {
    data: {
      title: 'From today',
      customer: { name: 'Alder Brook Parish Works' },
      // Two crews need two of each part, and the despatching depot has some of them once.
      site: { sources_allowed: ['battery'], starts_on: today, days: 1, crews: 2 },
    },
  });
  const { id } = await made.json();
  const lines = Array.from({ length: 40 }, (_, place) => ({
    cells: { ...BURIED, tag: `PN-${place}`, size: place % 2 === 0 ? 'DN 100' : 'DN 150' },
  }));
  await request.post(`/api/v1/enquiries/${id}/lines`, { data: { lines } });
  await page.goto(`/enquiries/${id}/kits`);
  await page.getByRole('button', { name: 'Start planning' }).click();
  const depots = page.getByRole('region', { name: 'From other depots' });
  await expect(depots).toContainText(/The day to send (it|them|some of them) has passed\. Begin later as below/, {
    timeout: 120_000,
  });
  const begin = depots.getByRole('button', { name: /^Start on .* and plan again$/ });
  const named = ((await begin.textContent()) ?? '').replace(/^Start on | and plan again$/g, '');
  await begin.click();
  await expect(page.getByText('Against the plan before:')).toBeVisible({ timeout: 120_000 });
  await expect(depots.getByText('has passed')).toHaveCount(0);
  await expect(begin).toHaveCount(0);
  const startsOn = async () => (await (await request.get(`/api/v1/enquiries/${id}`)).json()).site.startsOn;
  expect(await startsOn()).toBe(new Date(`${named} UTC`).toISOString().slice(0, 10));
  expect((await startsOn()) > today, 'a later start').toBe(true);
  await expect(page.getByText(/^Done: Start on/)).toBeVisible();
  await page.getByRole('button', { name: 'Undo this change' }).click();
  await expect(depots).toContainText(/The day to send (it|them|some of them) has passed\. Begin later as below/, {
    timeout: 120_000,
  });
  expect(await startsOn()).toBe(today);
  expect(await barriers(page)).toEqual([]);
});

/** Equipment and time of the least cost, without what it is told to have more or less. */
async function shownCost(page: Page): Promise<string> {
  const cell = page
    .getByRole('row', { name: /^Least cost/ })
    .getByRole('cell')
    .nth(1);
  return cell.evaluate((node) => node.firstChild?.textContent ?? '');
}
