import { describe, expect, it } from 'vitest';
import { assessDuties } from '#lib/duty/assess-duties.ts';
import { assessDuty } from '#lib/duty/assess-duty.ts';
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import {
  dutyOf,
  findingIds,
  lineOf,
  PLAIN_SITE,
  say,
  sayFact,
  step,
  tr,
  wedge,
} from '#tests/support/lists/duty-lines.ts';

describe('a whole gate valve against a calculation by hand', () => {
  /*
   * Seat: A = π/4·0.200² = 0.0314159 m²; Δp·A = 31 415.9 N; VF·Δp·A = 0.3·31 415.9 = 9 424.8 N.
   * Stem end: π/4·0.032²·10 bar = 804.25 N. Packing 2 000 N.
   * Opening F = 9 424.8 + 2 000 − 804.25 = 10 620.5 N; closing F = 9 424.8 + 2 000 + 804.25 = 12 229.0 N.
   * Tr32x6, one start: dm = 32 − 3 = 29 mm, lead 6 mm: tan λ = 6/(π·29) = 0.065857; f·sec 15° = 0.15/0.965926 = 0.155291;
   * tan(λ + φ) = 0.221148/(1 − 0.010227) = 0.223433.
   * Thread: 10 620.5·0.0145·0.223433 = 34.408 N·m. Collar: 10 620.5·0.15·0.048/2 = 38.234 N·m. Running, opening: 72.64 N·m.
   * Closing: 72.64·12 229.0/10 620.5 = 83.64 N·m.
   * A free valve starts with 1.05 to 1.4, likely 1.2 times: 76.27, 87.17, 101.70 N·m.
   * Turns: 210/6 = 35, lost motion 0 to 1.5, likely 0.5: 35, 35.5, 36.5.
   * Ceiling: stated 150 N·m; the plain cast wheel bears 890·0.2 = 178 N·m, the root of 25 mm at 275 MPa/1.5 bears 324.5 N·m.
   * Window of an ideal limiter, opening: 101.70·1.25 = 127.1 N·m to 150 N·m.
   */
  const duty = dutyOf(wedge);

  it('thrusts are 10 620 N opening and 12 229 N closing', () => {
    expect(duty.opening.thrust?.nominal).toBeCloseTo(10_620.5, 0);
    expect(duty.closing.thrust?.nominal).toBeCloseTo(12_229.0, 0);
  });
  it('running takes 72.64 N·m opening and 83.64 N·m closing, with no range left', () => {
    expect(duty.opening.running.low).toBeCloseTo(72.64, 2);
    expect(duty.opening.running.high).toBeCloseTo(72.64, 2);
    expect(duty.closing.running.nominal).toBeCloseTo(83.64, 2);
  });
  it('starting takes 76.3 to 101.7 N·m, likely 87.2', () => {
    expect(
      [duty.opening.starting.low, duty.opening.starting.nominal, duty.opening.starting.high].map((one) =>
        Number(one.toFixed(1)),
      ),
    ).toEqual([76.3, 87.2, 101.7]);
  });
  it('a stroke takes 35 to 36.5 turns', () => {
    expect([duty.turns.low, duty.turns.nominal, duty.turns.high].map((one) => Number(one.toFixed(6)))).toEqual([
      35, 35.5, 36.5,
    ]);
  });
  it('never-exceed is the stated 150 N·m, the lowest of the bounds, wheel and stem torsion listed beside it', () => {
    expect(duty.opening.neverExceed).toMatchObject({ kind: 'stated', torque: { low: 150, basis: 'stated' } });
    const bound = (kind: string) => duty.bounds.find((one) => one.kind === kind)?.torque.low ?? 0;
    expect(bound('wheel')).toBeCloseTo(178, 6);
    expect(bound('stem torsion')).toBeCloseTo(324.5, 0);
  });
  it('the window of an ideal limiter runs from 127.1 to 150 N·m', () => {
    expect(duty.opening.limiter?.low).toBeCloseTo(127.1, 1);
    expect(duty.opening.limiter?.high).toBe(150);
  });
  it('each of those numbers stands on the sheet with its inputs', () => {
    for (const id of [
      'seat-load',
      'stem-end-load',
      'thrust-opening',
      'thread-torque-opening',
      'collar-torque-opening',
      'running-torque-opening',
      'starting-torque-opening',
      'turns-of-the-stem',
      'never-exceed-opening',
    ]) {
      expect(step(duty, id)?.inputs.length, id).toBeGreaterThan(1);
    }
  });
  it('every step has its own id, an ordered range, a source, and inputs with sources', () => {
    expect(new Set(duty.steps.map(({ id }) => id)).size).toBe(duty.steps.length);
    for (const { result, source, inputs } of duty.steps) {
      expect(source.length * result.source.length).toBeGreaterThan(0);
      for (const one of [result, ...inputs]) {
        expect(one.low).toBeLessThanOrEqual(one.nominal);
        expect(one.nominal).toBeLessThanOrEqual(one.high);
        expect(one.source.length).toBeGreaterThan(0);
      }
    }
  });
});

