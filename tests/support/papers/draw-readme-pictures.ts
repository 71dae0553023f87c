/** Takes the README's pictures from a running demo house: `node --import tsx tests/support/papers/draw-readme-pictures.ts http://127.0.0.1:3000`. */
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { chromium, type Page } from '@playwright/test';

const house = process.argv[2] ?? 'http://127.0.0.1:3000';
const folder = process.argv[3] ?? 'public/pictures';
const ENQUIRY = '/enquiries/1';

/** Signs in as the person whom KITWRIGHT_EMAIL and KITWRIGHT_PASSWORD name. */
async function signIn(page: Page): Promise<void> {
  await page.goto(`${house}/sign-in`);
  await page.getByLabel('Email').fill(process.env.KITWRIGHT_EMAIL ?? '');
  await page.getByLabel('Password').fill(process.env.KITWRIGHT_PASSWORD ?? '');
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.waitForURL((url) => url.pathname !== '/sign-in');
}

async function planned(page: Page): Promise<void> {
  await page.goto(`${house}${ENQUIRY}/kits`);
  const start = page.getByRole('button', { name: /Start planning|Plan again/ });
  if (await start.isVisible()) await start.click();
  await page.getByRole('heading', { name: 'Plans side by side' }).waitFor({ timeout: 180_000 });
}

/** WebP of the window, or of one part of the page: a screen of text in a third of the bytes of a PNG. */
async function take(page: Page, { name, part }: { readonly name: string; readonly part?: string }): Promise<void> {
  const box = part === undefined ? null : await page.locator(part).first().boundingBox();
  const clip = box === null ? {} : { clip: { ...box, scale: 1 }, captureBeyondViewport: true };
  const session = await page.context().newCDPSession(page);
  const { data } = await session.send('Page.captureScreenshot', { format: 'webp', quality: 82, ...clip });
  writeFileSync(path.join(folder, `${name}.webp`), Buffer.from(data, 'base64'));
}

async function main(): Promise<void> {
  mkdirSync(folder, { recursive: true });
  const executablePath = process.env.CHROMIUM_PATH ?? '/usr/bin/chromium';
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu'] });
  const page = await browser.newPage({ viewport: { width: 1180, height: 640 }, colorScheme: 'light', locale: 'en-GB' });
  await signIn(page);
  await planned(page);
  await take(page, { name: 'kits' });
  await page.goto(`${house}${ENQUIRY}`);
  await page.getByRole('textbox', { name: 'Tag, SV-101' }).waitFor();
  await take(page, { name: 'schedule' });
  await page.goto(`${house}${ENQUIRY}/lines/1`);
  await page.getByRole('heading', { name: 'Planned assembly' }).waitFor();
  await take(page, { name: 'torque-ladder', part: '[aria-labelledby="torque"] svg' });
  await take(page, { name: 'drive-line', part: '[aria-labelledby="drive-line"] svg' });
  await browser.close();
}

await main();
