/*
 * All columns that a list can have, in the order of the template.
 * Invariant: one spec for every column name, in the order of column-names.ts.
 * Not here: how a header is matched (match-header.ts) and a cell read (read-cell.ts).
 * Read next: column-spec.ts, propose-mapping.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';
import { COLUMN_NAMES, type Column as ColumnName } from './column-names.ts';
import type { ColumnSpec } from './column-spec.ts';
import { DRIVE_COLUMNS } from './columns-drive.ts';
import { PLACE_COLUMNS } from './columns-place.ts';
import { STEM_AND_TORQUE_COLUMNS } from './columns-stem.ts';
import { IDENTITY_AND_VALVE_COLUMNS } from './columns-valve.ts';

/** Everything that a list can say about a valve; see column-names.ts. */
export type Column = ColumnName;

const BY_NAME: ReadonlyMap<string, ColumnSpec> = new Map(
  [...IDENTITY_AND_VALVE_COLUMNS, ...STEM_AND_TORQUE_COLUMNS, ...DRIVE_COLUMNS, ...PLACE_COLUMNS].map(
    (spec) => [spec.name, spec] as const,
  ),
);

export function columnSpec(name: Column): ColumnSpec {
  const spec = BY_NAME.get(name);
  invariant(spec, `The column ${name} has no spec.`);
  return spec;
}

export const COLUMNS: readonly ColumnSpec[] = COLUMN_NAMES.map(columnSpec);

const NAMES: ReadonlySet<string> = new Set(COLUMN_NAMES);

export function isColumn(text: string): text is Column {
  return NAMES.has(text);
}

/** Canonical text per column: what the screen edits and `readLine` reads. */
export type Cells = Readonly<Partial<Record<Column, string>>>;
