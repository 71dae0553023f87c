import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chainFactor, type Stage, torqueAtTool, torqueAtValve } from '#lib/engineering/chain-torque.ts';
import { limiterMarks, limiterWindow, referToLimiter } from '#lib/engineering/limiter-window.ts';
import { scaleGear, speedAtTorque, type TorqueSpeedCurve } from '#lib/engineering/torque-speed.ts';
import { newtonMetres, perMinute, ratio } from '#lib/units/quantity.ts';
import { holdsFor } from '#tests/support/checked-property.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const gears: fc.Arbitrary<TorqueSpeedCurve> = fc
  .record({
    stall: number(5, 500),
    free: number(5, 400),
    points: fc.array(fc.tuple(number(0, 1), number(0, 1)), { maxLength: 5 }),
  })
  .map(({ stall, free, points }) => {
    const torques = [...new Set(points.map(([t]) => t))]
      .filter((t) => t > 0.001 && t < 0.999)
      .toSorted((a, b) => a - b);
    const speeds = points.map(([, s]) => s).toSorted((a, b) => b - a);
    const curve = torques.map((t, index) => ({
      torque: newtonMetres(t * stall),
      speed: perMinute((speeds[index] ?? 0) * free),
    }));
    return { stallTorque: newtonMetres(stall), freeSpeed: perMinute(free), ...(curve.length > 0 ? { curve } : {}) };
  });

const stages: fc.Arbitrary<readonly Stage[]> = fc.array(
  fc.record({ ratio: number(0.5, 12), low: number(0.4, 1), up: number(0, 1) }).map(({ ratio: times, low, up }) => ({
    ratio: ratio(times),
    efficiency: { low: ratio(low), high: ratio(low + (1 - low) * up) },
  })),
  { maxLength: 3 },
);

const windows = fc.record({
  startLow: number(1, 400),
  startMore: number(0, 300),
  neverLow: number(5, 900),
  margin: number(1, 1.6),
  error: number(0, 0.3),
  overshoot: number(0, 20),
  step: fc.constantFrom(0.5, 1, 2, 5),
  factorLow: number(1, 10),
  factorMore: number(0, 2),
});

describe('torque and speed', () => {
  it('more torque never gives more speed, between free speed and standstill', () => {
    holdsFor({
      law: 'speed falls with torque',
      cases: fc.tuple(gears, number(0, 1.2), number(0, 1.2)),
      check: ([gear, a, b]) => {
        const [less, more] = [Math.min(a, b) * gear.stallTorque, Math.max(a, b) * gear.stallTorque];
        const [fast, slow] = [less, more].map((torque) => speedAtTorque({ gear, torque: newtonMetres(torque) }));
        expect(slow ?? 0).toBeLessThanOrEqual((fast ?? 0) + 1e-9);
        expect(fast).toBeLessThanOrEqual(gear.freeSpeed);
        expect(slow).toBeGreaterThanOrEqual(0);
        return true;
      },
    });
  });

  it('a derated gear gives at derated torque the derated speed', () => {
    holdsFor({
      law: 'scaling a gear scales its curve',
      cases: fc.tuple(gears, number(0, 0.99), number(0.3, 1.2), number(0.3, 1.2)),
      check: ([gear, share, torqueFactor, speedFactor]) => {
        const torque = newtonMetres(share * gear.stallTorque);
        const scaled = scaleGear({ gear, torqueFactor: ratio(torqueFactor), speedFactor: ratio(speedFactor) });
        const direct = speedAtTorque({ gear: scaled, torque: newtonMetres(torque * torqueFactor) });
        expect(direct).toBeCloseTo(speedAtTorque({ gear, torque }) * speedFactor, 6);
        return true;
      },
    });
  });

  it('going to the valve and back brackets the torque one began with', () => {
    holdsFor({
      law: 'chain there and back',
      cases: fc.tuple(stages, number(1, 500)),
      check: ([chain, torque]) => {
        const there = torqueAtValve({ toolTorque: newtonMetres(torque), stages: chain });
        expect(there.low).toBeLessThanOrEqual(there.high + 1e-9);
        expect(torqueAtTool({ valveTorque: there.low, stages: chain }).high).toBeCloseTo(torque, 6);
        expect(torqueAtTool({ valveTorque: there.high, stages: chain }).low).toBeCloseTo(torque, 6);
        expect(chainFactor(chain).low).toBeLessThanOrEqual(chainFactor(chain).high + 1e-12);
        return true;
      },
    });
  });
});

