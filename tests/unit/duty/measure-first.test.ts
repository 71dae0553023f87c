import { describe, expect, it } from 'vitest';
import { measureFirstText } from '#lib/documents/words/measure-first-words.ts';
import { assessDuty } from '#lib/duty/assess-duty.ts';
import { dutyOf, lineOf, PLAIN_SITE, say, sayFact, wedge } from '#tests/support/lists/duty-lines.ts';

const width = ({ low, high }: { readonly low: number; readonly high: number }): number => high / low;

describe('what to measure first, and by how much it narrows', () => {
  it('tells ranges that are the duty’s own before, and narrower after', () => {
    const duty = dutyOf({ valveType: sayFact('gate'), size: say('m', 0.3) });
    const effect = duty.measureFirstEffect;
    if (effect === null) throw new Error('something is worth measuring at this valve');
    expect(effect.what).toBe(duty.measureFirst);
    expect(effect.start.before).toEqual(duty[effect.direction].starting);
    expect(effect.turns.before).toEqual(duty.turns);
    expect(effect.ceiling.before).toEqual(duty.opening.neverExceed.torque);
    expect(width(effect.start.after)).toBeLessThan(width(effect.start.before));
  });
  it('tells what would really come out if the likely pressure were read', () => {
    const parts = { valveType: sayFact('gate' as const), size: say('m', 0.3) };
    const duty = dutyOf(parts);
    expect(duty.measureFirst).toContain('pressure');
    const likely = duty.steps.find(({ id }) => id === 'differential-pressure')?.result.nominal ?? 0;
    const read = assessDuty({
      line: lineOf({
        ...parts,
        process: { linePressure: say('Pa', likely), differentialPressure: say('Pa', likely) },
      }),
      site: PLAIN_SITE,
    });
    const after = duty.measureFirstEffect?.start.after;
    expect(after?.low).toBeCloseTo(read.opening.starting.low, 9);
    expect(after?.high).toBeCloseTo(read.opening.starting.high, 9);
  });
  it('says it in both unit systems from the same values', () => {
    const duty = dutyOf({ valveType: sayFact('gate'), size: say('m', 0.3) });
    expect(measureFirstText(duty, 'si')).toMatch(
      /^Read the pressure .* If it reads as is likely, it narrows the torque to start opening from [\d.]+…[\d.]+ N·m to [\d.]+…[\d.]+ N·m\.$/,
    );
    expect(measureFirstText(duty, 'us')).toMatch(/lbf·ft/);
  });
  it('with an unknown kind the ranges before cover the other kinds too', () => {
    const duty = dutyOf({ size: say('m', 0.15) });
    const effect = duty.measureFirstEffect;
    expect(effect?.tries).toBe('other kinds of valve');
    expect(effect?.start.before.high).toBeGreaterThanOrEqual(duty.opening.starting.high);
    expect(effect?.turns.after).toEqual(duty.turns);
    expect(measureFirstText(duty, 'si')).toContain('another kind may lie outside');
  });
  it('is silent where everything that can be measured is known', () => {
    const said = dutyOf({ ...wedge, torque: { ...wedge.torque, starting: say('N·m', 80), turns: say('turn', 35) } });
    expect(said.measureFirst).toBeNull();
    expect(said.measureFirstEffect).toBeNull();
    expect(measureFirstText(said, 'si')).toBeNull();
  });
});
