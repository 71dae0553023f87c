/*
 * The packages: checks the Node version and brings node_modules in line with the lock file.
 * Invariant: nothing is installed when lock file, Node version and platform are the ones of the last complete installation.
 * Not here: Debian packages (debian.mjs), the database (prepare-database.ts).
 * Read next: build.mjs.
 */
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { canInstall, installCommand, installPackages, missingCompilerPackages } from './debian.mjs';
import { baseEnvironment, fail, root, run, secondsSince } from './processes.mjs';

const mark = join(root, 'node_modules', '.installed');

/** package.json asks for the same version; npm only warns about it. */
export function requireNodeVersion() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  if (major > 20 || (major === 20 && minor >= 19)) return;
  fail(
    `Kitwright needs Node 20.19 or newer; this is ${process.version}. Install a newer Node and run the command again.`,
  );
}

export async function installNodePackages() {
  const wanted = fingerprint();
  if (existsSync(mark) && readFileSync(mark, 'utf8') === wanted) return;
  rmSync(mark, { force: true });
  if (agreesWithLock() && (await databaseDriverWorks())) {
    writeFileSync(mark, wanted);
    return;
  }
  const missing = missingCompilerPackages();
  if (missing.length > 0 && canInstall()) {
    await installPackages({ packages: missing, purpose: 'Compiling the database driver' });
  }
  const began = Date.now();
  console.log(
    '> Installing the packages of the lock file (the first time takes about two minutes: the database driver is compiled)',
  );
  const { status } = await run('npm', ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error'], {
    env: installEnvironment(),
  });
  if (status !== 0) fail(installAdvice(status));
  writeFileSync(mark, wanted);
  console.log(`  done in ${secondsSince(began)} s`);
}

/** Packages put there by npm itself: npm keeps a list of what it installed, which must be what the lock file asks for. */
function agreesWithLock() {
  const listPath = join(root, 'node_modules', '.package-lock.json');
  if (!existsSync(listPath)) return false;
  const installed = JSON.parse(readFileSync(listPath, 'utf8')).packages;
  const locked = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')).packages;
  const isMissing = (path) =>
    locked[path].optional !== true && locked[path].peer !== true && installed[path] === undefined;
  if (Object.keys(locked).some((path) => path !== '' && isMissing(path))) return false;
  return Object.entries(installed).every(([path, one]) => locked[path]?.integrity === one.integrity);
}

/** The driver is compiled for one Node version; only loading it shows whether it is this one. */
async function databaseDriverWorks() {
  const { status } = await run(process.execPath, ['-e', "new (require('better-sqlite3'))(':memory:').close()"], {
    quiet: true,
  });
  return status === 0;
}

function installAdvice(status) {
  const missing = missingCompilerPackages();
  if (status === 127)
    return 'npm was not found. It comes with Node: install Node 20.19 or newer with its npm and run the command again.';
  if (missing.length > 0) {
    return `The packages could not be installed, and the database driver cannot be compiled without ${missing.join(', ')}.\nOn Debian or Ubuntu this one command installs them:\n  ${installCommand(missing)}\nThen run this command again.`;
  }
  return 'The packages could not be installed; the lines above say why. Most often the network or the package registry was out of reach: run the same command again when it is back.';
}

/** Node's own headers, when they lie beside it: the driver is then compiled without fetching them. */
function installEnvironment() {
  const prefix = resolve(dirname(process.execPath), '..');
  const env = { ...baseEnvironment };
  if (env.npm_config_nodedir === undefined && existsSync(join(prefix, 'include', 'node', 'node.h')))
    env.npm_config_nodedir = prefix;
  return env;
}

function fingerprint() {
  const facts = [readFileSync(join(root, 'package-lock.json')), process.version, process.platform, process.arch];
  const hash = createHash('sha256');
  for (const fact of facts) hash.update(fact);
  return hash.digest('hex');
}
