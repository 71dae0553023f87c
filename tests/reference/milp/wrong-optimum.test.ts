import { describe, expect, it } from 'vitest';
import { proveNoBetter } from '#lib/milp/prove.ts';
import { solveMilp } from '#lib/milp/solve.ts';
import { TRUE_OPTIMUM, wrongOptimumModel } from '#tests/support/wrong-optimum.ts';

// Source: the trial file highs-wrong-optimum.lp; optimum agreed by CBC, GLPK and HiGHS without presolve.
describe('a program whose optimum HiGHS has been wrong about', () => {
  it('is solved right with presolve off', async () => {
    const answer = await solveMilp(wrongOptimumModel(), { presolve: 'off', seconds: 20 });
    expect(answer.kind).toBe('solved');
    if (answer.kind !== 'solved') return;
    expect(answer.objective).toBeCloseTo(TRUE_OPTIMUM, 2);
  });

  it('cannot have 1 821.19 proven best: own branching finds the better point or leaves the proof open', async () => {
    const claimed = await solveMilp(wrongOptimumModel(), { presolve: 'on', seconds: 20 });
    expect(claimed.kind).toBe('solved');
    const proof = await proveNoBetter({ model: wrongOptimumModel(), objective: 1821.19, margin: 0.001, nodes: 2000, seconds: 20 });
    expect(proof.kind).toBe('beaten');
    if (proof.kind === 'beaten') expect(proof.objective).toBeLessThan(1821);
  });

  it('has 1 529.19 proven best by own branching with certified bounds', async () => {
    const best = await solveMilp(wrongOptimumModel(), { presolve: 'off', seconds: 20 });
    if (best.kind !== 'solved') throw new Error('no answer');
    const proof = await proveNoBetter({ model: wrongOptimumModel(), objective: best.objective, margin: 0.001, nodes: 2000, seconds: 20 });
    expect(proof.kind).toBe('proven');
    if (proof.kind === 'proven') expect(proof.bound).toBeGreaterThan(TRUE_OPTIMUM - 0.01);
  });
});
