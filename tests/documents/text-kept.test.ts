import { describe, expect, it } from 'vitest';
import type { Paper } from '#lib/documents/papers/paper.ts';
import { renderPaper } from '#lib/pdf/render-paper.ts';
import { readPdf } from '#tests/support/papers/read-pdf.ts';

/** Every word must come back from every document, whatever the documents before it asked of the fonts. */
const TEXTS: readonly string[] = [
  'Łódź',
  'special office conduct zone: Ω offices, sufficient coffee',
  'Ελληνικά: Διώνη, ύδωρ, βαλβίδα, ροπή',
  'Верхний Бор, задвижка, крутящий момент, ёж',
  'Świątek, źdźbło, żółć, Ąę, Ćć, Ńń',
  'Tromsø, Þór, Ångström, naïve, façade, über, Šibenik, Győr, İzmir, Ōsaka',
  '≥ 12 N·m → 14 N·m ≤ 20 N·m, Δp = 4 bar, √2 ≈ 1.41, 20 °C, ½, × ÷ ± − – — …',
  'α β γ π μ Σ, ∞, ′ ″ ☐ ☑ ✓ ▲ ● ■ ⚠ ⌀ № € £',
  'aąbcćdeęfghijklłmnńoóprsśtuwyzźż',
  'special office conduct zone Łódź Διώνη Верхний ≥ ≤ → Δ · °',
];

function paperOf(words: string, index: number): Paper {
  return {
    kind: 'quote',
    title: 'Quote',
    number: `T-${index}`,
    fixedAt: '2031-03-04',
    house: { name: 'Torhaven', lines: [] },
    to: [words],
    facts: [],
    foot: words,
    blocks: [
      { kind: 'text', tone: 'strong', text: words },
      {
        kind: 'drawing',
        share: 1,
        drawing: {
          width: 520,
          height: 20,
          title: '',
          description: '',
          shapes: [
            { kind: 'text', at: { x: 0, y: 12 }, text: words, size: 9, anchor: 'start', bold: false, role: 'text' },
          ],
        },
      },
    ],
  };
}

describe('extractable text of many documents of one process', () => {
  it('keeps every word of ten documents, the first with Łódź, in text, in bold and in pictures', async () => {
    let checked = 0;
    for (const [index, words] of TEXTS.entries()) {
      const read = readPdf(await renderPaper(paperOf(words, index)));
      for (const word of words.split(/\s+/)) {
        expect(read.text.split(word).length - 1, `document ${index + 1}: ${word}`).toBeGreaterThanOrEqual(4);
        checked += 1;
      }
    }
    expect(checked).toBeGreaterThan(80);
  });

  it('gives a document the same bytes as the first and as the last of many', async () => {
    const first = await renderPaper(paperOf('special office conduct zone Łódź', 1));
    for (const [index, words] of TEXTS.entries()) await renderPaper(paperOf(words, index));
    expect(Buffer.compare(first, await renderPaper(paperOf('special office conduct zone Łódź', 1)))).toBe(0);
  });
});
