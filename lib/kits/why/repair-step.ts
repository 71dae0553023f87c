/*
 * How a repair is carried out: text in a cell of the line, a fact of the site, a choice that is taken back.
 * Invariant: plain data in the names and forms that lists and sites are read from.
 * Not here: carrying it out (services).
 * Read next: repair-trials.ts.
 */
export type RepairStep =
  /** Writes a text into a column of the line. */
  | { readonly kind: 'cell'; readonly column: string; readonly text: string }
  /** Sets a key of the site, for all lines. */
  | { readonly kind: 'site'; readonly key: string; readonly value: string | boolean | readonly string[] }
  /** Takes the pins and locks of these parts back. */
  | { readonly kind: 'release'; readonly parts: readonly string[] }
  /** Parts that were left out may be used again. */
  | { readonly kind: 'use again'; readonly parts: readonly string[] };

export function cell(column: string, text: string): RepairStep {
  return { kind: 'cell', column, text };
}

export function siteValue(key: string, value: string | boolean | readonly string[]): RepairStep {
  return { kind: 'site', key, value };
}
