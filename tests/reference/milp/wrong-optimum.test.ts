import { describe, expect, it } from 'vitest';
import { branchAndBound } from '#lib/milp/branch-and-bound.ts';
import { solveMilp } from '#lib/milp/solve.ts';
import { TRUE_OPTIMUM, wrongOptimumModel } from '#tests/support/plans/wrong-optimum.ts';

// Source: the trial file highs-wrong-optimum.lp; optimum agreed by CBC, GLPK and HiGHS without presolve.
describe('a program whose optimum HiGHS has been wrong about', () => {
  it('is solved right with presolve off', async () => {
    const answer = await solveMilp(wrongOptimumModel(), { presolve: 'off', seconds: 20 });
    expect(answer.kind).toBe('solved');
    if (answer.kind !== 'solved') return;
    expect(answer.objective).toBeCloseTo(TRUE_OPTIMUM, 2);
  });

  it('cannot have 1 821.19 proven best: own branching finds the better point', async () => {
    const claimed = await solveMilp(wrongOptimumModel(), { presolve: 'on', seconds: 20 });
    expect(claimed.kind).toBe('solved');
    const proof = await branchAndBound({
      model: wrongOptimumModel(),
      best: 1821.19,
      margin: 0.001,
      groups: [],
      nodes: 2000,
      seconds: 20,
    });
    expect(proof.kind).toBe('closed');
    expect(proof.best).toBeCloseTo(TRUE_OPTIMUM, 2);
    expect(proof.values).toBeDefined();
  });

  it('has 1 529.19 proven best by own branching with certified bounds', async () => {
    const best = await solveMilp(wrongOptimumModel(), { presolve: 'off', seconds: 20 });
    if (best.kind !== 'solved') throw new Error('no answer');
    const proof = await branchAndBound({
      model: wrongOptimumModel(),
      best: best.objective,
      margin: 0.001,
      groups: [],
      nodes: 2000,
      seconds: 20,
    });
    expect(proof.kind).toBe('closed');
    expect(proof.values).toBeUndefined();
    expect(proof.bound).toBeGreaterThan(TRUE_OPTIMUM - 0.01);
  });
});
