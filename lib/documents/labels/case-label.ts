/*
 * The label of a packed case as a view model: whose it is, which of how many, how heavy, who lifts it, what is in it, what transport asks.
 * Invariant: JSON, complete; the bars say the code that is printed under them.
 * Not here: sizes and drawing (lib/pdf/render-case-labels.ts).
 * Read next: ../../pdf/render-case-labels.ts.
 */
export interface CaseLabel {
  /** What the bars carry, such as `CASE:B-00012/1`. */
  readonly code: string;
  readonly booking: string;
  /** `Case 1 of 3`. */
  readonly place: string;
  readonly mass: string;
  /** Who lifts it; large. */
  readonly lift: string;
  /** Whom and where it goes to. */
  readonly to: readonly string[];
  readonly contents: readonly string[];
  /** Marks and lines that transport law asks for; empty where there are none. */
  readonly goods: readonly string[];
}

export interface CaseLabelSheet {
  readonly title: string;
  /** ISO date that the sheet is fixed at; also the file's creation and modification date. */
  readonly fixedAt: string;
  readonly house: string;
  readonly cases: readonly CaseLabel[];
}
