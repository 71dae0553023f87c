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

/** Equipment and time of the least cost, without what it is told to have more or less. */
async function shownCost(page: Page): Promise<string> {
  const cell = page
    .getByRole('row', { name: /^Least cost/ })
    .getByRole('cell')
    .nth(1);
  return cell.evaluate((node) => node.firstChild?.textContent ?? '');
}
