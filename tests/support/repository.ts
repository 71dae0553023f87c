import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

export const repositoryRoot = resolve(fileURLToPath(new URL('../..', import.meta.url)));

/** Every file that git tracks or would track, with forward slashes, relative to the root. */
export function repositoryFiles(): readonly string[] {
  const listed = execFileSync('git', ['ls-files', '-z', '--cached', '--others', '--exclude-standard'], {
    cwd: repositoryRoot,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  const files = listed.split('\0').filter((path) => path !== '' && isFile(path));
  return [...new Set(files)].sort();
}

function isFile(path: string): boolean {
  const full = join(repositoryRoot, path);
  return existsSync(full) && statSync(full).isFile();
}

export function existsInRepository(path: string): boolean {
  return existsSync(join(repositoryRoot, path));
}

export function readRepositoryFile(path: string): string {
  return readFileSync(join(repositoryRoot, path), 'utf8');
}

/** TypeScript and launcher sources, without declaration files. */
export function sourceFiles(folders: readonly string[]): readonly string[] {
  return repositoryFiles().filter(
    (path) =>
      folders.some((folder) => path.startsWith(`${folder}/`)) &&
      /\.(ts|tsx|mjs)$/.test(path) &&
      !path.endsWith('.d.ts'),
  );
}
