import { describe, expect, it } from 'vitest';
import { readRepositoryFile, sourceFiles } from '#tests/support/repository.ts';

const ENTRANCE = 'tests/support/checked.ts';
/** Its examples speak of what they forbid. */
const THIS_FILE = 'tests/architecture/checked-entrance.test.ts';
/** What makes assemblies and plans, by the file that exports it. */
const MAKERS: Readonly<Record<string, readonly string[]>> = {
  '#lib/kits/build-assembly.ts': ['buildAssembly'],
  '#lib/kits/find-choices.ts': ['findChoices', 'searchStockFirst'],
  '#lib/kits/list-assemblies.ts': ['listAssemblies'],
  '#lib/fleet/plan-fleet.ts': ['planFleet'],
  '#lib/fleet/leave-out.ts': ['leaveOut'],
  '#lib/planning/work-out.ts': ['workOut'],
  '#lib/planning/try-cases.ts': ['tryCases'],
  '#lib/workers/solve.ts': ['solveInWorker', 'tryInWorker'],
};

/** Makers that a source text takes past the entrance. */
function makersTakenBy(source: string): readonly string[] {
  return Object.entries(MAKERS).flatMap(([file, names]) => {
    const imports = [...source.matchAll(/(?:import|export)\s+(type\s+)?([^;'"]*?)\s*from\s+['"]([^'"]+)['"]/g)];
    const loads = source.includes(`import('${file}')`) || source.includes(`import("${file}")`) ? ['all of it'] : [];
    const taken = imports
      .filter(([, type, , from]) => from === file && type === undefined)
      .flatMap(([, , clause = '']) =>
        clause.startsWith('*')
          ? ['all of it']
          : names.filter((name) => new RegExp(`(?<!type )\\b${name}\\b`).test(clause)),
      );
    return [...loads, ...taken].map((name) => `${name} of ${file}`);
  });
}

describe('the checked entrance', () => {
  it('is the only way by which a test makes an assembly or a plan', () => {
    const tests = sourceFiles(['tests']).filter((file) => file !== ENTRANCE && file !== THIS_FILE);
    const past = tests.flatMap((file) => makersTakenBy(readRepositoryFile(file)).map((maker) => `${file}: ${maker}`));
    expect(tests.length).toBeGreaterThan(100);
    expect(past).toEqual([]);
  });

  it('names makers that are there', () => {
    for (const [file, names] of Object.entries(MAKERS)) {
      const source = readRepositoryFile(file.slice(1));
      for (const name of names)
        expect(source, `${name} in ${file}`).toMatch(new RegExp(`export (async )?function ${name}\\b`));
    }
  });

  it.each([
    ["import { buildAssembly } from '#lib/kits/build-assembly.ts';", 1],
    ["import { type Choices, findChoices } from '#lib/kits/find-choices.ts';", 1],
    ["import {\n  factsOf,\n  findChoices,\n} from '#lib/kits/find-choices.ts';", 1],
    ["import * as plans from '#lib/fleet/plan-fleet.ts';", 1],
    ["const { workOut } = await import('#lib/planning/work-out.ts');", 1],
    ["export { planFleet } from '#lib/fleet/plan-fleet.ts';", 1],
    ["import type { findChoices } from '#lib/kits/find-choices.ts';", 0],
    ["import { factsOf, type ChoicesInput } from '#lib/kits/find-choices.ts';", 0],
    ["import { checkedChoices } from '#tests/support/checked.ts';", 0],
  ])('sees through %j', (source, taken) => expect(makersTakenBy(source)).toHaveLength(taken));
});
