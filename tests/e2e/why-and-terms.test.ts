import { barriers } from './accessible.ts';
import { dayIn } from './days.ts';
import { expect, test } from './signed-in.ts';

const LINES = [
  {
    cells: { tag: 'WT-1', valve_type: 'gate', driven_by: 'key cap', size: 'DN 150', turns: '30', depth_to_nut: '1 m' },
  },
  {
    cells: {
      tag: 'WT-2',
      valve_type: 'gate',
      driven_by: 'key cap',
      size: 'DN 150',
      turns: '30',
      depth_to_nut: '1 m',
      enclosed: 'yes',
    },
  },
];

test('a line that nothing serves says why, is made possible by a button and taken back, and other days are picked from a picture', async ({
  page,
  request,
}) => {
  const made = await request.post('/api/v1/enquiries', {
    data: {
      title: 'Why and terms',
      customer: { name: 'Alder Brook Parish Works' },
      // On days of its own: what is free of the next days is little, and other stories take of it.
      site: {
        sources_allowed: ['petrol'],
        starts_on: dayIn(49),
      },
    },
  });
  const { id } = await made.json();
  const added = await request.post(`/api/v1/enquiries/${id}/lines`, { data: { lines: LINES } });
  const { lineIds } = await added.json();

  await page.goto(`/enquiries/${id}/lines/${lineIds[1]}`);
  const tree = page.getByRole('region', { name: 'Why nothing serves this line' });
  await expect(tree).toContainText('No petrol drive indoors or in a chamber.');
  await expect(tree).toContainText('Enclosed place: yes.');
  await page.getByRole('button', { name: /to petrol, battery/ }).click();
  await expect(page.getByText('One line can be served now.')).toBeVisible();
  await expect(tree).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo this change' }).click();
  await expect(tree).toBeVisible();
  await page.getByRole('button', { name: /to petrol, battery/ }).click();
  await expect(tree).toHaveCount(0);

  await page.goto(`/enquiries/${id}/kits`);
  await page.getByRole('button', { name: 'Start planning' }).click();
  await expect(page.getByText('2 of 2').first()).toBeVisible({ timeout: 90_000 });
  await page.getByRole('button', { name: 'Work out other days and crews' }).click();
  const point = page.getByRole('button', { name: /^2 days, 1 crew: .* 2 of 2 valves/ });
  await expect(point.first()).toBeVisible({ timeout: 90_000 });
  await expect(page.getByRole('progressbar')).toHaveCount(0, { timeout: 90_000 });
  await point.first().focus();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Ask for 2 days, 1 crew and plan again' }).click();
  await expect(page.getByText('Done: the enquiry is for 2 days, 1 crew.')).toBeVisible();
  await expect(page.getByText('2 days from', { exact: false }).first()).toBeVisible();
  expect(await barriers(page)).toEqual([]);
});
