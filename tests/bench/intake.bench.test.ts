import { expect, it } from 'vitest';
import { COLUMNS } from '#lib/intake/columns.ts';
import { proposeMapping } from '#lib/intake/propose-mapping.ts';
import { readTables } from '#lib/intake/read-table.ts';
import { takeRows } from '#lib/intake/take-rows.ts';
import { LIMITS } from '#lib/kernel/limits.ts';

/** A utility's list of the longest length allowed: seven columns, remarks with sizes. Figures are printed, not gated. */
function utilityList(): string {
  const remarks = [
    'Valve is on 150mm and is not visible',
    'On 100 from 200',
    '200X150',
    '',
    'Buried on tarred road',
    'Centre valve',
  ];
  const rows = Array.from({ length: LIMITS.list_rows }, (_unused, index) =>
    [
      `V-${index}`,
      ['Control Valve', 'Gate', 'Butterfly'][index % 3],
      [100, 150, '6"', 'DN200'][index % 4],
      ['PN16', '10.16', ''][index % 3],
      remarks[index % remarks.length],
      `${(index % 977) / 1e4 + 7.5}`,
      `${(index % 1013) / 1e4 + 6.4}`,
    ]
      .map((cell) => `"${String(cell).replaceAll('"', '""')}"`)
      .join(','),
  );
  return ['Tag,Type,Size,Rating,Remark,Longitude,Latitude', ...rows].join('\n');
}

/** As many rows with every column filled as the limit of bytes allows, which no list does. */
function fullList(): string {
  const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;
  const examples = COLUMNS.map((spec) => quoted(spec.example));
  const rowBytes = new TextEncoder().encode(examples.join(',')).length + 10;
  const length = Math.min(LIMITS.list_rows, Math.floor(LIMITS.list_bytes / rowBytes) - 2);
  const rows = Array.from({ length }, (_unused, index) => [`V-${index}`, ...examples.slice(1)].join(','));
  return [COLUMNS.map((spec) => quoted(spec.label)).join(','), ...rows].join('\n');
}

it.each([
  ['utility list, 7 columns', utilityList],
  ['every column filled', fullList],
])('the longest list: %s', async (name, list) => {
  const bytes = new TextEncoder().encode(list());
  const started = performance.now();
  const tables = await readTables({ bytes, fileName: 'long.csv' });
  const table = tables.ok ? tables.value[0] : undefined;
  if (table === undefined) throw new Error(tables.ok ? 'No table.' : tables.reason.sentence);
  const read = performance.now();
  const mapping = proposeMapping(table);
  const mapped = performance.now();
  const { counts } = takeRows({ table, mapping });
  const taken = performance.now();
  expect(counts.lines).toBe(counts.rows);
  expect(counts.rows).toBeGreaterThan(10_000);
  console.info(
    `${name}, ${counts.rows} rows: read ${Math.round(read - started)} ms, mapped ${Math.round(mapped - read)} ms, taken ${Math.round(taken - mapped)} ms`,
  );
});
