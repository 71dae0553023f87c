import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hoseLoss, pressureAtTool } from '#lib/engineering/air-supply.ts';
import { chanceAtMost, chanceCovered, chanceOfAll } from '#lib/engineering/chance.ts';
import { opposite, selectOnDrive } from '#lib/engineering/direction.ts';
import { reactionForce, sideLoad } from '#lib/engineering/reaction.ts';
import { bar, cubicMetresPerSecond, degrees, metres, millimetres, newtonMetres, newtons } from '#lib/units/quantity.ts';
import { holdsFor } from '#tests/support/checked-property.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

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
