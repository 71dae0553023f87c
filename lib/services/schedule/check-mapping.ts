/*
 * Checks that a mapping chosen by hand names columns that exist.
 * Invariant: what passes is a mapping that takeRows understands.
 * Not here: proposing one (lib/intake).
 * Read next: take-list.ts.
 */
import { isColumn } from '#lib/intake/columns.ts';
import type { MappedColumn, Mapping } from '#lib/intake/propose-mapping.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';

export interface UncheckedMapping {
  readonly headerRow: number | null;
  readonly columns: readonly (Omit<MappedColumn, 'field' | 'unit'> & {
    readonly field: string;
    readonly unit?: string | undefined;
  })[];
}

export function checkMapping(mapping: UncheckedMapping): Result<Mapping> {
  const columns: MappedColumn[] = [];
  for (const { field, unit, ...column } of mapping.columns) {
    if (field !== 'remark' && field !== 'ignore' && !isColumn(field)) {
      return failed({
        code: 'no-such-column',
        sentence: `“${field}” is not a column of the schedule; choose another meaning for “${column.header}”.`,
      });
    }
    columns.push({ ...column, field, ...(unit === undefined ? {} : { unit }) });
  }
  return ok({ headerRow: mapping.headerRow, columns });
}
