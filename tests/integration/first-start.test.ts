import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, describe, expect, it } from 'vitest';
import { openDatabase } from '#db/client.ts';
import { signIn } from '#lib/services/access/sign-in.ts';
import { NOBODY } from '#lib/services/context.ts';
import { repositoryRoot } from '#tests/support/repository.ts';

const EMAIL = 'first@house.example';
const folder = mkdtempSync(join(tmpdir(), 'kitwright-first-start-'));
const databasePath = join(folder, 'house.sqlite');
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function run(...words: readonly string[]): Promise<string> {
  const env = { ...process.env, KITWRIGHT_DATABASE: databasePath, KITWRIGHT_ADMIN_EMAIL: EMAIL, NODE_OPTIONS: '' };
  const { stdout } = await promisify(execFile)(process.execPath, ['--import', 'tsx', ...words], {
    cwd: repositoryRoot,
    env,
  });
  return stdout;
}

async function opens(password: string): Promise<boolean> {
  const database = openDatabase(databasePath);
  const asked = { email: EMAIL, password, address: '192.0.2.1', browser: 'test' };
  const answer = await signIn({ database, now: () => new Date(), actor: NOBODY }, asked);
  database.raw.close();
  return answer.ok;
}

const passwordIn = (text: string) => /\b([a-z2-9A]{4}-){3}[a-z2-9A]{4}\b/.exec(text)?.[0] ?? '';

describe('the first start', () => {
  it('prints one administrator’s one-time password, once; a lost one is replaced on the command line', async () => {
    const first = await run('lib/launch/prepare-database.ts');
    expect(first).toContain(EMAIL);
    expect(await opens(passwordIn(first))).toBe(true);
    expect(await run('lib/launch/prepare-database.ts')).toBe('');

    const replaced = await run('lib/cli/main.ts', 'password', EMAIL);
    expect(await opens(passwordIn(first))).toBe(false);
    expect(await opens(passwordIn(replaced))).toBe(true);
    await expect(run('lib/cli/main.ts', 'password', 'nobody@house.example')).rejects.toMatchObject({ code: 2 });
  }, 120_000);
});
