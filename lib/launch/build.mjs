/*
 * The build of the web application, made again only when a source file changed.
 * Invariant: the mark beside the build names exactly the sources it was made from; a build that broke off has no mark.
 * Not here: types and lint (check.mjs), serving (start.mjs).
 * Read next: start.mjs.
 */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { baseEnvironment, packaged, root, run, secondsSince } from './processes.mjs';

const sources = [
  'app',
  'lib',
  'db',
  'seeds',
  'public',
  'proxy.ts',
  'next.config.ts',
  'package-lock.json',
  'package.json',
  'tsconfig.json',
];
const mark = join(root, '.next', 'source-hash');

/** Builds when needed; answers whether a complete build is there. */
export async function buildWhenChanged() {
  const wanted = sourceHash();
  const isFresh =
    existsSync(mark) && existsSync(join(root, '.next', 'BUILD_ID')) && readFileSync(mark, 'utf8') === wanted;
  if (isFresh) return true;
  rmSync(mark, { force: true });
  const began = Date.now();
  console.log('> Building the web application');
  const { status } = await run(process.execPath, [packaged('next/dist/bin/next'), 'build'], {
    env: { ...baseEnvironment, NODE_ENV: 'production', KITWRIGHT_SOURCES: wanted },
  });
  if (status !== 0) return false;
  writeFileSync(mark, wanted);
  console.log(`  done in ${secondsSince(began)} s`);
  return true;
}

function sourceHash() {
  const hash = createHash('sha256').update(process.version);
  for (const path of sources
    .map((name) => join(root, name))
    .filter(existsSync)
    .flatMap(filesUnder)
    .sort()) {
    hash
      .update(relative(root, path))
      .update('\0')
      .update(createHash('sha256').update(readFileSync(path)).digest());
  }
  return hash.digest('hex');
}

function filesUnder(path) {
  if (!statSync(path).isDirectory()) return [path];
  return readdirSync(path).flatMap((name) => filesUnder(join(path, name)));
}
