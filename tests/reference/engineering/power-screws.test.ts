import { describe, expect, it } from 'vitest';
import { rimForce } from '#lib/engineering/hand-force.ts';
import {
  leadAngle,
  screwEfficiency,
  selfLockingFriction,
  stemLoad,
  stemTorque,
  threadTorque,
} from '#lib/engineering/power-screw.ts';
import { threadLead } from '#lib/engineering/thread-geometry.ts';
import { degrees, metres, millimetres, newtonMetres, newtons, ratio } from '#lib/units/quantity.ts';

const INCH = 0.0254;
const POUND = 4.448_222;
const INCH_POUND = 0.112_984_8;

const within = (actual: number, expected: number, share: number) =>
  expect(Math.abs(actual / expected - 1), `${actual} against ${expected}`).toBeLessThanOrEqual(share);

interface Screw {
  readonly load: number;
  readonly dm: number;
  readonly lead: number;
  readonly f: number;
  readonly fc?: number;
  readonly dc?: number;
  readonly angle?: number;
}

const screw = ({ load, dm, lead, f, fc = 0, dc = 0, angle = 0 }: Screw) => ({
  load: newtons(load),
  meanDiameter: millimetres(dm),
  lead: millimetres(lead),
  flankHalfAngle: degrees(angle),
  friction: ratio(f),
  collarFriction: ratio(fc),
  collarMeanDiameter: millimetres(dc),
});
const raise = (one: Screw) => stemTorque(screw(one));
/** Lowering: the load helps. */
const lower = (one: Screw) => stemTorque(screw({ ...one, load: -one.load }));
const efficiency = (one: Screw) =>
  screwEfficiency({ load: newtons(one.load), lead: millimetres(one.lead), torque: raise(one) });

