import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import {
  agreesWithPrint,
  type DocumentedFunction,
  docstringFaults,
  evaluate,
  examplesOf,
  exportedFunctions,
} from '#tests/support/formula-docstring.ts';
import { readRepositoryFile, repositoryRoot, sourceFiles } from '#tests/support/repository.ts';

const modules = sourceFiles(['lib/engineering']).filter((path) => path.endsWith('.ts'));

describe('docstrings of engineering functions', () => {
  it('there are formulas to look at', () => {
    const count = modules.flatMap((path) => exportedFunctions(path, readRepositoryFile(path))).length;
    console.info(`engineering functions looked at: ${count}`);
    expect(count).toBeGreaterThan(10);
  });

  it.each(modules)(
    '%s: each function states formula, units, source, assumptions and example in the fixed order',
    (path) => {
      const faults = exportedFunctions(path, readRepositoryFile(path)).flatMap((one) =>
        docstringFaults(one).map((fault) => `${one.name} (line ${one.line}) ${fault}`),
      );
      expect(faults).toEqual([]);
    },
  );

  it.each(modules)('%s: each example gives the value that it prints', async (path) => {
    const names = { ...(await loadUnits()), ...(await load(path)) };
    const wrong = exportedFunctions(path, readRepositoryFile(path)).flatMap((one) => wrongExamples(one, names));
    expect(wrong).toEqual([]);
  });
});

describe('the docstring check itself', () => {
  const good = [
    '/**',
    ' * Half of it.',
    ' *',
    ' * Formula: y = x/2',
    ' *',
    ' * @param x - The whole. [m] range 0…1',
    ' * @returns The half. [m]',
    ' * @source Common practice, no source.',
    ' * @assumes Nothing.',
    ' * @example half(3) // => 1.5',
    ' */',
    'export function half(x: number): number { return x / 2; }',
  ].join('\n');

  const faultsOf = (text: string): readonly string[] => exportedFunctions('half.ts', text).flatMap(docstringFaults);

  it('accepts the full form', () => {
    expect(faultsOf(good)).toEqual([]);
  });

  it.each([
    ['a missing source', good.replace(/ \* @source.*\n/, '')],
    ['a missing unit', good.replace('The half. [m]', 'The half.')],
    ['a parameter under another name', good.replace('@param x', '@param y')],
    ['an example without a value', good.replace(' // => 1.5', '')],
    ['another order', good.replace(/( \* @source.*\n)( \* @assumes.*\n)/, '$2$1')],
    ['no docstring at all', good.slice(good.indexOf('export'))],
  ])('finds %s', (_what, text) => {
    expect(faultsOf(text)).toHaveLength(1);
  });

  it('compares numbers to the digits printed', () => {
    expect(agreesWithPrint(26.184, '26.18')).toBe(true);
    expect(agreesWithPrint(26.186, '26.18')).toBe(false);
    expect(agreesWithPrint(7539.8, '7540')).toBe(true);
    expect(agreesWithPrint(7534, '7540')).toBe(false);
    expect(agreesWithPrint(63_661_977, '63660000')).toBe(true);
    expect(agreesWithPrint(0.73371, '0.7338')).toBe(false);
    expect(agreesWithPrint(1.2345e-4, '1.235e-4')).toBe(true);
    expect(agreesWithPrint(104, '100')).toBe(false);
    expect(agreesWithPrint(1.2, '1')).toBe(false);
    expect(agreesWithPrint(Number.NaN, '1')).toBe(false);
    expect(agreesWithPrint('narrow', "'narrow'")).toBe(true);
  });
});

function wrongExamples(
  { name, docstring }: DocumentedFunction,
  names: Readonly<Record<string, unknown>>,
): readonly string[] {
  return examplesOf(docstring ?? '').flatMap(({ expression, expected }) => {
    const actual = evaluate(expression, names);
    return agreesWithPrint(actual, expected) ? [] : [`${name}: ${expression} gives ${String(actual)}, not ${expected}`];
  });
}

function load(path: string): Promise<Record<string, unknown>> {
  return import(/* @vite-ignore */ pathToFileURL(join(repositoryRoot, path)).href);
}

async function loadUnits(): Promise<Record<string, unknown>> {
  return { ...(await load('lib/units/quantity.ts')), ...(await load('lib/units/known-value.ts')) };
}
