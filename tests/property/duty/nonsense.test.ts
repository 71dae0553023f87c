import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PLAUSIBLE } from '#lib/duty/plausible-values.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import { COLUMNS } from '#lib/intake/columns.ts';
import { readLine } from '#lib/intake/read-line.ts';
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import { holdsFor } from '#tests/support/checked-property.ts';
import { scheduleLines } from '#tests/support/lists/duty-arbitraries.ts';
import { dutyOf, SAID } from '#tests/support/lists/duty-lines.ts';
import { NUMBER_COLUMNS, withNumber } from '#tests/support/lists/number-columns.ts';

const impossible = fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, -1e9, 1e300, -1e300);
const anything = fc.oneof(impossible, fc.double(), fc.integer());
const columns = fc.uniqueArray(fc.constantFrom(...NUMBER_COLUMNS), { minLength: 1, maxLength: 8 });

function merged(line: ScheduleLine, parts: readonly Partial<ScheduleLine>[]): ScheduleLine {
  let whole = line;
  for (const part of parts) {
    whole = {
      ...whole,
      ...part,
      process: { ...whole.process, ...part.process },
      stem: { ...whole.stem, ...part.stem },
      torque: { ...whole.torque, ...part.torque },
      interface: { ...whole.interface, ...part.interface },
      place: { ...whole.place, ...part.place },
    };
  }
  return whole;
}

const nonsense = (column: keyof typeof PLAUSIBLE, ends: readonly [number, number, number]): Partial<ScheduleLine> =>
  withNumber(column, {
    low: ends[0],
    nominal: ends[1],
    high: ends[2],
    unit: PLAUSIBLE[column].unit,
    ...SAID,
  } as unknown as Known<Unit>);

const finite = (duty: ReturnType<typeof dutyOf>): boolean =>
  Number.isFinite(
    duty.opening.starting.high +
      duty.opening.running.low +
      duty.closing.starting.high +
      duty.closing.running.low +
      duty.turns.high +
      duty.opening.neverExceed.torque.low +
      duty.closing.neverExceed.torque.low +
      duty.maxInputSpeed.high,
  );

describe('nonsense', () => {
  it('any number that cannot be gets a finding that names its column, and the line stays', () => {
    holdsFor({
      law: 'nonsense in any columns is named',
      runs: 600,
      cases: fc.tuple(scheduleLines, columns, impossible),
      check: ([line, picked, value]) => {
        const broken = merged(
          line,
          picked.map((column) => nonsense(column, [value, value, value])),
        );
        const duty = dutyOf(broken);
        const named = duty.findings.filter(({ id }) => id === 'value-set-aside').flatMap(({ about }) => about);
        for (const column of picked) expect(named).toContain(column);
        expect(duty.tag).toBe(broken.tag);
        expect(finite(duty)).toBe(true);
        return undefined;
      },
    });
  });

  it('any three ends whatever never throw and never leave a number that is none', () => {
    holdsFor({
      law: 'any ends are answered',
      runs: 600,
      cases: fc.tuple(scheduleLines, columns, anything, anything, anything),
      check: ([line, picked, low, nominal, high]) => {
        const duty = dutyOf(
          merged(
            line,
            picked.map((column) => nonsense(column, [low, nominal, high])),
          ),
        );
        expect(finite(duty)).toBe(true);
        return undefined;
      },
    });
  });

  it('any text in any cells of a list is read to a line with a duty; a number that is dropped is told', () => {
    const text = fc.oneof(
      fc.double().map(String),
      fc.integer().map((n) => `${n} bar`),
      fc.constantFrom(
        '-100',
        '0',
        '3 m',
        '900 °C',
        '10 000 bar',
        'NaN',
        '1e99',
        '-5 mm',
        '99999',
        'Tr36x6',
        'DN 15',
        '∞',
      ),
      fc.string({ maxLength: 12 }),
    );
    const cells = fc.dictionary(fc.constantFrom(...COLUMNS.map(({ name }) => name)), text, { minKeys: 1, maxKeys: 12 });
    holdsFor({
      law: 'any cells are answered',
      runs: 600,
      cases: cells,
      check: (picked) => {
        const { line, problems } = readLine({ row: 3, cells: picked });
        const duty = dutyOf(line);
        expect(finite(duty)).toBe(true);
        const named = duty.findings.filter(({ id }) => id === 'value-set-aside').flatMap(({ about }) => about);
        for (const { code, column } of problems)
          if (code === 'value-implausible' || code === 'value-unreadable') expect(named).toContain(column);
        return undefined;
      },
    });
  });
});
