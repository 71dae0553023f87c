/*
 * A finite-domain problem: named variables with ordered values, and named constraints over one, two or many of them.
 * Invariant: a constraint is pure and has a stable id; equal ids mean one thing that can be switched on and off together.
 * Not here: what a value stands for (kits), and how solutions are ranked.
 * Read next: search.ts, minimal-conflict.ts.
 */
export interface Variable<Value> {
  readonly name: string;
  readonly values: readonly Value[];
}

export interface UnaryConstraint<Value> {
  readonly kind: 'unary';
  readonly id: string;
  readonly on: string;
  readonly allows: (value: Value) => boolean;
}

export interface BinaryConstraint<Value> {
  readonly kind: 'binary';
  readonly id: string;
  readonly on: readonly [string, string];
  readonly allows: (first: Value, second: Value) => boolean;
}

/** A constraint over a whole chain of variables; it is asked when all of them have a value. */
export interface ChainConstraint<Value> {
  readonly kind: 'chain';
  readonly id: string;
  readonly on: readonly string[];
  readonly allows: (values: readonly Value[]) => boolean;
}

export type Constraint<Value> = UnaryConstraint<Value> | BinaryConstraint<Value> | ChainConstraint<Value>;

export interface Problem<Value> {
  readonly variables: readonly Variable<Value>[];
  readonly constraints: readonly Constraint<Value>[];
}

/** Work done, counted: the same request always costs the same. */
export interface Effort {
  /** Constraint evaluations. */
  readonly evaluations: number;
  /** Partial assignments tried. */
  readonly nodes: number;
}
