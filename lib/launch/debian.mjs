/*
 * Programs from the operating system: a compiler for the database driver, a browser and document readers for the tests.
 * Invariant: installs only as root on Debian or a relative of it; otherwise says the one command that does.
 * Not here: npm packages (install.mjs).
 * Read next: install.mjs, test.mjs.
 */
import { baseEnvironment, fail, findProgram, run, secondsSince } from './processes.mjs';

/** Program → the Debian package that holds it. */
const compiler = { 'g++': 'g++', make: 'make', python3: 'python3' };
const testPrograms = { pdftotext: 'poppler-utils' };

export function missingCompilerPackages() {
  return missing(compiler);
}

export function browserPath() {
  const named = process.env.CHROMIUM_PATH;
  if (named !== undefined && named !== '') return named;
  return findProgram('chromium') ?? findProgram('chromium-browser');
}

export function missingTestPackages() {
  return [...(browserPath() === undefined ? ['chromium'] : []), ...missing(testPrograms)];
}

function missing(programs) {
  return Object.entries(programs)
    .filter(([name]) => findProgram(name) === undefined)
    .map(([, name]) => name);
}

export function canInstall() {
  return process.getuid?.() === 0 && findProgram('apt-get') !== undefined;
}

export function installCommand(packages) {
  return `sudo apt-get update && sudo apt-get install -y --no-install-recommends ${packages.join(' ')}`;
}

/** Installs the named Debian packages, or ends with the one command that does. */
export async function installPackages({ packages, purpose }) {
  if (packages.length === 0) return;
  if (!canInstall()) {
    fail(
      `${purpose} needs ${packages.join(', ')}. On Debian or Ubuntu this one command installs them:\n  ${installCommand(packages)}\n` +
        'Elsewhere install the programs of those names, then run this again.',
    );
  }
  console.log(`> ${purpose}: installing ${packages.join(', ')} from the system's packages`);
  const env = { ...baseEnvironment, DEBIAN_FRONTEND: 'noninteractive' };
  const update = await run('apt-get', ['update', '-qq'], { env, quiet: true });
  if (update.status !== 0)
    console.log('  the package index could not be refreshed; going on with the one that is there');
  const began = Date.now();
  const args = ['install', '-y', '-qq', '--no-install-recommends', ...packages];
  const { status, output } = await run('apt-get', args, { env, quiet: true });
  if (status !== 0) {
    fail(
      `${output.trim()}\n${purpose}: the packages could not be installed; with the network back, run the same command again.`,
    );
  }
  console.log(`  done in ${secondsSince(began)} s`);
}
