import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hoseLoss, pressureAtTool } from '#lib/engineering/air-supply.ts';
import { chainFactor, type Stage, torqueAtTool, torqueAtValve } from '#lib/engineering/chain-torque.ts';
import { chanceAtMost, chanceCovered, chanceOfAll } from '#lib/engineering/chance.ts';
import { opposite, selectOnDrive } from '#lib/engineering/direction.ts';
import { breakawayWork, coldShare, packsPerShift, strokeWork } from '#lib/engineering/energy.ts';
import { limiterMarks, limiterWindow, referToLimiter } from '#lib/engineering/limiter-window.ts';
import { reactionForce, sideLoad } from '#lib/engineering/reaction.ts';
import { permittedSpeed, strokeTime } from '#lib/engineering/stroke-time.ts';
import { scaleGear, speedAtTorque, type TorqueSpeedCurve } from '#lib/engineering/torque-speed.ts';
import {
  bar,
  celsius,
  cubicMetresPerSecond,
  degrees,
  metres,
  millimetres,
  newtonMetres,
  newtons,
  perMinute,
  ratio,
  seconds,
  turns,
  wattHours,
} from '#lib/units/quantity.ts';
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

describe('work, packs and time', () => {
  it('the work of a straight torque is its mean times the angle, and adding a point on the line changes nothing', () => {
    holdsFor({
      law: 'work equals the integral on straight profiles',
      cases: fc.record({ a: number(0, 500), b: number(0, 500), n: number(0.1, 200), cut: number(0.01, 0.99) }),
      check: ({ a, b, n, cut }) => {
        const start = { turn: turns(0), torque: newtonMetres(a) };
        const end = { turn: turns(n), torque: newtonMetres(b) };
        const exact = 2 * Math.PI * n * ((a + b) / 2);
        expect(strokeWork([start, end])).toBeCloseTo(exact, 5);
        const middle = { turn: turns(n * cut), torque: newtonMetres(a + (b - a) * cut) };
        expect(strokeWork([start, middle, end])).toBeCloseTo(exact, 5);
        return true;
      },
    });
  });

  it('many small pieces of a sine come to its known integral', () => {
    holdsFor({
      law: 'work equals the integral on a sine',
      cases: fc.record({ base: number(10, 200), swing: number(0, 1), n: number(1, 60) }),
      runs: 60,
      check: ({ base, swing, n }) => {
        const profile = Array.from({ length: 2001 }, (_, index) => ({
          turn: turns((index / 2000) * n),
          torque: newtonMetres(base * (1 + swing * Math.sin((Math.PI * index) / 2000))),
        }));
        const exact = 2 * Math.PI * n * base * (1 + (swing * 2) / Math.PI);
        expect(Math.abs(strokeWork(profile) / exact - 1)).toBeLessThan(1e-5);
        return true;
      },
    });
  });

  it('breaking away never takes less work than running all the way', () => {
    holdsFor({
      law: 'starting hard costs work',
      cases: fc.record({ running: number(1, 300), more: number(0, 300), n: number(0, 100), first: number(0, 10) }),
      check: ({ running, more, n, first }) => {
        const work = breakawayWork({
          starting: newtonMetres(running + more),
          running: newtonMetres(running),
          turns: turns(n),
          startingTurns: turns(first),
        });
        expect(work).toBeGreaterThanOrEqual(2 * Math.PI * n * running - 1e-6);
        return true;
      },
    });
  });

  it('more chargers, larger packs and warmer packs never ask for more packs', () => {
    holdsFor({
      law: 'packs fall with supply',
      cases: fc.record({
        energy: number(0, 3000),
        pack: number(60, 400),
        recharge: number(600, 9000),
        chargers: fc.integer({ min: 0, max: 3 }),
      }),
      check: ({ energy, pack, recharge, chargers }) => {
        const ask = (change: { pack?: number; chargers?: number }) =>
          packsPerShift({
            energyPerShift: wattHours(energy),
            usablePerPack: wattHours(change.pack ?? pack),
            shift: seconds(28_800),
            rechargeTime: seconds(recharge),
            chargers: change.chargers ?? chargers,
          });
        expect(ask({ chargers: chargers + 1 })).toBeLessThanOrEqual(ask({}));
        expect(ask({ chargers: 0 })).toBe(Math.max(1, Math.ceil(energy / pack - 1e-9)));
        expect(ask({})).toBeGreaterThanOrEqual(1);
        return true;
      },
    });
    holdsFor({
      law: 'cold share rises with temperature',
      cases: fc.tuple(number(-40, 50), number(-40, 50)),
      check: ([a, b]) => {
        expect(coldShare(celsius(Math.min(a, b)))).toBeLessThanOrEqual(coldShare(celsius(Math.max(a, b))));
        return true;
      },
    });
  });

  it('a stroke at the permitted speed never beats its shortest time', () => {
    holdsFor({
      law: 'permitted speed keeps the shortest stroke time',
      cases: fc.record({ n: number(1, 500), top: number(5, 80), least: number(10, 2000), start: number(0, 30) }),
      check: ({ n, top, least, start }) => {
        const speed = permittedSpeed({ maxInputSpeed: perMinute(top), minStrokeTime: seconds(least), turns: turns(n) });
        const time = strokeTime({
          turns: turns(n),
          speed,
          slowTurns: turns(2),
          slowSpeed: perMinute(10),
          startTime: seconds(start),
          toAndFro: ratio(1),
        });
        expect(speed).toBeLessThanOrEqual(top);
        expect(time).toBeGreaterThanOrEqual(least - 1e-6);
        return true;
      },
    });
  });
});

