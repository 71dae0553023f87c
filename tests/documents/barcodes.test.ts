import { describe, expect, it } from 'vitest';
import { packingPaper } from '#lib/documents/papers/packing-paper.ts';
import { drawPaper } from '#lib/workers/draw-paper.ts';
import { readPrintedBarcodes } from '#tests/support/papers/read-barcodes.ts';
import { SAMPLE_PACKING } from '#tests/support/papers/sample-plan.ts';

describe('the barcode of a packing list', () => {
  it('is read back from the rendered page as the number of the booking', async () => {
    const printed = await readPrintedBarcodes(await drawPaper(packingPaper(SAMPLE_PACKING)));
    expect(printed).toEqual([{ page: 1, format: 'Code128', text: SAMPLE_PACKING.bookingNumber }]);
  });

  it('is not read where there is none', async () => {
    const paper = packingPaper(SAMPLE_PACKING);
    const without = { ...paper, blocks: paper.blocks.filter(({ kind }) => kind !== 'barcode') };
    expect(await readPrintedBarcodes(await drawPaper(without))).toEqual([]);
  });
});
