import { describe, expect, it } from 'vitest';
import { quarterTurnInputTurns } from '#lib/engineering/gear-reduction.ts';
import { HIGHEST_DESIGN_PULL, leverTorque, rimTorque, STRONG_PULL } from '#lib/engineering/hand-force.ts';
import { STOP_TAPS } from '#lib/engineering/keyed-valves.ts';
import { AMERICAN_WRENCH_NUT } from '#lib/engineering/nut-sizes.ts';
import { gateThrust, stemEndLoad } from '#lib/engineering/stem-thrust.ts';
import { turnsFromTravel, waterworksTurns } from '#lib/engineering/turns.ts';
import { WHEELS_MM } from '#lib/engineering/valve-tables.ts';
import { OVERLOAD_PULL } from '#lib/engineering/wheel-strength.ts';
import { bar, metres, millimetres, newtons, ratio, turns } from '#lib/units/quantity.ts';

describe('force of a person', () => {
  // API Spec 6D, section 4.12 (edition from memory): at most 360 N and a wheel of at most 1065 mm.
  it('API 6D: a wheel may ask 360 N, and no wheel of our table is larger than 1065 mm', () => {
    expect(HIGHEST_DESIGN_PULL).toBe(360);
    expect(Math.max(...WHEELS_MM.map(([, wheel]) => wheel))).toBeLessThanOrEqual(1065);
  });
  it('API 6D, arithmetic: 360 N on a wheel of 400 mm are 72 N·m in total, not per hand', () => {
    expect(rimTorque({ force: HIGHEST_DESIGN_PULL, wheelDiameter: metres(0.4) })).toBeCloseTo(72, 9);
  });
  // MSS SP-91, section 2.4.
  it('MSS SP-91: 150 lbf (670 N) on a 300 mm lever are 201 N·m', () => {
    expect(leverTorque({ force: STRONG_PULL, length: metres(0.3) })).toBeCloseTo(201, 0);
  });
  // ANSI/AWWA C504, actuator section (from memory): 200 lbf pull on the wheel must be stood.
  it('AWWA C504 (from memory): a wheel stands 200 lbf, which are 890 N', () => {
    expect(Math.abs(OVERLOAD_PULL / (200 * 4.448_222) - 1)).toBeLessThan(0.001);
  });
});

describe('thrust', () => {
  // US NRC Motor-Operated Valves Course Manual, section 3.2 (sign when opening from memory).
  it('NRC course manual: the stem-end load resists closing and helps opening of a rising stem; all else adds', () => {
    const load = {
      seatLoad: newtons(20_000),
      valveFactor: ratio(0.3),
      stemEnd: newtons(700),
      packing: newtons(1500),
      weight: newtons(0),
    };
    expect(gateThrust({ movement: 'closing', ...load })).toBeCloseTo(8200, 9);
    expect(gateThrust({ movement: 'opening', ...load })).toBeCloseTo(6800, 9);
  });
  // US NRC Information Notice 92-41: F = p·π/4·d².
  it('NRC IN 92-41: a 30 mm stem at 10 bar is pushed out with 707 N', () => {
    expect(stemEndLoad({ linePressure: bar(10), stemDiameter: millimetres(30) })).toBeCloseTo(706.86, 1);
  });
});

describe('turns', () => {
  // Waterworks rule of thumb from a public valve-operation article: three turns an inch and two to three more.
  it.each([
    [4, 14, 15],
    [6, 20, 21],
    [8, 26, 27],
    [12, 38, 39],
  ])('waterworks rule: %d in takes %d to %d turns', (inches, low, high) => {
    const size = metres(inches * 0.0254);
    expect(waterworksTurns({ size, extra: turns(2) })).toBeCloseTo(low, 9);
    expect(waterworksTurns({ size, extra: turns(3) })).toBeCloseTo(high, 9);
  });
  // Kansas Rural Water Association, The Kansas Lifeline, November 2011, p. 24.
  it('Kansas Lifeline: an eight-inch valve turns 27 times', () => {
    expect(waterworksTurns({ size: metres(8 * 0.0254), extra: turns(3) })).toBeCloseTo(27, 9);
  });
  // Essex & Suffolk Water, stop valve operations page: stop tap 3.5 turns, main ferrule 13.
  it('Essex & Suffolk Water: 3.5 turns of a stop tap are our likely value and 13 of a ferrule our highest', () => {
    expect(STOP_TAPS[0]?.turns.slice(1)).toEqual([3.5, 13]);
  });
  // A gear-reducer article: 40:1 takes 10 turns for 90°; Khurmi & Gupta, Theory of Machines, Example 10.11: 170/10.
  it('40:1 over a quarter turn takes 10 turns; 170 mm at a lead of 10 mm take 17', () => {
    expect(quarterTurnInputTurns(ratio(40))).toBe(10);
    expect(turnsFromTravel({ travel: millimetres(170), lead: millimetres(10), lostMotion: turns(0) })).toBeCloseTo(
      17,
      9,
    );
  });
});

describe('nuts', () => {
  // ANSI/AWWA C500 and C509 wrench nut (from memory): 1 15/16 in at the top, 2 in at the base.
  it('AWWA wrench nut (from memory): 49.2 mm at the top, 50.8 mm at the base', () => {
    expect([AMERICAN_WRENCH_NUT.acrossFlats_mm, AMERICAN_WRENCH_NUT.atBase_mm]).toEqual([49.2, 50.8]);
  });
});
