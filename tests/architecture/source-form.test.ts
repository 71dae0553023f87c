import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { readRepositoryFile, sourceFiles } from '#tests/support/repository.ts';

const fileLimit = 400;
const functionLimit = 70;
const headerLimit = 10;

describe('form of the sources', () => {
  const withHeader = sourceFiles(['lib', 'db']).filter((path) => !path.startsWith('db/migrations/'));
  const all = sourceFiles(['app', 'lib', 'db', 'seeds', 'tests']);

  it('every file in lib and db opens with its header', () => {
    const faults = withHeader.flatMap((path) => headerFaults(path));
    expect(faults).toEqual([]);
    expect(withHeader.length).toBeGreaterThan(10);
  });

  it(`no file is longer than ${fileLimit} lines`, () => {
    const long = all.map((path) => ({ path, lines: countLines(path) })).filter(({ lines }) => lines > fileLimit);
    expect(long).toEqual([]);
  });

  it(`no function of the house is longer than ${functionLimit} lines`, () => {
    const long = all.filter((path) => !path.startsWith('tests/')).flatMap(longFunctions);
    expect(long).toEqual([]);
  });
});

/** At most eight lines of text between the comment marks, with both named sentences. */
function headerFaults(path: string): readonly string[] {
  const text = readRepositoryFile(path);
  const header = /^(?:'use (?:client|server)';\s*)?\/\*[\s\S]*?\*\//.exec(text)?.[0];
  if (header === undefined) return [`${path}: does not open with a comment`];
  const missing = ['Invariant:', 'Not here:'].filter((word) => !header.includes(word));
  const faults = missing.map((word) => `${path}: its header lacks "${word}"`);
  return header.split('\n').length > headerLimit
    ? [...faults, `${path}: its header is longer than eight lines`]
    : faults;
}

function countLines(path: string): number {
  return readRepositoryFile(path).trimEnd().split('\n').length;
}

function longFunctions(path: string): readonly string[] {
  const source = ts.createSourceFile(path, readRepositoryFile(path), ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isFunctionLike(node) && 'body' in node && node.body !== undefined) {
      const first = source.getLineAndCharacterOfPosition(node.getStart(source)).line;
      const last = source.getLineAndCharacterOfPosition(node.getEnd()).line;
      const lines = last - first + 1;
      if (lines > functionLimit) found.push(`${path}:${first + 1} has a function of ${lines} lines`);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}
