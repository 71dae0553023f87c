/** A block as spreadsheets take it: tabs part cells, line ends part rows, and what holds either is quoted. */
export function joinBlock(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => row.map(quoted).join('\t')).join('\n');
}

function quoted(text: string): string {
  return /["\t\n\r]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
