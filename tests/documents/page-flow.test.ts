import { describe, expect, it } from 'vitest';
import type { Block, Paper } from '#lib/documents/papers/paper.ts';
import { renderPaper } from '#lib/pdf/render-paper.ts';
import { readPdf } from '#tests/support/papers/read-pdf.ts';

function paperOf(blocks: readonly Block[]): Paper {
  return {
    kind: 'quote',
    title: 'Quote',
    number: 'F-1',
    fixedAt: '2031-03-04',
    house: { name: 'Torhaven', lines: [] },
    to: ['Customer'],
    facts: [],
    foot: 'Foot',
    blocks,
  };
}

const filler = (lines: number): Block => ({
  kind: 'list',
  marker: 'dot',
  items: Array.from({ length: lines }, (_, index) => `filler ${index}`),
});
const rows = (count: number) => Array.from({ length: count }, (_, index) => ({ cells: [`row-${index + 1}`, 'words'] }));
const columns = [
  { label: 'Name-of-column', share: 1 },
  { label: 'Other', share: 1 },
];

describe('flow over pages', () => {
  it('never leaves a heading or the head of a table alone at the foot of a page', async () => {
    let broken = 0;
    for (let lines = 20; lines <= 52; lines += 1) {
      const read = readPdf(
        await renderPaper(
          paperOf([
            filler(lines),
            { kind: 'table', caption: { level: 2, text: 'Heading-of-table' }, columns, rows: rows(30) },
          ]),
        ),
      );
      for (const page of read.text.split('\f')) {
        if (page.includes('Name-of-column')) expect(page, `${lines} lines before`).toMatch(/row-\d/);
        if (page.includes('Heading-of-table')) expect(page, `${lines} lines before`).toMatch(/row-\d/);
      }
      if (read.pages > 1) broken += 1;
    }
    expect(broken).toBeGreaterThan(15);
  });

  it('repeats the head of a table on every page and keeps every row once', async () => {
    const read = readPdf(await renderPaper(paperOf([{ kind: 'table', columns, rows: rows(200) }])));
    const pages = read.text.split('\f').filter((page) => page.includes('row-'));
    expect(pages.length).toBeGreaterThan(3);
    for (const page of pages) expect(page).toContain('Name-of-column');
    for (let row = 1; row <= 200; row += 1)
      expect(read.text.match(new RegExp(`row-${row}\\b`, 'g'))?.length, `row ${row}`).toBe(1);
  });

  it('prints all words of a cell that is longer than a page', async () => {
    const words = Array.from({ length: 2400 }, (_, index) => `w${index}`);
    const read = readPdf(
      await renderPaper(
        paperOf([{ kind: 'table', columns, rows: [{ cells: ['long', 'cell'], note: words.join(' ') }] }]),
      ),
    );
    expect(words.filter((word) => !read.words.has(word))).toEqual([]);
  });
});
