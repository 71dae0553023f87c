/*
 * What becomes of a schedule when a choice of a changed list's differences is taken.
 * Invariant: taking nothing changes no cell, line or place; taking everything in the list's order gives the list.
 * Not here: storing it (lib/services/schedule/compare-list.ts).
 * Read next: compare-lists.ts.
 */
import type { Column } from '#lib/intake/column-names.ts';
import type { Cells } from '#lib/intake/columns.ts';
import { type Comparison, columnsSaid, type ListsToCompare } from './compare-lists.ts';
import type { ListedRow } from './match-lines.ts';
import type { CellWrite } from './schedule-change.ts';

export interface ComparisonChoice {
  /** Rows of the list that become lines. */
  readonly added: readonly number[];
  /** Lines that go. */
  readonly gone: readonly number[];
  /** Cells that take the list's text. */
  readonly cells: readonly { readonly lineId: number; readonly column: Column }[];
  /** Whether the lines are put in the list's order. */
  readonly order: 'keep' | 'list';
}

export interface ComparisonTaken {
  readonly writes: readonly CellWrite[];
  readonly remove: readonly number[];
  readonly relist: readonly { readonly lineId: number; readonly listed: Cells | null }[];
  /** All places from the first to the last; the lines that go are not among them. */
  readonly sequence: readonly (
    | { readonly kind: 'line'; readonly id: number }
    | { readonly kind: 'new'; readonly row: ListedRow }
  )[];
}

interface TakeInput extends ListsToCompare {
  readonly comparison: Comparison;
  readonly choice: ComparisonChoice;
}

export function takeComparison(input: TakeInput): ComparisonTaken {
  const { comparison, lines, rows, choice } = input;
  const said = columnsSaid(input);
  const wanted = new Set(choice.cells.map(({ lineId, column }) => `${lineId} ${column}`));
  const going = new Set(choice.gone);
  const remove = comparison.gone.map(({ lineId }) => lineId).filter((id) => going.has(id));
  const rowOf = new Map(comparison.pairs.map(({ lineId, row }) => [lineId, row]));
  const byRow = new Map(rows.map((row) => [row.row, row]));
  const removed = new Set(remove);
  return {
    writes: comparison.changed.flatMap(({ lineId, cells }) =>
      cells
        .filter(({ column }) => wanted.has(`${lineId} ${column}`))
        .map(({ column, now, next }) => ({ lineId, column, text: next, was: now, measured: false })),
    ),
    remove,
    relist: lines
      .filter(({ id }) => !removed.has(id))
      .map(({ id, listed }) => ({
        lineId: id,
        listed: relisted(listed, { row: byRow.get(rowOf.get(id) ?? -1), said }),
      })),
    sequence: sequenceOf(input, removed),
  };
}

/** What lists say of a line by now: the changed one where it has the column, else the one before. */
function relisted(
  before: Cells | null,
  { row, said }: { readonly row: ListedRow | undefined; readonly said: ReadonlySet<Column> },
): Cells | null {
  if (!row) return null;
  const silent = Object.entries(before ?? {}).filter(([column]) => ![...said].some((name) => name === column));
  return { ...Object.fromEntries(silent), ...row.cells };
}

type Place = ComparisonTaken['sequence'][number];

/** Each line and each new row after the one that stands before it: in the list, or in the schedule as it is. */
function sequenceOf({ comparison, lines, rows, choice }: TakeInput, removed: ReadonlySet<number>): readonly Place[] {
  const lineOf = new Map(comparison.pairs.map(({ lineId, row }) => [row, lineId]));
  const wanted = new Set(choice.added);
  const isNew = new Set(comparison.added.map(({ row }) => row).filter((row) => wanted.has(row)));
  const listed: readonly Place[] = rows.flatMap((row): readonly Place[] => {
    const id = lineOf.get(row.row);
    if (id !== undefined) return [{ kind: 'line', id }];
    return isNew.has(row.row) ? [{ kind: 'new', row }] : [];
  });
  const there: readonly Place[] = lines
    .filter(({ id }) => !removed.has(id))
    .map(({ id }): Place => ({ kind: 'line', id }));
  return choice.order === 'list' ? woven(listed, there) : woven(there, listed);
}

/** The first sequence, with what only the second has put in after what stands before it there. */
function woven(first: readonly Place[], second: readonly Place[]): readonly Place[] {
  const own = new Set(first.map(nameOf));
  const after = new Map<string, Place[]>();
  let last = '';
  for (const place of second) {
    if (own.has(nameOf(place))) last = nameOf(place);
    else after.set(last, [...(after.get(last) ?? []), place]);
  }
  return [...(after.get('') ?? []), ...first.flatMap((place) => [place, ...(after.get(nameOf(place)) ?? [])])];
}

function nameOf(place: Place): string {
  return place.kind === 'line' ? `line ${place.id}` : `row ${place.row.row}`;
}
