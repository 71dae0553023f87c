/*
 * Every way of changing one leaf of a plain value, so that a test can ask whether each change is noticed.
 */
export interface Mutation<Value> {
  /** Where, e.g. `kits.0.items.1.count`. */
  readonly at: string;
  readonly how: string;
  readonly value: Value;
}

type Path = readonly (string | number)[];

/** Numbers a little up and down, words to another word, entries left out, nulls and flags turned over. */
export function mutationsOf<Value>(value: Value): readonly Mutation<Value>[] {
  return leavesOf(value, []).flatMap(({ path, leaf }) =>
    changesOf(leaf).map(({ how, to }) => ({ at: path.join('.'), how, value: replaced(value, path, to) })),
  );
}

const LEFT_OUT = Symbol('left out');

function changesOf(leaf: unknown): readonly { readonly how: string; readonly to: unknown }[] {
  switch (typeof leaf) {
    case 'number':
      return [
        { how: 'up', to: leaf === 0 ? 1 : leaf * 1.01 + (Number.isInteger(leaf) && Math.abs(leaf) < 1000 ? 1 : 0) },
        { how: 'down', to: leaf === 0 ? -1 : leaf * 0.98 - (Number.isInteger(leaf) && Math.abs(leaf) < 1000 ? 1 : 0) },
        { how: 'no number', to: Number.NaN },
      ];
    case 'string':
      return [{ how: 'another word', to: `${leaf} of another kind` }];
    case 'boolean':
      return [{ how: 'turned over', to: !leaf }];
    default:
      return [{ how: 'left out', to: LEFT_OUT }];
  }
}

function leavesOf(value: unknown, path: Path): readonly { readonly path: Path; readonly leaf: unknown }[] {
  if (Array.isArray(value)) {
    return value.flatMap((entry: unknown, index) => [
      { path: [...path, index], leaf: typeof entry === 'object' ? null : entry },
      ...(typeof entry === 'object' ? leavesOf(entry, [...path, index]) : []),
    ]);
  }
  if (typeof value === 'object' && value !== null) {
    return Object.entries(value).flatMap(([key, entry]) => leavesOf(entry, [...path, key]));
  }
  return path.length === 0 || value === null || value === undefined ? [] : [{ path, leaf: value }];
}

function replaced<Value>(value: Value, path: Path, to: unknown): Value {
  const [key, ...rest] = path;
  if (key === undefined) return to as Value;
  if (Array.isArray(value)) {
    if (rest.length === 0 && to === LEFT_OUT) return value.toSpliced(Number(key), 1) as Value;
    return value.toSpliced(Number(key), 1, replaced(value[Number(key)], rest, to)) as Value;
  }
  const record = value as Readonly<Record<string, unknown>>;
  return { ...record, [key]: replaced(record[key], rest, to) } as Value;
}
