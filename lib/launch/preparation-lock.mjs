/*
 * One preparation at a time: two starts at once must not both rewrite node_modules or the build.
 * Invariant: the lock is held by at most one live process; one that died or stopped touching it for 30 s holds nothing.
 * Not here: what is prepared (install.mjs, build.mjs).
 * Read next: start.mjs.
 */
import { mkdirSync, readFileSync, statSync, unlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './processes.mjs';

const folder = join(root, 'data');
const path = join(folder, 'preparation.lock');
const staleAfterMs = 30_000;
const touchEveryMs = 5_000;

/** Waits for the lock, runs the work, gives the lock back. */
export async function withPreparationLock(work) {
  mkdirSync(folder, { recursive: true });
  await take();
  const touching = setInterval(() => utimesSync(path, new Date(), new Date()), touchEveryMs);
  const release = () => {
    clearInterval(touching);
    giveBack();
  };
  process.once('exit', release);
  try {
    return await work();
  } finally {
    process.removeListener('exit', release);
    release();
  }
}

async function take() {
  let announced = false;
  while (!tryTake()) {
    if (isStale()) {
      giveBack({ evenIfForeign: true });
      continue;
    }
    if (!announced) console.log('> Another start of Kitwright is preparing this folder; waiting for it');
    announced = true;
    await new Promise((wake) => setTimeout(wake, 500));
  }
}

function tryTake() {
  try {
    writeFileSync(path, String(process.pid), { flag: 'wx' });
    return true;
  } catch (error) {
    if (error.code === 'EEXIST') return false;
    throw error;
  }
}

function isStale() {
  try {
    const holder = Number(readFileSync(path, 'utf8'));
    if (Date.now() - statSync(path).mtimeMs > staleAfterMs) return true;
    // The file exists a moment before its content does: an empty one is young, not stale.
    return holder !== 0 && (holder === process.pid || !isAlive(holder));
  } catch (error) {
    if (error.code === 'ENOENT') return false;
    throw error;
  }
}

function isAlive(processId) {
  try {
    process.kill(processId, 0);
    return true;
  } catch (error) {
    return error.code === 'EPERM';
  }
}

function giveBack({ evenIfForeign = false } = {}) {
  try {
    if (evenIfForeign || readFileSync(path, 'utf8') === String(process.pid)) unlinkSync(path);
  } catch (error) {
    if (error.code !== 'ENOENT') throw error;
  }
}
