/*
 * What intake has to say about a cell or a row: a stable code, where, a sentence and what to do.
 * Invariant: every problem names its row and column and what can be done; a problem never stops the rows after it.
 * Not here: the wording of each problem (beside the reader that finds it).
 * Read next: read-cell.ts.
 */
export const INTAKE_CODES = [
  'value-unreadable',
  'value-implausible',
  'value-unlikely',
  'place-unreadable',
  'number-ambiguous',
  'unit-guessed',
  'choice-unknown',
  'size-two-values',
  'size-not-nominal',
  'size-outside-diameter',
  'size-remark-disagrees',
  'size-from-pipe',
  'rating-two-values',
  'rating-not-standard',
  'thread-lead-odd',
  'thread-starts-conflict',
  'thread-hand-conflict',
  'type-remark-disagrees',
  'kind-remark-disagrees',
  'out-of-use',
  'several-valves',
  'columns-conflict',
  'cell-too-long',
  'tag-missing',
  'tag-repeated',
  'same-as-row',
  'header-repeated',
  'total-row',
  'no-valve-facts',
  'title-row',
] as const;
export type IntakeCode = (typeof INTAKE_CODES)[number];

export interface IntakeProblem {
  readonly code: IntakeCode;
  /** Row as a spreadsheet counts. */
  readonly row: number;
  /** A column name, or the header as it stands in the list. */
  readonly column: string;
  readonly severity: 'refused' | 'doubt' | 'note';
  readonly sentence: string;
  readonly remedy: string;
}
