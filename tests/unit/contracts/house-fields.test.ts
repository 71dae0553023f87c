import { describe, expect, it } from 'vitest';
import { housePricesSchema, houseStandingSchema } from '#lib/contracts/house.ts';
import { type HouseField, PRICE_SECTIONS, STANDING_SECTIONS } from '#lib/contracts/house-fields.ts';
import { RULE_KIND_SPECS, wrongRuleValue } from '#lib/contracts/house-rule-values.ts';
import { HOUSE_RULE_KINDS } from '#lib/duty/site.ts';
import { toMinor } from '#lib/money/money.ts';
import { raiseRate } from '#lib/pricing/raise-rates.ts';
import { demoHouseJson } from '#seeds/load.ts';

const house = Object(demoHouseJson());

/** Paths of a value down to texts, numbers and lists; a list of things counts its own keys. */
function leavesOf(value: unknown, path = ''): readonly string[] {
  if (Array.isArray(value) && value.some((one) => typeof one === 'object'))
    return [...new Set(value.flatMap((one: unknown) => leavesOf(one, `${path}[]`)))];
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return [path];
  return Object.entries(value).flatMap(([key, below]) => leavesOf(below, path === '' ? key : `${path}.${key}`));
}

const pathsOf = (fields: readonly HouseField[], under = ''): readonly string[] =>
  fields.flatMap((field) =>
    field.kind === 'rows' ? pathsOf(field.columns, `${under}${field.path}[].`) : [`${under}${field.path}`],
  );

describe('the house as a form', () => {
  it.each([
    ['standing', STANDING_SECTIONS, Object.keys(houseStandingSchema.shape)],
    ['prices', PRICE_SECTIONS, Object.keys(housePricesSchema.shape)],
  ] as const)('has a field for every leaf and none besides: %s', (_name, sections, keys) => {
    const part = Object.fromEntries(keys.map((key) => [key, Reflect.get(house, key)]));
    const fields = sections.flatMap((section) => pathsOf(section.fields));
    expect([...fields].sort()).toEqual([...leavesOf(part)].sort());
  });
});

describe('values of house rules', () => {
  it('every kind has its words, and reads what it offers', () => {
    expect(RULE_KIND_SPECS.map(({ kind }) => kind)).toEqual([...HOUSE_RULE_KINDS]);
    for (const { kind, choices, number } of RULE_KIND_SPECS) {
      for (const value of choices) expect(wrongRuleValue({ kind, value })).toBeNull();
      if (number === null) {
        expect(wrongRuleValue({ kind, value: 'nonsense' })).toMatch(/^is none of /);
        continue;
      }
      const { low, high, unit } = number;
      for (const value of [`${low}`, `${high} ${unit}`]) expect(wrongRuleValue({ kind, value })).toBeNull();
      for (const value of [`${high + 1}`, `${low} furlong`, 'some'])
        expect(wrongRuleValue({ kind, value })).toBe(`is not a number of ${unit} from ${low} to ${high}`);
    }
  });
});

describe('a raise of rates', () => {
  it.each([
    [3400, 4, 50, 3550],
    [3400, 0, 1, 3400],
    [3400, -10, 100, 3100],
    [0, 50, 50, 0],
    [10, -50, 50, 50],
  ])('of %i by %i %% in steps of %i is %i', (rate, percent, step_minor, raised) => {
    expect(raiseRate(toMinor(rate), { percent, step_minor })).toBe(raised);
  });
});
