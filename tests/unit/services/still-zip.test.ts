import { readSheet } from 'read-excel-file/node';
import { describe, expect, it } from 'vitest';
import writeExcelFile from 'write-excel-file/node';
import { stillZip } from '#lib/services/still-zip.ts';

const book = () => writeExcelFile([{ data: [[{ value: 'tag' }], [{ value: 12.5 }]], sheet: 'Lines' }]).toBuffer();

describe('an archive without the moment of its writing', () => {
  it('has the same bytes whenever it is written, where the archive as written has not', async () => {
    const one = await book();
    await new Promise((done) => setTimeout(done, 2100));
    const two = await book();
    expect(one.equals(two)).toBe(false);
    expect(stillZip(one).equals(stillZip(two))).toBe(true);
  });

  it('keeps its contents', async () => {
    expect(await readSheet(stillZip(await book()))).toEqual([['tag'], [12.5]]);
  });

  it('is refused where it is no archive', () => {
    expect(() => stillZip(Buffer.from('no archive, but long enough to be looked at'))).toThrow(
      'ends with its directory',
    );
  });
});
