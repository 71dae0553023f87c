import { describe, expect, it } from 'vitest';
import { comparedOf, faultsOf, found, spoil } from './engineering/agreement.ts';
import { CHECKS } from './engineering/checks.ts';
import { type Check, ENTRY_FILES, type Entry, entriesOf, leavesOf, mapLeaves } from './engineering/entry.ts';

/**
 * Every entry of the shared check values that a formula or rule of ours covers, at the entry's own tolerance.
 * What is expected comes from the entry alone; the check sees inputs and names, never the values.
 */
const checked = ENTRY_FILES.flatMap((file) =>
  entriesOf(file).flatMap((entry) => {
    const check = CHECKS[entry.id];
    return check === undefined ? [] : [{ file, entry, check, name: nameOf(entry) }];
  }),
);

function nameOf({ id, topic, obtained }: Entry): string {
  return `${id} · ${topic}${obtained === 'memory' ? ' (from memory)' : ''}`;
}

describe.each(ENTRY_FILES)('%s', (file) => {
  it.each(checked.filter((one) => one.file === file))('$name', ({ entry, check }) => {
    expect(comparedOf(entry, check).size).toBeGreaterThan(0);
    expect(faultsOf(entry, check, found(entry, check))).toEqual([]);
  });
});

describe('the checks themselves', () => {
  it('each fails as soon as one value that it compares is wrong', () => {
    const counts = { numbers: 0, others: 0 };
    const blind = checked.flatMap(({ entry, check }) => {
      const answer = found(entry, check);
      return [...comparedOf(entry, check)].flatMap(([path, leaf]) => {
        counts[typeof leaf === 'number' ? 'numbers' : 'others'] += 1;
        return faultsOf(spoil(entry, path), check, answer).length === 0 ? [`${entry.id}, ${path}`] : [];
      });
    });
    console.info(`values made wrong and noticed: ${counts.numbers} numbers, ${counts.others} others`);
    expect(blind).toEqual([]);
    expect(counts.numbers).toBeGreaterThan(500);
  });

  it('each answers from the inputs of its entry: other numbers give another answer', () => {
    const numeric = checked.filter(
      ({ entry, check }) =>
        check.unmoved === undefined && [...leavesOf(entry.inputs).values()].some((leaf) => typeof leaf === 'number'),
    );
    const deaf = numeric.filter(({ entry, check }) => !reacts(entry, check)).map(({ entry }) => entry.id);
    console.info(`checks that follow their numeric inputs: ${numeric.length - deaf.length} of ${numeric.length}`);
    expect(deaf, deaf.join(' ')).toEqual([]);
  });

  it('a path that is given or not ours is one that its entry has', () => {
    const stale = checked.flatMap(({ entry, check }) =>
      [...(check.given ?? []), ...Object.keys(check.besides ?? {})]
        .filter(
          (pattern) => comparedOf(entry, { find: check.find, given: [pattern] }).size === leavesOf(entry.expected).size,
        )
        .map((pattern) => `${entry.id}, ${pattern}`),
    );
    expect(stale).toEqual([]);
    for (const { check } of checked)
      for (const why of Object.values(check.besides ?? {})) expect(why.length).toBeGreaterThanOrEqual(8);
  });
});

/** An input half as large again may also be refused outright, which is another answer too. */
function reacts(entry: Entry, check: Check): boolean {
  const before = JSON.stringify(found(entry, check));
  return [1.5, 0.1].some((factor) => {
    const inputs = mapLeaves(entry.inputs, (leaf) => (typeof leaf === 'number' ? leaf * factor : leaf));
    try {
      return JSON.stringify(found(entry, check, inputs)) !== before;
    } catch {
      return true;
    }
  });
}
