import type { Page } from '@playwright/test';
import { expect } from './signed-in.ts';

/** What a person of the yard does on its screens, step by step, for the stories that go through them. */

export async function scan(page: Page, code: string): Promise<void> {
  const field = page.getByRole('textbox', { name: /^Scan a piece/ });
  await field.fill(code);
  await field.press('Enter');
}

/** Serial numbers of what is to be picked, in the order of the walk; counted pieces have none. */
export async function serialsToPick(page: Page): Promise<readonly string[]> {
  const pieces = page.getByRole('region', { name: 'Pieces in walking order' });
  await expect(pieces.getByText('to pick').first()).toBeVisible();
  const marks = await pieces.locator('strong.tag').allTextContents();
  return marks.filter((text) => !text.includes('×'));
}

/** Picks everything of a booking whose picking page is open: scanned, counted, tried together, tested at torque. */
export async function pickAll(page: Page): Promise<readonly string[]> {
  const serials = await serialsToPick(page);
  for (const serial of serials) {
    await scan(page, serial);
    await expect(page.getByRole('button', { name: `Undo ${serial}` })).toBeVisible();
  }
  for (const field of await page.getByLabel(/^Counted /).all()) {
    await field.fill((await field.getAttribute('placeholder')) ?? '');
    await field.press('Enter');
  }
  await expect(page.getByLabel(/^Counted /)).toHaveCount(0);
  await tryChains(page);
  await testAtTorque(page);
  await page.getByRole('button', { name: 'All picked' }).click();
  await expect(page.getByRole('region', { name: 'Picked' })).toBeVisible();
  return serials;
}

async function tryChains(page: Page): Promise<void> {
  const chains = page.getByRole('region', { name: 'Tried together' });
  while ((await chains.getByRole('button').count()) > 0) {
    const left = await chains.getByRole('button').count();
    await chains.getByRole('button').first().click();
    await expect(chains.getByRole('button')).toHaveCount(left - 1);
  }
}

async function testAtTorque(page: Page): Promise<void> {
  const tests = page.getByRole('region', { name: 'Function test at torque' });
  await tests.getByLabel('Instrument').fill('Torque bench 7');
  const asked = await tests
    .getByRole('button', { name: /^Record / })
    .evaluateAll((all) => all.map((one) => one.getAttribute('aria-label') ?? ''));
  for (const record of asked) {
    const serial = record.replace('Record ', '');
    const set = tests.getByLabel(`Set, N·m of ${serial}`);
    if ((await set.count()) > 0) await set.fill('40');
    await tests.getByLabel(`Read, N·m of ${serial}`).fill('41');
    await tests.getByLabel(`Read, N·m of ${serial}`).press('Enter');
    await expect(tests.getByRole('listitem').filter({ hasText: serial }).getByText('✓ passed')).toBeVisible();
  }
}

/** Packs every case whose packing page is open by scanning the case and what goes into it; answers how many cases there are. */
export async function packAll(page: Page, number: string): Promise<number> {
  const cases = page.getByRole('region', { name: /^(Case|Loose piece) \d+ of/ });
  const count = await cases.count();
  for (let at = 0; at < count; at += 1) {
    const one = cases.nth(at);
    const isCase = (await one.getByRole('button', { name: /^Pack(ing)? into case/ }).count()) > 0;
    if (isCase) await scan(page, `CASE:${number}/${at + 1}`);
    else
      for (const chosen of await page.getByRole('button', { pressed: true, name: /^Packing/ }).all())
        await chosen.click();
    const inside = await one.locator('strong.tag').allTextContents();
    for (const code of inside) await scan(page, code.includes('×') ? `MODEL:${code.split('× ')[1] ?? ''}` : code);
    const came = async () => ({ packed: await one.getByText('✓ packed').count(), open: await openScans(page) });
    await expect.poll(came, { timeout: 20_000 }).toEqual({ packed: inside.length, open: [] });
  }
  return count;
}

