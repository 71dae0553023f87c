import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from '@playwright/test';
import { openDatabase } from '#db/client.ts';
import { type Context, HOUSE_ITSELF } from '#lib/services/context.ts';
import { prepareHouse } from '#lib/services/house/prepare-house.ts';
import { addPerson } from './house-people.ts';
import { PEOPLE } from './people.ts';

const NEXT = 'node_modules/next/dist/bin/next';
const PASSWORD = 'a-long-bench-passphrase-7';

/** The built house, served to a browser in which somebody of the Desk is signed in. */
export interface MeasuredHouse {
  readonly page: Page;
  /** Such as `http://127.0.0.1:34567`. */
  readonly address: string;
  /** Does the work and tells how long it took, with the memory of page and server after it. */
  readonly report: (what: string, work: () => Promise<void>) => Promise<void>;
  readonly end: () => Promise<void>;
}

export async function measuredHouse(fill: (context: Context) => void): Promise<MeasuredHouse> {
  if (!existsSync('.next/BUILD_ID')) spawnSync(process.execPath, [NEXT, 'build'], { stdio: 'ignore' });
  const folder = mkdtempSync(join(tmpdir(), 'kitwright-measured-'));
  const databasePath = join(folder, 'house.sqlite');
  await prepareHouse({ databasePath, now: new Date() });
  const context: Context = { database: openDatabase(databasePath), now: () => new Date(), actor: HOUSE_ITSELF };
  await addPerson(context, { role: 'desk', password: PASSWORD });
  fill(context);
  context.database.raw.close();
  const port = await freePort();
  const env = { ...process.env, KITWRIGHT_DATABASE: databasePath, NODE_ENV: 'production' as const };
  const server = spawn(process.execPath, [NEXT, 'start', '-p', `${port}`, '-H', '127.0.0.1'], { env, stdio: 'ignore' });
  const browser = await chromium.launch({
    executablePath: process.env.CHROMIUM_PATH ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--enable-precise-memory-info'],
  });
  const visit = await browser.newContext({ permissions: ['clipboard-read', 'clipboard-write'] });
  const page = await visit.newPage();
  const address = `http://127.0.0.1:${port}`;
  while (!(await answers(`${address}/api/ping`))) await new Promise((resolve) => setTimeout(resolve, 200));
  await signIn(page, address);
  return {
    page,
    address,
    report: (what, work) => report({ page, server, what, work }),
    end: async () => {
      await browser.close();
      server.kill();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

async function signIn(page: Page, address: string): Promise<void> {
  await page.goto(`${address}/sign-in`);
  await page.getByLabel('Email').fill(PEOPLE.desk.email);
  await page.getByLabel('Password').fill(PASSWORD);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.waitForURL((url) => !url.pathname.includes('sign-in'));
}

interface Reporting {
  readonly page: Page;
  readonly server: ChildProcess;
  readonly what: string;
  readonly work: () => Promise<void>;
}

async function report({ page, server, what, work }: Reporting): Promise<void> {
  const started = performance.now();
  await work();
  const taken = performance.now() - started;
  const heap = await page.evaluate(() => {
    const { memory } = performance as Performance & { readonly memory?: { readonly usedJSHeapSize: number } };
    return memory?.usedJSHeapSize ?? 0;
  });
  console.info(`${what}: ${taken.toFixed(0)} ms; page ${mega(heap)} MB, server ${mega(bytesOf(server))} MB`);
}

function mega(bytes: number): string {
  return (bytes / 1e6).toFixed(0);
}

function bytesOf(server: ChildProcess): number {
  const status = readFileSync(`/proc/${server.pid}/status`, 'utf8');
  return Number(/VmRSS:\s+(\d+)/.exec(status)?.[1] ?? 0) * 1024;
}

function answers(url: string): Promise<boolean> {
  return fetch(url).then(
    ({ ok }) => ok,
    () => false,
  );
}

function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const probe = createServer().listen(0, '127.0.0.1', () => {
      const at = probe.address();
      probe.close(() => resolve(typeof at === 'object' && at ? at.port : 0));
    });
  });
}
