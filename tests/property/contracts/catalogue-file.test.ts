import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ModelJson, modelSchema, modelToJson } from '#lib/contracts/equipment.ts';
import { columnName, fieldsOf } from '#lib/contracts/equipment-fields.ts';
import { readFlat } from '#lib/contracts/equipment-flat.ts';
import { readField, writeField } from '#lib/contracts/field-text.ts';
import { readCsv, writeCsv } from '#lib/services/csv-table.ts';
import { writeModels } from '#lib/services/equipment/catalogue-csv.ts';
import { demoModels } from '#seeds/load.ts';

const CURRENCY = 'EUR';
/** Letters that files stumble over: separators, quotes, formulas, line ends, other scripts. */
const NASTY = fc
  .array(
    fc.oneof(
      fc.constantFrom(',', ';', '"', "'", '\\', '=', '+', '-', '@', '\n', '\t', '|', '/', ' ', 'Ω', 'ł', '№', '½'),
      fc.string({ minLength: 1, maxLength: 3 }),
    ),
    { minLength: 1, maxLength: 8 },
  )
  .map((parts) => parts.join('').replace(/\r/g, '').trim())
  .filter((text) => text !== '');

/** Any text where the catalogue holds text, any socket, any list of numbers. */
const changed = fc.record({
  model: fc.constantFrom(...demoModels().map(modelToJson)),
  name: NASTY,
  marking: fc.option(NASTY),
  words: NASTY,
  money: fc.integer({ min: 0, max: 1_000_000 }),
  mass: fc.double({ min: 0.01, max: 400, noNaN: true }).map((value) => Number(value.toPrecision(9))),
});

function spoil({
  model,
  name,
  marking,
  words,
  money,
  mass,
}: typeof changed extends fc.Arbitrary<infer T> ? T : never): ModelJson {
  const json: ModelJson = structuredClone(model);
  Object.assign(json, { name, marking, mass_kg: mass, replacement_minor: money });
  if (json.role === 'adapter' && json.facts.sockets)
    json.facts.sockets = json.facts.sockets.map((socket) => ({ ...socket, shape: words }));
  if (json.role === 'accessory') json.facts.fits = [words, 'D-112'];
  if (json.role === 'drive') json.facts.gears = json.facts.gears.map((gear) => ({ ...gear, name: words }));
  return modelToJson(modelSchema.parse(json));
}

describe('a file of the catalogue', () => {
  it('that is written and read again holds the same models', () => {
    let checked = 0;
    fc.assert(
      fc.property(changed, (change) => {
        const json = spoil(change);
        const table = readCsv(writeModels([json], { role: json.role, currency: CURRENCY }));
        if (!table.ok) return expect.fail(table.reason.sentence);
        const fields = fieldsOf(json.role, CURRENCY);
        expect(table.value.columns).toEqual(fields.map(columnName));
        const flat = Object.fromEntries(fields.map(({ path }, index) => [path, table.value.rows[0]?.[index] ?? '']));
        const read = readFlat(flat, { role: json.role, currency: CURRENCY });
        expect(read.ok ? read.json : read.problems).toEqual(json);
        checked += 1;
      }),
      { numRuns: 600, seed: 20_260 },
    );
    console.info(`catalogue files: ${checked} models written and read again`);
    expect(checked).toBe(600);
  });

  it('loses no letter of any text, also of those that a spreadsheet takes for a formula', () => {
    let checked = 0;
    fc.assert(
      fc.property(fc.array(fc.tuple(NASTY, NASTY, NASTY), { minLength: 1, maxLength: 5 }), (rows) => {
        const read = readCsv(writeCsv({ columns: ['a', 'b', 'c'], rows }));
        expect(read.ok && read.value.rows).toEqual(rows.map((row) => [...row]));
        checked += 1;
      }),
      { numRuns: 600, seed: 7 },
    );
    console.info(`CSV tables: ${checked} written and read again`);
    expect(checked).toBe(600);
  });

  it('holds a curve as it was measured', () => {
    const field = fieldsOf('drive', CURRENCY).find(({ path }) => path === 'facts.gears.0.curve');
    if (field === undefined) return expect.fail('No field holds the curve of a gear.');
    const curve = [
      { torque_nm: 0, speed_rpm: 66 },
      { torque_nm: 28.5, speed_rpm: 41.25 },
      { torque_nm: 56, speed_rpm: 0 },
    ];
    const text = writeField(field, curve);
    expect(text).toBe('0 @ 66; 28.5 @ 41.25; 56 @ 0');
    expect(readField(field, text)).toEqual({ ok: true, value: curve });
  });
});
