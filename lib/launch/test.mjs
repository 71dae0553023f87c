/*
 * `npm test`: everything, from nothing. Installs what is missing, checks, runs every suite, builds, drives a real browser.
 * Invariant: the last line tells the truth as `N passed, N failed`, and the exit status agrees with it.
 * Not here: counting (test-reports.mjs), the checks (check.mjs).
 * Read next: test-reports.mjs. `--only check|suites|build|e2e` runs a part (e2e builds first).
 */
import { randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { buildWhenChanged } from './build.mjs';
import { runChecks } from './check.mjs';
import { browserPath, installPackages, missingTestPackages } from './debian.mjs';
import { installNodePackages, requireNodeVersion } from './install.mjs';
import { withPreparationLock } from './preparation-lock.mjs';
import { baseEnvironment, fail, packaged, passSignalsOn, root, run } from './processes.mjs';
import { tallyPlaywright, tallyVitest } from './test-reports.mjs';

/** `bench` and `soak` have commands of their own. */
const suites = ['unit', 'reference', 'property', 'integration', 'documents', 'architecture', 'external'];
const parts = { check: runChecks, suites: runSuites, build: runBuild, e2e: runBrowser };

const reports = join(root, '.reports');
const reference = resolve(root, process.env.KITWRIGHT_REFERENCE ?? '../shared/reference');
const env = { ...baseEnvironment, KITWRIGHT_REFERENCE: reference, TZ: 'UTC' };

requireNodeVersion();
passSignalsOn();
const wanted = wantedParts();
await withPreparationLock(installNodePackages);
await installPackages({ packages: missingTestPackages(), purpose: 'Testing' });
mkdirSync(reports, { recursive: true });

const total = { passed: 0, failed: 0 };
for (const part of wanted) {
  console.log(`\n> ${part}`);
  const tally = await parts[part]();
  total.passed += tally.passed;
  total.failed += tally.failed;
}
console.log(`\n${total.passed} passed, ${total.failed} failed`);
process.exit(total.failed === 0 && total.passed > 0 ? 0 : 1);

function wantedParts() {
  const at = process.argv.indexOf('--only');
  if (at === -1) return Object.keys(parts);
  const part = process.argv[at + 1] ?? '';
  if (!Object.hasOwn(parts, part)) fail(`--only takes one of ${Object.keys(parts).join(', ')}; it got "${part}".`);
  return [part];
}

async function runSuites() {
  const hasReference = existsSync(reference);
  if (!hasReference) {
    console.log(
      `Suite external DID NOT RUN: the reference folder is not at ${reference} (KITWRIGHT_REFERENCE names another place).`,
    );
  }
  const ran = suites.filter((suite) => suite !== 'external' || hasReference);
  const reportPath = join(reports, 'vitest.json');
  rmSync(reportPath, { force: true });
  const filled = ran.filter(hasTestFiles);
  const { status } =
    filled.length === 0
      ? { status: 1 }
      : await run(
          process.execPath,
          [
            packaged('vitest/vitest.mjs'),
            'run',
            ...filled.flatMap((suite) => ['--project', suite]),
            '--reporter=default',
            '--reporter=json',
            `--outputFile.json=${reportPath}`,
          ],
          { env },
        );
  const tallies = tallyVitest({ reportPath, suites: ran, status });
  for (const [suite, tally] of tallies) {
    console.log(`${tally.failed === 0 ? '✓' : '✗'} suite ${suite}: ${tally.passed} passed, ${tally.failed} not passed`);
  }
  return sum([...tallies.values()]);
}

function hasTestFiles(suite) {
  const folder = join(root, 'tests', suite);
  return existsSync(folder) && readdirSync(folder, { recursive: true }).some((name) => /\.test\.tsx?$/.test(name));
}

async function runBuild() {
  const isGood = await withPreparationLock(buildWhenChanged);
  console.log(`${isGood ? '✓' : '✗'} build`);
  return isGood ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };
}

/** The browser talks to a server of its own, on a free port, with a database of its own. */
async function runBrowser() {
  if (!(await withPreparationLock(buildWhenChanged))) return notRun('the web application could not be built');
  const folder = mkdtempSync(join(tmpdir(), 'kitwright-e2e-'));
  try {
    const own = {
      ...env,
      KITWRIGHT_DATABASE: join(folder, 'house.sqlite'),
      E2E_PORT: String(await freePort()),
      CHROMIUM_PATH: browserPath(),
      E2E_PASSWORD: randomBytes(18).toString('base64url'),
    };
    for (const script of ['lib/launch/prepare-database.ts', 'tests/support/houses/prepare-people.ts']) {
      const { status } = await run(process.execPath, ['--import', 'tsx', script], { env: own });
      if (status !== 0) return notRun('its database could not be prepared');
    }
    const reportPath = join(reports, 'playwright.json');
    rmSync(reportPath, { force: true });
    const { status } = await run(process.execPath, [packaged('@playwright/test/cli.js'), 'test'], {
      env: { ...own, PLAYWRIGHT_JSON_OUTPUT_FILE: reportPath },
    });
    const tally = tallyPlaywright({ reportPath, status });
    console.log(`${tally.failed === 0 ? '✓' : '✗'} suite e2e: ${tally.passed} passed, ${tally.failed} not passed`);
    return tally;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function notRun(reason) {
  console.log(`✗ suite e2e did not run: ${reason}`);
  return { passed: 0, failed: 1 };
}

function freePort() {
  return new Promise((answer, refuse) => {
    const probe = createServer();
    probe.once('error', refuse);
    probe.listen({ port: 0, host: '127.0.0.1' }, () => {
      const { port } = probe.address();
      probe.close(() => answer(port));
    });
  });
}

function sum(tallies) {
  return tallies.reduce((all, one) => ({ passed: all.passed + one.passed, failed: all.failed + one.failed }), {
    passed: 0,
    failed: 0,
  });
}
