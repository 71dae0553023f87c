import { describe, expect, it } from 'vitest';
import type { FoundCells } from '#lib/found/found-columns.ts';
import { dayText, readDate } from '#lib/found/read-date.ts';
import { readFound } from '#lib/found/read-found.ts';

const WHO_WHEN = { tag: 'SV-101', visited_on: '2026-03-12', by: 'T. Marl' } as const;

function read(cells: FoundCells) {
  return readFound({ row: 7, cells: { ...WHO_WHEN, ...cells }, under: 'quote Q-00012 A', today: '2026-04-01' });
}

describe('what a visit found', () => {
  it('is measured, in the list’s own units, with who, when and under which quote', () => {
    const { found, problems } = read({
      turns: '62',
      highest_torque: '120 lbf·ft',
      wheel_diameter: '400',
      nut_size: '32 mm',
    });
    expect(problems).toEqual([]);
    expect(found?.turns).toMatchObject({ low: 62, high: 62, unit: 'turn', basis: 'measured' });
    expect(found?.turns?.source).toBe('Counted on site on 12 March 2026 by T. Marl, quote Q-00012 A: Turns “62”.');
    // 1 lbf·ft = 1.3558179483314 N·m, by definition of pound-force and foot.
    expect(found?.highest?.nominal).toBeCloseTo(120 * 1.3558179483314, 6);
    expect(found?.wheelDiameter?.nominal).toBeCloseTo(0.4, 9);
    expect(found?.nutSize?.nominal).toBeCloseTo(0.032, 9);
  });

  it.each([
    [{ turns: 'many' }, 'turns', /Turns “many” cannot be read/],
    [{ turns: '0' }, 'turns', /outside what is plausible/],
    [{ highest_torque: '-20 N·m' }, 'highest_torque', /Highest torque “-20 N·m”/],
    [{ highest_torque: '9000000 N·m' }, 'highest_torque', /Highest torque .* outside what is plausible/],
    [{ turns: 'unknown' }, 'turns', /not known/],
    [{ condition: 'blue' }, 'condition', /none of: free, stiff, seized/],
    [{ closes: 'sideways', turns: '3' }, 'closes', /none of/],
    [{ full_stroke: 'perhaps', turns: '4' }, 'full_stroke', /neither yes nor no/],
    [{ number: '0', turns: '4' }, 'number', /no number of a valve/],
    [
      { starting_torque: '200 N·m', highest_torque: '90 N·m' },
      'highest_torque',
      /cannot lie below the torque that started/,
    ],
    [{ running_torque: '200 N·m', highest_torque: '90 N·m' }, 'highest_torque', /cannot lie below the torque that ran/],
    [{ condition: 'seized', turns: '12' }, 'condition', /turned is not seized/],
    [{ by: ' ', turns: '4' }, 'by', /Nobody is named/],
    [{ visited_on: '03/04/2026', turns: '4' }, 'visited_on', /one way only/],
    [{ visited_on: '2026-02-30', turns: '4' }, 'visited_on', /one way only/],
    [{ visited_on: '2026-04-02', turns: '4' }, 'visited_on', /has not come yet/],
    [{ visited_on: '', turns: '4' }, 'visited_on', /No day is given/],
    [{}, 'turns', /Nothing is written down/],
  ] as const)('%o is refused, with row, column and what to do', (cells, column, sentence) => {
    const { found, problems } = read(cells);
    expect(found).toBeNull();
    const problem = problems.find((one) => one.column === column && one.severity === 'refused');
    expect(problem?.sentence).toMatch(sentence);
    expect(problem?.row).toBe(7);
    expect(problem?.remedy).not.toBe('');
  });

  it('keeps every problem of a row, not the first alone', () => {
    expect(
      read({ turns: 'many', condition: 'blue', by: '' })
        .problems.map(({ column }) => column)
        .sort(),
    ).toEqual(['by', 'condition', 'turns']);
  });
});

describe('the day of a visit', () => {
  it.each(['2026-03-12', '12.3.2026', '12. March 2026', '12 Mar 2026'])('%s is read', (text) => {
    expect(readDate(text)).toBe('2026-03-12');
  });
  it('is told in words', () => {
    expect(dayText('2026-03-02')).toBe('2 March 2026');
  });
});
