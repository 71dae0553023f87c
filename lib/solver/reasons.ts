/*
 * Why values fall: a graph of facts from constraints on one variable and from missing partners in another.
 * Invariant: every fallen value names its constraint and the earlier falls that it rests on, so that the graph has no circle.
 * Not here: sentences (the caller knows what a value is).
 * Read next: search.ts, minimal-conflict.ts.
 */
import type { CompiledConstraint, CompiledProblem } from './compiled-problem.ts';

export interface Fall {
  readonly variable: number;
  readonly value: number;
  /** The constraint that the value breaks by itself, or that leaves it without a partner. */
  readonly constraint: string;
  /** Falls of possible partners that this one rests on; empty for a fall by itself. */
  readonly restsOn: readonly Fall[];
}

export interface Propagated {
  readonly falls: readonly Fall[];
  /** Values that are left, by variable. */
  readonly left: readonly (readonly number[])[];
}

export function propagate<Value>(
  compiled: CompiledProblem<Value>,
  options: { readonly only?: ReadonlySet<string> },
): Propagated {
  const active = compiled.constraints.filter((constraint) => options.only?.has(constraint.id) ?? true);
  const fallen = compiled.sizes.map((size) => new Array<Fall | undefined>(size).fill(undefined));
  const falls: Fall[] = [];
  const fell = (fall: Fall): void => {
    const row = fallen[fall.variable];
    if (row !== undefined) row[fall.value] = fall;
    falls.push(fall);
  };
  for (const constraint of active) if (constraint.kind === 'unary') dropAlone({ compiled, constraint, fallen, fell });
  let before = -1;
  while (before !== falls.length) {
    before = falls.length;
    for (const constraint of active) {
      if (constraint.kind === 'binary') dropWithoutPartner({ compiled, constraint, fallen, fell });
    }
  }
  const left = fallen.map((row) => row.flatMap((fall, value) => (fall === undefined ? [value] : [])));
  return { falls, left };
}

/** Ids of all constraints that a fall rests on, each once, roots first. */
export function constraintsBehind(fall: Fall): readonly string[] {
  const seen = new Set<Fall>();
  const ids: string[] = [];
  const walk = (at: Fall): void => {
    if (seen.has(at)) return;
    seen.add(at);
    for (const earlier of at.restsOn) walk(earlier);
    if (!ids.includes(at.constraint)) ids.push(at.constraint);
  };
  walk(fall);
  return ids;
}

interface Dropping<Value> {
  readonly compiled: CompiledProblem<Value>;
  readonly constraint: CompiledConstraint;
  readonly fallen: readonly (readonly (Fall | undefined)[])[];
  readonly fell: (fall: Fall) => void;
}

function dropAlone<Value>({ compiled, constraint, fallen, fell }: Dropping<Value>): void {
  const variable = constraint.on[0] ?? 0;
  const probe: number[] = new Array<number>(compiled.sizes.length).fill(0);
  for (let value = 0; value < (compiled.sizes[variable] ?? 0); value += 1) {
    probe[variable] = value;
    if (fallen[variable]?.[value] === undefined && !constraint.allows(probe)) {
      fell({ variable, value, constraint: constraint.id, restsOn: [] });
    }
  }
}

function dropWithoutPartner<Value>({ compiled, constraint, fallen, fell }: Dropping<Value>): void {
  const [first = 0, second = 0] = constraint.on;
  for (const [variable, partner] of [
    [first, second],
    [second, first],
  ] as const) {
    const probe: number[] = new Array<number>(compiled.sizes.length).fill(0);
    for (let value = 0; value < (compiled.sizes[variable] ?? 0); value += 1) {
      if (fallen[variable]?.[value] !== undefined) continue;
      probe[variable] = value;
      const restsOn: Fall[] = [];
      let supported = false;
      for (let other = 0; other < (compiled.sizes[partner] ?? 0) && !supported; other += 1) {
        probe[partner] = other;
        if (!constraint.allows(probe)) continue;
        const fall = fallen[partner]?.[other];
        if (fall === undefined) supported = true;
        else restsOn.push(fall);
      }
      if (!supported) fell({ variable, value, constraint: constraint.id, restsOn });
    }
  }
}
