import { describe, expect, it } from 'vitest';
import { compileProblem } from '#lib/solver/compiled-problem.ts';
import { minimalConflict } from '#lib/solver/minimal-conflict.ts';
import type { Problem } from '#lib/solver/problem.ts';
import { constraintsBehind, propagate } from '#lib/solver/reasons.ts';
import { findAll, search } from '#lib/solver/search.ts';

const SUM_OF_FOUR: Problem<number> = {
  variables: [
    { name: 'a', values: [1, 2, 3] },
    { name: 'b', values: [1, 2, 3] },
  ],
  constraints: [
    { kind: 'unary', id: 'a-odd', on: 'a', allows: (a) => a % 2 === 1 },
    { kind: 'binary', id: 'sum-four', on: ['a', 'b'], allows: (a, b) => a + b === 4 },
  ],
};

describe('search', () => {
  it('gives all solutions in the order of variables and values', () => {
    expect(findAll(compileProblem(SUM_OF_FOUR), { limit: 10 }).solutions).toEqual([
      [1, 3],
      [3, 1],
    ]);
  });

  it('leaves out constraints that are switched off', () => {
    const found = findAll(compileProblem(SUM_OF_FOUR), { limit: 10, only: new Set(['sum-four']) });
    expect(found.solutions).toHaveLength(3);
  });

  it('answers that a limit was reached instead of hiding it', () => {
    const stopped = search(compileProblem(SUM_OF_FOUR), { visit: () => 'stop' });
    expect(stopped.end).toBe('stopped');
    const limited = search(compileProblem(SUM_OF_FOUR), { visit: () => 'go on', nodeLimit: 1 });
    expect(limited.end).toBe('limit');
  });

  it('asks a constraint once for the same values, however many searches run', () => {
    const compiled = compileProblem(SUM_OF_FOUR);
    const first = findAll(compiled, { limit: 10 }).end.effort;
    const second = findAll(compiled, { limit: 10 }).end.effort;
    expect([first.evaluations, second.evaluations]).toEqual([9, 0]);
    expect(second.nodes).toBe(first.nodes);
  });

  it('refuses a constraint on a variable that does not exist', () => {
    const problem: Problem<number> = {
      variables: [{ name: 'a', values: [1] }],
      constraints: [{ kind: 'unary', id: 'lost', on: 'z', allows: () => true }],
    };
    expect(() => compileProblem(problem)).toThrow('speaks of z');
  });

  it('refuses two variables of one name', () => {
    const twice = { name: 'a', values: [1] };
    expect(() => compileProblem({ variables: [twice, twice], constraints: [] })).toThrow('share a name');
  });
});

describe('reasons', () => {
  it('tell that a value fell for want of a partner, and what the partner fell by', () => {
    const { falls, left } = propagate(compileProblem(SUM_OF_FOUR), {});
    expect(left).toEqual([
      [0, 2],
      [0, 2],
    ]);
    const fall = falls.find((one) => one.variable === 1);
    expect(fall === undefined ? [] : constraintsBehind(fall)).toEqual(['a-odd', 'sum-four']);
  });
});

describe('minimal conflict', () => {
  const needsBoth = (kept: readonly string[]): boolean => !(kept.includes('b') && kept.includes('d'));

  it('finds exactly what cannot hold together', () => {
    expect(minimalConflict({ items: ['a', 'b', 'c', 'd', 'e'], possible: needsBoth }).conflict).toEqual(['b', 'd']);
  });

  it('answers null where all can hold, and nothing where not even nothing can', () => {
    expect(minimalConflict({ items: ['a', 'b'], possible: () => true }).conflict).toBeNull();
    expect(minimalConflict({ items: ['a', 'b'], possible: () => false }).conflict).toEqual([]);
  });

  it('asks few questions', () => {
    const items = Array.from({ length: 64 }, (_, index) => `r${index}`);
    const possible = (kept: readonly string[]): boolean => !(kept.includes('r7') && kept.includes('r40'));
    const answer = minimalConflict({ items, possible });
    expect(answer.conflict).toEqual(['r7', 'r40']);
    expect(answer.checks).toBeLessThan(40);
  });
});
