import { describe, expect, it } from 'vitest';
import writeExcelFile from 'write-excel-file/node';
import { readTables } from '#lib/intake/read-table.ts';
import { LIMITS } from '#lib/kernel/limits.ts';
import { textCell, workbookFile, zipFile } from '#tests/support/papers/zip-file.ts';

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

async function rowsOf(bytes: Uint8Array, fileName = 'list.csv'): Promise<readonly (readonly string[])[]> {
  const tables = await readTables({ bytes, fileName });
  if (!tables.ok) throw new Error(tables.reason.sentence);
  return tables.value[0]?.rows.map((row) => row.cells) ?? [];
}

async function refusal(bytes: Uint8Array): Promise<{ readonly code: string; readonly sentence: string }> {
  const tables = await readTables({ bytes, fileName: 'list.xls' });
  return tables.ok ? { code: 'read', sentence: '' } : tables.reason;
}

describe('texts', () => {
  const expected = [
    ['Tag', 'Size'],
    ['V-1', '100'],
  ];

  it.each([
    ['commas', 'Tag,Size\nV-1,100\n'],
    ['semicolons', 'Tag;Size\r\nV-1;100\r\n'],
    ['tabs', 'Tag\tSize\nV-1\t100'],
    ['pipes', 'Tag|Size\nV-1|100'],
    ['a mark of the encoding', '\ufeffTag,Size\nV-1,100\n'],
    ['a line that names the separator', 'sep=;\nTag;Size\nV-1;100\n'],
    ['trailing blank rows', 'Tag,Size\nV-1,100\n\n,\n'],
    ['old line ends', 'Tag,Size\rV-1,100\r'],
  ])('%s between cells are found', async (_name, text) => {
    expect(await rowsOf(utf8(text))).toEqual(expected);
  });

  it('decimal commas do not break a list with semicolons', async () => {
    expect(await rowsOf(utf8('Tag;Tiefe m;Druck bar\nS1;1,2;6,5\nS2;0,9;6,5\n'))).toEqual([
      ['Tag', 'Tiefe m', 'Druck bar'],
      ['S1', '1,2', '6,5'],
      ['S2', '0,9', '6,5'],
    ]);
  });

  it('a line break inside a quoted cell stays in the cell, and rows count as a spreadsheet counts', async () => {
    const tables = await readTables({
      bytes: utf8('Tag,Notes\nV-1,"first\nsecond"\nV-2,third\n'),
      fileName: 'a/b/list.csv',
    });
    expect(tables.ok && tables.value[0]).toMatchObject({
      name: 'list',
      rows: [{ row: 1 }, { row: 2, cells: ['V-1', 'first\nsecond'] }, { row: 3, cells: ['V-2', 'third'] }],
    });
  });

  it('a quotation mark that never closes loses no row and leaves a note', async () => {
    const tables = await readTables({ bytes: utf8('Tag,Size\nV-1,"6\nV-2,8"\nV-3,"10\n'), fileName: 'list.csv' });
    expect(tables.ok && tables.value[0]?.rows).toHaveLength(4);
    expect(tables.ok && tables.value[0]?.notes).toEqual([
      'A quotation mark is opened and never closed; quotation marks were read as plain text.',
    ]);
  });

  it('UTF-16 is read with its mark and without', async () => {
    const wide = new Uint8Array(Buffer.from('Größe,Tag\n100,S-1\n', 'utf16le'));
    const big = new Uint8Array(Buffer.from(wide).swap16());
    const want = [
      ['Größe', 'Tag'],
      ['100', 'S-1'],
    ];
    expect(await rowsOf(wide)).toEqual(want);
    expect(await rowsOf(new Uint8Array([0xff, 0xfe, ...wide]))).toEqual(want);
    expect(await rowsOf(new Uint8Array([0xfe, 0xff, ...big]))).toEqual(want);
    expect(await rowsOf(big)).toEqual(want);
  });

  it('Windows-1252 is read where the text is not UTF-8, with a note', async () => {
    const bytes = new Uint8Array([...utf8('Tag,Notes\nV-1,'), 0x64, 0xe9, 0x62, 0x69, 0x74, 0x20, 0xbd, 0x22, 0x0a]);
    const tables = await readTables({ bytes, fileName: 'list.csv' });
    expect(tables.ok && tables.value[0]?.rows[1]?.cells).toEqual(['V-1', 'débit ½"']);
    expect(tables.ok && tables.value[0]?.notes[0]).toContain('Windows-1252');
  });
});

