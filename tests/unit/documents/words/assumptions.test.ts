import { describe, expect, it } from 'vitest';
import { gatherAssumptions } from '#lib/documents/words/assumptions.ts';
import { exactly, known } from '#lib/units/known-value.ts';
import { sampleDuty, sampleLine } from '#tests/support/papers/sample-duty.ts';

const paperLine = (tag: string, grip: Parameters<typeof sampleDuty>[0]['grip']) => ({
  classId: tag,
  line: sampleLine(tag),
  duty: sampleDuty({ tag, grip: grip ?? {} }),
  assembly: null,
});

describe('what was assumed', () => {
  it('names each value once with all its lines and what happens when it is wrong', () => {
    const found = gatherAssumptions([paperLine('A-1', {}), paperLine('A-2', {})], 'si');
    const wheel = found.filter((one) => one.what === 'Wheel diameter');
    expect(wheel).toHaveLength(1);
    expect(wheel[0]?.tags).toEqual(['A-1', 'A-2']);
    expect(wheel[0]?.taken).toBe('400…500 mm, likely 450 mm');
    expect(wheel[0]?.ifWrong).toContain('may not grip');
  });

  it('keeps two different guesses of the same value apart', () => {
    const other = known(
      'm',
      { low: 0.2, nominal: 0.25, high: 0.3 },
      { basis: 'assumed', source: 'Usual for the size.' },
    );
    const found = gatherAssumptions([paperLine('A-1', {}), paperLine('A-2', { wheelDiameter: other })], 'si');
    expect(
      found
        .filter((one) => one.what === 'Wheel diameter')
        .map((one) => `${one.tags.join()} ${one.taken}`)
        .toSorted(),
    ).toEqual(['A-1 400…500 mm, likely 450 mm', 'A-2 200…300 mm, likely 250 mm']);
  });

  it('leaves out what was measured or stated', () => {
    const measured = exactly('m', 0.45, { basis: 'measured', source: 'Site sheet of last year.' });
    const found = gatherAssumptions([paperLine('A-1', { wheelDiameter: measured })], 'si');
    expect(found.map((one) => one.what)).not.toContain('Wheel diameter');
  });

  it('lists a stem that may rise through the wheel', () => {
    const found = gatherAssumptions([paperLine('A-1', { stemRisesThroughWheel: 'maybe' })], 'si');
    expect(found.find((one) => one.what === 'Stem')?.ifWrong).toContain('open-centre head');
  });

  it('tells many values that stand class by class as one range that holds them all', () => {
    const line = (tag: string, low: number) => {
      const duty = sampleDuty({ tag });
      const starting = known('N·m', { low, nominal: low + 1, high: low + 9 }, { basis: 'assumed', source: 'Guess.' });
      return {
        classId: tag,
        line: sampleLine(tag),
        duty: { ...duty, opening: { ...duty.opening, starting } },
        assembly: null,
      };
    };
    const opening = (lows: readonly number[]) =>
      gatherAssumptions(
        lows.map((low, index) => line(`A-${index}`, low)),
        'si',
      ).filter(({ what }) => what === 'Torque to start, opening');
    expect(opening([10, 20, 30, 40])).toHaveLength(4);
    const folded = opening([30, 10, 50, 20, 40, 10]);
    expect(folded).toHaveLength(1);
    expect(folded[0]?.taken).toBe('10…59 N·m in all; 5 values, each on the site sheet');
    expect(folded[0]?.tags).toHaveLength(6);
  });
});