describe('lines that say little', () => {
  it('a gate of 150 mm on a key stays within what the trade knows', () => {
    const duty = dutyOf({ valveType: sayFact('gate'), size: say('m', 0.15) });
    expect(duty.opening.running.nominal).toBeGreaterThan(20);
    expect(duty.opening.running.nominal).toBeLessThan(80);
    expect(duty.opening.starting.nominal).toBeGreaterThan(25);
    expect(duty.opening.starting.high).toBeLessThan(170);
    expect(duty.turns.low).toBeGreaterThan(15);
    expect(duty.turns.high).toBeLessThan(40);
    expect(duty.opening.limiter).not.toBeNull();
    expect(duty.grip).toMatchObject({ kind: 'nut' });
    expect(duty.grip.nutSizes?.length).toBeGreaterThan(1);
    expect(duty.measureFirst).toContain('pressure');
  });
  it('"valve, 150 mm" is answered, and asks for the kind of valve first', () => {
    const duty = dutyOf({ size: say('m', 0.15) });
    expect(duty.measureFirst).toContain('what kind of valve');
    expect(findingIds(duty)).toContain('valve-type-assumed');
  });
  it('a line with nothing but a tag is answered, with the widest range of all', () => {
    const nothing = dutyOf();
    const sized = dutyOf({ size: say('m', 0.15) });
    expect(nothing.opening.starting.high).toBeGreaterThan(sized.opening.starting.high);
    expect(nothing.opening.starting.low).toBeLessThan(sized.opening.starting.low);
    expect(nothing.opening.starting.basis).toBe('assumed');
  });
  it('values that cannot be meant are set aside with a finding, and nothing throws', () => {
    const broken: Known<Unit> = {
      low: Number.NaN,
      nominal: Number.NaN,
      high: Number.NaN,
      unit: 'm',
      basis: 'stated',
      source: 'Typed.',
    } as Known<Unit>;
    const duty = dutyOf({
      ...wedge,
      size: { ...say('m', -3) },
      stem: { ...wedge.stem, travel: { ...say('m', 0.2), ...broken, unit: 'm' } as Known<'m'>, thread: tr(10, 30) },
      torque: { gearRatio: say('1', 0), turns: say('turn', -4) },
    });
    expect(duty.findings.filter(({ id }) => id === 'value-set-aside').length).toBeGreaterThanOrEqual(5);
    expect(Number.isFinite(duty.opening.starting.high)).toBe(true);
  });
  it('qty and strokes that are no counts become one and two', () => {
    expect(dutyOf({ qty: Number.NaN, strokes: 0 })).toMatchObject({ qty: 1, strokes: 2 });
  });
});

describe('a whole schedule', () => {
  it('gives each line the duty that it has alone, whatever lines stand beside it', () => {
    const lines = [
      lineOf({ ...wedge, tag: 'A' }),
      lineOf({ ...wedge, tag: 'B', place: { location: 'Main street' } }),
      lineOf({ ...wedge, tag: 'C', notes: 'buried' }),
      lineOf({ ...wedge, tag: 'D', size: say('m', 0.25) }),
    ];
    expect(assessDuties({ lines, site: PLAIN_SITE })).toEqual(
      lines.map((line) => assessDuty({ line, site: PLAIN_SITE })),
    );
  });
});
