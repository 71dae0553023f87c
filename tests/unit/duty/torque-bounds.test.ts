import { describe, expect, it } from 'vitest';
import type { Duty } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import { dutyOf, findingIds, say, sayFact, wedge } from '#tests/support/lists/duty-lines.ts';

describe('what the valve must never see', () => {
  it('a thrust bound becomes a torque at the lowest friction: more friction in the range does not raise it', () => {
    const stem = (high: number): ScheduleLine['stem'] => ({
      ...wedge.stem,
      threadFriction: { ...say('1', 0.1), high: say('1', high).high },
    });
    const buckling = (duty: Duty) => duty.bounds.find(({ kind }) => kind === 'stem buckling')?.torque.low ?? Number.NaN;
    expect(buckling(dutyOf({ ...wedge, stem: stem(0.3) }))).toBeCloseTo(
      buckling(dutyOf({ ...wedge, stem: stem(0.1) })),
      9,
    );
  });
  it('stem buckling bounds closing only', () => {
    const duty = dutyOf({
      valveType: sayFact('penstock'),
      size: say('m', 0.6),
      interface: { spindleLength: say('m', 6) },
    });
    expect(duty.bounds.find(({ kind }) => kind === 'stem buckling')?.directions).toEqual(['closing']);
    expect(duty.closing.neverExceed.kind).toBe('stem buckling');
    expect(duty.opening.neverExceed.kind).not.toBe('stem buckling');
  });
  it('a longer stem bears less', () => {
    const bound = (length: number) =>
      dutyOf({ valveType: sayFact('penstock'), size: say('m', 0.6), interface: { spindleLength: say('m', length) } })
        .closing.neverExceed.torque.nominal;
    expect(bound(8)).toBeLessThan(bound(4));
  });
  it('age weakens every table but not the need', () => {
    const gate: Partial<ScheduleLine> = {
      valveType: sayFact('gate'),
      size: say('m', 0.15),
      rating: sayFact('PN 16'),
      state: { condition: sayFact('free') },
    };
    const old = dutyOf({ ...gate, state: { ...gate.state, age: sayFact(1985) } });
    expect(old.opening.neverExceed.torque.low).toBeLessThan(dutyOf(gate).opening.neverExceed.torque.low);
    expect(findingIds(old)).toContain('old-weaker-than-table');
    expect(old.opening.running).toEqual(dutyOf(gate).opening.running);
  });
  it('a rounded nut, a thin spindle and its pin are bounds', () => {
    const kinds = dutyOf({
      valveType: sayFact('gate'),
      size: say('m', 0.1),
      interface: {
        drivenBy: sayFact('extension spindle'),
        spindleSize: say('m', 0.02),
        nut: { acrossFlats: say('m', 0.019) },
        nutWear: sayFact('rounded'),
      },
    }).bounds.map(({ kind }) => kind);
    expect(kinds).toEqual(expect.arrayContaining(['nut', 'spindle', 'spindle pin']));
  });
  it('an iron gate of 150 mm on a key stands about 300 lbf·ft (AWWA C509, from memory) and is said to be a rule of thumb', () => {
    const limit = dutyOf({ valveType: sayFact('gate'), size: say('m', 0.15) }).opening.neverExceed.torque;
    expect(limit.low / 1.3558).toBeGreaterThan(190);
    expect(limit.high / 1.3558).toBeLessThanOrEqual(301);
    expect(limit.basis).toBe('rule of thumb');
  });
  it('a guessed bound below the torque that is said to move the valve is raised, with a finding; a stated one never is', () => {
    const penstock: Partial<ScheduleLine> = {
      valveType: sayFact('penstock'),
      size: say('m', 3),
      torque: { gearbox: sayFact('bevel'), starting: say('N·m', 2600) },
      interface: { drivenBy: sayFact('gearbox nut') },
    };
    const raised = dutyOf(penstock);
    expect(findingIds(raised)).toContain('bound-below-stated-torque');
    expect(raised.opening.neverExceed.torque.low).toBe(3900);
    const stated = dutyOf({ ...penstock, torque: { ...penstock.torque, max: say('N·m', 2000) } });
    expect(stated.opening.neverExceed).toMatchObject({ kind: 'stated', torque: { high: 2000 } });
    expect(stated.findings.find(({ id }) => id === 'limiter-window-empty-opening')?.severity).toBe('refusal');
  });
  it('an empty window is a refusal only when even the lowest start is above the highest ceiling', () => {
    const withMax = (max: number) => dutyOf({ ...wedge, torque: { max: say('N·m', max) } });
    const severity = (duty: Duty) => duty.findings.find(({ id }) => id === 'limiter-window-empty-opening')?.severity;
    expect(severity(withMax(150))).toBeUndefined();
    expect(withMax(110).opening.limiter).toBeNull();
    expect(severity(withMax(110))).toBe('warning');
    expect(severity(withMax(60))).toBe('refusal');
  });
});
