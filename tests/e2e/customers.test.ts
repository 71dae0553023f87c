import type { Page } from '@playwright/test';
import { barriers } from './accessible.ts';
import { expect, patient, test } from './signed-in.ts';

const NAME = 'Windle Sluice Keepers';

async function isAccessible(page: Page, what: string): Promise<void> {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    expect(await barriers(page, `${what}, ${colorScheme}`)).toEqual([]);
  }
  await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' });
}

async function newCustomer(page: Page): Promise<void> {
  await page.goto('/customers/new');
  await page.getByLabel('Name', { exact: true }).fill('Brenock Tank Terminal');
  await expect(page.getByText('Already here?')).toBeVisible();
  await expect(page.getByRole('link', { name: 'Brennock Tank Terminal' })).toBeVisible();
  await isAccessible(page, 'new customer');
  await page.getByLabel('Name', { exact: true }).fill(NAME);
  await expect(page.getByText('Already here?')).toHaveCount(0);
  await page.getByLabel('Address').fill('Windle Lock\nWindle');
  await page.getByLabel('Units on papers').selectOption('us');
  await page.getByRole('button', { name: 'Make the customer' }).click();
  await expect(page.getByRole('heading', { level: 1, name: NAME })).toBeVisible();
}

test('a customer, its people, place and rule lead to an enquiry that works with them', async ({ page }) => {
  await newCustomer(page);
  await isAccessible(page, 'customer');

  await page.getByRole('navigation', { name: 'Customer' }).getByRole('link', { name: 'Contacts' }).click();
  await page.getByRole('button', { name: 'New contact' }).click();
  await page.getByLabel('Name', { exact: true }).fill('Wilma Crake');
  await page.getByLabel('Telephone').fill('0000 555 0911');
  await page.getByRole('button', { name: 'Make the contact' }).click();
  await expect(page.getByRole('cell', { name: 'Wilma Crake', exact: true })).toBeVisible();
  await isAccessible(page, 'contacts');

  await page.getByRole('navigation', { name: 'Customer' }).getByRole('link', { name: 'Sites' }).click();
  await page.getByRole('link', { name: 'New site' }).click();
  await page.getByLabel('Name of the site').fill('Windle weir');
  await page.getByLabel('Power sources allowed', { exact: true }).fill('battery');
  await isAccessible(page, 'site');
  await page.getByRole('button', { name: 'Make the site' }).click();
  await expect(page.getByRole('link', { name: 'Windle weir' })).toBeVisible();

  await page.getByRole('navigation', { name: 'Customer' }).getByRole('link', { name: 'Rules' }).click();
  await page.getByLabel('As they say it').fill('No battery on the weir.');
  await page.getByRole('button', { name: 'Add the rule' }).click();
  await expect(page.getByRole('cell', { name: 'No battery on the weir.', exact: true })).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByRole('cell', { name: 'No battery on the weir.', exact: true })).toHaveCount(0);
  await isAccessible(page, 'rules');

  await page.getByRole('navigation', { name: 'Customer' }).getByRole('link', { name: 'At a glance' }).click();
  await page.getByRole('link', { name: 'New enquiry' }).click();
  await page.getByLabel('Place or job').fill('Weir gates in spring');
  await page.getByLabel('Site of theirs').selectOption({ label: 'Windle weir' });
  await page.getByLabel('Whom to ask').selectOption({ label: 'Wilma Crake' });
  await isAccessible(page, 'new enquiry');
  await page.getByRole('button', { name: 'Open the enquiry' }).click();
  await page.getByRole('navigation', { name: 'Enquiry' }).getByRole('link', { name: 'Site' }).click();
  await expect(page.getByText('All is as it stands there.')).toBeVisible();
  await expect(page.getByLabel('Power sources allowed', { exact: true })).toHaveValue('battery');
});

test('an enquiry is taken up, given a day, noted on, declined with a reason and found again by its note', async ({
  page,
}) => {
  await page.goto('/enquiries/6/notes');
  await page.getByRole('button', { name: 'Start the work' }).click();
  await expect(page.getByText('new → being worked')).toBeVisible();
  await page.getByLabel('Due').fill('2031-05-04');
  await page.getByLabel('Due').blur();
  await page.getByLabel('New note').fill('Ask for the wintering plan.');
  await page.getByRole('button', { name: 'Write it down' }).click();
  await expect(page.getByText('Ask for the wintering plan.')).toBeVisible();
  await page.getByLabel('A file, at most 10 MB').setInputFiles({
    name: 'weir drawing.svg',
    mimeType: 'image/svg+xml',
    buffer: Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script>1</script></svg>'),
  });
  await page.getByRole('button', { name: 'Keep it here' }).click();
  const file = page.getByRole('link', { name: 'weir drawing.svg' });
  await expect(file).toBeVisible();
  const answer = await page.request.get((await file.getAttribute('href')) ?? '');
  expect(answer.headers()['content-disposition']).toContain('attachment');
  expect(answer.headers()['x-content-type-options']).toBe('nosniff');
  await isAccessible(page, 'notes');

  await page.getByRole('button', { name: 'Declined' }).click();
  await page.getByRole('dialog').getByLabel('Why', { exact: false }).fill('went by hand');
  await page.getByRole('button', { name: 'Yes, declined' }).click();
  await expect(page.getByText('being worked → declined: went by hand')).toBeVisible();

  await page.getByRole('searchbox', { name: 'Search everything' }).fill('wintering');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('region', { name: 'Notes' }).getByText('wintering')).toBeVisible();
  await isAccessible(page, 'search');
  await page.goto('/enquiries?state=declined');
  await expect(page.getByRole('row', { name: /E-00006/ })).toContainText('4 May 2031');
  await isAccessible(page, 'enquiries');
  await page.getByRole('navigation', { name: 'State' }).getByRole('link', { name: /^all/ }).click();
  await expect(page).toHaveURL(/state=all/);
  await page.goBack();
  await expect(page).toHaveURL(/state=declined/);
});

test('two people on one enquiry: the second is told what the first chose, and nothing is overwritten', async ({
  page,
  context,
}) => {
  await page.goto('/enquiries/5/notes');
  const other = patient(await context.newPage());
  await other.goto('/enquiries/5/notes');
  await page.getByLabel('The customer’s reference').fill('PO 1');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await expect(page.getByText('Saved.')).toBeVisible();
  await other.getByLabel('The customer’s reference').fill('PO 2');
  await other.getByRole('button', { name: 'Save', exact: true }).click();
  await expect(other.getByRole('alert').filter({ hasText: 'Somebody else' })).toContainText(
    'the customer’s reference (now “PO 1”)',
  );
  await expect(other.getByLabel('The customer’s reference')).toHaveValue('PO 2');
});

test('the screens of customers fit a phone', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 800 });
  const paths = [
    '/customers',
    '/customers/1',
    '/customers/1/edit',
    '/customers/1/contacts',
    '/customers/1/sites',
    '/customers/1/sites/1',
  ];
  for (const path of [
    ...paths,
    '/customers/1/rules',
    '/customers/1/dealings',
    '/enquiries/1/notes',
    '/search?q=valve',
  ]) {
    await page.goto(path);
    const wider = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(wider, path).toBe(0);
  }
});
