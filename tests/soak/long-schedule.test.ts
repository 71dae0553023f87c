/** Interaction latency and memory of an enquiry of 10 000 lines, in a real browser against the built server: reported, never gated. */
import type { Page } from '@playwright/test';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createEnquiry } from '#lib/services/enquiries/create-enquiry.ts';
import { addLines } from '#lib/services/schedule/change-lines.ts';
import { granted } from '#tests/support/granted.ts';
import { type MeasuredHouse, measuredHouse } from '#tests/support/houses/measured-house.ts';
import { longSchedule } from '#tests/support/lists/long-schedule.ts';

const LINES = 10_000;
let house: MeasuredHouse;
let page: Page;
let report: MeasuredHouse['report'];
let address = '';

beforeAll(async () => {
  let enquiry = 0;
  house = await measuredHouse((context) => {
    const { id } = granted(createEnquiry(context, { title: 'Long', customer: { name: 'Long Works' }, site: {} }));
    granted(addLines(context, { enquiryId: id, lines: longSchedule(LINES) }));
    enquiry = id;
  });
  ({ page, report } = house);
  address = `${house.address}/enquiries/${enquiry}`;
  // The torque to start stands beside the duty, so that an edit can be followed to its answer.
  await page.addInitScript(() =>
    window.localStorage.setItem(
      'kitwright-columns',
      JSON.stringify(['tag', 'qty', 'valve_type', 'size', 'driven_by', 'starting_torque']),
    ),
  );
});

afterAll(() => house?.end());

describe(`an enquiry of ${LINES} lines`, () => {
  it('is opened, scrolled, edited, filtered, replaced in and pasted into', async () => {
    await report('first page, cold server', open);
    await report('first page again', open);
    await report('memory then', async () => undefined);
    await report('scroll to the end until its lines are there', () => scrollTo('end'));
    await report('scroll to the middle until its lines are there', () => scrollTo('middle'));
    await report('edit until the duty shows it, first', () => edit('999'));
    for (const torque of ['871', '743', '655']) await report('edit until the duty shows it', () => edit(torque));
    await report('filter by text', () => filter('LV-99'));
    await report('filter dropped', () => filter(''));
    await report('filter by column in the address, page anew', async () => {
      await page.goto(`${address}?where=valve_type:is:globe&sort=-size`);
      await page.getByText(/\d+ of 10000 lines, saved/).waitFor();
    });
    await report('filter by findings of the duty, cold', async () => {
      await page.goto(`${address}?only=clear`);
      await page.getByText(/\d+ of 10000 lines, saved/).waitFor();
      await page.getByText('duties worked out so far').waitFor({ state: 'hidden', timeout: 120_000 });
    });
    await open();
    await report('find counted in all lines', async () => {
      await page.getByRole('button', { name: 'Find and replace' }).click();
      await page.getByLabel('Find', { exact: true }).fill('Street');
      await page.getByText('Found in 10000 cells of 10000 lines.').waitFor();
    });
    await report('10 000 cells replaced', async () => {
      await page.getByLabel('Put in its place').fill('Road');
      await page.getByRole('button', { name: 'Replace all 10000' }).click();
      await page.getByText('10000 cells written.').waitFor();
      await page.getByText('10000 lines, saved').waitFor();
    });
    await report('10 000 cells taken back', async () => {
      await page.getByRole('button', { name: 'Undo' }).click();
      await page.getByText('Found in 10000 cells of 10000 lines.').waitFor();
    });
    await page.getByRole('button', { name: 'Close' }).click();
    await report('1 000 rows of 4 columns pasted and saved', paste);
    expect(await page.locator('[data-row="1"][data-column="3"]').inputValue()).toBe('DN 65');
  });
});

async function open(): Promise<void> {
  await page.goto(address);
  await page.getByText('10000 lines, saved').waitFor();
  await page.getByRole('textbox', { name: 'Tag, LV-1', exact: true }).waitFor();
}

async function scrollTo(where: 'end' | 'middle'): Promise<void> {
  await page.getByRole('region', { name: 'Lines of the schedule' }).evaluate((frame, to) => {
    frame.scrollTop = to === 'end' ? frame.scrollHeight : frame.scrollHeight / 2;
  }, where);
  const name = where === 'end' ? `Tag, LV-${LINES}` : `Tag, LV-${LINES / 2}`;
  await page.getByRole('textbox', { name, exact: true }).waitFor();
}

/** A stated torque is what the duty starts with, so that the answer shows in the row. */
async function edit(torque: string): Promise<void> {
  const row = LINES / 2 + 4;
  const cell = page.locator(`[data-row="${row}"][data-column="5"]`);
  await cell.click();
  await page.keyboard.type(`${torque} Nm`);
  await page.keyboard.press('Enter');
  await page.locator(`[data-row="${row}"][data-column="6"]`, { hasText: torque }).waitFor();
}

async function filter(text: string): Promise<void> {
  await page.getByLabel('Find in the schedule').fill(text);
  await page.getByText(text === '' ? /^10000 lines, saved/ : /^\d+ of 10000 lines, saved/).waitFor();
}

async function paste(): Promise<void> {
  const text = Array.from({ length: 1000 }, (_, at) => `PV-${at + 1}\t1\tgate\tDN 65`).join('\n');
  await page.evaluate((block) => navigator.clipboard.writeText(block), text);
  await page.locator('[data-row="0"][data-column="0"]').click();
  await page.keyboard.press('Control+v');
  await page.getByText('Pasted 1000 rows.').waitFor();
  await page.getByText('10000 lines, saved').waitFor();
}
