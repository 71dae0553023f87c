import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessDuty, tapedDuty } from '#lib/duty/assess-duty.ts';
import { replayOf } from '#lib/duty/replay.ts';
import { type SampledDuty, SPREAD_FIGURES, sampleDuty } from '#lib/duty/sample-duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import { seededRandom } from '#lib/kernel/random.ts';
import { holdsFor } from '#tests/support/checked-property.ts';
import { measurable, ranged, scheduleLines } from '#tests/support/lists/duty-arbitraries.ts';
import { PLAIN_SITE, sayFact } from '#tests/support/lists/duty-lines.ts';

const RUNS = 60;
/** Rounding of doubles between two orders of the same sum. */
const SLACK = 1e-9;

const seeds = fc.integer({ min: 1, max: 2 ** 31 });

function drawn(line: ScheduleLine, seed: number): SampledDuty {
  return sampleDuty({ line, site: PLAIN_SITE, runs: RUNS, seed });
}

/** Figures whose interval is not one point. */
function checkContained(line: ScheduleLine, seed: number): number {
  const { figures } = drawn(line, seed);
  let wide = 0;
  for (const figure of SPREAD_FIGURES) {
    const { interval, least, most, p5, p50, p95 } = figures[figure];
    const slack = SLACK * Math.max(1, Math.abs(interval.low), Math.abs(interval.high));
    expect([least, p5, p50, p95, most].every(Number.isFinite), figure).toBe(true);
    expect(least, figure).toBeGreaterThanOrEqual(interval.low - slack);
    expect(most, figure).toBeLessThanOrEqual(interval.high + slack);
    expect(least <= p5 && p5 <= p50 && p50 <= p95 && p95 <= most, figure).toBe(true);
    if (interval.low < interval.high) wide += 1;
  }
  return wide;
}

/** Cases in which ranges straddle what changes the formula. */
const corners: Readonly<Record<string, fc.Arbitrary<ScheduleLine>>> = {
  'any line': scheduleLines,
  'much is measured': measurable,
  'thrust about nought': fc
    .tuple(measurable, ranged('Pa', 0, 5e5), ranged('1', 0.03, 0.15), fc.constantFrom('gate', 'globe', 'pinch'))
    .map(([line, differentialPressure, threadFriction, type]) => ({
      ...line,
      valveType: sayFact(type as 'gate' | 'globe' | 'pinch'),
      process: { ...line.process, differentialPressure },
      stem: { ...line.stem, threadFriction, kind: sayFact('rising through the wheel' as const) },
    })),
  'torque stated': fc
    .tuple(scheduleLines, ranged('N·m', 0, 400), ranged('N·m', 1, 300), fc.boolean())
    .map(([line, starting, running, isRunning]) => {
      const { starting: _starting, ...torque } = line.torque;
      return { ...line, torque: { ...torque, ...(isRunning ? { running } : { starting }) } };
    }),
  geared: fc
    .tuple(
      scheduleLines,
      ranged('1', 2, 200),
      ranged('1', 0.1, 0.9),
      fc.constantFrom('worm' as const, 'travelling nut' as const, 'bevel' as const, 'spur' as const),
      fc.constantFrom('butterfly' as const, 'ball' as const, 'gate' as const, 'penstock' as const),
    )
    .map(([line, gearRatio, gearEfficiency, kind, type]) => ({
      ...line,
      valveType: sayFact(type),
      torque: { ...line.torque, gearRatio, gearEfficiency, gearbox: sayFact(kind) },
    })),
  keyed: fc
    .tuple(scheduleLines, fc.constantFrom('hydrant' as const, 'stop tap' as const, 'plug' as const))
    .map(([line, type]) => ({
      ...line,
      valveType: sayFact(type),
      interface: { ...line.interface, drivenBy: sayFact('square' as const) },
    })),
  penstock: fc.tuple(scheduleLines, ranged('Pa', 0, 1e5)).map(([line, differentialPressure]) => ({
    ...line,
    valveType: sayFact('penstock' as const),
    process: { ...line.process, differentialPressure },
  })),
  'usual thread that steps up': fc
    .tuple(ranged('m', 0.008, 0.2), fc.constantFrom('gate' as const, 'globe' as const), scheduleLines)
    .map(([diameter, type, line]) => {
      const { thread: _thread, ...stem } = line.stem;
      return { ...line, valveType: sayFact(type), stem: { ...stem, diameter } };
    }),
};

