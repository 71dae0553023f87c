import type { HouseField } from '#lib/contracts/house-fields.ts';

/** What stands at a path of keys and places joined by points. */
export function valueAt(value: unknown, path: string): unknown {
  return path
    .split('.')
    .reduce<unknown>((at, key) => (typeof at === 'object' && at !== null ? Reflect.get(at, key) : undefined), value);
}

/** A copy in which something else stands at the path; undefined takes the key away. */
export function changedAt(value: unknown, [key = '', ...rest]: readonly string[], next: unknown): unknown {
  const put = rest.length === 0 ? next : changedAt(valueAt(value, key), rest, next);
  if (Array.isArray(value)) return value.map((one: unknown, index) => (String(index) === key ? put : one));
  const held = typeof value === 'object' && value !== null ? { ...value } : {};
  if (put === undefined) return Object.fromEntries(Object.entries(held).filter(([name]) => name !== key));
  return { ...held, [key]: put };
}

/** A row that nobody has filled in yet. */
export function emptyRow(columns: readonly HouseField[]): unknown {
  return Object.fromEntries(
    columns.flatMap((column): readonly (readonly [string, unknown])[] => {
      if (column.kind === 'choice') return [[column.path, column.choices[0]]];
      if (column.kind === 'lines') return [[column.path, []]];
      return column.path === 'reason' ? [] : [[column.path, column.kind === 'text' ? '' : 0]];
    }),
  );
}
