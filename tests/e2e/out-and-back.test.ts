import { readPdf } from '#tests/support/papers/read-pdf.ts';
import { bookedByTheDesk, personBeside, pickedByTheYard } from './booked-by-the-desk.ts';
import { strikeAll } from './desk-decides.ts';
import { expect, test } from './signed-in.ts';
import { everyLook } from './yard-look.ts';
import { checkInDamaged, checkInMissing, declareClean, loadAll, scan, signAndLeave } from './yard-steps.ts';

test.use({ who: 'yard' });

/** One grey dot: the smallest picture that is one. */
const DOT = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
  'base64',
);

test('nothing leaves unlooked at or that does not belong, what came back is photographed, and the Desk changes a charge with a reason', async ({
  page,
  browser,
  baseURL,
}) => {
  test.setTimeout(400_000);
  const desk = await personBeside({ browser, baseURL, role: 'desk' });
  const number = await bookedByTheDesk(desk.request, 'Sluice at the old lock');
  pickedByTheYard(number);
  await page.setViewportSize({ width: 820, height: 1100 });

  await page.goto(`/yard/out/${number}`);
  const [damaged = '', missing = ''] = await loadAll(page);
  await scan(page, 'NOT-HERE-1');
  await expect(page.getByText('does not belong to booking', { exact: false }).first()).toBeVisible();
  await everyLook(page);
  const leaving = page.getByRole('form', { name: 'Before it leaves' });
  await leaving.getByRole('button', { name: 'It leaves' }).click();
  await expect(page.getByText('Not looked at yet', { exact: false })).toBeVisible();
  await signAndLeave(page);

  await page.getByRole('link', { name: 'Take back' }).click();
  await expect(page.getByRole('button', { name: 'That is declared' })).toBeDisabled();
  await everyLook(page);
  await declareClean(page);
  await checkInDamaged(page, { serial: damaged, broken: 'lever housing cracked' });
  await checkInMissing(page, missing);
  await scan(page, damaged);
  await expect(page.getByText('is checked in already', { exact: false }).first()).toBeVisible();
  const photograph = { name: 'crack.png', mimeType: 'image/png', buffer: DOT };
  await page.getByLabel(`Photograph of ${damaged}`).setInputFiles(photograph);
  await expect(page.getByRole('img', { name: new RegExp(`${damaged}, photograph P-`) })).toBeVisible();
  await everyLook(page);

  await page.goto(`/yard/charges/${number}`);
  await expect(page.getByText('The Desk decides charges', { exact: false })).toBeVisible();
  await page.goto('/yard/work-orders');
  await expect(page.getByRole('listitem').filter({ hasText: damaged })).toContainText('lever housing cracked');
  await everyLook(page);

  await desk.goto(`/yard/charges/${number}`);
  const repair = desk.getByRole('article', { name: new RegExp(`Repair: .*${damaged}`) });
  await expect(repair.getByRole('button', { name: /^Approve/ })).toBeDisabled();
  await repair.getByLabel('How did it happen?').selectOption({ index: 3 });
  await expect(repair.getByRole('button', { name: /^Approve/ })).toBeEnabled();
  await everyLook(desk);
  const loss = desk.getByRole('article', { name: new RegExp(`Loss: .*${missing}`) });
  await loss.getByText('Change or strike it').click();
  await loss.getByLabel(/^Amount instead/).fill('20.00');
  await loss.getByLabel(/^Reason/).fill('half of an old one');
  await loss.getByRole('button', { name: /^Change/ }).click();
  await expect(loss.getByText('half of an old one', { exact: false })).toBeVisible();
  await strikeAll(desk);
  await desk.getByRole('button', { name: 'Issue the return note' }).click();
  await expect(desk.getByText(/Return note R-\d+ is issued\./)).toBeVisible({ timeout: 60_000 });
  const paper = (await desk.getByRole('link', { name: /Return note R-/ }).getAttribute('href')) ?? '';
  const words = readPdf(await (await desk.request.get(paper)).body()).text;
  for (const part of [damaged, missing, 'half of an old one']) expect(words).toContain(part);
});
