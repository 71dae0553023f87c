/*
 * What a question is: the field it fills, the answers that are tried, and to which valves it applies.
 * Invariant: every question can be answered with "I don't know", which leaves the field blank and is remembered.
 * Not here: the words of questions (lib/wording) and how to measure (lib/documents/guide/field-guide.ts).
 * Read next: question-table.ts, next-question.ts.
 */
import type { Duty } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Site } from '#lib/duty/site.ts';
import type { Cells, Column } from '#lib/intake/columns.ts';

/** What is known of a line so far, and what its owner said they do not know. */
export interface Told {
  readonly cells: Cells;
  readonly unknown: readonly Column[];
}

/** A line read, with what it needs as it stands. */
export interface ReadTold {
  readonly cells: Cells;
  readonly line: ScheduleLine;
  readonly duty: Duty;
  readonly site: Site;
}

/** An answer as the text of a cell, and how likely it is against the others. */
export interface Answer {
  readonly text: string;
  readonly weight: number;
}

export interface QuestionSpec {
  readonly column: Column;
  /** How it is answered: by choosing one of the answers, or by a number of which the answers are examples. */
  readonly answered: 'by choice' | 'by number';
  /** How often this decides what is hired; orders what has not been worked out. House practice, no source. */
  readonly usualWeight: number;
  readonly applies: (told: ReadTold) => boolean;
  readonly answers: (told: ReadTold) => readonly Answer[];
}
