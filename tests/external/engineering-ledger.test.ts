import { describe, expect, it } from 'vitest';
import { CHECKS, TOPICS } from './engineering/checks.ts';
import { ENTRY_FILES, entriesOf } from './engineering/entry.ts';
import { LEFT_OUT } from './engineering/left-out.ts';
import { toleranceOf, WORDED } from './engineering/tolerance.ts';

/** Every entry of the shared check values is checked or left out with its reason. */
const entries = ENTRY_FILES.flatMap(entriesOf);
const known = new Set(entries.map(({ id }) => id));
const checked = TOPICS.flatMap(Object.keys);
const leftOut = LEFT_OUT.flatMap(({ ids }) => ids);

describe('the ledger of check values', () => {
  it('every entry is checked or left out', () => {
    const accounted = new Set([...checked, ...leftOut]);
    expect(entries.map(({ id }) => id).filter((id) => !accounted.has(id))).toEqual([]);
    const isRead = entries.filter(({ id }) => id in CHECKS);
    const count = (of: 'read' | 'memory') => isRead.filter(({ obtained }) => obtained === of).length;
    console.info(
      `check values: ${entries.length} entries, ${isRead.length} checked (${count('memory')} of them from memory), ${leftOut.length} left out with a reason`,
    );
    for (const file of ENTRY_FILES) {
      const own = entriesOf(file);
      console.info(`${file}: ${own.length} entries, ${own.filter(({ id }) => id in CHECKS).length} checked`);
    }
    expect(isRead.length).toBeGreaterThanOrEqual(250);
  });

  it('no entry is in both, twice in either, or gone', () => {
    const all = [...checked, ...leftOut];
    expect(all.filter((id, index) => all.indexOf(id) !== index)).toEqual([]);
    expect(all.filter((id) => !known.has(id))).toEqual([]);
    expect(known.size).toBe(entries.length);
  });

  it('a reason is a sentence, and each is given once', () => {
    const reasons = LEFT_OUT.map(({ because }) => because);
    expect(reasons.filter((because) => !/^[A-Z].{20,}\.$/.test(because))).toEqual([]);
    expect(new Set(reasons).size).toBe(reasons.length);
  });

  it('what is known with low confidence is never a test', () => {
    expect(entries.filter(({ id, confidence }) => id in CHECKS && confidence === 'low')).toEqual([]);
  });

  it('what has no value is never a test', () => {
    expect(entries.filter(({ id, expected }) => id in CHECKS && expected === null)).toEqual([]);
  });

  it('tolerances in words are the ones that checked entries have, and every other is a figure', () => {
    const texts = new Set(entries.filter(({ id }) => id in CHECKS).map(({ tolerance }) => tolerance));
    expect(Object.keys(WORDED).filter((text) => !texts.has(text))).toEqual([]);
    for (const [text, { taken }] of Object.entries(WORDED)) console.info(`tolerance “${text}” is taken as: ${taken}`);
    for (const text of texts) expect(() => toleranceOf({ text, path: '', expected: 1 })).not.toThrow();
    expect(() => toleranceOf({ text: 'about right', path: '', expected: 1 })).toThrow('neither a figure');
  });
});
