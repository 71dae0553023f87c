import { describe, expect, it } from 'vitest';
import { LABELS_A_SHEET, type Label, type LabelSheet } from '#lib/documents/labels/label-sheet.ts';
import { bayCode, modelCode, readScan } from '#lib/stock/scan-code.ts';
import { drawLabels } from '#lib/workers/draw-paper.ts';
import { readPrintedBarcodes } from '#tests/support/papers/read-barcodes.ts';
import { readPdf } from '#tests/support/papers/read-pdf.ts';

const label = (code: string, headline = code): Label => ({
  code,
  headline,
  lines: ['Battery drive, light, two gears', 'VEN A01'],
  corner: 'Unit · Vennick Tidegate Hire',
});

const sheetOf = (labels: readonly Label[], skip = 0): LabelSheet => ({
  title: 'Labels',
  fixedAt: '2031-03-04',
  house: 'Vennick Tidegate Hire',
  skip,
  labels,
});

describe('a sheet of labels', () => {
  it('is read back from the rendered page: bars and square of every label say its code, and the code is understood', async () => {
    const codes = [
      'D112-01',
      'OLD-7-19B',
      bayCode({ depot: 'VEN', bay: 'A01' }),
      bayCode({ depot: 'HAL', bay: 'G-18' }),
      modelCode('S-303'),
      'CASE:B-00012/3',
      'B-00012',
    ];
    const printed = await readPrintedBarcodes(await drawLabels(sheetOf(codes.map((code) => label(code)))), 300);
    for (const format of ['Code128', 'QRCode'])
      expect(
        printed
          .filter((one) => one.format === format)
          .map(({ text }) => text)
          .sort(),
        format,
      ).toEqual(codes.toSorted());
    expect(printed.map(({ text }) => readScan(text).kind)).not.toContain('unknown');
  });

  it('a full sheet is read whole, what is used of the first is left out, and the next goes on', async () => {
    const codes = Array.from({ length: LABELS_A_SHEET }, (_, index) => `W233-${String(index + 1).padStart(2, '0')}`);
    const bytes = await drawLabels(
      sheetOf(
        codes.map((code) => label(code)),
        2,
      ),
    );
    const printed = await readPrintedBarcodes(bytes, 300);
    const bars = printed.filter(({ format }) => format === 'Code128');
    expect(bars.map(({ page }) => page)).toEqual([...Array(LABELS_A_SHEET - 2).fill(1), 2, 2]);
    expect(bars.map(({ text }) => text).sort()).toEqual(codes);
    expect(printed.filter(({ format }) => format === 'QRCode').length).toBe(LABELS_A_SHEET);
  });

  it('a code too long for bars stands in the square alone', async () => {
    const long = 'SERIAL-OF-ANOTHER-HOUSE-000000001';
    expect(await readPrintedBarcodes(await drawLabels(sheetOf([label(long)])), 300)).toEqual([
      { page: 1, format: 'QRCode', text: long },
    ]);
  });

  it('carries its words as text and has the same bytes whenever it is drawn', async () => {
    const sheet = sheetOf([label('D112-01'), label('D112-02', 'Łódź-2')]);
    const bytes = await drawLabels(sheet);
    const { words, text } = readPdf(bytes);
    for (const word of ['D112-01', 'Łódź-2', 'VEN']) expect(words, word).toContain(word);
    expect(text).toContain('Battery drive, light, two gears');
    expect(Buffer.compare(bytes, await drawLabels(sheet))).toBe(0);
  });
});
