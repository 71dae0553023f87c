import { describe, expect, it } from 'vitest';
import { assessDuty } from '#lib/duty/assess-duty.ts';
import { yearsIdle } from '#lib/duty/years-idle.ts';
import { coreFigures } from '#lib/kits/cores/core-figures.ts';
import { factsOf } from '#lib/kits/find-choices.ts';
import { METHOD_RULES } from '#lib/rules/method.ts';
import { lineFacts, said, sampleLine, sampleSite } from '#lib/rules/sample-facts.ts';
import { sampleDrive, sampleHead } from '#lib/rules/sample-parts.ts';
import { isStiff } from '#lib/rules/ways-of-working.ts';

const TODAY = '2026-03-02';
const site = sampleSite({ startsOn: TODAY });
const lineMoved = (lastOperated: number) => sampleLine({ state: { lastOperated: said(lastOperated) } });
const idle = (lastOperated: number) => yearsIdle({ line: lineMoved(lastOperated), site });
const strokeTime = (lastOperated: number): number => {
  const line = lineMoved(lastOperated);
  const head = sampleHead();
  return coreFigures({
    facts: factsOf({ line, duty: lineFacts().duty, site }),
    frame: { drive: sampleDrive(), limiter: null, head, output: head.facts.output },
    gearIndex: 0,
    limiterUpTo: 'needed',
  }).opening.strokeTime.high;
};

describe('years since a valve was last moved', () => {
  it.each([
    [3, 3],
    [12, 12],
    [2019, 7],
    [2024, 2],
    [2026, 0],
    [2030, 0],
  ])('reads %d as %d years on the second of March 2026', (given, years) => expect(idle(given)).toBe(years));

  it.each([-1, 700, Number.NaN])('makes nothing of %d', (given) => expect(idle(given)).toBeNull());

  it('makes nothing of silence', () => expect(yearsIdle({ line: sampleLine(), site })).toBeNull());

  it.each([
    [3, false],
    [12, true],
    [2019, true],
    [2020, true],
    [2021, false],
    [2024, false],
  ])('takes a valve last moved %d for stiff: %s, in times and in the rule alike', (given, stiff) => {
    const facts = lineFacts({ line: lineMoved(given), site: { startsOn: TODAY } });
    expect(isStiff(facts)).toBe(stiff);
    expect(saysToAndFro(facts)).toBe(stiff);
    expect(strokeTime(given) > strokeTime(1)).toBe(stiff);
  });

  it('gives a year and its number of years the same duty', () => {
    const duty = (given: number) => assessDuty({ line: lineMoved(given), site });
    expect(duty(2019).opening.starting.high).toBe(duty(7).opening.starting.high);
    expect(duty(2024).opening.starting.high).toBe(duty(2).opening.starting.high);
    expect(duty(2019).opening.starting.high).toBeGreaterThan(duty(2024).opening.starting.high);
  });
});

function saysToAndFro(facts: ReturnType<typeof lineFacts>): boolean {
  const rule = METHOD_RULES.find(({ id }) => id === 'to-and-fro');
  return rule?.scope === 'line' && rule.speaks(facts);
}
