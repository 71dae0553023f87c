import { describe, expect, it } from 'vitest';
import { chanceText } from '#lib/documents/words/chance-words.ts';
import {
  spreadLine,
  spreadRows,
  startsBelowText,
  whatItHangsOn,
  whatTheSpreadIs,
} from '#lib/documents/words/spread-words.ts';
import { lineSpread } from '#lib/duty/line-spread.ts';
import { sampleDuty } from '#lib/duty/sample-duty.ts';
import { lineOf, PLAIN_SITE, say, sayFact, wedge } from '#tests/support/lists/duty-lines.ts';

const of = (parts: Parameters<typeof lineOf>[0]) =>
  lineSpread(sampleDuty({ line: lineOf(parts), site: PLAIN_SITE, runs: 500, seed: 3 }));

describe('the spread in words', () => {
  it('names what the spread hangs on with its range, basis and what knowing it would do', () => {
    const spread = of({ valveType: sayFact('gate'), size: say('m', 0.3) });
    expect(whatItHangsOn(spread, 'si')).toMatch(
      /^The torque to start opening hangs most on this: line pressure against the rated pressure, 0\.15…0\.6 \(assumed\)\. With it known, as is likely, \d+ % of the variance goes and nine in ten draws lie between [\d.]+ N·m and [\d.]+ N·m instead of between/,
    );
    expect(whatItHangsOn(spread, 'us')).toContain('lbf·ft');
    expect(spreadLine(spread, 'si')).toMatch(/^Nine in ten of 500 draws: to start opening/);
    expect(whatTheSpreadIs(spread)).toContain('for safety the whole range counts');
    expect(spreadRows(spread)).toHaveLength(7);
  });
  it('a case that is one of several has no range of its own', () => {
    const text = whatItHangsOn(of({ valveType: sayFact('globe'), size: say('m', 0.1) }), 'si');
    expect(text).toContain('side of the disc that the pressure comes from (assumed)');
    expect(text).toContain('With the heavier case taken');
  });
  it('a torque that is said as one value has no spread', () => {
    const spread = of({ ...wedge, torque: { ...wedge.torque, starting: say('N·m', 80) } });
    expect(spread.main).toBeNull();
    expect(whatItHangsOn(spread, 'si')).toContain('has no spread');
    expect(startsBelowText(spread)).toContain('In every draw');
  });
  it('tells how often it would not start at the torque allowed', () => {
    const spread = of({ ...wedge, torque: { ...wedge.torque, max: say('N·m', 93) } });
    expect(spread.starts_below_ceiling).toBeGreaterThan(0);
    expect(spread.starts_below_ceiling).toBeLessThan(1);
    expect(startsBelowText(spread)).toMatch(/^In \d+ % of the draws/);
  });
  it('never calls a chance certain', () => {
    expect([1, 0.995, 0.874, 0.004, 0].map(chanceText)).toEqual([
      'more than 99 %',
      'more than 99 %',
      'about 87 %',
      'less than 1 %',
      'less than 1 %',
    ]);
  });
});
