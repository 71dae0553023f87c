/*
 * A part that one rule of a conflict refuses, and how near it comes to fitting.
 * Invariant: its sentence is made only where it is told.
 * Not here: which parts are refused (tell-conflict.ts, tell-cores.ts, tell-beside-cores.ts).
 * Read next: tell-conflict.ts.
 */
import type { Finding } from '#lib/kernel/finding.ts';

export interface RefusedPart {
  /** Made only for the one that is told. */
  readonly finding: () => Finding;
  /** Which part is refused. */
  readonly part: string;
  /** Broken rules of the conflict; fewer is nearer to fitting. */
  readonly broken: number;
}

/** The part nearest to fitting of all that a rule refuses, and how many different ones those are. */
export interface NearestRefused {
  readonly nearest: RefusedPart | null;
  readonly parts: number;
}
