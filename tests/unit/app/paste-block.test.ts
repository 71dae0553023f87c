import { describe, expect, it } from 'vitest';
import { joinBlock } from '#app/(desk)/enquiries/[id]/_table/join-block.ts';
import { pasteBlock, repeatBlock } from '#app/(desk)/enquiries/[id]/_table/paste-block.ts';
import { splitBlock } from '#app/(desk)/enquiries/[id]/_table/split-block.ts';

describe('a block copied from a spreadsheet', () => {
  it('falls into rows and cells, with quotes that hold tabs, line ends and quotes', () => {
    expect(splitBlock('A\t"one\ntwo"\t"say ""x"""\r\nB\t\t2"\r\n')).toEqual([
      ['A', 'one two', 'say "x"'],
      ['B', '', '2"'],
    ]);
  });

  it('past the last line becomes new lines, and what finds no column is told', () => {
    const block = { columns: ['tag', 'qty'], rows: splitBlock('P-1\t2\tleft\nP-2\t') };
    expect(pasteBlock({ block, lineIds: [], grows: 'yes' })).toEqual({
      edits: [],
      lines: [{ cells: { tag: 'P-1', qty: '2' } }, { cells: { tag: 'P-2' } }],
      sentence: 'Pasted 2 rows. New lines: 2. Left out: 1 column at the right, past the last column shown.',
    });
  });

  it('makes no new lines while a filter hides some', () => {
    const block = { columns: ['tag'], rows: [['P-1'], ['P-2']] };
    const { lines, sentence } = pasteBlock({ block, lineIds: [], grows: 'no' });
    expect(lines).toEqual([]);
    expect(sentence).toContain('Left out: 2 rows');
  });

  it('over lines that are there writes their cells, also with nothing', () => {
    const block = { columns: ['tag', 'qty'], rows: [['P-1', '']] };
    expect(pasteBlock({ block, lineIds: [7], grows: 'yes' }).edits).toEqual([
      { lineId: 7, column: 'tag', text: 'P-1' },
      { lineId: 7, column: 'qty', text: '' },
    ]);
  });

  it('fills a larger block that is a multiple of it, and no other', () => {
    expect(repeatBlock({ rows: [['a', 'b']], height: 2, width: 4 })).toEqual([
      ['a', 'b', 'a', 'b'],
      ['a', 'b', 'a', 'b'],
    ]);
    expect(repeatBlock({ rows: [['a', 'b']], height: 2, width: 3 })).toEqual([['a', 'b']]);
  });

  it('that is copied out reads back as it was', () => {
    const rows = [
      ['plain', 'with\ttab', 'say "x"'],
      ['', 'b', '2"'],
    ];
    expect(splitBlock(joinBlock(rows))).toEqual(rows);
  });
});
