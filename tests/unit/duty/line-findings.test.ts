import { describe, expect, it } from 'vitest';
import type { Duty } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import { dutyOf, findingIds, say, sayFact, step, wedge } from '#tests/support/lists/duty-lines.ts';

describe('states and traps', () => {
  it('seized is a state of its own', () => {
    const duty = dutyOf({ ...wedge, state: { condition: sayFact('seized') } });
    expect(duty.seized).toBe(true);
    expect(duty.findings.find(({ id }) => id === 'valve-seized')?.severity).toBe('refusal');
  });
  it('thermal binding and pressure locking are findings and leave the torque alone', () => {
    const hot = dutyOf({
      ...wedge,
      valveType: sayFact('flexible wedge gate'),
      process: { ...wedge.process, temperature: say('°C', 180) },
    });
    expect(findingIds(hot)).toEqual(expect.arrayContaining(['thermal-binding', 'pressure-locking']));
    expect(hot.opening.starting).toEqual(dutyOf(wedge).opening.starting);
  });
  it('an unknown closing direction stays unknown, with a warning', () => {
    const duty = dutyOf({ ...wedge, torque: {} });
    expect(duty.closes).toBe('unknown');
    expect(findingIds(duty)).toContain('closing-direction-unknown');
    expect(findingIds(dutyOf(wedge))).not.toContain('closing-direction-unknown');
  });
  it('condition, time at rest and age raise the start, not the run', () => {
    const start = (state: ScheduleLine['state']) => dutyOf({ ...wedge, state }).opening.starting.high;
    expect(start({ condition: sayFact('stiff') })).toBeGreaterThan(start({ condition: sayFact('free') }));
    expect(start({ lastOperated: sayFact(20) })).toBeGreaterThan(start({ lastOperated: sayFact(1) }));
    expect(start({ lastOperated: sayFact(2005) })).toBeCloseTo(start({ lastOperated: sayFact(25) }), 9);
  });
  it('a hand-operated valve that seems to need several persons gets a question', () => {
    const heavy = dutyOf({ ...wedge, interface: { drivenBy: sayFact('handwheel'), wheelDiameter: say('m', 0.16) } });
    expect(findingIds(heavy)).toContain('hand-force-question');
    expect(findingIds(dutyOf(wedge))).not.toContain('hand-force-question');
  });
  it('stated torque is used, and a contradiction with the calculation stays visible', () => {
    const duty = dutyOf({ ...wedge, torque: { starting: say('N·m', 400), max: say('N·m', 600) } });
    expect(duty.opening.starting.nominal).toBe(400);
    expect(findingIds(duty)).toContain('starting-torque-stated-against-computed');
    expect(duty.opening.running.high).toBeCloseTo(400 / 1.05, 6);
  });
  it('stated turns that fit the thread raise no finding, others do', () => {
    expect(findingIds(dutyOf({ ...wedge, torque: { turns: say('turn', 36) } }))).not.toContain(
      'turns-stated-against-computed',
    );
    expect(findingIds(dutyOf({ ...wedge, torque: { turns: say('turn', 18) } }))).toContain(
      'turns-stated-against-computed',
    );
  });
});

describe('speed and time', () => {
  const withFlow = (process: ScheduleLine['process'], torque: ScheduleLine['torque'] = {}) =>
    dutyOf({ ...wedge, process: { ...wedge.process, ...process }, torque: { ...wedge.torque, ...torque } });

  it('unknown flow is as slow as flow; still water may go faster', () => {
    const { flowing: _flowing, ...unknown } = wedge.process ?? {};
    const speed = (duty: Duty) => duty.maxInputSpeed.nominal;
    expect(speed(dutyOf({ ...wedge, process: unknown }))).toBe(speed(withFlow({ flowing: sayFact('flowing') })));
    expect(speed(dutyOf(wedge))).toBeGreaterThan(speed(dutyOf({ ...wedge, process: unknown })));
  });
  it('stated limits are taken as they are', () => {
    const duty = withFlow(
      { flowing: sayFact('flowing') },
      { minStrokeTime: say('s', 300), maxInputSpeed: say('1/min', 12) },
    );
    expect([duty.minStrokeTime?.nominal, duty.maxInputSpeed.nominal]).toEqual([300, 12]);
  });
  it('an unknown pipe gives the full ρ·a·Δv', () => {
    const duty = withFlow({ flowing: sayFact('flowing'), flowVelocity: say('m/s', 1.5) });
    expect(step(duty, 'surge')?.result.nominal).toBe(1000 * 1000 * 1.5);
    expect(findingIds(duty)).toContain('surge-estimate');
  });
  it('a known pipe gives the slower closure over the last part of the stroke, and a stroke time that keeps it low', () => {
    const duty = withFlow({ flowing: sayFact('flowing'), flowVelocity: say('m/s', 1.5), pipeLength: say('m', 1200) });
    // Allowed: 0.2·19.6 bar = 3.92 bar; t = 2·1000·1200·1.5/3.92e5 = 9.18 s over 15 % of the stroke: 61.2 s likely.
    expect(duty.minStrokeTime?.nominal).toBeCloseTo(61.2, 0);
    expect(step(duty, 'surge')?.result.nominal).toBeLessThan(1e6);
  });
});
