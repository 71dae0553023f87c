import { describe, expect, it } from 'vitest';
import { pasteSteps } from '#app/(desk)/enquiries/[id]/paste-block.ts';
import { splitBlock } from '#app/(desk)/enquiries/[id]/split-block.ts';

describe('a block copied from a spreadsheet', () => {
  it('falls into rows and cells, with quotes that hold tabs, line ends and quotes', () => {
    expect(splitBlock('A\t"one\ntwo"\t"say ""x"""\r\nB\t\t2"\r\n')).toEqual([
      ['A', 'one two', 'say "x"'],
      ['B', '', '2"'],
    ]);
  });

  it('past the last line becomes new lines, and what finds no column is told', () => {
    const block = { index: 4, columns: ['tag', 'qty'], rows: splitBlock('P-1\t2\tleft\nP-2\t') };
    expect(pasteSteps({ block, targets: [], isFiltered: false })).toEqual({
      steps: [{ kind: 'add', lines: [{ cells: { tag: 'P-1', qty: '2' } }, { cells: { tag: 'P-2' } }], was: [] }],
      sentence: 'Pasted 2 rows. New lines: 2. Left out: 1 column at the right, past the last column shown.',
    });
  });

  it('makes no new lines while a filter hides some', () => {
    const block = { index: 0, columns: ['tag'], rows: [['P-1'], ['P-2']] };
    const { steps, sentence } = pasteSteps({ block, targets: [], isFiltered: true });
    expect(steps).toEqual([]);
    expect(sentence).toContain('Left out: 2 rows');
  });
});
