import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessDuty } from '#lib/duty/assess-duty.ts';
import { knowValve } from '#lib/found/known-valve.ts';
import { readFound } from '#lib/found/read-found.ts';
import { tagKey } from '#lib/found/valve-identity.ts';
import { readLine } from '#lib/intake/read-line.ts';
import { PLAIN_SITE } from '#tests/support/lists/duty-lines.ts';

const SEED = 20_300_304;
const { line } = readLine({ row: 1, cells: { tag: 'V1', valve_type: 'gate', size: 'DN 150', rating: 'PN 16' } });

function dutyAfter(read: {
  readonly torque: string;
  readonly column: 'starting_torque' | 'highest_torque';
  readonly on: string;
}) {
  const cells = { tag: 'V1', by: 'T. Marl', visited_on: read.on, [read.column]: read.torque };
  const { found } = readFound({ row: 1, cells, under: 'enquiry E-00001', today: '2030-03-01' });
  if (found === null) return null;
  const known = knowValve({ line, records: [found], startsOn: PLAIN_SITE.startsOn });
  return assessDuty({ line: known.line, site: PLAIN_SITE });
}

describe('laws of earlier visits', () => {
  it('an older reading never gives a narrower range, holds what was read, and leaves what the valve bears alone unless it was read within a year', () => {
    let checked = 0;
    const plain = assessDuty({ line, site: PLAIN_SITE });
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 900 }),
        fc.constantFrom('starting_torque' as const, 'highest_torque' as const),
        fc.integer({ min: 0, max: 30 }),
        fc.integer({ min: 0, max: 30 }),
        (torque, column, a, b) => {
          const [younger, older] = [Math.min(a, b), Math.max(a, b)].map((years) =>
            dutyAfter({ torque: `${torque} N·m`, column, on: `${2030 - years}-01-20` }),
          );
          if (!younger || !older) throw new Error('A plain reading was refused.');
          const [near, far] = [younger.opening.starting, older.opening.starting];
          expect(far.high - far.low).toBeGreaterThanOrEqual(near.high - near.low - 1e-9);
          for (const range of [near, far]) {
            expect(range.low).toBeLessThanOrEqual(torque + 1e-9);
            expect(range.high).toBeGreaterThanOrEqual(torque - 1e-9);
          }
          if (column === 'highest_torque') expect(older.opening.neverExceed).toEqual(plain.opening.neverExceed);
          checked += 1;
        },
      ),
      { seed: SEED, numRuns: 300 },
    );
    console.info(`${checked} pairs of visits`);
    expect(checked).toBe(300);
  });

  it('tags written alike are one valve, and no two rows of digits fall together', () => {
    let checked = 0;
    const part = fc.oneof(fc.stringMatching(/^[A-Z]{1,3}$/), fc.stringMatching(/^[0-9]{1,4}$/));
    fc.assert(
      fc.property(
        fc.array(part, { minLength: 1, maxLength: 4 }),
        fc.array(part, { minLength: 1, maxLength: 4 }),
        fc.constantFrom('-', ' ', '.', '/', '–'),
        (one, other, sign) => {
          expect(tagKey(one.join(sign).toLowerCase())).toBe(tagKey(one.join('-')));
          expect(tagKey(tagKey(one.join('-')))).toBe(tagKey(one.join('-')));
          const digits = (tag: readonly string[]) => (tag.join('-').match(/\d+/g) ?? []).join('|');
          if (digits(one) !== digits(other)) expect(tagKey(one.join('-'))).not.toBe(tagKey(other.join('-')));
          checked += 1;
        },
      ),
      { seed: SEED, numRuns: 2000 },
    );
    console.info(`${checked} pairs of tags`);
    expect(checked).toBe(2000);
  });
});
