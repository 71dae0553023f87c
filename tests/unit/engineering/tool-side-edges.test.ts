import { describe, expect, it } from 'vitest';
import { airMotorFactors, pressureAtTool } from '#lib/engineering/air-supply.ts';
import { timeWithRests } from '#lib/engineering/duty-cycle.ts';
import { coldShare, packsPerShift, strokeWork } from '#lib/engineering/energy.ts';
import { isUnfitForPlate, plateTorque } from '#lib/engineering/ground-plate.ts';
import { teamCapability } from '#lib/engineering/lifting.ts';
import { limiterMarks } from '#lib/engineering/limiter-window.ts';
import { dailyNoise } from '#lib/engineering/noise.ts';
import { altitudeShare } from '#lib/engineering/petrol-derating.ts';
import { highestTorque, needsSecondChain, reactionForce } from '#lib/engineering/reaction.ts';
import { between } from '#lib/engineering/straight-lines.ts';
import { strokeTime } from '#lib/engineering/stroke-time.ts';
import { lithiumGoods } from '#lib/engineering/transport.ts';
import {
  bar,
  celsius,
  cubicMetresPerSecond,
  degrees,
  kilograms,
  metres,
  millimetres,
  newtonMetres,
  perMinute,
  ratio,
  seconds,
  turns,
  wattHours,
} from '#lib/units/quantity.ts';

