import { describe, expect, it } from 'vitest';
import { assessDuties } from '#lib/duty/assess-duties.ts';
import { assessDuty, tapedDuty } from '#lib/duty/assess-duty.ts';
import { sampleDuty } from '#lib/duty/sample-duty.ts';
import { PLAIN_SITE } from '#tests/support/lists/duty-lines.ts';
import { plausibleLines } from '#tests/support/lists/plausible-lines.ts';

const LINES = 10_000;
const lines = plausibleLines({ count: LINES, seed: 20_260_401 });

describe('effort of a duty', () => {
  it('stays as it is for ten thousand lines, ranges, steps and what to measure first included', () => {
    const [start, busy] = [performance.now(), process.cpuUsage()];
    const duties = lines.map((line) => assessDuty({ line, site: PLAIN_SITE }));
    const [took, cpu] = [performance.now() - start, process.cpuUsage(busy).user / 1000];
    const each = (milliseconds: number): string => `${((milliseconds / LINES) * 1000).toFixed(0)} µs a line`;
    console.info(`${LINES} lines: ${took.toFixed(0)} ms, ${each(took)}; processor alone ${each(cpu)}`);
    const count = (pick: (duty: (typeof duties)[number]) => number): number =>
      duties.reduce((sum, duty) => sum + pick(duty), 0);
    expect({
      steps: count((duty) => duty.steps.length),
      bounds: count((duty) => duty.bounds.length),
      measurements: count((duty) => (duty.measureFirstEffect === null ? 0 : 1)),
    }).toEqual({ steps: 364_058, bounds: 19_142, measurements: 9878 });
  });

  it('is shared by equal lines of a list', () => {
    const start = performance.now();
    const twice = assessDuties({ lines: [...lines, ...lines], site: PLAIN_SITE });
    console.info(`the same lines twice in a list: ${(performance.now() - start).toFixed(0)} ms`);
    expect(twice.length).toBe(2 * LINES);
    expect(twice[LINES]?.opening).toBe(twice[0]?.opening);
  });

  it('of the spread by chance stays as it is, on request only', () => {
    const some = lines.slice(0, 200);
    const runs = 2000;
    const [start, busy] = [performance.now(), process.cpuUsage()];
    for (const line of some) sampleDuty({ line, site: PLAIN_SITE, runs, seed: 1 });
    const took = performance.now() - start;
    const cpu = process.cpuUsage(busy).user / 1000;
    const each = (milliseconds: number): string => `${(milliseconds / some.length).toFixed(1)} ms a line`;
    console.info(`${runs} draws with the main contributor: ${each(took)}; processor alone ${each(cpu)}`);
    const formulas = some.reduce((sum, line) => sum + tapedDuty({ line, site: PLAIN_SITE }).tape.length, 0);
    expect(formulas).toBe(5557);
  });
});
