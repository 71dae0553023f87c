/*
 * Says what a row of a list is: a valve, a thing set aside, or nothing that can be a line.
 * Invariant: every answer but “line” has its reason; where the type column and the remark disagree the column decides.
 * Not here: reading the line (read-line.ts).
 * Read next: take-rows.ts.
 */
import type { Cells, Column } from './columns.ts';
import { plainText, quoted } from './plain-text.ts';
import { convertedKind } from './read-remark.ts';
import { recogniseKind } from './recognise-kind.ts';

export type Sorted =
  | { readonly kind: 'line' }
  | { readonly kind: 'set aside'; readonly reason: string; readonly contradiction?: string }
  | { readonly kind: 'refused'; readonly code: 'total-row' | 'no-valve-facts'; readonly sentence: string };

/** Columns that say nothing of a valve when they stand alone. */
const BYSTANDERS: ReadonlySet<string> = new Set<Column>([
  'tag',
  'location',
  'notes',
  'photo',
  'place_order',
  'qty',
  'access_minutes',
  'strokes',
]);
const TOTAL = /^(?:grand |sub)?[ -]?(?:total|sum|summe|gesamt|suma|somme|totale|итого)\b/;

export function sortRow(row: {
  readonly cells: Cells;
  readonly filledCells: number;
  readonly mappedColumns: number;
}): Sorted {
  const { cells } = row;
  const facts = Object.keys(cells).filter((name) => !BYSTANDERS.has(name));
  const lead = plainText(cells.tag ?? cells.location ?? cells.notes ?? '');
  if (TOTAL.test(lead) && cells.valve_type === undefined) {
    return {
      kind: 'refused',
      code: 'total-row',
      sentence: `The row is a total (${quoted(cells.tag ?? cells.location ?? cells.notes ?? '')}), not a valve.`,
    };
  }
  const aside = reasonAside(cells);
  if (aside !== null) return aside;
  if (facts.length > 0) return { kind: 'line' };
  if (cells.tag === undefined) {
    const spoken = cells.notes === undefined ? null : recogniseKind(cells.notes);
    if (spoken !== null && spoken.kind !== 'not operated') return { kind: 'line' };
    return {
      kind: 'refused',
      code: 'no-valve-facts',
      sentence: 'The row has text but nothing that speaks of a valve: no tag, no size, no type.',
    };
  }
  if (row.filledCells === 1 && row.mappedColumns >= 3 && (/\s/.test(cells.tag) || !/\d/.test(cells.tag))) {
    return {
      kind: 'refused',
      code: 'no-valve-facts',
      sentence: `The row holds ${quoted(cells.tag)} alone and looks like a heading, not a valve.`,
    };
  }
  return { kind: 'line' };
}

function reasonAside(cells: Cells): Sorted | null {
  const type = cells.valve_type === undefined ? null : recogniseKind(cells.valve_type);
  const spoken = cells.notes === undefined ? null : recogniseKind(withoutLabels(cells.notes));
  if (type?.kind === 'not operated') {
    if (convertedKind(cells.notes)?.kind !== undefined && convertedKind(cells.notes)?.kind !== 'not operated')
      return null;
    const contradiction =
      spoken !== null &&
      spoken.kind !== 'not operated' &&
      spoken.word !== '' &&
      !/^(?:valve|vavle)\b/.test(plainText(spoken.word))
        ? `The type column says ${quoted(cells.valve_type ?? '')}, the remark ${quoted(cells.notes ?? '')} speaks of an ordinary valve; the column is taken.`
        : undefined;
    return {
      kind: 'set aside',
      reason: `${quoted(cells.valve_type ?? '')}: ${type.what}. ${type.reason}`,
      ...(contradiction === undefined ? {} : { contradiction }),
    };
  }
  const unnamed = type === null || type.kind === 'line valve';
  if (unnamed && spoken?.kind === 'not operated' && cells.size === undefined) {
    return {
      kind: 'set aside',
      reason: `The remark ${quoted(cells.notes ?? '')} speaks of a ${spoken.what}, and no kind or size of valve is given. ${spoken.reason}`,
    };
  }
  return null;
}

/** Only what was written as a remark, without the texts that came with their header from other columns. */
function withoutLabels(notes: string): string {
  return notes
    .split(/;\s+/)
    .filter((part) => !/^[^:]{1,24}:\s/.test(part))
    .join('; ');
}