describe('edges of the tool-side formulas', () => {
  it('an air motor has no figures below the table and the last ones above it', () => {
    expect(airMotorFactors(bar(2.9))).toBeNull();
    expect(airMotorFactors(bar(9))?.torque).toBe(1.09);
  });

  it('a hose that would take more than there is leaves nothing', () => {
    const air = {
      supplyPressure: bar(4),
      length: metres(200),
      bore: millimetres(6),
      couplings: 4,
      freeAir: cubicMetresPerSecond(0.05),
    };
    expect(pressureAtTool(air)).toBe(0);
  });

  it('rests come between runs and not after the last', () => {
    const rested = (running: number) =>
      timeWithRests({ running: seconds(running), continuousRun: seconds(600), restAfterRun: seconds(300) });
    expect([0, 600, 601, 1200, 1201].map(rested)).toEqual([0, 600, 901, 1500, 1801]);
  });

  it('a pack gives nothing below −20 °C and everything from 20 °C', () => {
    expect([-21, -20, 0, 20, 40].map((t) => coldShare(celsius(t)))).toEqual([0, 0.5, 0.8, 1, 1]);
  });

  it('one pack serves a shift that needs less than one', () => {
    const shift = { shift: seconds(28_800), rechargeTime: seconds(3600), chargers: 1, usablePerPack: wattHours(100) };
    expect(packsPerShift({ ...shift, energyPerShift: wattHours(0) })).toBe(1);
    expect(packsPerShift({ ...shift, energyPerShift: wattHours(100) })).toBe(1);
    expect(packsPerShift({ ...shift, energyPerShift: wattHours(101) })).toBe(2);
  });

  it('a charger that is too slow helps nothing', () => {
    const slow = { shift: seconds(28_800), rechargeTime: seconds(50_000), chargers: 2, usablePerPack: wattHours(100) };
    expect(packsPerShift({ ...slow, energyPerShift: wattHours(500) })).toBe(5);
  });

  it('a profile out of order is a programmer’s error', () => {
    const point = (turn: number) => ({ turn: turns(turn), torque: newtonMetres(10) });
    expect(() => strokeWork([point(2), point(1)])).toThrow(/rising order/);
  });

  it('a plate never holds more than its cap, and nothing on what is not ground', () => {
    const plate = { friction: ratio(0.5), side: metres(1), cap: newtonMetres(200) };
    expect(plateTorque({ ...plate, weight: kilograms(500) })).toBe(200);
    const unfit = ['Steel grating', 'icy yard', 'roof: chamber roof', 'steep slope', 'GRP gratings', 'frozen ground'];
    expect(unfit.filter((surface) => !isUnfitForPlate(surface))).toEqual([]);
    expect(
      ['on the roof of the chamber', 'manhole cover', 'sandy verge', 'grass, sloping'].every(isUnfitForPlate),
    ).toBe(true);
    expect(['asphalt', 'concrete slab', 'police yard', 'gravel'].map(isUnfitForPlate)).toEqual([
      false,
      false,
      false,
      false,
    ]);
  });

  it('a limiter whose scale starts above the ceiling has no marks', () => {
    const limiter = {
      lowest: newtonMetres(50),
      highest: newtonMetres(200),
      error: ratio(0.1),
      overshoot: newtonMetres(2),
      step: newtonMetres(5),
    };
    const ask = (neverExceed: number) =>
      limiterMarks({
        torque: { low: newtonMetres(10), high: newtonMetres(20) },
        neverExceedLow: newtonMetres(neverExceed),
        margin: ratio(1.25),
        limiter,
        factor: { low: ratio(1), high: ratio(1) },
        stopAt: 'never-exceed',
      });
    expect(ask(56)).toBeNull();
    expect(ask(57)).toMatchObject({ start: 50, ceiling: 50, coversStarting: true });
    expect(ask(5000)?.ceiling).toBe(200);
  });

  it('the torque at the anchor is the stall where no limiter bites before', () => {
    const limiter = { ceiling: newtonMetres(200), error: ratio(0.1), overshoot: newtonMetres(0), factorHigh: ratio(3) };
    expect(highestTorque({ stallAtValve: newtonMetres(500), limiter })).toBe(500);
    expect(highestTorque({ stallAtValve: newtonMetres(500), limiter: null })).toBe(500);
  });

  it('a chain that pulls along the arm holds nothing', () => {
    expect(() => reactionForce({ torque: newtonMetres(1), arm: metres(1), pullAngle: degrees(0) })).toThrow();
    expect(needsSecondChain({ directions: 'both ways', work: 'both ways' })).toBe(false);
    expect(needsSecondChain({ directions: 'one way', work: 'one way' })).toBe(false);
  });

  it('slow ends are never faster than the stroke, and a short stroke is all slow', () => {
    const stroke = {
      speed: perMinute(10),
      slowTurns: turns(4),
      slowSpeed: perMinute(30),
      startTime: seconds(0),
      toAndFro: ratio(3),
    };
    expect(strokeTime({ ...stroke, turns: turns(3) })).toBe(18);
    expect(strokeTime({ ...stroke, turns: turns(5) })).toBe(24 + 18);
  });

  it('a quiet day has no level, sea level costs no power, no team lifts nothing', () => {
    expect(dailyNoise([])).toBe(0);
    expect(altitudeShare(metres(-100))).toBe(1);
    expect(altitudeShare(metres(20_000))).toBe(0);
    expect(teamCapability([])).toBe(0);
    expect(teamCapability([25, 10, 25, 25])).toBe(30);
  });

  it('goods by air and at sea have their own sentences', () => {
    const pack = { energy: wattHours(90), packing: 'in equipment' } as const;
    expect(lithiumGoods({ ...pack, mode: 'sea' }).sentence).toContain('small-battery provision');
    expect(lithiumGoods({ ...pack, mode: 'air' }).route).toBe('fully regulated');
    expect(lithiumGoods({ ...pack, mode: 'air' }).name).toContain('CONTAINED IN EQUIPMENT');
  });

  it('a table is read at its ends and between', () => {
    expect(
      [-1, 0, 1, 2, 9].map((x) =>
        between({
          points: [
            [0, 5],
            [2, 9],
          ],
          x,
        }),
      ),
    ).toEqual([5, 5, 7, 9, 9]);
    expect(() => between({ points: [], x: 1 })).toThrow();
  });
});
