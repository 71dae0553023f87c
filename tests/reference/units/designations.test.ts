import { describe, expect, it } from 'vitest';
import { classPressure, ratingPressure } from '#lib/engineering/pressure-rating.ts';
import { dnOfInches, NPS_TO_DN } from '#lib/intake/nominal-sizes.ts';
import { celsius } from '#lib/units/quantity.ts';

/**
 * Sizes and ratings are names, not units: no library of units has them. Each is held against the print that defines it.
 */
describe('designations that are no units', () => {
  it.each([
    // ISO 6708:1995, annex, and ASME B36.10M-2018, table 1: the NPS of each DN.
    [0.5, 15],
    [0.75, 20],
    [1, 25],
    [1.25, 32],
    [1.5, 40],
    [2, 50],
    [2.5, 65],
    [3, 80],
    [4, 100],
    [6, 150],
    [8, 200],
    [10, 250],
    [12, 300],
    [14, 350],
    [16, 400],
    [18, 450],
    [20, 500],
    [24, 600],
    [30, 750],
    [36, 900],
    [42, 1050],
    [48, 1200],
  ])('NPS %d is DN %d', (nps, dn) => {
    expect(dnOfInches(nps)).toBe(dn);
  });

  it('every NPS from 4 up is 25 mm an inch, as ASME B36.10M has it, but for the rounded ones from 52 up', () => {
    const rounded = NPS_TO_DN.filter(([nps, dn]) => nps >= 4 && dn !== nps * 25).map(([nps]) => nps);
    expect(rounded).toEqual([]);
  });

  it.each([2.5, 6, 10, 16, 25, 40, 63, 100, 160, 250, 320, 400])(
    'PN %d is as many bar (EN 1333:2006, table 1)',
    (pn) => {
      expect(ratingPressure(`PN ${pn}`)).toBe(pn * 1e5);
    },
  );

  it.each([
    // ASME B16.34-2017, table 2-1.1, group 1.1, −29 to 38 °C, as printed: bar gauge.
    [150, 19.6],
    [300, 51.1],
    [600, 102.1],
    [900, 153.2],
    [1500, 255.3],
    [2500, 425.5],
  ])('Class %d carries %d bar cold', (ratingClass, bars) => {
    expect((classPressure({ ratingClass, temperature: celsius(20) }) ?? 0) / 1e5).toBeCloseTo(bars, 9);
  });

  it.each([5, 10, 16, 20])(
    '%dK is as many kgf/cm² (JIS B 2220, from memory; 1 kgf/cm² = 98 066.5 Pa, NIST SP 811)',
    (k) => {
      expect(ratingPressure(`${k}K`)).toBeCloseTo(k * 98_066.5, 6);
    },
  );
});
