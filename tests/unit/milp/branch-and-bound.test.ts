import { describe, expect, it } from 'vitest';
import { type BranchRequest, branchAndBound } from '#lib/milp/branch-and-bound.ts';
import { checkValues } from '#lib/milp/check-values.ts';
import type { SparseModel } from '#lib/milp/sparse-model.ts';
import { coveringProgram, enumerateProgram, ownedProgram, randomProgram } from '#tests/support/plans/random-program.ts';

const CASES = 250;
const NOTHING_KNOWN = 1e6;

function ask(model: SparseModel, changes: Partial<BranchRequest> = {}) {
  return branchAndBound({
    model,
    best: NOTHING_KNOWN,
    margin: 1e-6,
    nodes: 20_000,
    seconds: 20,
    groups: [],
    ...changes,
  });
}

describe('branchAndBound', () => {
  it(`closes ${CASES} random integer programs at their best point, found by itself`, async () => {
    const seen = { best: 0, empty: 0 };
    for (let seed = 1; seed <= CASES; seed += 1) {
      const model = randomProgram(seed);
      const { objective } = enumerateProgram(model);
      const answer = await ask(model);
      const where = `seed ${seed}`;
      expect(answer.kind, where).toBe('closed');
      if (!Number.isFinite(objective)) {
        expect(answer.values, where).toBeUndefined();
        expect(answer.bound, where).toBe(NOTHING_KNOWN);
        seen.empty += 1;
        continue;
      }
      expect(answer.best, where).toBeCloseTo(objective, 6);
      expect(answer.bound, where).toBeLessThanOrEqual(objective + 1e-9);
      expect(answer.bound, where).toBeGreaterThan(objective - 1e-5);
      const checked = checkValues(model, answer.values ?? []);
      expect(checked.kind === 'sound' ? checked.objective : Number.NaN, where).toBeCloseTo(objective, 6);
      seen.best += 1;
    }
    console.info(`own branching: ${JSON.stringify(seen)}`);
    expect(seen.best).toBeGreaterThan(100);
    expect(seen.empty).toBeGreaterThan(20);
  }, 60_000);

  it(`loses no best point by treating alike owners as one, on ${CASES} random programs with two or three owners`, async () => {
    const seen = { best: 0, empty: 0, nodes: 0, nodesWithout: 0 };
    for (let seed = 1; seed <= CASES; seed += 1) {
      const { model, groups } = ownedProgram(seed);
      const { objective } = enumerateProgram(model);
      const answer = await ask(model, { groups });
      const without = await ask(model);
      const where = `seed ${seed}`;
      expect(answer.kind, where).toBe('closed');
      seen.nodes += answer.nodes;
      seen.nodesWithout += without.nodes;
      if (Number.isFinite(objective)) {
        expect(answer.best, where).toBeCloseTo(objective, 6);
        expect(without.best, where).toBeCloseTo(objective, 6);
        seen.best += 1;
      } else {
        expect(answer.values, where).toBeUndefined();
        seen.empty += 1;
      }
    }
    console.info(`own branching on alike owners: ${JSON.stringify(seen)}`);
    expect(seen.best).toBeGreaterThan(100);
    expect(seen.nodes).toBeLessThan(seen.nodesWithout);
  }, 60_000);

  it(`does not report a point that is not better by the margin, and does not lose one that is, on ${CASES} programs`, async () => {
    let checked = 0;
    for (let seed = 1; seed <= CASES; seed += 1) {
      const model = randomProgram(seed);
      const { objective } = enumerateProgram(model);
      if (!Number.isFinite(objective)) continue;
      const known = await ask(model, { best: objective, margin: 0.5 });
      expect(known, `seed ${seed}`).toMatchObject({ kind: 'closed', values: undefined, best: objective });
      expect(known.bound).toBeGreaterThanOrEqual(objective - 0.5 - 1e-9);
      const worse = await ask(model, { best: objective + 1, margin: 0.5 });
      expect(worse.best, `seed ${seed}`).toBeCloseTo(objective, 6);
      checked += 1;
    }
    console.info(`margins: ${checked} programs checked`);
    expect(checked).toBeGreaterThan(100);
  }, 60_000);

  it('keeps a true bound whenever its nodes are used up', async () => {
    let cut = 0;
    for (let seed = 1; seed <= CASES; seed += 1) {
      const { model, groups } = ownedProgram(seed);
      const { objective } = enumerateProgram(model);
      for (const nodes of [1, 2, 4]) {
        const answer = await ask(model, { groups, nodes });
        expect(answer.bound, `seed ${seed}, ${nodes} nodes`).toBeLessThanOrEqual(
          Math.min(objective, NOTHING_KNOWN) + 1e-9,
        );
        expect(answer.nodes).toBeLessThanOrEqual(nodes);
        if (answer.kind === 'nodes used up') cut += 1;
        else expect(answer.kind).toBe('closed');
      }
    }
    console.info(`nodes used up: ${cut} searches cut short`);
    expect(cut).toBeGreaterThan(50);
  }, 60_000);

  it('takes over a better point that the caller makes of a relaxed one, without calling it its own', async () => {
    let taken = 0;
    for (let seed = 1; seed <= 60; seed += 1) {
      const { model, groups } = ownedProgram(seed);
      const { objective } = enumerateProgram(model);
      if (!Number.isFinite(objective)) continue;
      const answer = await ask(model, { groups, margin: 0.5, onPoint: () => objective });
      expect(answer, `seed ${seed}`).toMatchObject({ kind: 'closed', best: objective });
      if (answer.values === undefined) taken += 1;
    }
    console.info(`points of the caller: ${taken} taken over`);
    expect(taken).toBeGreaterThan(20);
  });

  it('stops when asked, with what it has', async () => {
    let asked = 0;
    const answer = await ask(coveringProgram(), {
      interrupt: ({ best, bound, nodes }) => {
        expect(bound).toBeLessThanOrEqual(best);
        expect(nodes).toBe(asked);
        asked += 1;
        return asked > 5;
      },
    });
    expect(answer).toMatchObject({ kind: 'interrupted', nodes: 5 });
    expect(answer.bound).toBeLessThanOrEqual(45);
  });

  it('stops when its time is up', async () => {
    const answer = await ask(coveringProgram(), { seconds: 0 });
    expect(answer).toMatchObject({ kind: 'time used up', nodes: 0, bound: Number.NEGATIVE_INFINITY });
  });

  it('takes the same nodes and iterations for the same program', async () => {
    const first = await ask(coveringProgram(), { nodes: 40 });
    const second = await ask(coveringProgram(), { nodes: 40 });
    expect({ ...second, seconds: 0 }).toEqual({ ...first, seconds: 0 });
    expect(first.nodes).toBeGreaterThan(10);
  });
});
