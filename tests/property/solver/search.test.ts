import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compileProblem } from '#lib/solver/compiled-problem.ts';
import { minimalConflict } from '#lib/solver/minimal-conflict.ts';
import { constraintsBehind, propagate } from '#lib/solver/reasons.ts';
import { findAll } from '#lib/solver/search.ts';
import { enumerateSolutions, randomProblem } from '#tests/support/kits/random-problem.ts';

const SEEDS = fc.integer({ min: 1, max: 2 ** 30 });

describe('finite-domain search', () => {
  it('finds the solutions that trying everything finds, in the same order', () => {
    let solved = 0;
    let impossible = 0;
    fc.assert(
      fc.property(SEEDS, (seed) => {
        const problem = randomProblem(seed);
        const expected = enumerateSolutions(problem);
        const found = findAll(compileProblem(problem), { limit: Number.POSITIVE_INFINITY });
        expect(found.solutions).toEqual(expected);
        expect(found.end.end).toBe('complete');
        if (expected.length > 0) solved += 1;
        else impossible += 1;
      }),
      { seed: 11, numRuns: 600 },
    );
    console.info(`search: ${solved} problems with solutions and ${impossible} without agree with enumeration`);
    expect(Math.min(solved, impossible)).toBeGreaterThan(100);
  });

  it('lets only values fall that are in no solution, and each fall rests on constraints that alone make it fall', () => {
    let falls = 0;
    fc.assert(
      fc.property(SEEDS, (seed) => {
        const problem = randomProblem(seed);
        for (const fall of propagate(compileProblem(problem), {}).falls) {
          const behind = new Set(constraintsBehind(fall));
          const left = enumerateSolutions(problem, behind);
          const value = problem.variables[fall.variable]?.values[fall.value];
          expect(left.filter((solution) => solution[fall.variable] === value)).toEqual([]);
          falls += 1;
        }
      }),
      { seed: 12, numRuns: 600 },
    );
    console.info(`reasons: ${falls} falls checked against enumeration`);
    expect(falls).toBeGreaterThan(500);
  });

  it('names conflicts that are impossible by themselves and possible without any one of their constraints', () => {
    let conflicts = 0;
    let dropped = 0;
    fc.assert(
      fc.property(SEEDS, (seed) => {
        const problem = randomProblem(seed);
        const items = problem.constraints.map((constraint) => constraint.id);
        const possible = (kept: readonly string[]): boolean => enumerateSolutions(problem, new Set(kept)).length > 0;
        const { conflict } = minimalConflict({ items, possible });
        expect(conflict === null).toBe(possible(items));
        if (conflict === null) return;
        conflicts += 1;
        expect(possible(conflict)).toBe(false);
        for (const left of conflict) {
          expect(possible(conflict.filter((id) => id !== left))).toBe(true);
          dropped += 1;
        }
      }),
      { seed: 13, numRuns: 600 },
    );
    console.info(`conflicts: ${conflicts} rebuilt and found impossible, ${dropped} made possible by dropping one`);
    expect(conflicts).toBeGreaterThan(100);
  });
});
