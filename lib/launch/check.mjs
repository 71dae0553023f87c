/*
 * `npm run check`: types, lint and format, directions between folders, unused code. Each is one pass or one failure.
 * Invariant: the direction check has looked at every source file, or it fails.
 * Not here: tests (test.mjs).
 * Read next: ../../dependency-cruiser.config.mjs.
 */
import { readdirSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { pathToFileURL } from 'node:url';
import { packaged, passSignalsOn, root, run, secondsSince } from './processes.mjs';

const checkedFolders = ['app', 'lib', 'db', 'seeds', 'tests'];

/** Answers how many checks passed and failed; prints what each failing one said. */
export async function runChecks() {
  const checks = [
    { title: 'types', work: checkTypes },
    {
      title: 'lint',
      work: () => runBiome(['check', '--formatter-enabled=false', '--error-on-warnings', '--max-diagnostics=40']),
    },
    { title: 'format (npm run tidy puts it right)', work: () => runBiome(['format', '--reporter=summary']) },
    { title: 'directions between folders', work: checkDirections },
    { title: 'unused code and packages', work: () => runQuietly([packaged('knip/bin/knip.js'), '--no-progress']) },
  ];
  const tally = { passed: 0, failed: 0 };
  for (const { title, work } of checks) {
    const began = Date.now();
    const { isGood, report } = await work();
    tally[isGood ? 'passed' : 'failed'] += 1;
    if (!isGood) console.log(report.trimEnd());
    console.log(`${isGood ? '✓' : '✗'} check: ${title} (${secondsSince(began)} s)`);
  }
  return tally;
}

async function runQuietly(args) {
  const { status, output } = await run(process.execPath, args, { quiet: true });
  return { isGood: status === 0, report: output };
}

function runBiome(args) {
  return runQuietly([packaged('@biomejs/biome/bin/biome'), ...args]);
}

/** Next writes the types of routes and of style sheets first; without them a fresh clone would not compile. */
async function checkTypes() {
  const routes = await runQuietly([packaged('next/dist/bin/next'), 'typegen']);
  return routes.isGood ? runQuietly([packaged('typescript/bin/tsc'), '--noEmit', '--pretty', 'false']) : routes;
}

async function checkDirections() {
  const files = checkedFolders.flatMap((folder) => sourceFiles(join(root, folder)));
  const folders = [...new Set(files.map((file) => file.split('/')[0]))];
  const args = [
    packaged('dependency-cruiser/bin/dependency-cruise.mjs'),
    ...folders,
    '--config',
    'dependency-cruiser.config.mjs',
  ];
  const { status, output } = await run(process.execPath, [...args, '--output-type', 'json'], { quiet: true });
  if (!output.startsWith('{'))
    return { isGood: false, report: `dependency-cruiser said (status ${status}):\n${output}` };
  const { modules, summary } = JSON.parse(output);
  const seen = new Set(modules.map((module) => module.source));
  const complaints = [
    ...summary.violations.map((violation) => `${violation.rule.name}: ${violation.from} → ${violation.to}`),
    ...modules.flatMap((module) =>
      module.dependencies
        .filter((target) => target.couldNotResolve)
        .map((target) => `cannot resolve: ${module.source} → ${target.module}`),
    ),
    ...files.filter((file) => !seen.has(file)).map((file) => `not looked at: ${file}`),
  ];
  return { isGood: complaints.length === 0, report: complaints.join('\n') };
}

function sourceFiles(folder) {
  let entries;
  try {
    entries = readdirSync(folder, { withFileTypes: true, recursive: true });
  } catch (error) {
    if (error.code === 'ENOENT') return [];
    throw error;
  }
  return entries
    .filter((entry) => entry.isFile() && /\.(ts|tsx|mjs)$/.test(entry.name))
    .map((entry) =>
      relative(root, join(entry.parentPath ?? entry.path, entry.name))
        .split(sep)
        .join('/'),
    );
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  passSignalsOn();
  const { failed } = await runChecks();
  process.exit(failed === 0 ? 0 : 1);
}
