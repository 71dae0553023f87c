/** Cells of a block copied from a spreadsheet: tabs part cells, line ends part rows, quotes hold either inside a cell. */
export function splitBlock(text: string): readonly (readonly string[])[] {
  const rows: string[][] = [];
  let row: string[] = [];
  let rest = text.replace(/\r\n?/g, '\n').replace(/\n$/, '');
  for (;;) {
    const cell = takeCell(rest);
    row.push(cell.text);
    const end = rest[cell.length];
    rest = rest.slice(cell.length + 1);
    if (end === '\t') continue;
    rows.push(row);
    row = [];
    if (end === undefined) return rows;
  }
}

const QUOTED = /^"((?:[^"]|"")*)"(?=\t|\n|$)/;
const PLAIN = /^[^\t\n]*/;

function takeCell(rest: string): { readonly text: string; readonly length: number } {
  const quoted = QUOTED.exec(rest);
  if (quoted) return { text: (quoted[1] ?? '').replaceAll('""', '"').replaceAll('\n', ' '), length: quoted[0].length };
  const plain = PLAIN.exec(rest)?.[0] ?? '';
  return { text: plain.trim(), length: plain.length };
}