describe('air, reaction, direction and chance', () => {
  it('a longer or thinner hose never leaves more pressure', () => {
    holdsFor({
      law: 'hose loss rises with length and falls with bore',
      cases: fc.record({
        length: number(1, 100),
        bore: number(8, 50),
        flow: number(0.001, 0.06),
        supply: number(3, 10),
        more: number(1, 3),
      }),
      check: ({ length, bore, flow, supply, more }) => {
        const hose = {
          length: metres(length),
          bore: millimetres(bore),
          freeAir: cubicMetresPerSecond(flow),
          pressure: bar(supply),
        };
        expect(hoseLoss({ ...hose, length: metres(length * more) })).toBeGreaterThanOrEqual(hoseLoss(hose));
        expect(hoseLoss({ ...hose, bore: millimetres(bore * more) })).toBeLessThanOrEqual(hoseLoss(hose));
        const left = pressureAtTool({
          supplyPressure: bar(supply),
          length: metres(length),
          bore: millimetres(bore),
          couplings: 2,
          freeAir: cubicMetresPerSecond(flow),
        });
        expect(left).toBeGreaterThanOrEqual(0);
        expect(left).toBeLessThanOrEqual(bar(supply));
        return true;
      },
    });
  });

  it('a shorter arm or a slanting pull never gives a smaller force, and a balanced restraint never more side load', () => {
    holdsFor({
      law: 'force and side load',
      cases: fc.record({ torque: number(1, 3000), arm: number(0.1, 2), angle: number(20, 90), more: number(1, 2) }),
      check: ({ torque, arm, angle, more }) => {
        const pull = { torque: newtonMetres(torque), arm: metres(arm), pullAngle: degrees(angle) };
        const force = reactionForce(pull);
        expect(reactionForce({ ...pull, arm: metres(arm * more) })).toBeLessThanOrEqual(force);
        expect(reactionForce({ ...pull, pullAngle: degrees(90) })).toBeLessThanOrEqual(force + 1e-9);
        expect(force * arm * Math.sin((angle * Math.PI) / 180)).toBeCloseTo(torque, 6);
        expect(sideLoad({ force: newtons(force), anchoring: 'balanced' })).toBeLessThanOrEqual(
          sideLoad({ force: newtons(force), anchoring: 'single anchor' }),
        );
        return true;
      },
    });
  });

  it('opening and closing are selected opposite ways, and each further reversing head turns the selection round', () => {
    holdsFor({
      law: 'direction along the chain',
      cases: fc.record({
        closes: fc.constantFrom('clockwise' as const, 'anticlockwise' as const),
        reversals: fc.integer({ min: 0, max: 5 }),
      }),
      check: ({ closes, reversals }) => {
        const select = (movement: 'opening' | 'closing', more: number) =>
          selectOnDrive({ movement, closes, reversals: reversals + more });
        const closing = select('closing', 0);
        if (closing === 'try gently first: direction unknown') throw new Error('a known direction stays known');
        expect(select('opening', 0)).toBe(opposite(closing));
        expect(select('closing', 1)).toBe(opposite(closing));
        expect(select('closing', 2)).toBe(closing);
        return true;
      },
    });
  });

  it('a chance lies between nought and one, rises with the limit, and never falls when the cover widens', () => {
    holdsFor({
      law: 'chances are chances',
      cases: fc.record({
        a: number(0, 100),
        b: number(0, 100),
        c: number(0, 100),
        at: number(-20, 120),
        more: number(0, 50),
        second: number(0, 100),
      }),
      check: ({ a, b, c, at, more, second }) => {
        const [low = 0, nominal = 0, high = 0] = [a, b, c].toSorted((x, y) => x - y);
        const value = { low, nominal, high };
        const less = chanceAtMost({ value, limit: at });
        expect(less).toBeGreaterThanOrEqual(0);
        expect(less).toBeLessThanOrEqual(1);
        expect(chanceAtMost({ value, limit: at + more })).toBeGreaterThanOrEqual(less - 1e-12);
        const cover = [{ low: at, high: at + more }];
        const narrow = chanceCovered({ value, cover });
        expect(
          chanceCovered({ value, cover: [...cover, { low: second, high: second + more }] }),
        ).toBeGreaterThanOrEqual(narrow - 1e-9);
        expect(chanceCovered({ value, cover: [{ low, high }] })).toBeCloseTo(1, 9);
        expect(chanceOfAll([narrow, less])).toBeLessThanOrEqual(Math.min(narrow, less) + 1e-12);
        return true;
      },
    });
  });

  it('the chance of a triangle agrees with counting its seeded draws', () => {
    holdsFor({
      law: 'triangle against draws',
      cases: fc.record({ low: number(0, 50), up: number(1, 50), more: number(1, 50), share: number(0.05, 0.95) }),
      runs: 20,
      check: ({ low, up, more, share }) => {
        const value = { low, nominal: low + up, high: low + up + more };
        const limit = low + share * (up + more);
        const split = up / (up + more);
        // Inverse of the distribution at evenly spaced shares: no random numbers at all.
        const draws = Array.from({ length: 4000 }, (_, index) => {
          const u = (index + 0.5) / 4000;
          return u < split
            ? low + Math.sqrt(u * (up + more) * up)
            : low + up + more - Math.sqrt((1 - u) * (up + more) * more);
        });
        const counted = draws.filter((draw) => draw <= limit).length / draws.length;
        expect(Math.abs(chanceAtMost({ value, limit }) - counted)).toBeLessThan(0.001);
        return true;
      },
    });
  });
});