describe('power screws against textbooks', () => {
  // Budynas & Nisbett, Shigley's Mechanical Engineering Design, Example 8-1 (from memory): 26.18 N·m, 9.77 N·m, 0.311.
  const shigley = { load: 6400, dm: 30, lead: 8, f: 0.08, fc: 0.08, dc: 40 };
  it('Shigley 8-1 (from memory): a double start of 4 mm pitch has 8 mm lead and raises with 26.18 N·m', () => {
    within(threadLead({ pitch: millimetres(4), starts: ratio(2) }), 0.008, 1e-12);
    within(raise(shigley), 26.18, 0.005);
    within(lower(shigley), 9.77, 0.005);
    within(efficiency(shigley), 0.311, 0.005);
  });

  // V. B. Bhandari, Design of Machine Elements, Example 6.1.
  const bhandari61 = { load: 15_000, dm: 46, lead: 24, f: 0.15, fc: 0.15, dc: 82.5 };
  it('Bhandari 6.1: 204.644 N·m up, 87.40 N·m down, although the thread alone overhauls with −5.411 N·m', () => {
    within(raise(bhandari61), 204.644, 0.001);
    within(lower(bhandari61), 87.4015, 0.001);
    const { collarFriction: _fc, collarMeanDiameter: _dc, ...thread } = screw({ ...bhandari61, load: -15_000 });
    within(threadTorque(thread), -5.411, 0.001);
    within(rimForce({ torque: raise(bhandari61), wheelDiameter: metres(1) }), 409.288, 0.001);
  });

  // V. B. Bhandari, Example 6.4: a gate valve, weight 5000 N and seat friction 2000 N; two arms of 500 mm.
  it('Bhandari 6.4 (gate valve): 7000 N up take 52.41 N on each arm, 3000 N down 15.626 N, efficiency 0.1488', () => {
    const gate = { dm: 36.5, lead: 7, f: 0.15, fc: 0.12, dc: 60 };
    within(raise({ ...gate, load: 7000 }), 52.41, 0.001);
    within(raise({ ...gate, load: 7000 }) / (2 * 0.5), 52.41, 0.001);
    within(lower({ ...gate, load: 3000 }) / (2 * 0.5), 15.626, 0.001);
    within(efficiency({ ...gate, load: 7000 }), 0.1488, 0.001);
  });

  // V. B. Bhandari, Example 6.5: handwheel of 500 mm.
  it('Bhandari 6.5: 97.227 N·m, 388.9 N at the rim of 500 mm, efficiency 0.16369', () => {
    const one = { load: 10_000, dm: 75, lead: 10, f: 0.12, fc: 0.12, dc: 60 };
    within(raise(one), 97.227, 0.001);
    within(rimForce({ torque: raise(one), wheelDiameter: metres(0.5) }), 388.909, 0.001);
    within(efficiency(one), 0.163_69, 0.001);
  });

  // V. B. Bhandari, Example 6.3: 125 N at 150 mm on a clamp.
  it('Bhandari 6.3: the inverse gives 2868.61 N', () => {
    const { load: _load, ...thread } = screw({ load: 0, dm: 19.5, lead: 5, f: 0.15, fc: 0.17, dc: 50 });
    const force = stemLoad({ ...thread, torque: newtonMetres(125 * 0.15) });
    within(force, 2868.61, 0.001);
    within(screwEfficiency({ load: force, lead: millimetres(5), torque: newtonMetres(18.75) }), 0.121_748, 0.001);
  });

  // T. H. Wentzell, Machine Design, Examples 18.1-18.2, pp. 399-400: 2900 lb on each of two screws.
  const wentzell = { load: 2900 * POUND, dm: 1.354 * 25.4, lead: 25.4 / 3, f: 0.15 };
  it('Wentzell 18.1-18.2: 453.68 in·lb, lead angle 4.48°, efficiency 0.3391', () => {
    within(raise(wentzell) / INCH_POUND, 453.68, 0.002);
    within(leadAngle({ lead: metres(INCH / 3), meanDiameter: metres(1.354 * INCH) }), 4.48, 0.002);
    within(efficiency(wentzell), 0.3391, 0.002);
  });

  // T. H. Wentzell, Machine Design, Example 18.3, p. 402: Acme 1 1/2-4, pitch diameter 1.375 in.
  const acme = { load: 2900 * POUND, dm: 1.375 * 25.4, lead: 0.25 * 25.4, f: 0.15, angle: 14.5 };
  it('Wentzell 18.3: an Acme thread takes 428.13 in·lb at a lead angle of 3.31°', () => {
    within(raise(acme) / INCH_POUND, 428.13, 0.002);
    within(leadAngle({ lead: metres(0.25 * INCH), meanDiameter: metres(1.375 * INCH) }), 3.31, 0.002);
  });

  // Acme stem factor of motor-operated-valve practice (form from memory; value from Wentzell 18.3): 0.012302 ft.
  it('the stem factor of that Acme thread is 0.012302 ft, by our torque and by the stem-factor form (form from memory)', () => {
    const mu = 0.15;
    const slope = 0.25 / (Math.PI * 1.375);
    const form = (1.375 * (0.968_15 * slope + mu)) / (24 * (0.968_15 - mu * slope));
    within(form, 0.012_302, 0.002);
    within(raise(acme) / (2900 * POUND) / (12 * INCH), form, 0.0005);
  });

  it.each([
    [
      'Sadhu Singh, Machine Design-I, Example 9.14, p. 278',
      { load: 12_000, dm: 29.5, lead: 10, f: 0.15, fc: 0.2, dc: 35 },
      88.4,
      0.001,
    ],
    [
      'U. C. Jindal, Machine Design, Example 16-1, p. 450',
      { load: 20_000, dm: 27, lead: 6, f: 0.2, fc: 0.15, dc: 24 },
      110.148,
      0.002,
    ],
    [
      'Khurmi & Gupta, Theory of Machines, Example 10.9, p. 277',
      { load: 20_000, dm: 50, lead: 10, f: 0.15 },
      107.861,
      0.01,
    ],
    [
      'Khurmi & Gupta, Theory of Machines, Example 10.10, p. 279',
      { load: 25_000, dm: 50, lead: 12.5, f: 0.13 },
      132.355,
      0.01,
    ],
  ])('%s', (_source, one, expected, share) => {
    within(raise(one), expected, share);
  });

  it('Khurmi & Gupta 10.9 and 10.10: lowering takes 42.761 N·m; raising takes 4.243 times lowering', () => {
    within(lower({ load: 20_000, dm: 50, lead: 10, f: 0.15 }), 42.761, 0.01);
    const one = { load: 25_000, dm: 50, lead: 12.5, f: 0.13 };
    within(raise(one) / lower(one), 4.243, 0.01);
    within(efficiency(one), 0.3758, 0.01);
  });

  // Housner & Hudson, Applied Mechanics: Statics, section 5.6.1, problem 2.
  it('Housner & Hudson 5.6.1: 10 000 lb on two threads to the inch of 2 in mean diameter take 2840 in·lb', () => {
    within(raise({ load: 10_000 * POUND, dm: 50.8, lead: 12.7, f: 0.2 }) / INCH_POUND, 2840, 0.002);
  });

  // Housner & Hudson 5.6.1, problem 3; Shigley section 8-2.
  it('a thread that just holds itself has an efficiency below one half', () => {
    for (const lead of [2, 6, 12, 24]) {
      const size = { lead: millimetres(lead), meanDiameter: millimetres(40), flankHalfAngle: degrees(0) };
      const f = selfLockingFriction(size);
      const one = { load: 1000, dm: 40, lead, f };
      expect(lower(one)).toBeCloseTo(0, 9);
      expect(efficiency(one)).toBeLessThan(0.5);
    }
  });
});