describe('laws of the drawn duty', () => {
  for (const [name, cases] of Object.entries(corners)) {
    it(`every draw lies inside the interval: ${name}`, () => {
      let wide = 0;
      holdsFor({
        law: `intervals hold every draw, ${name}`,
        cases: fc.tuple(cases, seeds),
        runs: 400,
        check: ([line, seed]) => {
          const here = checkContained(line, seed);
          wide += here;
          return here > 0;
        },
      });
      console.info(`${name}: ${wide} wide figures, ${wide * RUNS} draws inside`);
      expect(wide).toBeGreaterThan(400);
    });
  }
  it('every mixture of ends, likely values and nought lies inside the interval too', () => {
    let points = 0;
    holdsFor({
      law: 'intervals hold the ends of what goes in',
      cases: fc.tuple(fc.oneof(...Object.values(corners)), seeds),
      runs: 800,
      check: ([line, seed]) => {
        const { tape, opening, closing, turns } = tapedDuty({ line, site: PLAIN_SITE });
        const asked = [opening, closing].flatMap(({ starting, running, neverExceed }) => [
          starting,
          running,
          neverExceed.torque,
        ]);
        const intervals = [...asked, turns];
        const replay = replayOf({ tape, asked: intervals });
        const random = seededRandom(seed);
        const outside: string[] = [];
        for (let round = 0; round < RUNS; round += 1) {
          const values = replay.at((input) => {
            const { low = 0, nominal = 0, high = 0 } = replay.inputs[input]?.value ?? {};
            const nought = Math.min(Math.max(0, low), high);
            return [low, high, nominal, nought, low + (high - low) * random()][Math.floor(random() * 5)] ?? nominal;
          });
          for (const [index, interval] of intervals.entries()) {
            const slack = SLACK * Math.max(1, Math.abs(interval.low), Math.abs(interval.high));
            const value = values[index] ?? Number.NaN;
            const isInside = value >= interval.low - slack && value <= interval.high + slack;
            if (!isInside) outside.push(`${value} outside ${interval.low} to ${interval.high}: ${interval.source}`);
          }
          points += intervals.length;
        }
        expect(outside).toEqual([]);
        return replay.inputs.length > 0;
      },
    });
    console.info(`${points} values at mixed ends inside`);
  });
  it('with every input at its likely value the likely values of the duty come out', () => {
    holdsFor({
      law: 'likely in, likely out',
      cases: fc.oneof(...Object.values(corners)),
      runs: 400,
      check: (line) => {
        const { tape, opening, closing, turns } = tapedDuty({ line, site: PLAIN_SITE });
        const asked = [opening.starting, closing.starting, opening.running, closing.running, turns];
        const replay = replayOf({ tape, asked });
        const values = replay.at((input) => replay.inputs[input]?.value.nominal ?? Number.NaN);
        for (const [index, { nominal }] of asked.entries())
          expect(Math.abs((values[index] ?? Number.NaN) - nominal)).toBeLessThanOrEqual(SLACK * Math.max(1, nominal));
        return undefined;
      },
    });
  });
  it('the intervals are those of the duty itself', () => {
    holdsFor({
      law: 'drawn from the same intervals',
      cases: scheduleLines,
      runs: 200,
      check: (line) => {
        const duty = assessDuty({ line, site: PLAIN_SITE });
        const { figures } = drawn(line, 1);
        const bare = ({ low, nominal, high }: { low: number; nominal: number; high: number }) => ({
          low,
          nominal,
          high,
        });
        expect(bare(figures['starting, opening'].interval)).toEqual(bare(duty.opening.starting));
        expect(bare(figures['starting, closing'].interval)).toEqual(bare(duty.closing.starting));
        expect(bare(figures['running, opening'].interval)).toEqual(bare(duty.opening.running));
        expect(bare(figures['never exceed, closing'].interval)).toEqual(bare(duty.closing.neverExceed.torque));
        expect(bare(figures.turns.interval)).toEqual(bare(duty.turns));
        return undefined;
      },
    });
  });
  it('the same seed gives the same spread', () => {
    holdsFor({
      law: 'seeded',
      cases: fc.tuple(scheduleLines, seeds),
      runs: 100,
      check: ([line, seed]) => {
        expect(drawn(line, seed)).toEqual(drawn(line, seed));
        return undefined;
      },
    });
  });
});
