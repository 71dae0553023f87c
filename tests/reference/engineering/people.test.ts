import { describe, expect, it } from 'vitest';
import {
  dailyNoise,
  NOISE_LIMIT,
  NOISE_LOWER_ACTION,
  NOISE_UPPER_ACTION,
  noisePoints,
  timeToNoise,
} from '#lib/engineering/noise.ts';
import {
  dailyVibration,
  timeToVibration,
  VIBRATION_ACTION_VALUE,
  VIBRATION_LIMIT_VALUE,
  vibrationPoints,
} from '#lib/engineering/vibration.ts';
import { decibels, metresPerSecondSquared, seconds } from '#lib/units/quantity.ts';

const hours = (value: number) => seconds(value * 3600);
const use = (vibration: number, time: number) => ({ vibration: metresPerSecondSquared(vibration), time: hours(time) });

describe('hand-arm vibration', () => {
  it('Directive 2002/44/EC, Art. 3: action value 2.5, limit value 5 m/s²', () => {
    expect([VIBRATION_ACTION_VALUE, VIBRATION_LIMIT_VALUE]).toEqual([2.5, 5]);
  });

  it('HSE ready reckoner page: 5 m/s² for 3 h are 150 points', () => {
    expect(vibrationPoints([use(5, 3)])).toBeCloseTo(150, 9);
  });

  // HSE ready reckoner, cells from memory; its table rounds to 5 points, and so does the tolerance where the print does.
  it.each([
    [2.5, 8, 100, 0.01],
    [2.5, 4, 50, 0.01],
    [3, 1, 18, 0.01],
    [3.5, 8, 195, 2.5],
    [4, 1, 32, 0.01],
    [4, 4, 130, 2.5],
    [5, 2, 100, 0.01],
    [5, 8, 400, 0.01],
    [6, 1, 72, 0.01],
    [6, 2, 145, 2.5],
    [7, 1, 98, 0.01],
    [8, 0.25, 32, 0.01],
    [8, 1, 130, 2.5],
    [10, 0.5, 100, 0.01],
    [10, 2, 400, 0.01],
    [12, 0.5, 145, 2.5],
    [15, 0.25, 115, 2.5],
    [20, 0.25, 200, 0.01],
    [30, 0.25, 450, 0.01],
    [40, 0.25, 800, 0.01],
  ])('%d m/s² for %d h: %d points', (vibration, time, printed, tolerance) => {
    expect(Math.abs(vibrationPoints([use(vibration, time)]) - printed)).toBeLessThanOrEqual(tolerance);
  });

  // Directive 2002/44/EC, A(8) turned round; arithmetic, from memory.
  it.each([
    [3, 5.556, 22.222],
    [5, 2, 8],
    [7, 1.02, 4.082],
    [10, 0.5, 2],
    [20, 0.125, 0.5],
  ])('%d m/s² reaches the action value in %d h and the limit in %d h', (vibration, action, limit) => {
    const a = metresPerSecondSquared(vibration);
    expect(Math.abs(timeToVibration({ vibration: a, limit: VIBRATION_ACTION_VALUE }) / 3600 - action)).toBeLessThan(
      0.005,
    );
    expect(Math.abs(timeToVibration({ vibration: a, limit: VIBRATION_LIMIT_VALUE }) / 3600 - limit)).toBeLessThan(
      0.005,
    );
  });

  it('EU guide to good practice, chapter 2.4 (numbers from memory): three tools make 4.3 m/s²', () => {
    expect(Math.abs(dailyVibration([use(4, 2.5), use(3, 1), use(20, 0.25)]) - 4.3)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(vibrationPoints([use(4, 2.5), use(3, 1), use(20, 0.25)]) - 298)).toBeLessThanOrEqual(1);
  });

  it('HSE LP 246/31, paragraph 24: partial exposures add as squares', () => {
    const together = dailyVibration([use(3, 2), use(6, 1)]);
    expect(together).toBeCloseTo(Math.hypot(dailyVibration([use(3, 2)]), dailyVibration([use(6, 1)])), 9);
  });
});

describe('noise', () => {
  it('Control of Noise at Work Regulations 2005, reg. 4: 80, 85 and 87 dB(A)', () => {
    expect([NOISE_LOWER_ACTION, NOISE_UPPER_ACTION, NOISE_LIMIT]).toEqual([80, 85, 87]);
  });

  // HSE HSG260, 1.20: equal doses of 80 dB.
  it.each([
    [80, 8],
    [83, 4],
    [86, 2],
    [89, 1],
  ])('%d dB for %d h are 80 dB over the day', (level, time) => {
    expect(Math.abs(dailyNoise([{ level: decibels(level), time: hours(time) }]) - 80)).toBeLessThanOrEqual(0.1);
  });

  // HSE noise ready reckoner: printed points; the print rounds to about three per cent at the low end.
  it.each([
    [95, 1000],
    [94, 790],
    [93, 630],
    [91, 400],
    [90, 315],
    [89, 250],
    [88, 200],
    [86, 125],
    [85, 100],
    [84, 80],
    [83, 65],
    [81, 40],
    [80, 32],
    [79, 26],
    [78, 20],
  ])('%d dB are %d points', (level, printed) => {
    expect(Math.abs(noisePoints(decibels(level)) / printed - 1)).toBeLessThanOrEqual(0.04);
  });

  // HSE noise ready reckoner, weekly: level by the points of five days, printed to whole decibels; a day of so many points is a time at 85 dB.
  it.each([
    [4000, 94],
    [3200, 93],
    [2500, 92],
    [2000, 91],
    [1250, 89],
    [1000, 88],
    [790, 87],
    [630, 86],
    [315, 83],
    [250, 82],
    [200, 81],
    [160, 80],
  ])('%d points in five equal days are %d dB a day', (points, printed) => {
    const day = dailyNoise([{ level: NOISE_UPPER_ACTION, time: hours((8 * points) / 500) }]);
    expect(Math.abs(day - printed)).toBeLessThanOrEqual(0.12);
  });

  // HSE HSG260, 1.21: times to 85 dB, printed rounded (8 h, 45 min, 15 min, 5 min); hours worked out by its formula.
  it.each([
    [85, 8],
    [95, 0.8],
    [100, 0.25298],
    [105, 0.08],
    [115, 0.008],
  ])('%d dB reach 85 dB in %d h', (level, time) => {
    const found = timeToNoise({ level: decibels(level), limit: NOISE_UPPER_ACTION }) / 3600;
    expect(found).toBeCloseTo(time, 5);
  });

  // A national joint council's table with a 3 dB exchange and criterion 87 dB(A).
  it.each([
    [87, 8],
    [88, 6.4],
    [89, 5],
    [93, 2],
    [96, 1],
    [99, 0.5],
  ])('%d dB(A) reach 87 dB(A) in %d h', (level, time) => {
    expect(Math.abs(timeToNoise({ level: decibels(level), limit: NOISE_LIMIT }) / 3600 - time)).toBeLessThanOrEqual(
      0.06,
    );
  });

  it('4 h at 85, 2 h at 95 and 2 h at 80 dB(A) are 89.9 dB (arithmetic)', () => {
    const day = [
      [85, 4],
      [95, 2],
      [80, 2],
    ].map(([level = 0, time = 0]) => ({ level: decibels(level), time: hours(time) }));
    expect(Math.abs(dailyNoise(day) - 89.9)).toBeLessThanOrEqual(0.05);
  });
});
