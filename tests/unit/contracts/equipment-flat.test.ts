import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { modelSchema, modelToJson } from '#lib/contracts/equipment.ts';
import { columnName, fieldsOf } from '#lib/contracts/equipment-fields.ts';
import { flatOf, readFlat } from '#lib/contracts/equipment-flat.ts';
import { ROLES, type Role } from '#lib/equipment/model.ts';
import { demoModels } from '#seeds/load.ts';

const MODELS = demoModels();
const sample = (role: Role) => {
  const model = MODELS.find((one) => one.role === role);
  if (model === undefined) throw new Error(`The catalogue holds no ${role}.`);
  return flatOf(modelToJson(model), 'EUR');
};
const told = (read: ReturnType<typeof readFlat>) => (read.ok ? [] : read.problems.map(({ sentence }) => sentence));

/** Paths of all leaves of a JSON schema; lists of things are one leaf, lists of gears are walked. */
function leavesOf(schema: unknown, path: readonly string[] = []): readonly string[] {
  const node = schema as {
    readonly properties?: Readonly<Record<string, unknown>>;
    readonly anyOf?: readonly unknown[];
    readonly oneOf?: readonly unknown[];
    readonly items?: unknown;
    readonly type?: unknown;
  };
  if (node.type === 'null') return [];
  const several = node.oneOf ?? node.anyOf;
  if (several) return [...new Set(several.flatMap((one) => leavesOf(one, path)))];
  if (node.properties && !('gender' in node.properties))
    return Object.entries(node.properties).flatMap(([key, below]) => leavesOf(below, [...path, key]));
  if (path.at(-1) === 'gears' && node.items) return leavesOf(node.items, [...path, '0']);
  return [path.join('.')];
}

describe('fields of a model', () => {
  const schema = z.toJSONSchema(modelSchema, { io: 'input' }) as { readonly oneOf: readonly unknown[] };

  it.each(ROLES)('are the leaves of the schema, no more and no less: %s', (role) => {
    const own = schema.oneOf[ROLES.indexOf(role)];
    const leaves = leavesOf(own).filter((path) => path !== 'role');
    const fields = fieldsOf(role, 'EUR').map(({ path }) => path);
    expect(fields.filter((path) => !/gears\.[1-9]/.test(path)).toSorted()).toEqual([...leaves].toSorted());
    expect(leaves.length).toBeGreaterThan(18);
  });

  it.each(ROLES)('have words, a unit or choices, and a column name of their own: %s', (role) => {
    const fields = fieldsOf(role, 'EUR');
    expect(new Set(fields.map(columnName)).size).toBe(fields.length);
    for (const field of fields) expect(field.help, field.path).toMatch(/^[A-Z].*[.5]$/);
  });

  it('of the whole demo catalogue are plausible and read back as the same model', () => {
    for (const model of MODELS) {
      const json = modelToJson(model);
      const read = readFlat(flatOf(json, 'EUR'), { role: model.role, currency: 'EUR' });
      expect(told(read), model.number).toEqual([]);
      expect(read.ok && read.json).toEqual(json);
    }
    expect(MODELS.length).toBeGreaterThan(100);
  });
});

describe('a model typed field by field', () => {
  it('takes a quantity in another unit', () => {
    const read = readFlat(
      { ...sample('head'), 'facts.height_mm': '8 in', mass_kg: '10 lb' },
      { role: 'head', currency: 'EUR' },
    );
    expect(read.ok && read.json).toMatchObject({ mass_kg: 4.5359237, facts: { height_mm: 203.2 } });
  });

  it.each<[Role, Record<string, string>, string]>([
    ['head', { 'facts.ratio': '' }, 'Ratio is missing.'],
    ['head', { 'facts.ratio': '0' }, 'Ratio is 0, and plausible is 0.1 to 200.'],
    [
      'head',
      { 'facts.ratio': 'three' },
      'Ratio “three” is not readable: write a number with a point as its decimal mark.',
    ],
    ['head', { number: 'head 7' }, 'Number is not of the form D-123.'],
    ['head', { 'facts.kind': 'open-centre', 'facts.bore_mm': '' }, 'Bore is missing: an open-centre head has a bore.'],
    ['drive', { 'facts.gears.0.rated_torque_nm': '9000' }, 'Gear 1 rated torque is above the stall torque.'],
    ['drive', { 'facts.power.kind': '' }, 'Power source is missing.'],
    [
      'drive',
      { 'facts.power.tank_l': '3' },
      'Tank belongs to power source petrol: leave it empty where power source is battery.',
    ],
    ['drive', { 'facts.hold_to_run': 'perhaps' }, 'Hold to run is neither yes nor no.'],
    [
      'drive',
      { 'rates.day_minor': '34,5' },
      'Day rate is no amount of EUR: write digits and a point, for example 34.50.',
    ],
    [
      'drive',
      { 'facts.output': 'square 21 male' },
      'Output coupling is none of the couplings of the house: square 20 male, house spline 30 female and so on.',
    ],
    ['restraint', { 'facts.needs': 'structure; moon' }, 'Needs on site holds “moon”, which is none of '],
    [
      'adapter',
      { 'facts.sockets': 'square 32' },
      'Sockets is not readable: write shape, size across flats / slack: square 32 / 2.',
    ],
  ])('says what is wrong with a %s: %o', (role, change, sentence) => {
    const sentences = told(readFlat({ ...sample(role), ...change }, { role, currency: 'EUR' }));
    expect(
      sentences.some((one) => one.startsWith(sentence)),
      sentences.join(' | '),
    ).toBe(true);
  });
});
