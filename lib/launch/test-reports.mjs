/*
 * Counts what the test runners report, suite by suite.
 * Invariant: whatever did not plainly pass (failed, skipped, not run, a file that could not be loaded) counts as failed.
 * Not here: running the runners (test.mjs).
 * Read next: test.mjs.
 */
import { readFileSync } from 'node:fs';
import { relative, sep } from 'node:path';
import { root } from './processes.mjs';

/** The tally of each wanted suite from vitest's JSON report; a suite without a test counts one failure. */
export function tallyVitest({ reportPath, suites, status }) {
  const report = readReport(reportPath);
  const tallies = new Map(suites.map((suite) => [suite, { passed: 0, failed: 0 }]));
  for (const file of report?.testResults ?? []) {
    const suite = relative(root, file.name).split(sep)[1] ?? '';
    const tally = tallies.get(suite) ?? { passed: 0, failed: 0 };
    tallies.set(suite, tally);
    for (const test of file.assertionResults) tally[test.status === 'passed' ? 'passed' : 'failed'] += 1;
    const couldNotLoad = file.status === 'failed' && file.assertionResults.every((test) => test.status === 'passed');
    if (couldNotLoad) tally.failed += 1;
  }
  for (const [suite, tally] of tallies) requireTests({ suite, tally });
  const sawFailure = [...tallies.values()].some((tally) => tally.failed > 0);
  if (status !== 0 && !sawFailure) tallies.set('vitest itself', { passed: 0, failed: 1 });
  return tallies;
}

/** The same from Playwright's JSON report. */
export function tallyPlaywright({ reportPath, status }) {
  const stats = readReport(reportPath)?.stats ?? { expected: 0, unexpected: 0, flaky: 0, skipped: 0 };
  const tally = { passed: stats.expected, failed: stats.unexpected + stats.flaky + stats.skipped };
  requireTests({ suite: 'e2e', tally });
  if (status !== 0 && tally.failed === 0) tally.failed = 1;
  return tally;
}

function requireTests({ suite, tally }) {
  if (tally.passed + tally.failed > 0) return;
  console.log(`✗ suite ${suite} ran no test`);
  tally.failed += 1;
}

function readReport(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8'));
  } catch {
    return undefined;
  }
}
