import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { COLUMN_NAMES, type Column } from '#lib/intake/column-names.ts';
import { COLUMNS } from '#lib/intake/columns.ts';
import { proposeMapping } from '#lib/intake/propose-mapping.ts';
import type { RawTable } from '#lib/intake/raw-table.ts';
import { readLine } from '#lib/intake/read-line.ts';
import { readTables } from '#lib/intake/read-table.ts';
import { takeRows } from '#lib/intake/take-rows.ts';
import { formatQuantity } from '#lib/units/format-quantity.ts';
import { parseQuantityRange } from '#lib/units/parse-quantity.ts';
import { DIMENSIONS, UNITS } from '#lib/units/unit-table.ts';
import { holdsFor } from '#tests/support/checked-property.ts';
import { workbookFile } from '#tests/support/papers/zip-file.ts';

/** Words that lists really hold, to be cut up and joined with noise. */
const WORDS = [
  'DN150',
  '6"',
  '1 1/2"',
  '200X150',
  'PN16',
  '10.16',
  'Tr36x12(P6)',
  'Acme 1-1/2-4',
  '400-500',
  '~50',
  '<30',
  'NULL',
  '-',
  '1.234,5',
  '0,5',
  'gate',
  'Air valve',
  'Valve on 150mm not visible',
  'T off from 600',
  'total',
  '100 ft-lb',
  '°',
  '½',
  '\u0000',
  '\ud800',
  '9e999',
  '-0',
  '1/0',
  '10 000 bar',
  'Functional: 0; x',
  '::',
  '"',
];
const HEADERS = [
  ...COLUMNS.flatMap((spec) => [spec.label, spec.aliases[0] ?? spec.name]),
  '',
  'Foo',
  'Size (mm)',
  'Pressure [bar]',
  'Function o',
  'Pipe Diame',
  'x'.repeat(300),
];

const cell = fc.oneof(
  fc.constantFrom(...WORDS),
  fc.string({ unit: 'binary', maxLength: 30 }),
  fc.double().map(String),
  fc.array(fc.constantFrom(...WORDS), { maxLength: 4 }).map((words) => words.join(' ')),
);
const table: fc.Arbitrary<RawTable> = fc
  .tuple(
    fc.array(fc.constantFrom(...HEADERS), { minLength: 0, maxLength: 9 }),
    fc.array(fc.array(cell, { maxLength: 9 }), { maxLength: 12 }),
  )
  .map(([headers, rows]) => ({
    name: 'any',
    rows: [headers, ...rows].map((cells, index) => ({ row: index + 1, cells })),
    notes: [],
  }));

/** Every number anywhere in a value is finite, and every range is in order. */
function expectSound(value: unknown): void {
  if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
  if (typeof value !== 'object' || value === null) return;
  if ('low' in value && 'nominal' in value && 'high' in value)
    expect(Number(value.low) <= Number(value.nominal) && Number(value.nominal) <= Number(value.high)).toBe(true);
  if ('basis' in value && 'source' in value) expect(String(value.source).length).toBeGreaterThan(0);
  for (const inner of Object.values(value)) expectSound(inner);
}

