import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chanceAtMost, valueAtChance } from '#lib/engineering/chance.ts';
import { strokeWork as workOfProfile } from '#lib/engineering/energy.ts';
import { gearedTurns, gearInputTorque, gearOutputTorque } from '#lib/engineering/gear-reduction.ts';
import { strokeWork, turnsFromTravel } from '#lib/engineering/turns.ts';
import { metres, newtonMetres, ratio, turns } from '#lib/units/quantity.ts';
import { holdsFor } from '#tests/support/checked-property.ts';
import { number } from '#tests/support/lists/duty-arbitraries.ts';

const near = (value: number, wanted: number): void =>
  expect(Math.abs(value - wanted)).toBeLessThanOrEqual(1e-9 * Math.max(1e-6, Math.abs(wanted)));

describe('forward and inverse agree', () => {
  it('through a gearbox and back, torque and work are what they were', () => {
    holdsFor({
      law: 'gear there and back',
      cases: fc.tuple(number(0.1, 5000), number(1, 2000), number(0.05, 1), number(0.25, 400)),
      check: ([torque, gear, efficiency, stem]) => {
        const at = { ratio: ratio(gear), efficiency: ratio(efficiency) };
        const inputTorque = gearInputTorque({ ...at, outputTorque: newtonMetres(torque) });
        near(gearOutputTorque({ ...at, inputTorque }), torque);
        const input = gearedTurns({ valveTurns: turns(stem), ratio: ratio(gear) });
        const put = strokeWork({ torque: inputTorque, turns: input });
        near(put * efficiency, strokeWork({ torque: newtonMetres(torque), turns: turns(stem) }));
        return undefined;
      },
    });
  });
  it('turns without lost motion bring the travel back', () => {
    holdsFor({
      law: 'turns and travel',
      cases: fc.tuple(number(0.01, 2), number(0.002, 0.03)),
      check: ([travel, lead]) => {
        const whole = turnsFromTravel({ travel: metres(travel), lead: metres(lead), lostMotion: turns(0) });
        near(whole * lead, travel);
        return undefined;
      },
    });
  });
  it('the work by the mean torque is that under a flat profile, however often it is cut', () => {
    holdsFor({
      law: 'energy is the area under a flat torque',
      cases: fc.tuple(number(0, 900), number(0.25, 400), fc.array(number(0, 1), { maxLength: 8 })),
      check: ([torque, whole, cuts]) => {
        const places = [0, ...cuts.toSorted((a, b) => a - b), 1].map((share) => turns(share * whole));
        const profile = places.map((turn) => ({ turn, torque: newtonMetres(torque) }));
        near(workOfProfile(profile), strokeWork({ torque: newtonMetres(torque), turns: turns(whole) }));
        return undefined;
      },
    });
  });
  it('the value at a chance has that chance of not being passed', () => {
    holdsFor({
      law: 'chance there and back',
      cases: fc.tuple(number(-50, 50), number(0, 40), number(0, 40), number(0, 1)),
      check: ([low, up, down, chance]) => {
        const value = { low, nominal: low + up, high: low + up + down };
        if (value.high <= value.low) return false;
        const at = valueAtChance({ value, chance: ratio(chance) });
        expect(at).toBeGreaterThanOrEqual(value.low);
        expect(at).toBeLessThanOrEqual(value.high);
        expect(Math.abs(chanceAtMost({ value, limit: at }) - chance)).toBeLessThan(1e-6);
        return undefined;
      },
    });
  });
});
