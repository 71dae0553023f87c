import { describe, expect, it } from 'vitest';
import { readArguments } from '#lib/cli/arguments.ts';
import { leftOutLines } from '#lib/cli/left-out.ts';
import type { PartLeftOut } from '#lib/planning/leave-out-part.ts';

const LEFT: PartLeftOut = {
  part: 'D-1',
  carried: 2,
  used_for: ['A', 'B'],
  valves_lost: 0,
  cost_minor: 26_000,
  extra_cost_minor: 79.6,
  extra_hours: -0.01,
  extra_mass_kg: 1.25,
  instead: [
    { item: 'C-2', count: 1 },
    { item: 'D-9', count: 2 },
  ],
  is_exact: true,
};

const EURO = { currency: 'EUR', system: 'si' } as const;

describe('leftOutLines', () => {
  it('tells the mass in pounds where US customary units are asked for', () => {
    const kilograms = `${LEFT.extra_mass_kg.toFixed(1)} kg.`;
    const pounds = `${(LEFT.extra_mass_kg / 0.45359237).toFixed(1)} lb.`;
    expect(leftOutLines(LEFT, EURO).join(' ')).toContain(kilograms);
    expect(leftOutLines(LEFT, { ...EURO, system: 'us' }).join(' ')).toContain(pounds);
  });

  it('tells what is carried and for what, the difference, what comes instead, and that it is exact', () => {
    expect(leftOutLines(LEFT, EURO)).toEqual([
      'The plan carries 2 × D-1, for A, B.',
      'Without it as many valves are served: hire and time come to 0.80 EUR more, +0.0 h, +1.3 kg.',
      'Instead it would carry 1 × C-2, 2 × D-9.',
      'Both plans are proven best, so the difference is exact.',
    ]);
  });

  it('tells valves that are lost, and calls a difference of unproven plans an estimate', () => {
    const lost = { ...LEFT, valves_lost: 1, extra_cost_minor: -500, extra_hours: -2.5, instead: [], is_exact: false };
    expect(leftOutLines(lost, { currency: 'JPY', system: 'si' }).slice(1)).toEqual([
      'Without it 1 valve fewer would be served: hire and time come to 500 JPY less, −2.5 h, +1.3 kg.',
      'Not both plans are proven best, so the difference is an estimate.',
    ]);
  });

  it('names eight lines and counts the rest', () => {
    const [first] = leftOutLines({ ...LEFT, used_for: Array.from({ length: 11 }, (_, index) => `V${index}`) }, EURO);
    expect(first).toMatch(/V7 and 3 lines more\.$/);
  });
});

describe('the word --without', () => {
  it('needs the part that is to be left out', () => {
    const read = readArguments(['why', 'list.csv', 'V-1', '--without']);
    expect(read.ok ? '' : read.reason.sentence).toMatch(/needs the PART/);
    expect(readArguments(['why', 'list.csv', 'V-1', 'D-1', '--without'])).toMatchObject({
      ok: true,
      value: { without: true, part: 'D-1' },
    });
  });
});
