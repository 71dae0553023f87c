/*
 * What a rule or a calculation has to say about a line, an assembly or a plan.
 * Invariant: every finding has a stable id, a sentence built from the facts it used, and a source.
 * Not here: the rules themselves (lib/rules) and their wording.
 * Read next: ../rules/.
 */
export type Severity = 'refusal' | 'warning' | 'note';

export interface Finding {
  /** Stable id of the rule or check, kebab-case, e.g. `wheel-dish-within-adapter`. */
  readonly id: string;
  readonly severity: Severity;
  /** Field names (schedule columns, part numbers, site facts) that the sentence speaks of. */
  readonly about: readonly string[];
  /** A whole sentence with the numbers in it, and what to do when something is to be done. */
  readonly sentence: string;
  /** The same in US customary units, where that reads differently (units/say-figure.ts). */
  readonly inUs?: string;
  /** Authority: a standard, a handbook, `common practice, no source`, or `house rule`. */
  readonly source: string;
}
