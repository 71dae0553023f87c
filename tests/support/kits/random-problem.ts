import { type Random, seededRandom } from '#lib/kernel/random.ts';
import type { Constraint, Problem } from '#lib/solver/problem.ts';

/** A small random problem over numbers; its constraints are tables, so that a plain enumeration can judge it. */
export function randomProblem(seed: number): Problem<number> {
  const random = seededRandom(seed);
  const count = 2 + below(random, 3);
  const variables = Array.from({ length: count }, (_, index) => ({
    name: `v${index}`,
    values: Array.from({ length: 1 + below(random, 4) }, (_unused, value) => value),
  }));
  const names = variables.map((variable) => variable.name);
  const constraints = Array.from({ length: 1 + below(random, 6) }, (_, index) =>
    randomConstraint({ random, names, id: `c${index}` }),
  );
  return { variables, constraints };
}

function randomConstraint(at: {
  readonly random: Random;
  readonly names: readonly string[];
  readonly id: string;
}): Constraint<number> {
  const { random, names, id } = at;
  const salt = below(random, 1000);
  const tight = 0.2 + 0.6 * random();
  const judge = (values: readonly number[]): boolean =>
    seededRandom(salt + values.reduce((sum, value) => sum * 7 + value + 1, 0))() < tight;
  const pick = (): string => names[below(random, names.length)] ?? 'v0';
  const kind = below(random, 3);
  if (kind === 0) return { kind: 'unary', id, on: pick(), allows: (value) => judge([value]) };
  if (kind === 1) {
    const first = pick();
    const second = names.find((name) => name !== first) ?? first;
    return { kind: 'binary', id, on: [first, second], allows: (a, b) => judge([a, b]) };
  }
  return { kind: 'chain', id, on: names, allows: judge };
}

function below(random: Random, limit: number): number {
  return Math.floor(random() * limit);
}

/** All solutions by trying everything, in the order of variables and values. */
export function enumerateSolutions(
  { variables, constraints }: Problem<number>,
  only?: ReadonlySet<string>,
): readonly (readonly number[])[] {
  let partial: readonly (readonly number[])[] = [[]];
  for (const variable of variables)
    partial = partial.flatMap((values) => variable.values.map((value) => [...values, value]));
  const at = (values: readonly number[], name: string): number =>
    values[variables.findIndex((one) => one.name === name)] ?? -1;
  return partial.filter((values) =>
    constraints
      .filter((constraint) => only?.has(constraint.id) ?? true)
      .every((constraint) => {
        if (constraint.kind === 'unary') return constraint.allows(at(values, constraint.on));
        if (constraint.kind === 'binary')
          return constraint.allows(at(values, constraint.on[0]), at(values, constraint.on[1]));
        return constraint.allows(constraint.on.map((name) => at(values, name)));
      }),
  );
}
