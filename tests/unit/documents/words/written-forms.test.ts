import { describe, expect, it } from 'vitest';
import { NUMBER_FORMS, type NumberForm, writer } from '#lib/documents/words/written-forms.ts';

const written = (words: string, numbers: NumberForm, names: readonly string[] = []) =>
  writer({ forms: { dates: 'day-month-year', numbers }, names })(words);

describe('dates and figures in the form of the reader', () => {
  it.each([
    ['space-point', '12.5 N·m for EUR 1 234.50 of 2 500 g'],
    ['space-comma', '12,5 N·m for EUR 1 234,50 of 2 500 g'],
    ['comma-point', '12.5 N·m for EUR 1,234.50 of 2 500 g'],
    ['point-comma', '12,5 N·m for EUR 1.234,50 of 2 500 g'],
  ] as const)('%s', (numbers, text) => {
    expect(written('12.5 N·m for EUR 1 234.50 of 2 500 g', numbers)).toBe(text);
  });

  it('an amount without decimals is parted where it stands alone or follows its currency', () => {
    expect(written('12 345', 'point-comma')).toBe('12.345');
    expect(written('JPY 1 012 345', 'comma-point')).toBe('JPY 1,012,345');
    expect(written('crew 1 250 turns', 'comma-point')).toBe('crew 1 250 turns');
  });

  it('days are turned, written out or not', () => {
    expect(written('2 March 2026 to 11 April 2026 (41 days), since 2026-02-01', 'space-point')).toBe(
      '02.03.2026 to 11.04.2026 (41 days), since 01.02.2026',
    );
  });

  it('ranges, ends below nought, formulas and ratios are figures too', () => {
    expect(written('1.5…2.25 mm, -12.5 °C (−3.5 %), 16·0.577·D/25.4, 12.5:1', 'point-comma')).toBe(
      '1,5…2,25 mm, -12,5 °C (−3,5 %), 16·0,577·D/25,4, 12,5:1',
    );
  });

  it.each([
    'ASME B16.34, EN 1333',
    'ISO 80000-1, 7.3.1',
    'ISO 5210, 6.2',
    'NIST SP 811, appendix B.6',
    'API Spec 6D, section 4.12 (360 N)',
    'Beer & Johnston, Mechanics of Materials, table 3.1, from memory',
    'Stated in the list: air pressure “6.5 bar”.',
    'thread M12×1.75',
    'desk@a1.5b.example',
    'version 1.4.2',
  ])('%s stays', (words) => {
    for (const numbers of NUMBER_FORMS) expect(written(words, numbers)).toBe(words);
  });

  it('a name that looks like a figure or a day stays wherever it stands', () => {
    const names = ['12.5', 'Pit 3.1/4', '2026-03-02', 'GV-101'];
    expect(written('12.5, at Pit 3.1/4: 7.5 N·m; 2026-03-02 and 2026-03-03', 'point-comma', names)).toBe(
      '12.5, at Pit 3.1/4: 7,5 N·m; 2026-03-02 and 03.03.2026',
    );
    expect(written('112.5 and 12.55', 'point-comma', names)).toBe('112,5 and 12,55');
  });
});
