import { describe, expect, it } from 'vitest';
import { readRepositoryFile, repositoryFiles } from '#tests/support/repository.ts';

/** Written in pieces, so that this file does not hold what it looks for. */
const w = (...pieces: readonly string[]): string => pieces.join('');

interface Forbidden {
  readonly what: string;
  readonly pattern: RegExp;
}

const everywhere: readonly Forbidden[] = [
  {
    what: 'a path of one machine',
    pattern: new RegExp(w('(^|[\\s"\'`(=:])/(wo', 'rk|tm', 'p|ho', 'me|ro', 'ot|Us', 'ers)/'), 'm'),
  },
  {
    what: 'a package registry',
    pattern: new RegExp(w('registry\\.(npm', 'js|yarn', 'pkg)|arti', 'factory|nex', 'us\\.|verd', 'accio'), 'i'),
  },
  {
    what: 'a record of how it was written',
    pattern: new RegExp(w('\\btran', 'script\\b|\\brec', 'ording\\b|\\bsession no', 'tes\\b'), 'i'),
  },
  {
    what: 'a machine that writes',
    pattern: new RegExp(
      w('\\b(chat', 'gpt|open', 'ai|anth', 'ropic|cla', 'ude|co', 'pilot|language mo', 'del)\\b'),
      'i',
    ),
  },
];

const inTests: readonly Forbidden[] = [
  {
    what: 'a test that is left out',
    pattern: new RegExp(
      w('\\b(it|test|describe|suite)\\.(on', 'ly|sk', 'ip|to', 'do|sk', 'ipIf|run', 'If|fi', 'xme)\\b'),
    ),
  },
];

const text = /\.(ts|tsx|mjs|js|json|md|css|sql|csv|tsv|txt|svg|xml|html|yml|yaml)$|(^|\/)(run|\.npmrc|\.gitignore)$/;

function offences(paths: readonly string[], rules: readonly Forbidden[]): readonly string[] {
  return paths.flatMap((path) => {
    const content = readRepositoryFile(path);
    return rules
      .filter(({ pattern }) => pattern.test(content))
      .map(({ what, pattern }) => `${path}: ${what}: ${pattern.exec(content)?.[0]?.trim()}`);
  });
}

describe('words that do not belong here', () => {
  const files = repositoryFiles().filter((path) => text.test(path));

  it('the project speaks of itself alone', () => {
    expect(files.length).toBeGreaterThan(30);
    const own = files.filter((path) => path !== 'package-lock.json');
    expect(offences(own, everywhere)).toEqual([]);
  });

  it('the lock file names no registry', () => {
    expect(offences(['package-lock.json'], everywhere.slice(1, 2))).toEqual([]);
  });

  it('no test is left out', () => {
    const tests = files.filter((path) => path.startsWith('tests/'));
    expect(offences(tests, inTests)).toEqual([]);
  });

  it('the rules find what they look for', () => {
    const samples = [w(' /wo', 'rk/x'), w('https://registry.npm', 'js.org'), w('a tran', 'script'), w('by Cla', 'ude')];
    samples.forEach((sample, index) => {
      expect(everywhere[index]?.pattern.test(sample)).toBe(true);
    });
    expect(inTests[0]?.pattern.test(w('it.sk', "ip('x')"))).toBe(true);
  });
});
