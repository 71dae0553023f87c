/*
 * A sheet of labels as a view model: what each carries to be read by a person and by a reader.
 * Invariant: JSON, complete; the code under the bars is what the bars and the square say.
 * Not here: sizes and drawing (lib/pdf/render-labels.ts); what a code means (lib/stock/scan-code.ts).
 * Read next: ../../pdf/render-labels.ts.
 */
export interface Label {
  /** What the bars and the square carry. */
  readonly code: string;
  /** Large: the serial number, the bay, the case. */
  readonly headline: string;
  /** Below it, at most three lines. */
  readonly lines: readonly string[];
  /** Small, above: what kind of label it is and whose. */
  readonly corner: string;
}

export interface LabelSheet {
  readonly title: string;
  /** ISO date that the sheet is fixed at; also the file's creation and modification date. */
  readonly fixedAt: string;
  readonly house: string;
  /** Places of the first sheet that are used up already. */
  readonly skip: number;
  readonly labels: readonly Label[];
}

/** A4, three columns of eight: 70 by 36 mm each, without gaps. */
export const LABEL_GRID = { columns: 3, rows: 8, width_mm: 70, height_mm: 36 } as const;
export const LABELS_A_SHEET = LABEL_GRID.columns * LABEL_GRID.rows;
