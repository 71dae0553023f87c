/*
 * A changed list of an enquiry beside its schedule, and what is taken of it in one step.
 * Invariant: both files are kept; what was compared is what is taken, or nothing is; one change, taken back as one.
 * Not here: what differs (../../schedule/compare-lists.ts).
 * Read next: ../../schedule/compare-lists.ts, ../../schedule/take-comparison.ts, take-list.ts.
 */
import { lineStamps, settleListFile } from '#db/queries/schedule.ts';
import { lastScheduleChange } from '#db/queries/schedule-changes.ts';
import { type Cells, type Column, isColumn } from '#lib/intake/columns.ts';
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { type Comparison, compareLists, type ListsToCompare } from '#lib/schedule/compare-lists.ts';
import { placeSequence } from '#lib/schedule/place-sequence.ts';
import { type ComparisonChoice, type ComparisonTaken, takeComparison } from '#lib/schedule/take-comparison.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { readEnquiry } from '#lib/services/enquiries/enquiry-record.ts';
import { applyChange, type ChangeToApply } from './apply-change.ts';
import { announceChange } from './live-changes.ts';
import { keptSchedule } from './schedule-cache.ts';
import { type ListChoice, outcomeOf, previewList } from './take-list.ts';

export interface ListCompared extends Omit<Comparison, 'pairs'> {
  /** What the lines named in it are called. */
  readonly tags: Readonly<Record<number, string>>;
  /** Columns that lines have and the list has not: they stay as they are. */
  readonly silent: readonly Column[];
  /** The newest change of the schedule that it was compared with. */
  readonly change: number;
}

export async function compareList(context: Context, choice: ListChoice): Promise<Result<ListCompared>> {
  const compared = await compare(context, choice);
  if (!compared.ok) return compared;
  const { lists, comparison, change } = compared.value;
  const { pairs: _, ...shown } = comparison;
  const named = new Set([...shown.changed, ...shown.gone].map(({ lineId }) => lineId));
  const had = new Set(lists.lines.flatMap(({ cells }) => Object.keys(cells)));
  const says = new Set<string>([...lists.columns, ...lists.rows.flatMap(({ cells }) => Object.keys(cells))]);
  return ok({
    ...shown,
    tags: Object.fromEntries(
      lists.lines.filter(({ id }) => named.has(id)).map(({ id, row, cells }) => [id, cells.tag ?? `row ${row}`]),
    ),
    silent: [...had].filter(isColumn).filter((column) => !says.has(column)),
    change,
  });
}

export interface ComparisonToTake extends ListChoice {
  readonly take: Omit<ComparisonChoice, 'cells'> & {
    readonly cells: readonly { readonly lineId: number; readonly column: string }[];
  };
  /** The newest change when it was compared. */
  readonly change: number;
}

export async function takeCompared(
  context: Context,
  input: ComparisonToTake,
): Promise<Result<{ readonly change: number }>> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const compared = await compare(context, input);
  if (!compared.ok) return compared;
  const { lists, comparison, taken } = compared.value;
  const cells = input.take.cells.flatMap(({ lineId, column }) => (isColumn(column) ? [{ lineId, column }] : []));
  const result = takeComparison({ comparison, ...lists, choice: { ...input.take, cells } });
  if (result.sequence.length > LIMITS.schedule_lines) {
    return failed({
      code: 'too-many-lines',
      sentence: `A schedule holds at most ${LIMITS.schedule_lines} lines; split the list over several enquiries.`,
    });
  }
  const applied = context.database.db.transaction(
    (tx): Result<{ readonly change: number }> => {
      if (lastScheduleChange(tx, input.enquiryId) !== input.change) return failed(CHANGED);
      settleListFile(tx, {
        fileId: input.fileId,
        mappingJson: JSON.stringify({ table: input.table, mapping: input.mapping }),
        outcomeJson: JSON.stringify(outcomeOf(taken)),
      });
      const change = changeOf(result, lineStamps(tx, input.enquiryId));
      return ok({ change: applyChange(context, tx, { enquiryId: input.enquiryId, kind: 'list', change }).change });
    },
    { behavior: 'immediate' },
  );
  if (applied.ok) announceChange(input.enquiryId);
  return applied;
}

const CHANGED = {
  code: 'changed-meanwhile',
  sentence:
    'Somebody changed the schedule since the list was compared with it. Compare again; your choice is made anew.',
};

async function compare(context: Context, choice: ListChoice) {
  const taken = await previewList(context, choice);
  if (!taken.ok) return taken;
  const enquiry = readEnquiry(context, choice.enquiryId);
  if (!enquiry.ok) return enquiry;
  const change = lastScheduleChange(context.database.db, choice.enquiryId);
  const lists: ListsToCompare = {
    lines: keptSchedule(context, enquiry.value.row).map(({ row, cells, measured }) => ({
      ...{ id: row.id, row: row.row, cells, measured },
      listed: row.listed_json === null ? null : (JSON.parse(row.listed_json) as Cells),
    })),
    rows: taken.value.lines.map(({ row, cells }) => ({ row, cells })),
    columns: choice.mapping.columns.map(({ field }) => field).filter(isColumn),
  };
  return ok({ lists, comparison: compareLists(lists), change, taken: taken.value });
}

function changeOf(
  { writes, remove, relist, sequence }: ComparisonTaken,
  stamps: readonly { readonly id: number; readonly position: number }[],
): ChangeToApply {
  const positionOf = new Map(stamps.map(({ id, position }) => [id, position]));
  const positions = placeSequence(
    sequence.map((place) => (place.kind === 'line' ? { id: place.id, position: positionOf.get(place.id) ?? 0 } : null)),
  );
  return {
    ...{ cells: writes, remove, relist },
    move: sequence.flatMap((place, at) =>
      place.kind === 'line' ? [{ lineId: place.id, position: positions[at] ?? at }] : [],
    ),
    add: sequence.flatMap((place, at) =>
      place.kind === 'new'
        ? [
            {
              position: positions[at] ?? at,
              row: place.row.row,
              cells: place.row.cells,
              measured: [],
              listed: place.row.cells,
            },
          ]
        : [],
    ),
  };
}