/** Scans that wait or were refused, with what the house said to them. */
async function openScans(page: Page): Promise<readonly string[]> {
  const scans = page.getByRole('region', { name: 'Scans' }).locator('ul.queued > li');
  const told = await scans.allInnerTexts();
  return told.filter((text) => /refused|waiting/.test(text));
}

/** Begins a delivery and scans onto it all that waits; answers the serial numbers. */
export async function loadAll(page: Page): Promise<readonly string[]> {
  await page.getByRole('button', { name: 'Begin loading' }).click();
  const waiting = page.getByRole('button', { name: /^Load / });
  await expect(waiting.first()).toBeVisible();
  const serials = await waiting.evaluateAll((all) =>
    all.map((one) => one.getAttribute('aria-label')?.replace('Load ', '') ?? ''),
  );
  for (const serial of serials) {
    await scan(page, serial);
    await expect(page.getByRole('button', { name: `Take ${serial} off` })).toBeVisible();
  }
  for (const all of await page.getByRole('button', { name: /^All of .* on it$/ }).all()) {
    if (await all.isEnabled()) await all.click();
    await expect(all).toBeDisabled();
  }
  return serials;
}

/** Every tick, every name, and a signature drawn on the pad; then it leaves. */
export async function signAndLeave(page: Page): Promise<void> {
  const leaving = page.getByRole('form', { name: 'Before it leaves' });
  for (const box of await leaving.getByRole('checkbox').all()) await box.check();
  await leaving.getByLabel('Loaded by').fill('Yard Hand');
  await leaving.getByLabel('Instruction given by').fill('Yard Hand');
  await leaving.getByLabel('Handed over to').fill('R. Dunlin');
  await leaving.getByLabel('Name of who signs').fill('R. Dunlin');
  const pad = leaving.getByRole('img', { name: 'Pad to sign on, empty' });
  await pad.scrollIntoViewIfNeeded();
  const box = await pad.boundingBox();
  if (!box) throw new Error('The pad has no place on the screen.');
  await page.mouse.move(box.x + 60, box.y + 90);
  await page.mouse.down();
  await page.mouse.move(box.x + 180, box.y + 40, { steps: 5 });
  await page.mouse.move(box.x + 260, box.y + 110, { steps: 5 });
  await page.mouse.up();
  await leaving.getByRole('button', { name: 'It leaves' }).click();
  await expect(page.getByRole('region', { name: 'Deliveries' })).toContainText('signed on the pad: R. Dunlin');
}

export async function declareClean(page: Page): Promise<void> {
  await page.getByRole('radio', { name: 'Nothing' }).check();
  await page.getByRole('button', { name: 'That is declared' }).click();
}

export async function checkInDamaged(
  page: Page,
  { serial, broken }: { readonly serial: string; readonly broken: string },
): Promise<void> {
  await scan(page, serial);
  const piece = page.getByRole('form', { name: `Check in ${serial}` });
  await piece.getByRole('radio', { name: /Damaged/ }).check();
  await piece.getByLabel('What is broken').fill(broken);
  await piece.getByLabel('Repair, hours (a guess)').fill('1.5');
  await piece.getByRole('button', { name: 'Check it in' }).click();
  await expect(page.getByText(`${serial}: quarantine`, { exact: false }).first()).toBeVisible();
}

export async function checkInMissing(page: Page, serial: string): Promise<void> {
  await page.getByRole('button', { name: `${serial} is not as it should be` }).click();
  const gone = page.getByRole('form', { name: `Check in ${serial}` });
  await gone.getByRole('radio', { name: /Missing/ }).check();
  await gone.getByRole('button', { name: 'Check it in' }).click();
  await expect(page.getByText(`${serial}: lost`, { exact: false }).first()).toBeVisible();
}

export async function checkInGood(page: Page, serials: readonly string[]): Promise<void> {
  for (const serial of serials) {
    await page.getByRole('button', { name: `${serial} is good` }).click();
    await expect(page.getByText(`${serial}: ready.`).first()).toBeVisible();
  }
}
