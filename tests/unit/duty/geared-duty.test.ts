import { describe, expect, it } from 'vitest';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import { dutyOf, findingIds, say, sayFact, wedge } from '#tests/support/lists/duty-lines.ts';

describe('geared valves', () => {
  const butterfly: Partial<ScheduleLine> = {
    valveType: sayFact('butterfly'),
    size: say('m', 0.5),
    rating: sayFact('PN 10'),
    torque: {
      gearbox: sayFact('worm'),
      gearRatio: say('1', 70),
      gearEfficiency: say('1', 0.3),
      outputTorque: say('N·m', 2000),
    },
  };

  it('a worm of 70:1 takes 17.5 turns for a quarter turn and divides the torque by ratio times efficiency', () => {
    const duty = dutyOf(butterfly);
    expect(duty.movement).toBe('geared');
    expect([duty.turns.low, duty.turns.high]).toEqual([17.5, 17.5]);
    // 2000/(70·0.3) = 95.24 N·m at the seat; starting adds half of the starting surplus, 15 to 80 %.
    expect(duty.opening.starting.low).toBeCloseTo(95.24 * 1.075, 1);
    expect(duty.opening.starting.high).toBeCloseTo(95.24 * 1.4, 1);
  });
  it('a travelling nut has no constant ratio: its turns are a wide range', () => {
    const duty = dutyOf({ ...butterfly, torque: { ...butterfly.torque, gearbox: sayFact('travelling nut') } });
    expect(duty.turns.high / duty.turns.low).toBeGreaterThan(1.8);
    expect(findingIds(duty)).toContain('ratio-not-constant');
  });
  it('stated turns of a travelling nut are taken as they are', () => {
    const duty = dutyOf({
      ...butterfly,
      torque: { ...butterfly.torque, gearbox: sayFact('travelling nut'), turns: say('turn', 21) },
    });
    expect([duty.turns.low, duty.turns.high]).toEqual([21, 21]);
  });
  it('stated turns that contradict the ratio are a finding, and are used', () => {
    const duty = dutyOf({ ...butterfly, torque: { ...butterfly.torque, turns: say('turn', 35) } });
    expect(findingIds(duty)).toContain('turns-stated-against-computed');
    expect(duty.turns.nominal).toBe(35);
  });
  it('the flange bounds the input at the highest efficiency and changes nothing of the need', () => {
    const plain = dutyOf(butterfly);
    const flanged = dutyOf({ ...butterfly, torque: { ...butterfly.torque, flange: sayFact('F14') } });
    // ISO 5211 F14: 2000 N·m; 2000/(70·0.3) = 95.24 N·m.
    expect(flanged.bounds.find(({ kind }) => kind === 'flange')?.torque.low).toBeCloseTo(95.24, 1);
    expect(flanged.opening.starting).toEqual(plain.opening.starting);
    const { gearEfficiency: _efficiency, ...unknown } = { ...butterfly.torque, flange: sayFact('F14') };
    // Efficiency not given: 0.38 is the highest of the table, so every end is 2000/(70·0.38) = 75.19 N·m.
    expect(
      dutyOf({ ...butterfly, torque: unknown }).bounds.find(({ kind }) => kind === 'flange')?.torque.high,
    ).toBeCloseTo(75.19, 1);
  });
  it('a bound behind a travelling nut counts where the ratio is highest', () => {
    const torque = {
      ...butterfly.torque,
      flange: sayFact('F14'),
      gearbox: sayFact<'travelling nut'>('travelling nut'),
    };
    const flange = dutyOf({ ...butterfly, torque }).bounds.find(({ kind }) => kind === 'flange')?.torque;
    // The need goes up by up to 1.4 where the ratio is low; where it is high, 0.7 of the input makes the same output. Common practice, no source.
    expect(flange?.low).toBeCloseTo(95.24 * 0.7, 1);
  });
  it('a bevel gear multiplies the turns of a gate and divides its torque and its bounds', () => {
    const { max: _max, ...torque } = wedge.torque ?? {};
    const geared = dutyOf({
      ...wedge,
      torque: { ...torque, gearbox: sayFact('bevel'), gearRatio: say('1', 3), gearEfficiency: say('1', 0.9) },
    });
    expect(geared.turns.low).toBeCloseTo(105, 6);
    expect(geared.opening.running.nominal).toBeCloseTo(72.64 / 2.7, 2);
    expect(geared.bounds.find(({ kind }) => kind === 'stem torsion')?.torque.low).toBeCloseTo(324.5 / 2.7, 0);
  });
  it('a quarter-turn valve on a square without a gearbox is told to be too quick for a drive', () => {
    const duty = dutyOf({
      valveType: sayFact('plug'),
      size: say('m', 0.05),
      interface: { drivenBy: sayFact('square') },
    });
    expect(findingIds(duty)).toContain('quarter-turn-without-gearbox');
    expect(duty.turns.nominal).toBe(0.25);
  });
});