describe('workbooks', () => {
  it('every sheet with something in it is offered, with its rows numbered as they stand', async () => {
    const bytes = workbookFile([
      {
        name: 'North',
        rows: `<row r="3">${textCell('A3', 'Tag')}${textCell('B3', 'Size')}</row><row r="5">${textCell('A5', 'V-1')}<c r="B5"><v>100</v></c></row>`,
      },
      { name: 'Empty', rows: '' },
      { name: 'South', rows: `<row r="1">${textCell('A1', 'Tag')}</row>` },
    ]);
    const tables = await readTables({ bytes, fileName: 'list.xlsx' });
    expect(tables.ok && tables.value.map((table) => table.name)).toEqual(['North', 'South']);
    expect(tables.ok && tables.value[0]?.rows[4]).toEqual({ row: 5, cells: ['V-1', '100'] });
  });

  it('a workbook written by another library is read: numbers, texts, dates and yes or no', async () => {
    const data = [
      [{ value: 'Tag' }, { value: 'Size' }, { value: 'Last operated' }, { value: 'Locked' }],
      [
        { value: 'V-1' },
        { value: 152.4 },
        { value: new Date(Date.UTC(2021, 4, 3)), format: 'yyyy-mm-dd' },
        { value: true },
      ],
    ];
    const buffer = await writeExcelFile(data).toBuffer();
    expect(await rowsOf(new Uint8Array(buffer), 'x.xlsx')).toEqual([
      ['Tag', 'Size', 'Last operated', 'Locked'],
      ['V-1', '152.4', '2021-05-03', 'yes'],
    ]);
  });

  it('a formula gives the value it last showed and is never worked out', async () => {
    const rows = `<row r="1">${textCell('A1', 'Size')}</row><row r="2"><c r="A2"><f>1+1</f><v>77</v></c></row><row r="3"><c r="A3"><f>WEBSERVICE("x")</f></c></row>`;
    expect(await rowsOf(workbookFile([{ name: 'S', rows }]))).toEqual([['Size'], ['77']]);
  });
});

