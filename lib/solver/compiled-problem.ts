/*
 * A problem made ready for repeated searches: variables by position and every constraint's verdict remembered.
 * Invariant: a verdict is asked of a constraint at most once for the same values, however many searches run.
 * Not here: the search itself.
 * Read next: search.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';
import type { Constraint, Problem } from './problem.ts';

export interface CompiledConstraint {
  readonly id: string;
  readonly kind: Constraint<unknown>['kind'];
  /** Positions of its variables, in the constraint's own order. */
  readonly on: readonly number[];
  /** Position of the last of them in the search order: the moment the constraint can be asked. */
  readonly askedAt: number;
  /** Verdict for chosen value positions (one for each variable of the problem). */
  readonly allows: (chosen: readonly number[]) => boolean;
}

export interface CompiledProblem<Value> {
  readonly problem: Problem<Value>;
  readonly constraints: readonly CompiledConstraint[];
  readonly sizes: readonly number[];
  readonly counters: { evaluations: number; nodes: number };
}

export function compileProblem<Value>(problem: Problem<Value>): CompiledProblem<Value> {
  const positions = new Map(problem.variables.map((variable, index) => [variable.name, index]));
  invariant(positions.size === problem.variables.length, 'Two variables of a problem share a name.');
  const counters = { evaluations: 0, nodes: 0 };
  const constraints = problem.constraints.map((constraint) => compile({ problem, constraint, positions, counters }));
  return { problem, constraints, sizes: problem.variables.map((variable) => variable.values.length), counters };
}

function compile<Value>(args: {
  readonly problem: Problem<Value>;
  readonly constraint: Constraint<Value>;
  readonly positions: ReadonlyMap<string, number>;
  readonly counters: { evaluations: number };
}): CompiledConstraint {
  const { problem, constraint, positions, counters } = args;
  const names = constraint.kind === 'unary' ? [constraint.on] : constraint.on;
  const on = names.map((name) => {
    const position = positions.get(name);
    invariant(position !== undefined, `The constraint ${constraint.id} speaks of ${name}, which is no variable.`);
    return position;
  });
  const sizes = on.map((position) => problem.variables[position]?.values.length ?? 0);
  const verdicts = new Map<number, boolean>();
  const allows = (chosen: readonly number[]): boolean => {
    let key = 0;
    for (const [index, position] of on.entries()) key = key * (sizes[index] ?? 0) + (chosen[position] ?? 0);
    const remembered = verdicts.get(key);
    if (remembered !== undefined) return remembered;
    counters.evaluations += 1;
    const verdict = ask({ problem, constraint, on, chosen });
    verdicts.set(key, verdict);
    return verdict;
  };
  return { id: constraint.id, kind: constraint.kind, on, askedAt: Math.max(...on), allows };
}

function ask<Value>(args: {
  readonly problem: Problem<Value>;
  readonly constraint: Constraint<Value>;
  readonly on: readonly number[];
  readonly chosen: readonly number[];
}): boolean {
  const { problem, constraint, on, chosen } = args;
  const values = on.map((position) => valueAt(problem, { variable: position, value: chosen[position] ?? -1 }));
  switch (constraint.kind) {
    case 'unary':
      return values.length === 1 && values.every((value) => constraint.allows(value));
    case 'binary': {
      const [first, second] = on.map((variable) => ({ variable, value: chosen[variable] ?? -1 }));
      invariant(first !== undefined && second !== undefined, `The constraint ${constraint.id} needs two values.`);
      return constraint.allows(valueAt(problem, first), valueAt(problem, second));
    }
    case 'chain':
      return constraint.allows(values);
  }
}

export function valueAt<Value>(
  problem: Problem<Value>,
  at: { readonly variable: number; readonly value: number },
): Value {
  const values = problem.variables[at.variable]?.values ?? [];
  invariant(at.value >= 0 && at.value < values.length, 'A value was asked for outside its variable.');
  const [value] = values.slice(at.value, at.value + 1);
  invariant(value !== undefined, 'A value of a variable is never undefined.');
  return value;
}
