import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { prepareHouse } from '#lib/services/house/prepare-house.ts';

/** A slow telephone: 1.6 Mbit/s with 150 ms there and back, and a quarter of this machine's pace. Common practice, no source. */
const SLOW = { offline: false, latency: 150, downloadThroughput: 200_000, uploadThroughput: 93_750 };
const PACE = 4;
/** Goals, reported and not gated. */
const GOAL = { script_bytes: 200_000, first_answer_s: 8 };

const folder = mkdtempSync(join(tmpdir(), 'kitwright-bench-'));
let server: ChildProcess | undefined;
let browser: Browser;
let address = '';

beforeAll(async () => {
  expect(existsSync('.next/BUILD_ID'), 'Build first: npm run test:e2e or npm start does.').toBe(true);
  const databasePath = join(folder, 'house.sqlite');
  await prepareHouse({ databasePath });
  const port = await freePort();
  address = `http://127.0.0.1:${port}`;
  server = spawn(
    process.execPath,
    ['node_modules/next/dist/bin/next', 'start', '-p', String(port), '-H', '127.0.0.1'],
    {
      env: { ...process.env, NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1', KITWRIGHT_DATABASE: databasePath },
      stdio: 'ignore',
    },
  );
  await untilThere(`${address}/api/ping`);
  browser = await chromium.launch({
    executablePath: process.env.CHROMIUM_PATH ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--disable-dev-shm-usage'],
  });
});

afterAll(async () => {
  await browser?.close();
  server?.kill();
  rmSync(folder, { recursive: true, force: true });
});

describe('self-service on a slow telephone', () => {
  it('sends few scripts with its first page, and its first answer comes soon after the first form', async () => {
    const page = await slowPage();
    const scripts: number[] = [];
    page.on('requestfinished', (request) => {
      if (request.resourceType() === 'script')
        void request.sizes().then(({ responseBodySize }) => scripts.push(responseBodySize));
    });
    const opened = performance.now();
    await page.goto(`${address}/hire`, { waitUntil: 'domcontentloaded' });
    const usable_s = (performance.now() - opened) / 1000;
    await page.waitForLoadState('networkidle');
    const bytes = scripts.reduce((sum, one) => sum + one, 0);
    await fillFirst(page);
    const sent = performance.now();
    await page.getByRole('button', { name: 'Show what fits' }).click();
    await page.getByRole('heading', { name: 'Valve V1' }).waitFor();
    const answered_s = (performance.now() - sent) / 1000;
    console.info(`self-service, scripts of the first page: ${bytes} bytes as sent (goal ${GOAL.script_bytes})`);
    console.info(`self-service, first page readable and usable after ${usable_s.toFixed(1)} s`);
    console.info(
      `self-service, first answer ${answered_s.toFixed(1)} s after the first form (goal ${GOAL.first_answer_s} s)`,
    );
    expect(bytes).toBeGreaterThan(0);
    expect(await page.getByText('To start it:').count()).toBe(1);
  });
});

async function slowPage(): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, locale: 'en-GB' });
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send('Network.emulateNetworkConditions', SLOW);
  await session.send('Emulation.setCPUThrottlingRate', { rate: PACE });
  return page;
}

async function fillFirst(page: Page): Promise<void> {
  await page.getByRole('group', { name: 'What does a person turn?' }).getByLabel('A handwheel').check();
  await page.getByRole('group', { name: 'What kind of valve is it?' }).getByLabel('Gate valve').check();
  await page.getByLabel('Size, such as DN 150 or 6 in').fill('DN 150');
  await page.getByRole('group', { name: 'Is it a hazardous area' }).getByLabel('No', { exact: true }).check();
  await page.waitForTimeout(2_100);
}

async function untilThere(url: string): Promise<void> {
  for (let turn = 0; turn < 120; turn += 1) {
    const answer = await fetch(url).catch(() => undefined);
    if (answer?.ok === true) return;
    await new Promise((resolve) => setTimeout(resolve, 500));
  }
  throw new Error(`Nothing answers at ${url}.`);
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const at = probe.address();
      const port = at !== null && typeof at === 'object' ? at.port : 0;
      probe.close(() => resolve(port));
    });
  });
}