describe('what is no list', () => {
  it.each<readonly [string, string, Uint8Array]>([
    ['file-empty', 'an empty file', new Uint8Array()],
    ['file-empty', 'blank cells alone', utf8(' , ,\n,,\n')],
    ['file-too-large', 'more than the limit', new Uint8Array(LIMITS.list_bytes + 1)],
    ['file-is-html', 'a web page called .xls', utf8('<html><body><table><tr><td>Tag</td></tr></table></body></html>')],
    ['file-is-html', 'a web page with a mark', utf8('\ufeff  <!DOCTYPE html><p>')],
    [
      'file-is-xml-workbook',
      'a workbook as XML',
      utf8('<?xml version="1.0"?><Workbook xmlns="urn:schemas-microsoft-com:office:spreadsheet"/>'),
    ],
    ['file-is-xml', 'another XML', utf8('<?xml version="1.0"?><valves/>')],
    [
      'file-is-old-workbook',
      'an old workbook',
      new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, ...Array.from({ length: 600 }, () => 0)]),
    ],
    [
      'file-is-protected',
      'a workbook behind a password',
      new Uint8Array([
        0xd0,
        0xcf,
        0x11,
        0xe0,
        0xa1,
        0xb1,
        0x1a,
        0xe1,
        9,
        9,
        ...Buffer.from('EncryptedPackage', 'utf16le'),
        0,
      ]),
    ],
    ['file-is-pdf', 'a PDF', utf8('%PDF-1.7 …')],
    ['file-is-picture', 'a picture', new Uint8Array([0x89, 0x50, 0x4e, 0x47, 13, 10])],
    ['file-is-archive', 'a compressed file', new Uint8Array([0x1f, 0x8b, 8, 0])],
    ['file-is-document', 'a text document', utf8('{\\rtf1 valves}')],
    ['file-is-binary', 'a program', new Uint8Array([0x7f, 0x45, 0x4c, 0x46, 2, 1, 1])],
    [
      'file-is-binary',
      'random bytes',
      new Uint8Array(Array.from({ length: 4000 }, (_unused, index) => (index * 7919 + (index >> 3) * 31) % 32)),
    ],
    ['file-is-archive', 'an archive of pictures', zipFile([{ name: 'a.png', data: utf8('x') }])],
    [
      'file-is-open-document',
      'an OpenDocument sheet',
      zipFile([
        { name: 'mimetype', data: utf8('x') },
        { name: 'content.xml', data: utf8('<x/>') },
      ]),
    ],
    ['file-is-binary-workbook', 'a binary workbook', zipFile([{ name: 'xl/workbook.bin', data: utf8('x') }])],
    ['file-is-document', 'a text document as archive', zipFile([{ name: 'word/document.xml', data: utf8('<x/>') }])],
    [
      'file-is-protected',
      'an archive behind a password',
      zipFile([{ name: 'xl/workbook.xml', data: utf8('x'), encrypted: true }]),
    ],
    ['file-broken', 'half a workbook', workbookFile([{ name: 'S', rows: '' }]).subarray(0, 300)],
    [
      'file-broken',
      'a workbook whose sheet is no XML',
      zipFile([
        { name: 'xl/workbook.xml', data: utf8('<workbook') },
        { name: 'xl/worksheets/sheet1.xml', data: utf8('<<<') },
      ]),
    ],
    ['file-broken', 'two letters', utf8('PK\u0003\u0004')],
  ])('%s: %s', async (code, _what, bytes) => {
    const reason = await refusal(bytes);
    expect(reason.code).toBe(code);
    expect(reason.sentence).toMatch(/^The |^There /);
    expect(reason.sentence.split(/[.;] /).length, 'what it is, and what to do').toBeGreaterThanOrEqual(2);
  });

  it('a workbook that would unpack past the limit is refused by its directory alone', async () => {
    const bytes = workbookFile([{ name: 'S', rows: '', claimed: LIMITS.workbook_unpacked_bytes + 1 }]);
    const reason = await refusal(bytes);
    expect(reason.code).toBe('file-unpacks-too-large');
    expect(reason.sentence).toBe(
      'The workbook would unpack to 200 MB, which is more than is opened (200 MB). Copy the list alone into a new workbook, or save it as CSV.',
    );
  });

  it('a workbook whose directory lies about its size is stopped while unpacking', async () => {
    const rows = ' '.repeat(LIMITS.workbook_unpacked_bytes + 1);
    const bytes = workbookFile([{ name: 'S', rows, claimed: 1000 }]);
    expect(bytes.length).toBeLessThan(LIMITS.list_bytes);
    expect(await refusal(bytes)).toMatchObject({ code: 'file-unpacks-too-large' });
  });

  it('a sheet whose only cell lies in the far corner is refused, not filled up', async () => {
    expect(
      await refusal(workbookFile([{ name: 'S', rows: `<row r="1048576">${textCell('XFD1048576', 'x')}</row>` }])),
    ).toMatchObject({ code: 'too-many-rows' });
    expect(
      await refusal(workbookFile([{ name: 'S', rows: `<row r="1">${textCell('XFD1', 'x')}</row>` }])),
    ).toMatchObject({ code: 'too-many-columns' });
  });

  it('too many rows and too many columns name the limit', async () => {
    const rows = await refusal(utf8(`Tag\n${'V\n'.repeat(LIMITS.list_rows + 31)}`));
    expect(rows).toEqual({
      code: 'too-many-rows',
      sentence: 'The list has 20032 rows; at most 20000 are taken at once. Split it into several lists.',
    });
    const columns = await refusal(utf8(`${'a,'.repeat(LIMITS.list_columns)}z\n1\n`));
    expect(columns).toEqual({
      code: 'too-many-columns',
      sentence: 'The list has 201 columns; at most 200 are read. Copy the columns that matter into a new sheet.',
    });
    expect(await refusal(utf8('V\n'.repeat(200_000)))).toMatchObject({ code: 'too-many-rows' });
  });
});
