import type { DutyColumn } from '#lib/schedule/line-filter.ts';
import type { LineView } from '#lib/services/lines/line-view.ts';
import type { ColumnChoice } from '#lib/services/schedule/list-column-choices.ts';
import { formatRange, type UnitSystem } from '#lib/units/format-quantity.ts';

export type GridColumn =
  | { readonly kind: 'cell'; readonly name: string; readonly label: string; readonly choice: ColumnChoice }
  | { readonly kind: 'duty'; readonly name: DutyColumn; readonly label: string };

const DUTY: readonly GridColumn[] = [
  { kind: 'duty', name: 'starting', label: 'To start' },
  { kind: 'duty', name: 'running', label: 'To run' },
  { kind: 'duty', name: 'turns', label: 'Turns' },
  { kind: 'duty', name: 'neverExceed', label: 'Never above' },
];

/** Columns shown at first, so that the duty stands beside them; the others can be added. */
export const USUAL: readonly string[] = ['tag', 'qty', 'valve_type', 'size', 'driven_by'];

/** The columns of the list that are shown, then the figures of the duty. */
export function gridColumns(choices: readonly ColumnChoice[], shown: readonly string[]): readonly GridColumn[] {
  const cells = shown.flatMap((name) =>
    choices
      .filter((choice) => choice.name === name)
      .map((choice): GridColumn => ({ kind: 'cell', name, label: name === 'qty' ? 'Qty' : choice.label, choice })),
  );
  return [...cells, ...DUTY];
}

/** What a cell says when it is copied. */
export function copiedText(
  line: { readonly cells: Readonly<Record<string, string>>; readonly duty: LineView['duty'] | undefined },
  { column, system }: { readonly column: GridColumn; readonly system: UnitSystem },
): string {
  if (column.kind === 'cell') return line.cells[column.name] ?? '';
  return line.duty ? formatRange(line.duty[column.name], system) : '';
}
