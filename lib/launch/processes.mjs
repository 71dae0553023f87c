/*
 * Child processes of the launchers: run one to its end, pass signals on, stop when the command that started us is gone.
 * Invariant: at most one child runs at a time, and no child outlives the launcher by a signal that can be caught.
 * Not here: what to run (start.mjs, test.mjs, check.mjs). Plain Node: this file must work before node_modules exists.
 * Read next: end-with-parent.mjs.
 */
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = resolve(fileURLToPath(new URL('../..', import.meta.url)));

/** What children see: no telemetry, and no NODE_ENV that would make the package manager leave tools out. */
export const baseEnvironment = { ...process.env, NEXT_TELEMETRY_DISABLED: '1' };
delete baseEnvironment.NODE_ENV;
delete baseEnvironment.NODE_OPTIONS;

let current;
let stopping;

/** From here on a signal goes to the running child; without one the launcher ends. */
export function passSignalsOn() {
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) {
    process.on(signal, () => {
      stopping = signal;
      if (current === undefined) process.exit(signalStatus(signal));
      current.kill(signal);
    });
  }
  endWithPackageManager();
}

/** Started by `npm start` our parent is npm; when it is killed outright nobody tells us, so we look. */
function endWithPackageManager() {
  if (process.env.npm_lifecycle_event === undefined) return;
  const parent = process.ppid;
  setInterval(() => {
    if (process.ppid === parent) return;
    current?.kill('SIGTERM');
    process.exit(signalStatus('SIGTERM'));
  }, 500).unref();
}

function signalStatus(signal) {
  return { SIGHUP: 129, SIGINT: 130, SIGTERM: 143 }[signal] ?? 1;
}

/**
 * Runs a command to its end and answers its exit status; its output goes straight to the terminal unless `quiet`,
 * when it is collected and answered too.
 */
export function run(command, args, { env = baseEnvironment, quiet = false, onStarted, stdio } = {}) {
  return new Promise((answer) => {
    let output = '';
    const child = spawn(command, args, {
      cwd: root,
      env,
      stdio: stdio ?? (quiet ? ['ignore', 'pipe', 'pipe'] : 'inherit'),
    });
    current = child;
    child.stdout?.on('data', (chunk) => (output += chunk));
    child.stderr?.on('data', (chunk) => (output += chunk));
    onStarted?.(child);
    const end = (status) => {
      if (current === child) current = undefined;
      if (stopping !== undefined && status !== 0) process.exit(signalStatus(stopping));
      answer({ status, output });
    };
    child.on('error', (error) => {
      output += error.message;
      if (!quiet) console.error(error.message);
      end(127);
    });
    child.on('close', (code, signal) => end(code ?? signalStatus(signal)));
  });
}

/** Runs one named step, says how long it took, and ends the launcher with a sentence when it fails. */
export async function runStep({ title, command, args, env, advice, onMessage }) {
  const began = Date.now();
  console.log(`> ${title}`);
  const { status } = await run(command, args, {
    env,
    ...(onMessage && {
      stdio: ['inherit', 'inherit', 'inherit', 'ipc'],
      onStarted: (child) => child.on('message', onMessage),
    }),
  });
  if (status !== 0) fail(`${title}: did not succeed (exit status ${status}). ${advice}`);
  console.log(`  done in ${secondsSince(began)} s`);
}

export function secondsSince(began) {
  return ((Date.now() - began) / 1000).toFixed(1);
}

/** Ends the launcher with a sentence that says what to do. */
export function fail(sentence) {
  console.error(`\n${sentence}`);
  process.exit(1);
}

/** The full path of a program on the search path, or undefined. */
export function findProgram(name) {
  const folders = (process.env.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  return folders.map((folder) => join(folder, name)).find((path) => existsSync(path));
}

/** The path of a program that a package brought along. */
export function packaged(path) {
  return join(root, 'node_modules', path);
}
