import { readRepositoryFile, sourceFiles } from './repository.ts';

/** Every discrepancy code that the sources of the checker can tell, of one kind; a code is written out where it is told. */
export function codesOf(
  kind: 'assembly' | 'plan' | 'price' | 'packing' | 'outcome' | 'day' | 'return',
): readonly string[] {
  const sources = sourceFiles(['lib/checking']).map(readRepositoryFile).join('\n');
  const codes = [...sources.matchAll(/'((?:assembly|plan|price|packing|outcome|day|return)-[a-z-]+)'/g)].map(
    ([, code = '']) => code,
  );
  return [...new Set(codes)].filter((code) => code.startsWith(`${kind}-`)).toSorted();
}
