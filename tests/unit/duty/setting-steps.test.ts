import { describe, expect, it } from 'vitest';
import { assessDuty } from '#lib/duty/assess-duty.ts';
import { DIRECTIONS } from '#lib/duty/duty.ts';
import { lineOf, PLAIN_SITE, say, sayFact, step } from '#tests/support/lists/duty-lines.ts';

const LINES = [
  lineOf({ valveType: sayFact('wedge gate'), size: say('m', 0.2) }),
  lineOf({ valveType: sayFact('butterfly'), size: say('m', 0.4) }),
  lineOf({ valveType: sayFact('hydrant') }),
  lineOf({ torque: { starting: say('N·m', 100), max: say('N·m', 400), turns: say('turn', 30) } }),
];

describe('the last steps of a duty', () => {
  it('end in the figures that the duty shows: speed, and both ends of the window each way', () => {
    let windows = 0;
    for (const line of LINES) {
      const duty = assessDuty({ line, site: PLAIN_SITE });
      expect(step(duty, 'max-input-speed')?.result).toEqual(duty.maxInputSpeed);
      for (const direction of DIRECTIONS) {
        const { limiter } = duty[direction];
        if (limiter === null) continue;
        expect(step(duty, `limiter-from-${direction}`)?.result.high).toBeCloseTo(limiter.low, 9);
        expect(step(duty, `limiter-to-${direction}`)?.result.low).toBeCloseTo(limiter.high, 9);
        windows += 1;
      }
    }
    expect(windows).toBeGreaterThan(3);
  });

  it('by hand: 100 N·m to start and 400 N·m never to be passed give 125 to 400 N·m', () => {
    // The house's margin of 1.25; an ideal limiter has no error.
    const [, , , stated] = LINES.map((line) => assessDuty({ line, site: PLAIN_SITE }));
    expect(stated && step(stated, 'limiter-from-opening')?.result.nominal).toBeCloseTo(125, 9);
    expect(stated?.opening.limiter?.low).toBeCloseTo(125, 9);
  });
});
