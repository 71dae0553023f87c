/*
 * Finds all solutions of a finite-domain problem in a fixed order, with the work it took.
 * Invariant: solutions come in the order of variables and values; reaching a limit is told in the answer, never hidden.
 * Not here: why values fell (reasons.ts) and which constraints cannot all hold (minimal-conflict.ts).
 * Read next: compiled-problem.ts, reasons.ts.
 */
import { type CompiledConstraint, type CompiledProblem, valueAt } from './compiled-problem.ts';
import type { Effort } from './problem.ts';

export interface SearchOptions<Value> {
  /** Only constraints with these ids count; all of them when absent. */
  readonly only?: ReadonlySet<string>;
  /** Called for each solution; answering `stop` ends the search. */
  readonly visit: (solution: readonly Value[]) => 'go on' | 'stop';
  /** Highest number of partial assignments to try. */
  readonly nodeLimit?: number;
}

export interface SearchEnd {
  /** `complete`: everything was seen. `stopped`: the visitor had enough. `limit`: the node limit was reached. */
  readonly end: 'complete' | 'stopped' | 'limit';
  readonly solutions: number;
  readonly effort: Effort;
}

export function search<Value>(compiled: CompiledProblem<Value>, options: SearchOptions<Value>): SearchEnd {
  const active = compiled.constraints.filter((constraint) => options.only?.has(constraint.id) ?? true);
  const started = { ...compiled.counters };
  const domains = filteredDomains(compiled, active);
  const count = compiled.sizes.length;
  const asked = Array.from({ length: count }, (_, position) =>
    active.filter((constraint) => constraint.askedAt === position && constraint.kind !== 'unary'),
  );
  const chosen: number[] = new Array<number>(count).fill(0);
  const nodeLimit = options.nodeLimit ?? Number.POSITIVE_INFINITY;
  let solutions = 0;
  const descend = (position: number): SearchEnd['end'] => {
    if (position === count) {
      solutions += 1;
      const solution = chosen.map((value, variable) => valueAt(compiled.problem, { variable, value }));
      return options.visit(solution) === 'stop' ? 'stopped' : 'complete';
    }
    for (const value of domains[position] ?? []) {
      if (compiled.counters.nodes - started.nodes >= nodeLimit) return 'limit';
      compiled.counters.nodes += 1;
      chosen[position] = value;
      if (!(asked[position] ?? []).every((constraint) => constraint.allows(chosen))) continue;
      const end = descend(position + 1);
      if (end !== 'complete') return end;
    }
    return 'complete';
  };
  const end = domains.some((domain) => domain.length === 0) ? 'complete' : descend(0);
  return {
    end,
    solutions,
    effort: {
      evaluations: compiled.counters.evaluations - started.evaluations,
      nodes: compiled.counters.nodes - started.nodes,
    },
  };
}

export function findAll<Value>(
  compiled: CompiledProblem<Value>,
  options: { readonly only?: ReadonlySet<string>; readonly limit: number },
): { readonly solutions: readonly (readonly Value[])[]; readonly end: SearchEnd } {
  const solutions: (readonly Value[])[] = [];
  const end = search(compiled, {
    ...(options.only === undefined ? {} : { only: options.only }),
    visit: (solution) => {
      solutions.push(solution);
      return solutions.length >= options.limit ? 'stop' : 'go on';
    },
  });
  return { solutions, end };
}

/** Domains after the constraints on one variable. */
function filteredDomains<Value>(
  compiled: CompiledProblem<Value>,
  active: readonly CompiledConstraint[],
): readonly (readonly number[])[] {
  const unary = active.filter((constraint) => constraint.kind === 'unary');
  const probe: number[] = new Array<number>(compiled.sizes.length).fill(0);
  return compiled.sizes.map((size, position) => {
    const mine = unary.filter((constraint) => constraint.on[0] === position);
    const kept: number[] = [];
    for (let value = 0; value < size; value += 1) {
      probe[position] = value;
      if (mine.every((constraint) => constraint.allows(probe))) kept.push(value);
    }
    return kept;
  });
}
