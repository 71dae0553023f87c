/*
 * Finds the row that holds the headers, below any title rows; or none, where the list starts with its first valve.
 * Invariant: among the first rows the one with most known headers wins, the upper one where two have as many.
 * Not here: what each header means (match-header.ts).
 * Read next: propose-mapping.ts.
 */
import { matchKnownHeader } from './match-header.ts';
import { tidyCell } from './plain-text.ts';
import { isBlankRow, type RawRow, type RawTable } from './raw-table.ts';
import { recogniseKind } from './recognise-kind.ts';

const LOOKED_AT = 30;

export function findHeader(table: RawTable): RawRow | null {
  const candidates = table.rows.filter((row) => !isBlankRow(row)).slice(0, LOOKED_AT);
  let best: RawRow | null = null;
  let bestScore = 0;
  for (const row of candidates) {
    const score = headerScore(row);
    if (score > bestScore) [best, bestScore] = [row, score];
  }
  if (best !== null) return best;
  const [first, second] = candidates;
  return first !== undefined && second !== undefined && looksLikeHeader(first) && !looksLikeHeader(second)
    ? first
    : null;
}

/** Known headers in the row; 0 where they are too few to be more than chance. */
function headerScore(row: RawRow): number {
  const cells = row.cells.map(tidyCell).filter((cell) => cell !== '');
  if (cells.length === 0 || cells.length > 400) return 0;
  const known = new Set<string>();
  let count = 0;
  for (const cell of cells) {
    if (cell.length > 60 || isValue(cell)) continue;
    const match = matchKnownHeader(cell);
    if (match === null) continue;
    count += 1;
    known.add(match.field);
  }
  const enough = cells.length <= 2 ? known.size >= 1 : known.size >= 2 && count >= cells.length * 0.3;
  return enough ? count : 0;
}

function looksLikeHeader(row: RawRow): boolean {
  const cells = row.cells.map(tidyCell).filter((cell) => cell !== '');
  return cells.length >= 2 && cells.every((cell) => !isValue(cell)) && new Set(cells).size === cells.length;
}

/** A number, a size or a kind of valve is what stands under a header, not a header. */
function isValue(cell: string): boolean {
  if (/^[<>~]?\s*[\d.,/\s½¼¾-]+\s*(?:mm|m|in|"|bar)?$/.test(cell) || /^(?:dn|pn)\s?\d/i.test(cell)) return true;
  return (
    recogniseKind(cell)?.kind === 'valve' &&
    /^(?:[a-z]+ )?(?:gate|globe|butterfly|ball|plug|sluice|hydrant|penstock)(?: valve)?$/i.test(cell)
  );
}
