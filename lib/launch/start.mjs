/*
 * `npm start`: from a clone to a running house. Installs, migrates and seeds, builds, serves; each only when needed.
 * Invariant: ending this command ends the server; a failure ends with a sentence that says what to do.
 * Not here: how each step works (install.mjs, build.mjs, prepare-database.ts).
 * Read next: processes.mjs.
 */

import { mkdirSync } from 'node:fs';
import { createServer } from 'node:net';
import { join, resolve } from 'node:path';
import { buildWhenChanged } from './build.mjs';
import { installNodePackages, requireNodeVersion } from './install.mjs';
import { withPreparationLock } from './preparation-lock.mjs';
import { baseEnvironment, fail, packaged, passSignalsOn, root, run, runStep } from './processes.mjs';

const isDevelopment = process.argv.includes('--dev');
const host = process.env.HOST ?? '127.0.0.1';
const port = process.env.PORT ?? '3000';
const databasePath = resolve(root, process.env.KITWRIGHT_DATABASE ?? join('data', 'kitwright.sqlite'));
const env = { ...baseEnvironment, KITWRIGHT_DATABASE: databasePath, PORT: port, HOST: host };

/** The first administrator's one-time password, told once: with the address, or where the start ends before that. */
let access;
process.on('exit', () => {
  if (access !== undefined) console.log(accessLines().join('\n'));
});

requireNodeVersion();
passSignalsOn();
await requireFreePort();
await withPreparationLock(prepare);
await serve();

async function requireFreePort() {
  if (!/^\d{1,5}$/.test(port) || Number(port) > 65_535) fail(`PORT must be a number from 1 to 65535; it is "${port}".`);
  const trouble = await new Promise((answer) => {
    const probe = createServer();
    probe.once('error', (error) => answer(error.code));
    probe.listen({ port: Number(port), host }, () => probe.close(() => answer(undefined)));
  });
  if (trouble === 'EADDRINUSE')
    fail(`Port ${port} is in use by another program. Choose another: PORT=${Number(port) + 1} npm start`);
  if (trouble !== undefined)
    fail(`Cannot listen on ${host}, port ${port} (${trouble}). HOST and PORT choose another address.`);
}

async function prepare() {
  await installNodePackages();
  mkdirSync(join(root, 'data'), { recursive: true });
  await runStep({
    title: 'Bringing the database up to date',
    command: process.execPath,
    args: ['--import', 'tsx', 'lib/launch/prepare-database.ts'],
    env,
    advice: `The lines above say why; nothing was served. The database is ${databasePath}.`,
    onMessage: (message) => (access = message.access),
  });
  if (!isDevelopment && !(await buildWhenChanged()))
    fail('The web application could not be built; the lines above say why.');
}

async function serve() {
  const { status } = await run(
    process.execPath,
    [
      '--import',
      './lib/launch/end-with-parent.mjs',
      '--import',
      './lib/launch/true-address.mjs',
      '--import',
      './lib/launch/answer-status.mjs',
      packaged('next/dist/bin/next'),
      isDevelopment ? 'dev' : 'start',
      '-p',
      port,
      '-H',
      host,
    ],
    {
      env: { ...env, NODE_ENV: isDevelopment ? 'development' : 'production' },
      stdio: ['inherit', 'inherit', 'inherit', 'ipc'],
      onStarted: announceWhenReady,
    },
  );
  process.exit(status);
}

async function announceWhenReady(child) {
  const address = `http://${host === '0.0.0.0' || host === '::' ? 'localhost' : host}:${port}`;
  while (child.exitCode === null && child.signalCode === null) {
    const answer = await fetch(`${address}/api/ping`).catch(() => undefined);
    if (answer?.ok === true) {
      console.log(
        [
          '',
          `Kitwright is running at ${address}  (end it with Ctrl+C)`,
          ...accessLines(),
          'To try: open the address, choose a demo enquiry or import a valve list (CSV, TSV or XLSX), plan it, and open its papers.',
          'The same on the command line: npm run -s kitwright -- plan LIST --days 5 --crews 2 --out papers',
          '',
        ].join('\n'),
      );
      access = undefined;
      return;
    }
    await new Promise((wake) => setTimeout(wake, 200));
  }
}

function accessLines() {
  if (access === undefined) return [];
  return [
    '',
    'First start: sign in as the administrator. The password holds once and is shown only now; you choose your own then.',
    `  email     ${access.email}`,
    `  password  ${access.password}`,
    '',
  ];
}
