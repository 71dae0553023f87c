import { describe, expect, it } from 'vitest';
import { existsInRepository, readRepositoryFile } from '#tests/support/repository.ts';

interface Manifest {
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly devDependencies?: Readonly<Record<string, string>>;
  readonly scripts?: Readonly<Record<string, string>>;
}

function readManifest(): Manifest {
  return JSON.parse(readRepositoryFile('package.json'));
}

describe('packages', () => {
  it('every package is pinned to one exact version', () => {
    const { dependencies = {}, devDependencies = {} } = readManifest();
    const all = Object.entries({ ...dependencies, ...devDependencies });
    expect(all.length).toBeGreaterThan(10);
    expect(all.filter(([, version]) => !/^\d+\.\d+\.\d+(-[\w.]+)?$/.test(version))).toEqual([]);
  });

  it('the lock file names content, not the place it came from', () => {
    const lock = readRepositoryFile('package-lock.json');
    expect(lock.match(/"resolved"/g) ?? []).toEqual([]);
    expect(lock.match(/"integrity"/g)?.length ?? 0).toBeGreaterThan(100);
  });

  it('the lock file agrees with package.json', () => {
    const { dependencies = {}, devDependencies = {} } = readManifest();
    const lock: { readonly packages: Readonly<Record<string, Manifest>> } = JSON.parse(
      readRepositoryFile('package-lock.json'),
    );
    const top = lock.packages[''];
    expect(top?.dependencies).toEqual(dependencies);
    expect(top?.devDependencies).toEqual(devDependencies);
  });
});

describe('commands', () => {
  const builtIn = ['ci', 'install', 'ls'];

  for (const document of ['README.md', 'DEVELOPERS.md']) {
    it(`every npm command that ${document} shows exists`, () => {
      const { scripts = {} } = readManifest();
      const shown = [...readRepositoryFile(document).matchAll(/\bnpm (?:run (?:-s )?)?([a-z][\w:-]*)/g)].map(
        (match) => match[1] ?? '',
      );
      expect(shown.length).toBeGreaterThan(0);
      expect(shown.filter((name) => scripts[name] === undefined && !builtIn.includes(name))).toEqual([]);
    });

    it(`every path that ${document} links to exists`, () => {
      const links = [...readRepositoryFile(document).matchAll(/\]\(([^)#\s]+)(?:#[^)]*)?\)/g)].map(
        (match) => match[1] ?? '',
      );
      const missing = links.filter((link) => !link.includes('://')).filter((link) => !existsInRepository(link));
      expect(missing).toEqual([]);
    });
  }

  it('the continuous check runs the command that the README names for testing', () => {
    expect(readRepositoryFile('.ci/run')).toMatch(/^exec npm test$/m);
    expect(readRepositoryFile('README.md')).toContain('npm test');
  });
});