describe('limiter window', () => {
  it('is empty exactly when no setting satisfies both ends', () => {
    const seen = { open: 0, empty: 0 };
    holdsFor({
      law: 'window empty exactly when nothing satisfies both ends',
      cases: windows,
      check: (one) => {
        const window = limiterWindow({
          startingHigh: newtonMetres(one.startLow + one.startMore),
          neverExceedLow: newtonMetres(one.neverLow),
          margin: ratio(one.margin),
          error: ratio(one.error),
          overshoot: newtonMetres(one.overshoot),
        });
        // A setting is good when its lowest trip still moves the valve and its highest trip still spares it.
        const moves = (setting: number) =>
          setting * (1 - one.error) >= (one.startLow + one.startMore) * one.margin - 1e-9;
        const spares = (setting: number) => setting * (1 + one.error) + one.overshoot <= one.neverLow + 1e-9;
        const settings = [window.low, window.high, ...Array.from({ length: 200 }, (_, index) => index * 6)];
        const some = settings.some((setting) => moves(setting) && spares(setting));
        expect(some).toBe(window.low <= window.high + 1e-9);
        seen[some ? 'open' : 'empty'] += 1;
        return true;
      },
    });
    console.info(`open windows ${seen.open}, empty windows ${seen.empty}`);
    expect(Math.min(seen.open, seen.empty)).toBeGreaterThan(0);
  });

  it('no mark from start to ceiling can bring more than never-exceed to the valve, and one step more can', () => {
    holdsFor({
      law: 'ceiling is the last safe step',
      cases: windows,
      check: (one) => {
        const factor = { low: ratio(one.factorLow), high: ratio(one.factorLow + one.factorMore) };
        const limiter = {
          lowest: newtonMetres(one.step),
          highest: newtonMetres(1e6),
          error: ratio(one.error),
          overshoot: newtonMetres(one.overshoot),
          step: newtonMetres(one.step),
        };
        const marks = limiterMarks({
          torque: { low: newtonMetres(one.startLow), high: newtonMetres(one.startLow + one.startMore) },
          neverExceedLow: newtonMetres(one.neverLow),
          margin: ratio(one.margin),
          limiter,
          factor,
          stopAt: 'never-exceed',
        });
        if (marks === null) return false;
        const worst = (setting: number) => (setting * (1 + one.error) + one.overshoot) * factor.high;
        expect(marks.start).toBeLessThanOrEqual(marks.ceiling);
        expect(worst(marks.ceiling)).toBeLessThanOrEqual(one.neverLow * (1 + 1e-9));
        expect(worst(marks.ceiling + one.step)).toBeGreaterThan(one.neverLow * (1 - 1e-9));
        expect(marks.ceiling / one.step).toBeCloseTo(Math.round(marks.ceiling / one.step), 6);
        const surely = marks.ceiling * (1 - one.error) * factor.low;
        expect(marks.coversStarting).toBe(surely >= (one.startLow + one.startMore) * one.margin * (1 - 1e-9));
        return true;
      },
    });
  });

  it('marks exist wherever the referred window is open by a whole step above the scale’s start', () => {
    holdsFor({
      law: 'open by a step means marks that cover starting',
      cases: windows,
      check: (one) => {
        const factor = { low: ratio(one.factorLow), high: ratio(one.factorLow + one.factorMore) };
        const window = limiterWindow({
          startingHigh: newtonMetres(one.startLow + one.startMore),
          neverExceedLow: newtonMetres(one.neverLow),
          margin: ratio(one.margin),
          error: ratio(one.error),
          overshoot: newtonMetres(one.overshoot * factor.high),
        });
        const referred = referToLimiter({ window, factor });
        if (referred.high - referred.low < one.step) return false;
        const marks = limiterMarks({
          torque: { low: newtonMetres(one.startLow), high: newtonMetres(one.startLow + one.startMore) },
          neverExceedLow: newtonMetres(one.neverLow),
          margin: ratio(one.margin),
          limiter: {
            lowest: newtonMetres(0),
            highest: newtonMetres(1e6),
            error: ratio(one.error),
            overshoot: newtonMetres(one.overshoot),
            step: newtonMetres(one.step),
          },
          factor,
          stopAt: 'needed',
        });
        expect(marks?.coversStarting).toBe(true);
        expect(marks?.ceiling ?? 0).toBeLessThanOrEqual(referred.high + 1e-6);
        return true;
      },
    });
  });
});
