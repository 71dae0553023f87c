/*
 * The as-found list to fill in on site or at the desk: the valves of an enquiry in working order, all blanks empty.
 * Invariant: filled in, it imports as it is.
 * Not here: the import (match-found.ts).
 * Read next: match-found.ts.
 */
import { FOUND_COLUMNS } from './found-columns.ts';

export function foundTemplate(valves: readonly { readonly tag: string; readonly number: number }[]): string {
  const head = FOUND_COLUMNS.map(({ label }) => label);
  const rows = valves.map(({ tag, number }) =>
    FOUND_COLUMNS.map(({ name }) => (name === 'tag' ? tag : name === 'number' ? String(number) : '')),
  );
  return `${[head, ...rows].map((cells) => cells.map(quoteCell).join(',')).join('\r\n')}\r\n`;
}

/** A cell that starts like a formula is given as text, so that no spreadsheet works it out. */
function quoteCell(text: string): string {
  const safe = /^[=+@\t-]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
