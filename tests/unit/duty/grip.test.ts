import { describe, expect, it } from 'vitest';
import { dutyOf, say, sayFact, wedge } from '#tests/support/lists/duty-lines.ts';

describe('grip', () => {
  it('a buried valve is taken to be on a nut at a usual depth', () => {
    const duty = dutyOf({
      valveType: sayFact('gate'),
      size: say('m', 0.1),
      notes: 'Valve not visible, covered by sand',
    });
    expect(duty.grip.kind).toBe('nut');
    expect([duty.grip.depthToNut?.low, duty.grip.depthToNut?.high]).toEqual([0.75, 1.35]);
  });
  it('a plant gate is taken to have a wheel, of a size from the table, and a stem that may rise through it', () => {
    const duty = dutyOf({ valveType: sayFact('wedge gate'), size: say('m', 0.15), rating: sayFact('Class 300') });
    expect(duty.grip).toMatchObject({ kind: 'wheel', stemRisesThroughWheel: 'maybe' });
    expect(duty.grip.wheelDiameter?.high).toBeGreaterThan(duty.grip.wheelDiameter?.low ?? 0);
  });
  it('where the protrusion was measured decides whether the travel comes on top', () => {
    const protrusion = (at?: 'open' | 'closed') =>
      dutyOf({
        ...wedge,
        interface: {
          ...wedge.interface,
          stemProtrusion: say('m', 0.1),
          ...(at === undefined ? {} : { protrusionMeasuredAt: sayFact(at) }),
        },
      }).grip.stemProtrusion;
    expect(protrusion('open')?.high).toBeCloseTo(0.1, 9);
    expect(protrusion('closed')?.low).toBeCloseTo(0.31, 9);
    expect([protrusion()?.low, protrusion()?.high].map((one) => Number(one?.toFixed(6)))).toEqual([0.1, 0.31]);
  });
  it.each([
    ['chain wheel', 'chain'],
    ['actuator hand drive', 'isolate'],
  ] as const)('a %s has nothing to grip and says why', (drive, word) => {
    const { grip } = dutyOf({ ...wedge, interface: { drivenBy: sayFact(drive) } });
    expect(grip.kind).toBe('none');
    expect(grip.remark).toContain(word);
  });
});
