import { crc32, deflateRawSync } from 'node:zlib';

/** One part of an archive; `claimed` lets its directory lie about the unpacked size. */
export interface ZipPart {
  readonly name: string;
  readonly data: Uint8Array;
  readonly claimed?: number;
  readonly encrypted?: boolean;
}

/** Builds a zip archive by hand (PKWARE APPNOTE.TXT 6.3.10, sections 4.3.7, 4.3.12, 4.3.16), so that tests can make broken ones. */
export function zipFile(parts: readonly ZipPart[]): Uint8Array {
  const locals: Buffer[] = [];
  const directory: Buffer[] = [];
  let offset = 0;
  for (const part of parts) {
    const packed = deflateRawSync(part.data);
    const name = Buffer.from(part.name);
    const fields = Buffer.alloc(22);
    fields.writeUInt16LE(part.encrypted ? 1 : 0, 0);
    fields.writeUInt16LE(8, 2);
    fields.writeUInt32LE(crc32(part.data), 8);
    fields.writeUInt32LE(packed.length, 12);
    fields.writeUInt32LE(part.claimed ?? part.data.length, 16);
    fields.writeUInt16LE(name.length, 20);
    const local = Buffer.concat([Buffer.from([0x50, 0x4b, 3, 4, 20, 0]), fields, Buffer.alloc(2), name, packed]);
    const tail = Buffer.alloc(16);
    tail.writeUInt32LE(offset, 12);
    directory.push(
      Buffer.concat([
        Buffer.from([0x50, 0x4b, 1, 2, 20, 0, 20, 0]),
        fields,
        Buffer.alloc(2),
        tail.subarray(0, 2),
        tail.subarray(2, 4),
        tail.subarray(4, 6),
        tail.subarray(6, 10),
        tail.subarray(12, 16),
        name,
      ]),
    );
    locals.push(local);
    offset += local.length;
  }
  const entries = Buffer.concat(directory);
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(parts.length, 8);
  end.writeUInt16LE(parts.length, 10);
  end.writeUInt32LE(entries.length, 12);
  end.writeUInt32LE(offset, 16);
  return new Uint8Array(Buffer.concat([...locals, entries, end]));
}

const WORKBOOK = `<?xml version="1.0"?><workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets>`;
const RELATIONS = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';

/** A workbook from the XML of its sheets' rows, for cases that no spreadsheet program would write. */
export function workbookFile(
  sheets: readonly { readonly name: string; readonly rows: string; readonly claimed?: number }[],
  extra: readonly ZipPart[] = [],
): Uint8Array {
  const text = (content: string): Uint8Array => new TextEncoder().encode(content);
  const list = sheets
    .map((sheet, index) => `<sheet name="${sheet.name}" sheetId="${index + 1}" r:id="rId${index + 1}"/>`)
    .join('');
  const relations = sheets
    .map(
      (_sheet, index) =>
        `<Relationship Id="rId${index + 1}" Type="${RELATIONS}/worksheet" Target="worksheets/sheet${index + 1}.xml"/>`,
    )
    .join('');
  return zipFile([
    {
      name: '[Content_Types].xml',
      data: text('<?xml version="1.0"?><Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>'),
    },
    {
      name: '_rels/.rels',
      data: text(
        `<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="${RELATIONS}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
      ),
    },
    { name: 'xl/workbook.xml', data: text(`${WORKBOOK}${list}</sheets></workbook>`) },
    {
      name: 'xl/_rels/workbook.xml.rels',
      data: text(
        `<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${relations}</Relationships>`,
      ),
    },
    ...sheets.map((sheet, index) => ({
      name: `xl/worksheets/sheet${index + 1}.xml`,
      data: text(
        `<?xml version="1.0"?><worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>${sheet.rows}</sheetData></worksheet>`,
      ),
      ...(sheet.claimed === undefined ? {} : { claimed: sheet.claimed }),
    })),
    ...extra,
  ]);
}

/** A cell with text in it. */
export function textCell(place: string, text: string): string {
  return `<c r="${place}" t="inlineStr"><is><t>${text}</t></is></c>`;
}