describe('whatever the input', () => {
  it('any bytes are answered with tables or a refusal, never thrown over', async () => {
    let read = 0;
    let refused = 0;
    const start = fc.constantFrom(
      [],
      [0x50, 0x4b, 3, 4],
      [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1],
      [0xff, 0xfe],
      [0xef, 0xbb, 0xbf],
      [0x3c, 0x3f],
    );
    const bytes = fc.oneof(
      fc.tuple(start, fc.uint8Array({ maxLength: 400 })).map(([head, tail]) => new Uint8Array([...head, ...tail])),
      fc
        .array(fc.array(cell, { maxLength: 5 }), { maxLength: 8 })
        .map((rows) => new TextEncoder().encode(rows.map((cells) => cells.join(',')).join('\n'))),
    );
    await fc.assert(
      fc.asyncProperty(bytes, async (one) => {
        const tables = await readTables({ bytes: one, fileName: 'any.csv' });
        if (tables.ok) read += 1;
        else {
          refused += 1;
          expect(tables.reason.code).toMatch(/^(?:file|too)-/);
        }
      }),
      { seed: 20_260_401, numRuns: 600 },
    );
    console.info(`any bytes: ${read} read, ${refused} refused`);
    expect(Math.min(read, refused)).toBeGreaterThan(0);
  });

  it('a workbook with any byte of it changed is answered with tables or a refusal', async () => {
    const sound = workbookFile([{ name: 'S', rows: '<row r="1"><c r="A1"><v>100</v></c></row>' }]);
    let checked = 0;
    await fc.assert(
      fc.asyncProperty(fc.nat(sound.length - 1), fc.integer({ min: 0, max: 255 }), async (at, byte) => {
        const changed = sound.slice();
        changed[at] = byte;
        const tables = await readTables({ bytes: changed, fileName: 'any.xlsx' });
        expect(tables.ok || tables.reason.code.length > 0).toBe(true);
        checked += 1;
      }),
      { seed: 20_260_402, numRuns: 500 },
    );
    console.info(`changed workbooks: ${checked} of 500 cases checked`);
    expect(checked).toBeGreaterThan(0);
  });

  it('every row of any table ends up somewhere, once; tags are unique; every value is sound', () => {
    holdsFor({
      law: 'rows = lines + set aside + refused + blank',
      cases: table,
      runs: 1500,
      check: (one) => {
        const mapping = proposeMapping(one);
        const taken = takeRows({ table: one, mapping });
        const { rows, lines, setAside, refused, blank } = taken.counts;
        expect(lines + setAside + refused + blank).toBe(rows);
        expect(rows).toBe(one.rows.filter((row) => row.row > (mapping.headerRow ?? 0)).length);
        const refusals = taken.problems
          .filter((problem) => problem.severity === 'refused')
          .map((problem) => problem.row);
        const placed = [
          ...taken.lines.map((line) => line.row),
          ...taken.setAside.map((aside) => aside.row),
          ...refusals,
        ];
        expect(new Set(placed).size).toBe(placed.length);
        expect(placed.length + blank).toBe(rows);
        expect(new Set(taken.lines.map((line) => line.line.tag)).size).toBe(taken.lines.length);
        for (const line of taken.lines) expectSound(line.line);
        return lines > 0 ? undefined : false;
      },
    });
  });

  it('every text in every column gives a line, keeps its cells, and reads the same twice', () => {
    holdsFor({
      law: 'any cells give a line',
      cases: fc.dictionary(fc.constantFrom(...COLUMN_NAMES), cell, { maxKeys: 12 }),
      runs: 3000,
      check: (cells) => {
        const before = JSON.stringify(cells);
        const measured: readonly Column[] = ['size', 'turns'];
        const once = readLine({ row: 3, cells, measured });
        expect(JSON.stringify(cells)).toBe(before);
        expect(readLine({ row: 3, cells, measured })).toEqual(once);
        expectSound(once.line);
        for (const problem of once.problems) expect(problem.row).toBe(3);
        return Object.keys(cells).length > 0 ? undefined : false;
      },
    });
  });
});

describe('quantities', () => {
  it('what is printed in a unit reads back as what was printed', () => {
    holdsFor({
      law: 'a printed number with its unit reads back',
      cases: fc.tuple(
        fc.constantFrom(...UNITS.filter((unit) => unit.dimension !== 'ratio' && !/^[\d:]/.test(unit.names[0] ?? ''))),
        fc.integer({ min: 1, max: 99_999 }),
      ),
      check: ([unit, number]) => {
        const text = `${number / 100} ${unit.names[0]}`;
        const read = parseQuantityRange({ text, dimension: unit.dimension });
        expect(read.ok, text).toBe(true);
        const si = (number / 100 + (unit.offset ?? 0)) * unit.factor;
        if (read.ok)
          expect(Math.abs(read.value.nominal - si), text).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(si)));
      },
      runs: 1500,
    });
  });

  it('every unit name of the table reads as its own row', () => {
    for (const unit of UNITS) {
      for (const name of unit.names) {
        if (/^(?:1|:1|to 1|x|1\/min|1\/s)$/.test(name)) continue;
        const read = parseQuantityRange({ text: `3 ${name}`, dimension: unit.dimension });
        expect(read.ok ? read.value.nominal : read.reason.sentence, `3 ${name} as ${unit.dimension}`).toBeCloseTo(
          (3 + (unit.offset ?? 0)) * unit.factor,
          9,
        );
      }
    }
  });

  it('any text is a quantity in order or a refusal, and any number can be printed', () => {
    const dimensions = UNITS.map((unit) => unit.dimension);
    holdsFor({
      law: 'any text as a quantity',
      cases: fc.tuple(cell, fc.constantFrom(...dimensions), fc.double()),
      runs: 3000,
      check: ([text, dimension, number]) => {
        const read = parseQuantityRange({
          text,
          dimension,
          bareUnit: UNITS.find((unit) => unit.dimension === dimension)?.names[0] ?? '',
        });
        if (read.ok) expectSound(read.value);
        for (const system of ['si', 'us'] as const)
          expect(formatQuantity({ value: number, unit: DIMENSIONS[dimension], system })).not.toMatch(
            /NaN|undefined|Infinity/,
          );
        return read.ok ? undefined : false;
      },
    });
  });
});
