/*
 * An explanation as a small tree: the answer, the rules it rests on, and under each the facts and parts that the rule looked at.
 * Invariant: every node is a whole sentence with its authority or basis; a leaf rests on nothing further.
 * Not here: finding the rules (explain-none.ts, explain-part.ts).
 * Read next: conflict-tree.ts.
 */
import type { Told } from '#lib/units/say-figure.ts';

export interface Reason extends Told {
  readonly kind: 'answer' | 'rule' | 'fact' | 'part';
  /** Where a rule has its authority or a fact its basis. */
  readonly source?: string;
  readonly children: readonly Reason[];
}
