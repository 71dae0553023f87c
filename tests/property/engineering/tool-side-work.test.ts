import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { breakawayWork, coldShare, packsPerShift, strokeWork } from '#lib/engineering/energy.ts';
import { permittedSpeed, strokeTime } from '#lib/engineering/stroke-time.ts';
import { celsius, newtonMetres, perMinute, ratio, seconds, turns, wattHours } from '#lib/units/quantity.ts';
import { holdsFor } from '#tests/support/checked-property.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

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
