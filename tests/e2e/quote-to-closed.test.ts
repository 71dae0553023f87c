import type { Page } from '@playwright/test';
import { readPrintedBarcodes } from '#tests/support/papers/read-barcodes.ts';
import { readPdf } from '#tests/support/papers/read-pdf.ts';
import { bookedByTheDesk, personBeside } from './booked-by-the-desk.ts';
import { approveAll } from './desk-decides.ts';
import { expect, test } from './signed-in.ts';
import {
  checkInDamaged,
  checkInGood,
  checkInMissing,
  declareClean,
  loadAll,
  packAll,
  pickAll,
  signAndLeave,
} from './yard-steps.ts';

test.use({ who: 'yard' });

/** Opens a paper by its link as a person would, and answers its bytes; anything but a PDF fails. */
async function openedPdf(page: Page, name: string | RegExp): Promise<Uint8Array> {
  const link = page.getByRole('link', { name, exact: typeof name === 'string' }).first();
  const answer = await page.request.get((await link.getAttribute('href')) ?? '');
  expect(answer.headers()['content-type']).toContain('application/pdf');
  const bytes = await answer.body();
  expect(bytes.subarray(0, 5).toString('latin1')).toBe('%PDF-');
  return bytes;
}

test('what was quoted is picked, packed, labelled, signed out, comes back in parts, is charged, and its booking is closed', async ({
  page,
  browser,
  baseURL,
}) => {
  test.setTimeout(500_000);
  const desk = await personBeside({ browser, baseURL, role: 'desk' });
  const number = await bookedByTheDesk(desk.request, 'Chapel road main');
  await page.setViewportSize({ width: 820, height: 1100 });

  await page.goto(`/yard/pick/${number}`);
  const serials = await pickAll(page);
  expect(serials.length).toBeGreaterThan(3);

  await page.getByRole('link', { name: 'Pack', exact: true }).click();
  await expect(page.getByRole('heading', { name: `Pack ${number}` })).toBeVisible();
  const cases = await packAll(page, number);
  const printed = await readPrintedBarcodes(await openedPdf(page, 'Case labels'));
  for (let at = 1; at <= cases; at += 1) expect(printed.map(({ text }) => text)).toContain(`CASE:${number}/${at}`);
  const list = await openedPdf(page, 'Packing list');
  for (const part of [number, ...serials]) expect(readPdf(list).text).toContain(part);
  expect((await readPrintedBarcodes(list)).map(({ text }) => text)).toContain(number);

  await page.goto(`/yard/out/${number}`);
  const left = await loadAll(page);
  expect(left.toSorted()).toEqual(serials.toSorted());
  await signAndLeave(page);
  const deliveries = page.getByRole('region', { name: 'Deliveries' });
  await expect(deliveries.getByRole('img', { name: 'Signature of R. Dunlin' })).toBeVisible();
  const href = (await deliveries.getByRole('link', { name: /Despatch advice/ }).getAttribute('href')) ?? '';
  const advice = await (await page.request.get(href)).text();
  for (const serial of serials) expect(advice).toContain(`<cbc:SerialID>${serial}</cbc:SerialID>`);

  const [damaged = '', missing = '', ...rest] = serials;
  await page.getByRole('link', { name: 'Take back' }).click();
  await declareClean(page);
  await checkInDamaged(page, { serial: damaged, broken: 'square worn round' });
  await checkInMissing(page, missing);

  const charges = `/yard/charges/${number}`;
  await desk.goto(charges);
  await expect(desk.getByRole('article', { name: new RegExp(`Repair: .*${damaged}`) })).toBeVisible();
  await expect(desk.getByRole('article', { name: new RegExp(`Loss: .*${missing}`) })).toBeVisible();
  expect(await approveAll(desk)).toBeGreaterThan(1);
  await desk.getByRole('button', { name: 'Issue the return note' }).click();
  await expect(desk.getByText(/Return note R-\d+ is issued\./)).toBeVisible({ timeout: 60_000 });
  const note = readPdf(await openedPdf(desk, /Return note R-/)).text;
  for (const part of [number, damaged, missing, 'DAMAGED', 'MISSING', 'square worn round', 'Still with you'])
    expect(note).toContain(part);
  for (const serial of rest) expect(note).toContain(serial);

  await page.goto(`/yard/back/${number}`);
  await checkInGood(page, rest);
  await countAllBack(page);
  await desk.goto(charges);
  if ((await desk.getByRole('article').count()) > 0) await approveAll(desk);
  await desk.getByRole('button', { name: 'Issue the note and close the booking' }).click();
  await expect(desk.getByText(/is issued and the booking is closed/)).toBeVisible({ timeout: 60_000 });
  await page.goto(`/yard/back/${number}`);
  await expect(page.getByText('This booking is closed', { exact: false })).toBeVisible();
  await page.goto(`/yard/bookings/${number}`);
  await expect(page.getByText('closed').first()).toBeVisible();
});

async function countAllBack(page: Page): Promise<void> {
  const rows = page.getByRole('region', { name: 'Counted pieces' }).getByRole('listitem');
  for (const row of await rows.all()) {
    const sent = /(\d+) sent/.exec((await row.textContent()) ?? '')?.[1] ?? '0';
    await row.getByLabel(/ back$/).fill(sent);
    await row.getByRole('button', { name: /^Keep the count/ }).click();
    await expect(row).toContainText(`${sent} back so far`);
  }
}
