/*
 * Makes the tags of a schedule unique for planning: a repeated tag gets its row.
 * Invariant: lines keep their order and number; a tag that is unique stays as the customer wrote it.
 * Not here: telling the user of a repeated tag (lib/intake does).
 * Read next: work-out.ts.
 */
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';

export function uniqueTags(
  rows: readonly { readonly line: ScheduleLine; readonly row: number }[],
): readonly ScheduleLine[] {
  const seen = new Set<string>();
  return rows.map(({ line, row }) => {
    let tag = seen.has(line.tag) ? `${line.tag} (row ${row})` : line.tag;
    for (let copy = 2; seen.has(tag); copy += 1) tag = `${line.tag} (row ${row}, ${copy})`;
    seen.add(tag);
    return tag === line.tag ? line : { ...line, tag };
  });
}
