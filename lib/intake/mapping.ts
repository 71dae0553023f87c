/*
 * The mapping of a table: what each column means, how sure that is and why.
 * Invariant: plain data that a person may correct, a screen may show and a database may keep.
 * Not here: proposing one (propose-mapping.ts) and following it (take-cells.ts).
 * Read next: propose-mapping.ts.
 */
import type { Confidence, Field } from './match-header.ts';

export interface MappedColumn {
  readonly index: number;
  readonly header: string;
  readonly field: Field;
  /** Unit of bare numbers, from the header or the row below it. */
  readonly unit?: string;
  readonly confidence: Confidence;
  readonly why: string;
}

export interface Mapping {
  /** Row number as a spreadsheet counts; null where the list has no headers. */
  readonly headerRow: number | null;
  readonly columns: readonly MappedColumn[];
}
