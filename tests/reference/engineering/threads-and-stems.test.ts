import { describe, expect, it } from 'vitest';
import { squareShaftTwist } from '#lib/engineering/shaft-torsion.ts';
import {
  flankHalfAngle,
  mediumPitch,
  threadMeanDiameter,
  threadRootDiameter,
} from '#lib/engineering/thread-geometry.ts';
import { GATE_STEMS_MM } from '#lib/engineering/valve-tables.ts';
import { degrees, metres, millimetres, newtonMetres, pascals } from '#lib/units/quantity.ts';

const INCH = 0.0254;

/** ISO 2902 medium series with ISO 2904 diameters (DIN 103): pairs and the d2 and d3 rules read, root clearance from memory. */
const TRAPEZOIDAL: readonly (readonly [d: number, pitch: number, d2: number, d3: number])[] = [
  [16, 4, 14, 11.5],
  [18, 4, 16, 13.5],
  [20, 4, 18, 15.5],
  [22, 5, 19.5, 16.5],
  [24, 5, 21.5, 18.5],
  [26, 5, 23.5, 20.5],
  [28, 5, 25.5, 22.5],
  [30, 6, 27, 23],
  [32, 6, 29, 25],
  [34, 6, 31, 27],
  [36, 6, 33, 29],
  [38, 7, 34.5, 30],
  [40, 7, 36.5, 32],
  [42, 7, 38.5, 34],
  [44, 7, 40.5, 36],
  [46, 8, 42, 37],
  [48, 8, 44, 39],
  [50, 8, 46, 41],
  [52, 8, 48, 43],
  [55, 9, 50.5, 45],
  [60, 9, 55.5, 50],
];

/** ASME B1.5, Machinery's Handbook: diameter, threads per inch, pitch diameter; part of the counts and the rule from memory. */
const ACME: readonly (readonly [d: number, tpi: number, pitchDiameter: number])[] = [
  [0.625, 8, 0.5625],
  [0.75, 6, 0.6667],
  [0.875, 6, 0.7917],
  [1, 5, 0.9],
  [1.125, 5, 1.025],
  [1.25, 5, 1.15],
  [1.375, 4, 1.25],
  [1.5, 4, 1.375],
  [1.75, 4, 1.625],
  [2, 4, 1.875],
  [2.25, 3, 2.0833],
  [2.5, 3, 2.3333],
  [2.75, 3, 2.5833],
  [3, 2, 2.75],
];

describe('thread sizes', () => {
  it.each(TRAPEZOIDAL)(
    'ISO 2904: Tr%dx%d has d2 %d mm and d3 %d mm, and the pitch is the medium one of its size',
    (d, pitch, d2, d3) => {
      const size = { majorDiameter: millimetres(d), pitch: millimetres(pitch) };
      expect(threadMeanDiameter(size) * 1000).toBeCloseTo(d2, 9);
      expect(threadRootDiameter({ form: 'trapezoidal', ...size }) * 1000).toBeCloseTo(d3, 9);
      expect(mediumPitch(millimetres(d)) * 1000).toBeCloseTo(pitch, 9);
    },
  );

  it.each(ACME)('ASME B1.5: Acme %d-%d has a pitch diameter of %d in', (d, tpi, pitchDiameter) => {
    const size = { majorDiameter: metres(d * INCH), pitch: metres(INCH / tpi) };
    expect(Math.abs(threadMeanDiameter(size) / INCH - pitchDiameter)).toBeLessThanOrEqual(0.0001);
  });

  // ASME B1.5 (from memory): the screw's root lies 0.020 in below its basic minor diameter, d − P.
  it('ASME B1.5 (from memory): the root of Acme 1 1/2-4 is 1.230 in', () => {
    expect(
      threadRootDiameter({ form: 'acme', majorDiameter: metres(1.5 * INCH), pitch: metres(0.25 * INCH) }) / INCH,
    ).toBeCloseTo(1.23, 6);
  });

  it('ISO 2901 and ASME B1.5: half-angles are 15° and 14.5°; square threads have none', () => {
    expect([flankHalfAngle('trapezoidal'), flankHalfAngle('acme'), flankHalfAngle('square')]).toEqual([
      degrees(15),
      degrees(14.5),
      degrees(0),
    ]);
  });
});

describe('stems', () => {
  // API Std 600, 13th ed., table 5, class 150, as quoted in a secondary source.
  it.each([
    [50, 19.05],
    [80, 22.23],
    [100, 25.4],
    [150, 28.58],
  ])('API Std 600 (secondary): DN %d has a stem of at least %d mm', (size, stem) => {
    expect(GATE_STEMS_MM.find(([dn]) => dn === size)?.[1]).toBe(stem);
  });

  // Beer & Johnston, Mechanics of Materials, table 3.1 (from memory): c2 = 0.1406 for a square.
  it('Beer & Johnston (from memory): a square bar twists by T·L/(0.1406·a⁴·G)', () => {
    const twist = squareShaftTwist({
      torque: newtonMetres(1000),
      side: metres(0.1),
      length: metres(1),
      shearModulus: pascals(80e9),
    });
    expect((twist * Math.PI) / 180).toBeCloseTo(1000 / (0.1406 * 1e-4 * 80e9), 9);
  });
});
