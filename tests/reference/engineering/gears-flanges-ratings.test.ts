import { describe, expect, it } from 'vitest';
import { multiTurnFlangeThrust, multiTurnFlangeTorque, partTurnFlangeTorque } from '#lib/engineering/flange-limits.ts';
import { gearOutputTorque, wormEfficiency, wormRatio } from '#lib/engineering/gear-reduction.ts';
import { classPressure, ratingPressure } from '#lib/engineering/pressure-rating.ts';
import { squareShaftStress } from '#lib/engineering/shaft-torsion.ts';
import { criticalClosureTime, fullSurge } from '#lib/engineering/surge.ts';
import { celsius, degrees, metres, metresPerSecond, millimetres, newtonMetres, ratio } from '#lib/units/quantity.ts';

const INCH_POUND = 0.112_984_8;

describe('gearboxes', () => {
  // T. H. Wentzell, Machine Design, Example 13.6, p. 294: 5 hp at 1750/min, 60:1, efficiency 0.73.
  it('Wentzell 13.6: 180 in·lb become 7884 in·lb through 60:1 at 0.73', () => {
    const input = newtonMetres(((63_000 * 5) / 1750) * INCH_POUND);
    const output = gearOutputTorque({ inputTorque: input, ratio: ratio(60), efficiency: ratio(0.73) });
    expect(Math.abs(output / INCH_POUND / 7884 - 1)).toBeLessThanOrEqual(0.001);
  });
  it('Wentzell 13.6: a worm of 4.77° and friction 0.03 has an efficiency of 0.73', () => {
    expect(
      Math.abs(wormEfficiency({ leadAngle: degrees(4.77), friction: ratio(0.03) }) / 0.73 - 1),
    ).toBeLessThanOrEqual(0.01);
  });
  // T. H. Wentzell, Machine Design, Example 13.4, p. 288.
  it('Wentzell 13.4: 60 teeth and one start make 60:1, 1750/min become 29.17/min', () => {
    const reduction = wormRatio({ wheelTeeth: ratio(60), starts: ratio(1) });
    expect(reduction).toBe(60);
    expect(1750 / reduction).toBeCloseTo(29.17, 2);
  });
});

describe('mounting flanges', () => {
  // ISO 5211:2017, table 1 (values from memory).
  it.each([
    ['F03', 32],
    ['F04', 63],
    ['F05', 125],
    ['F07', 250],
    ['F10', 500],
    ['F12', 1000],
    ['F14', 2000],
    ['F16', 4000],
    ['F25', 8000],
    ['F30', 16_000],
    ['F35', 32_000],
    ['F40', 63_000],
    ['F48', 125_000],
    ['F60', 250_000],
  ])('ISO 5211 (from memory): %s passes %d N·m', (flange, torque) => {
    expect(partTurnFlangeTorque(flange)).toBe(torque);
  });
  // ISO 5210:2017, table 1 (values from memory).
  it.each([
    ['F07', 40, 20],
    ['F10', 100, 40],
    ['F14', 400, 100],
    ['F16', 700, 150],
    ['F25', 1200, 200],
    ['F30', 2500, 325],
    ['F35', 5000, 700],
    ['F40', 10_000, 1100],
  ])('ISO 5210 (from memory): %s passes %d N·m and %d kN', (flange, torque, thrust) => {
    expect(multiTurnFlangeTorque(flange)).toBe(torque);
    expect(multiTurnFlangeThrust(flange)).toBe(thrust * 1000);
  });
  // ISO 5211 largest squares (from memory) with the square-bar coefficient: the pairs are plausible at 170 to 250 MPa.
  it.each([
    ['F05', 14],
    ['F07', 17],
    ['F10', 22],
    ['F12', 27],
    ['F14', 36],
    ['F16', 46],
  ])('%s with its largest square of %d mm is stressed as a steel square may be', (flange, side) => {
    const torque = partTurnFlangeTorque(flange) ?? newtonMetres(0);
    const stress = squareShaftStress({ torque, side: millimetres(side) }) / 1e6;
    expect(stress).toBeGreaterThan(170);
    expect(stress).toBeLessThan(260);
  });
});

describe('pressure ratings', () => {
  // ASME B16.34 table 2-1.1A, group 1.1, classes 150 to 2500, bar; rows above 300 °C from memory.
  it.each([
    [20, [19.6, 51.1, 102.1, 153.2, 255.3, 425.5]],
    [50, [19.2, 50.1, 100.2, 150.4, 250.6, 417.7]],
    [100, [17.7, 46.6, 93.2, 139.8, 233.0, 388.3]],
    [150, [15.8, 45.1, 90.2, 135.2, 225.4, 375.6]],
    [200, [13.8, 43.8, 87.6, 131.4, 219.0, 365.0]],
    [250, [12.1, 41.9, 83.9, 125.8, 209.7, 349.5]],
    [300, [10.2, 39.8, 79.6, 119.5, 199.1, 331.8]],
    [350, [8.4, 37.6, 75.1, 112.7, 187.8, 313.0]],
    [400, [6.5, 34.7, 69.4, 104.2, 173.6, 289.3]],
    [425, [5.5, 28.8, 57.5, 86.3, 143.8, 239.7]],
  ])('ASME B16.34 group 1.1 at %d °C', (temperature, bars) => {
    const found = [150, 300, 600, 900, 1500, 2500].map(
      (ratingClass) => (classPressure({ ratingClass, temperature: celsius(temperature) }) ?? Number.NaN) / 1e5,
    );
    bars.forEach((expected, index) => {
      expect(Math.abs((found[index] ?? Number.NaN) - expected)).toBeLessThanOrEqual(0.3);
    });
  });
  it('ASME B16.34: between temperatures a straight line is allowed, above 425 °C nothing is told, between classes nothing either', () => {
    expect((classPressure({ ratingClass: 150, temperature: celsius(75) }) ?? 0) / 1e5).toBeCloseTo(18.45, 6);
    expect(classPressure({ ratingClass: 150, temperature: celsius(500) })).toBeNull();
    expect(classPressure({ ratingClass: 200, temperature: celsius(20) })).toBeNull();
  });
  it('EN 1333: PN 16 is 16 bar, however it is written', () => {
    expect(['PN 16', 'PN16', 'pn 16'].map(ratingPressure)).toEqual([16e5, 16e5, 16e5]);
    expect(ratingPressure('cast iron')).toBeNull();
  });
});

describe('surge', () => {
  // Joukowsky: about 10 bar for each m/s stopped in steel pipe (1000 kg/m³ at 1000 m/s); common practice.
  it('a metre a second stopped at once at 1000 m/s raises 10 bar, for any closure within 2L/a', () => {
    expect(fullSurge({ waveSpeed: metresPerSecond(1000), velocity: metresPerSecond(1) })).toBe(1e6);
    expect(criticalClosureTime({ length: metres(500), waveSpeed: metresPerSecond(1000) })).toBe(1);
  });
});
