import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stemLoad, stemTorque, threadTorque } from '#lib/engineering/power-screw.ts';
import { degrees, metres, newtonMetres, newtons, ratio } from '#lib/units/quantity.ts';
import { holdsFor } from '#tests/support/checked-property.ts';
import { number } from '#tests/support/lists/duty-arbitraries.ts';

const screws = fc
  .record({
    load: number(0, 2e5),
    meanDiameter: number(0.01, 0.1),
    leadShare: number(0.05, 0.6),
    friction: number(0.02, 0.4),
    collarFriction: number(0, 0.3),
    collarShare: number(0, 2),
    more: number(1, 3),
  })
  .map(({ load, meanDiameter, leadShare, friction, collarFriction, collarShare, more }) => ({
    more,
    screw: {
      load: newtons(load),
      meanDiameter: metres(meanDiameter),
      lead: metres(meanDiameter * leadShare),
      flankHalfAngle: degrees(15),
      friction: ratio(friction),
      collarFriction: ratio(collarFriction),
      collarMeanDiameter: metres(meanDiameter * collarShare),
    },
  }));

describe('laws of the stem', () => {
  it('torque rises with load, friction and lead', () => {
    holdsFor({
      law: 'torque is monotone',
      cases: screws,
      check: ({ screw, more }) => {
        const torque = stemTorque(screw);
        for (const raised of [
          { load: newtons(screw.load * more) },
          { friction: ratio(Math.min(0.6, screw.friction * more)) },
          { collarFriction: ratio(screw.collarFriction * more) },
          { lead: metres(screw.lead * Math.min(more, 1.3)) },
          { meanDiameter: metres(screw.meanDiameter * more) },
        ]) {
          expect(stemTorque({ ...screw, ...raised })).toBeGreaterThanOrEqual(torque * (1 - 1e-9));
        }
        return undefined;
      },
    });
  });
  it('the inverse gives the load back', () => {
    holdsFor({
      law: 'forward and inverse agree',
      cases: screws,
      check: ({ screw }) => {
        if (screw.load < 1) return false;
        const { load, ...thread } = screw;
        const back = stemLoad({ ...thread, torque: newtonMetres(stemTorque(screw)) });
        expect(Math.abs(back / load - 1)).toBeLessThan(1e-9);
        return undefined;
      },
    });
  });
  it('a load that helps never takes more than one that resists', () => {
    holdsFor({
      law: 'helping load',
      cases: screws,
      check: ({ screw }) => {
        const { collarFriction: _fc, collarMeanDiameter: _dc, ...thread } = screw;
        expect(threadTorque({ ...thread, load: newtons(-screw.load) })).toBeLessThanOrEqual(threadTorque(thread));
        return undefined;
      },
    });
  });
});
