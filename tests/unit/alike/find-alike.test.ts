import { describe, expect, it } from 'vitest';
import { editDistance } from '#lib/alike/edit-distance.ts';
import { findAlike, type Known, type Typed } from '#lib/alike/find-alike.ts';
import { nameKey } from '#lib/alike/name-key.ts';

const known = (id: number, name: string, more: Partial<Known> = {}): Known => ({
  id,
  name,
  emails: [],
  telephones: [],
  ...more,
});

const HOUSE: readonly Known[] = [
  known(1, 'Sallow Vale Water Board', {
    emails: ['distribution@sallow-vale.example'],
    telephones: ['0000 555 0311'],
  }),
  known(2, 'Brennock Tank Terminal Ltd'),
  known(3, 'Tamsin and Orde, contractors'),
  known(4, 'Émile Quoyle S.A.'),
];

const reasons = (typed: Typed, among = HOUSE) => findAlike({ typed, among }).map(({ id, reason }) => `${id} ${reason}`);

describe('a name as names are compared', () => {
  it.each([
    ['Brennock Tank Terminal Ltd.', 'brennock tank terminal'],
    ['BRENNOCK  TANK-TERMINAL, B.V.', 'brennock tank terminal'],
    ['Émile Quoyle S.A.', 'emile quoyle'],
    ['Tamsin & Orde', 'tamsin and orde'],
    ['The Company', 'the company'],
    ['O’Dell’s Straßenbau', 'odells strassenbau'],
    ['', ''],
  ])('%s', (name, key) => {
    expect(nameKey(name)).toBe(key);
  });
});

describe('letters that differ', () => {
  it.each([
    ['', 'abc', 3],
    ['kitten', 'sitting', 3],
    ['brennock', 'brenonck', 1],
    ['sallow', 'sallow', 0],
    ['ca', 'abc', 3],
  ])('%s and %s', (a, b, distance) => {
    // kitten and sitting: the example that textbooks give for this distance; from memory.
    expect(editDistance({ a, b, limit: 5 })).toBe(distance);
    expect(editDistance({ a: b, b: a, limit: 5 })).toBe(distance);
  });

  it('are not counted beyond the limit', () => {
    expect(editDistance({ a: 'water board', b: 'tank terminal', limit: 2 })).toBe(3);
  });
});

describe('who is here already', () => {
  it('is the same name in another company form, in other capitals, or in another order', () => {
    expect(reasons({ name: 'brennock tank terminal b.v.' })).toEqual(['2 same-name']);
    expect(reasons({ name: 'Emile Quoyle' })).toEqual(['4 same-name']);
    expect(reasons({ name: 'Contractors Orde and Tamsin' })).toEqual(['3 same-name']);
  });

  it('is nearly the same name with a slip or two', () => {
    expect(reasons({ name: 'Salow Vale Watre Board' })).toEqual(['1 nearly-same-name']);
    expect(reasons({ name: 'Sallowvale Water Board' })).toEqual(['1 nearly-same-name']);
  });

  it('is found while the name is still being typed', () => {
    expect(reasons({ name: 'Sall' })).toEqual(['1 begins-the-same']);
    expect(reasons({ name: 'Sal' })).toEqual([]);
  });

  it('is whoever has the telephone number, whatever stands before it', () => {
    expect(reasons({ telephone: '+99 (0)555-0399' })).toEqual([]);
    expect(reasons({ telephone: '+99 00 555 0311' })).toEqual(['1 same-telephone']);
    expect(reasons({ telephone: '0311' })).toEqual([]);
  });

  it('is whoever has the address of mail, or its domain where few share it', () => {
    expect(reasons({ email: 'Distribution@Sallow-Vale.example' })).toEqual(['1 same-email']);
    expect(reasons({ email: 'pumps@sallow-vale.example' })).toEqual(['1 same-mail-domain']);
    const many = [1, 2, 3].map((id) => known(id, `House ${id}`, { emails: [`h${id}@post.example`] }));
    expect(reasons({ email: 'new@post.example' }, many)).toEqual([]);
  });

  it('is nobody for another name', () => {
    expect(reasons({ name: 'Upper Lathe Dam Trust' })).toEqual([]);
    expect(reasons({})).toEqual([]);
  });

  it('comes with the strongest reason first and never more than five', () => {
    const many = Array.from({ length: 8 }, (_unused, index) => known(index, `Harrow Works ${index}`));
    expect(reasons({ name: 'Harrow Works 3' }, many)[0]).toBe('3 same-name');
    expect(reasons({ name: 'Harrow Works 3' }, many)).toHaveLength(5);
  });
});
