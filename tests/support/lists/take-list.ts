import { expect } from 'vitest';
import { type Mapping, proposeMapping } from '#lib/intake/propose-mapping.ts';
import { type RawTable, readTables } from '#lib/intake/read-table.ts';
import { type Taken, takeRows } from '#lib/intake/take-rows.ts';

/** Reads the first table of a list given as text or bytes; fails the test where it is refused. */
export async function tableOf(list: string | Uint8Array, fileName = 'list.csv'): Promise<RawTable> {
  const bytes = typeof list === 'string' ? new TextEncoder().encode(list) : list;
  const tables = await readTables({ bytes, fileName });
  expect(tables.ok ? 'read' : tables.reason.sentence).toBe('read');
  const table = tables.ok ? tables.value[0] : undefined;
  if (table === undefined) throw new Error('The list has no table.');
  return table;
}

export async function takeList(list: string | Uint8Array): Promise<Taken & { readonly mapping: Mapping }> {
  const table = await tableOf(list);
  const mapping = proposeMapping(table);
  const taken = takeRows({ table, mapping });
  const { rows, lines, setAside, refused, blank } = taken.counts;
  expect(lines + setAside + refused + blank).toBe(rows);
  return { ...taken, mapping };
}
