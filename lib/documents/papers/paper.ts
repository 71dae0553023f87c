/*
 * A paper as a view model: its head, and blocks of strings and pictures that are ready to print.
 * Invariant: JSON, complete and frozen: the same paper always gives the same bytes; nothing is computed while drawing.
 * Not here: fonts, measures and colours (pdf); what each paper holds (quote-paper.ts and its neighbours).
 * Read next: quote-paper.ts, ../../pdf/render-paper.ts.
 */
import type { Drawing } from '#lib/documents/drawings/drawing.ts';

export type PaperKind = 'quote' | 'packing list' | 'site sheet' | 'calculation sheet' | 'return note' | 'certificates';

export interface LabelledText {
  readonly label: string;
  readonly value: string;
}

/** Who issues the paper. */
export interface PaperHouse {
  readonly name: string;
  readonly lines: readonly string[];
}

export interface Paper {
  readonly kind: PaperKind;
  readonly title: string;
  /** Document number with revision, e.g. `Q-2026-0142 · revision 2`. */
  readonly number: string;
  /** ISO date that the paper is fixed at; also the file's creation and modification date. */
  readonly fixedAt: string;
  readonly house: PaperHouse;
  /** Where the paper goes to, line by line; the first is the name. */
  readonly to: readonly string[];
  readonly facts: readonly LabelledText[];
  /** Printed at the foot of every page. */
  readonly foot: string;
  /** `Page {page} of {pages}` in the paper's language; English where it is absent. */
  readonly pageWords?: string;
  /** Over whom it goes to; English where it is absent. */
  readonly toWords?: string;
  readonly blocks: readonly Block[];
}

export interface TableColumn {
  readonly label: string;
  /** Share of the width. */
  readonly share: number;
  readonly align?: 'left' | 'right' | 'centre';
}

export interface TableRow {
  readonly cells: readonly string[];
  readonly tone?: 'plain' | 'group' | 'total' | 'muted' | 'result';
  /** Set small under the row, over its whole width. */
  readonly note?: string;
}

export type Block =
  | { readonly kind: 'heading'; readonly text: string; readonly level: 1 | 2 }
  | { readonly kind: 'text'; readonly text: string; readonly tone: 'plain' | 'muted' | 'strong' }
  | { readonly kind: 'facts'; readonly columns: 1 | 2 | 3 | 4; readonly items: readonly LabelledText[] }
  | {
      readonly kind: 'table';
      /** Heading of the table, repeated with its column heads on every page it reaches, so that neither is ever left alone. */
      readonly caption?: { readonly text: string; readonly level: 1 | 2; readonly words?: string };
      readonly columns: readonly TableColumn[];
      readonly rows: readonly TableRow[];
      readonly dense?: true;
      readonly tall?: true;
    }
  | { readonly kind: 'list'; readonly items: readonly string[]; readonly marker: 'dot' | 'number' | 'box' }
  | {
      readonly kind: 'callout';
      readonly tone: 'caution' | 'note' | 'refusal';
      readonly title: string;
      readonly items: readonly string[];
    }
  | { readonly kind: 'drawing'; readonly drawing: Drawing; readonly share: number }
  | {
      readonly kind: 'pair';
      readonly left: readonly Block[];
      readonly right: readonly Block[];
      readonly leftShare: number;
    }
  | { readonly kind: 'blanks'; readonly columns: 2 | 3 | 4; readonly items: readonly string[] }
  | {
      readonly kind: 'signatures';
      readonly parties: readonly { readonly title: string; readonly lines: readonly string[] }[];
    }
  | { readonly kind: 'barcode'; readonly text: string }
  | { readonly kind: 'together'; readonly blocks: readonly Block[] }
  | { readonly kind: 'page break' };
