import { describe, expect, it } from 'vitest';
import { chainFactor, torqueAtTool, torqueAtValve, totalRatio } from '#lib/engineering/chain-torque.ts';
import { highestPower, scaleGear, speedAtTorque } from '#lib/engineering/torque-speed.ts';
import { newtonMetres, perMinute, ratio } from '#lib/units/quantity.ts';

const within = (actual: number, expected: number, share: number) =>
  expect(Math.abs(actual / expected - 1)).toBeLessThanOrEqual(share);

describe('speed of a linear machine against torque', () => {
  // U. A. Bakshi & M. V. Bakshi, DC Machines and Synchronous Machines, Example 2.39, p. 80; printed to four or five digits.
  const gear = { stallTorque: newtonMetres(574.23), freeSpeed: perMinute(536.59) };

  it('gives the published speed at full-load torque', () => {
    within(speedAtTorque({ gear, torque: newtonMetres(117.46) }), 426.83, 0.001);
  });

  it('gives the published speed at twice full-load torque', () => {
    within(speedAtTorque({ gear, torque: newtonMetres(2 * 117.46) }), 317.07, 0.001);
  });

  it('stands still at the published stall torque', () => {
    expect(speedAtTorque({ gear, torque: newtonMetres(574.23) })).toBe(0);
  });

  it('agrees with the same machine given as a table of its own points', () => {
    const curve = [0, 117.46, 234.92, 574.23].map((torque) => ({
      torque: newtonMetres(torque),
      speed: perMinute(536.59 * (1 - torque / 574.23)),
    }));
    within(speedAtTorque({ gear: { ...gear, curve }, torque: newtonMetres(180) }), 536.59 * (1 - 180 / 574.23), 1e-9);
  });
});

describe('power of a linear machine', () => {
  // A published exercise on a linear motor: Kt 0.12, R 1.5 Ω, 10 V; inputs published, answers worked out by hand from them.
  const gear = { stallTorque: newtonMetres(0.8), freeSpeed: perMinute(833.3) };

  it('peaks at the published figure', () => within(highestPower(gear), 17.45, 0.005));
  it('runs at a quarter of free speed with three quarters of stall torque', () => {
    within(speedAtTorque({ gear, torque: newtonMetres(0.6) }), 208.3, 0.005);
  });

  // Hydraulics & Pneumatics, Air Motor Selection and Sizing, 1 Jan 2012: power peaks near half of free speed, stall is about twice rated torque.
  it('has its peak at half of free speed, as the rule for air motors says', () => {
    const powerAt = (torque: number) => torque * speedAtTorque({ gear, torque: newtonMetres(torque) });
    const best = Array.from({ length: 801 }, (_, index) => index / 1000).reduce((a, b) =>
      powerAt(b) > powerAt(a) ? b : a,
    );
    within(speedAtTorque({ gear, torque: newtonMetres(best) }) / gear.freeSpeed, 0.5, 0.05);
    within(gear.stallTorque / best, 2, 0.05);
  });
});

describe('torque through a gear', () => {
  // T. H. Wentzell, Machine Design, Example 13.6, p. 294: 180 in·lb, ratio 60, efficiency 0.73 → 7884 in·lb; 1 in·lb = 0.112985 N·m.
  const worm = { ratio: ratio(60), efficiency: { low: ratio(0.73), high: ratio(0.73) } };
  const INCH_POUND = 0.112985;

  it('gives the published output torque', () => {
    within(torqueAtValve({ toolTorque: newtonMetres(180 * INCH_POUND), stages: [worm] }).low, 7884 * INCH_POUND, 0.001);
  });

  it('gives the published input torque back', () => {
    within(
      torqueAtTool({ valveTorque: newtonMetres(7884 * INCH_POUND), stages: [worm] }).high,
      180 * INCH_POUND,
      0.001,
    );
  });

  // T. H. Wentzell, Machine Design, Example 13.4, p. 288: 1750/60 = 29.17 1/min.
  it('divides the speed by the published ratio', () => within(1750 / totalRatio([worm]), 29.17, 0.001));

  it('multiplies efficiencies of two heads (arithmetic)', () => {
    const head = { ratio: ratio(3), efficiency: { low: ratio(0.9), high: ratio(0.95) } };
    within(chainFactor([head, head]).low, 7.29, 1e-12);
    within(chainFactor([head, head]).high, 8.1225, 1e-12);
  });
});

describe('an air motor at less than its rated pressure', () => {
  // Correction table of a public guide to industrial air motors: at 5 bar torque × 0.79, speed × 0.93, power × 0.71 (7 % agreement claimed).
  it('keeps torque times speed within seven per cent of the published power factor', () => {
    const gear = { stallTorque: newtonMetres(100), freeSpeed: perMinute(100) };
    const derated = scaleGear({ gear, torqueFactor: ratio(0.79), speedFactor: ratio(0.93) });
    within(highestPower(derated) / highestPower(gear), 0.71, 0.07);
  });
});
