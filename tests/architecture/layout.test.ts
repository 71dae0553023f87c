import { describe, expect, it } from 'vitest';
import { readRepositoryFile, repositoryFiles, sourceFiles } from '#tests/support/repository.ts';

const allowedFolders = ['.ci', 'app', 'db', 'lib', 'public', 'seeds', 'tests'];
const allowedFiles = [
  '.gitattributes',
  '.gitignore',
  '.npmrc',
  'DEVELOPERS.md',
  'LICENSE',
  'README.md',
  'biome.json',
  'dependency-cruiser.config.mjs',
  'drizzle.config.ts',
  'knip.json',
  'next.config.ts',
  'package-lock.json',
  'package.json',
  'playwright.config.ts',
  'proxy.ts',
  'tsconfig.json',
  'vitest.config.ts',
];
const allowedSuites = [
  'architecture',
  'bench',
  'documents',
  'e2e',
  'external',
  'integration',
  'property',
  'reference',
  'soak',
  'support',
  'unit',
];

describe('layout', () => {
  const files = repositoryFiles();
  const code = sourceFiles(['app', 'lib', 'db', 'seeds', 'tests']);

  it('the repository holds enough files for these rules to mean something', () => {
    expect(code.length).toBeGreaterThan(20);
  });

  it('the top level holds only what the layout names', () => {
    const stray = files.filter((path) => {
      const [first = '', ...rest] = path.split('/');
      return rest.length === 0 ? !allowedFiles.includes(first) : !allowedFolders.includes(first);
    });
    expect(stray).toEqual([]);
  });

  it('a test lies in the folder of its suite', () => {
    const stray = files.filter(
      (path) => path.startsWith('tests/') && !allowedSuites.includes(path.split('/')[1] ?? ''),
    );
    expect(stray).toEqual([]);
  });

  it('every test file of a suite is one that its runner picks up', () => {
    const stray = code.filter(
      (path) => path.startsWith('tests/') && !path.startsWith('tests/support/') && /\b(spec|tests)\.tsx?$/.test(path),
    );
    expect(stray).toEqual([]);
  });

  it('no file or folder is named for a drawer', () => {
    const drawers = /(^|\/)(utils?|helpers?|common|misc|shared|stuff)(\/|\.[a-z]+$)/;
    expect(files.filter((path) => drawers.test(path))).toEqual([]);
  });

  it('no file only re-exports others', () => {
    const barrels = code.filter((path) => {
      const name = path.split('/').at(-1);
      return (
        name === 'index.ts' || name === 'index.tsx' || /^export (\*|\{[^}]*\}) from /m.test(readRepositoryFile(path))
      );
    });
    expect(barrels).toEqual([]);
  });

  it('a unit test mirrors the path of what it tests', () => {
    const stray = code
      .filter((path) => path.startsWith('tests/unit/') && path.includes('.test.'))
      .filter((path) => {
        const folder = path.replace('tests/unit/', '').split('/')[0] ?? '';
        const candidates = [`lib/${folder}/`, `${folder}/`];
        return !code.some((source) => candidates.some((candidate) => source.startsWith(candidate)));
      });
    expect(stray).toEqual([]);
  });
});
