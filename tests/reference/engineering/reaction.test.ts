import { describe, expect, it } from 'vitest';
import { breakawayWork, packEnergy, strokeWork } from '#lib/engineering/energy.ts';
import { forceWithShock, reactionForce } from '#lib/engineering/reaction.ts';
import { degrees, metres, newtonMetres, newtons, ratio, turns, volts } from '#lib/units/quantity.ts';

describe('force in the pull of a restraint', () => {
  // Statics, exact; cases worked out from memory of the formula F = T/(L·sin θ).
  it.each([
    [10, 0.1, 90, 100],
    [60, 0.35, 90, 171.4],
    [60, 0.5, 90, 120],
    [200, 0.4, 90, 500],
    [500, 0.5, 90, 1000],
    [1000, 1.2, 90, 833.3],
    [2000, 0.3, 90, 6666.7],
    [600, 0.6, 60, 1154.7],
    [1000, 0.5, 45, 2828.4],
  ])('%d N·m on %d m at %d°: %d N', (torque, arm, pullAngle, force) => {
    const found = reactionForce({ torque: newtonMetres(torque), arm: metres(arm), pullAngle: degrees(pullAngle) });
    expect(Math.abs(found - force)).toBeLessThanOrEqual(0.1);
  });

  // Sling load-angle chart after OSHA 1910.184 and ASME B30.9, angles from the horizontal, printed to three decimals.
  it.each([
    [90, 1],
    [75, 0.966],
    [60, 0.866],
    [30, 0.5],
  ])('a pull at %d° is worth %d of a straight one', (pullAngle, share) => {
    const one = { torque: newtonMetres(100), arm: metres(1) };
    const slanting = reactionForce({ ...one, pullAngle: degrees(pullAngle) });
    expect(Math.abs(reactionForce({ ...one, pullAngle: degrees(90) }) / slanting - share)).toBeLessThanOrEqual(0.001);
  });

  // 600 N·m, 0.6 m, 60°, factor 2: 2309 N. A 6 mm chain to EN 818-4 is good for 1.12 t, lashing straps to EN 12195-2 for 250 and 200 daN.
  it('asks for 2309 N with a shock factor of 2, which a 6 mm chain and a 250 daN strap give and a 200 daN strap does not', () => {
    const force = reactionForce({ torque: newtonMetres(600), arm: metres(0.6), pullAngle: degrees(60) });
    const needed = forceWithShock({ force, shock: ratio(2) });
    expect(Math.abs(needed - 2309)).toBeLessThanOrEqual(1);
    expect([1120 * 9.81, 2500, 2000].map((rating) => rating >= needed)).toEqual([true, true, false]);
    expect(forceWithShock({ force: newtons(100), shock: ratio(1) })).toBe(100);
  });
});

describe('work and energy', () => {
  it('1 Wh is 3600 J: a pack of 18 V × 5 Ah does the work of the same number of joules (definition)', () => {
    const work = strokeWork([
      { turn: turns(0), torque: newtonMetres(100) },
      { turn: turns(90), torque: newtonMetres(100) },
    ]);
    const strokes = (packEnergy({ voltage: volts(18), capacity_ah: 5 }) * 3600) / work;
    expect(strokes).toBeCloseTo((18 * 5 * 3600) / (2 * Math.PI * 90 * 100), 9);
  });

  it('the short form for starting and running equals the area under its own profile (definition of work)', () => {
    const [starting, running] = [newtonMetres(250), newtonMetres(90)];
    const profile = [
      { turn: turns(0), torque: starting },
      { turn: turns(2), torque: running },
      { turn: turns(31), torque: running },
    ];
    expect(breakawayWork({ starting, running, turns: turns(31), startingTurns: turns(2) })).toBeCloseTo(
      strokeWork(profile),
      6,
    );
  });
});
