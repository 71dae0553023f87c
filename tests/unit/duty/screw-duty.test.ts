import { describe, expect, it } from 'vitest';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Known } from '#lib/units/known-value.ts';
import { dutyOf, findingIds, say, sayFact, step, tr, wedge } from '#tests/support/lists/duty-lines.ts';

describe('threads', () => {
  const withThread = (thread: ReturnType<typeof tr>, starts?: number) =>
    dutyOf({
      ...wedge,
      stem: { ...wedge.stem, thread, ...(starts === undefined ? {} : { threadStarts: sayFact(starts) }) },
    });

  it('the lead is pitch times starts: two starts of Tr36x6 halve the turns', () => {
    expect(withThread(tr(36, 6)).thread?.lead.nominal).toBeCloseTo(0.006, 9);
    expect(withThread(tr(36, 6), 2).thread?.lead.nominal).toBeCloseTo(0.012, 9);
    expect(withThread(tr(36, 6), 2).turns.low).toBeCloseTo(17.5, 6);
  });
  it('the ISO form Tr36x12(P6) has two starts of 6 mm', () => {
    expect(withThread(tr(36, 6, 2)).thread?.lead.nominal).toBeCloseTo(0.012, 9);
  });
  it('a column that contradicts the designation is a finding, and the better basis wins', () => {
    const same = withThread(tr(36, 6, 2), 1);
    expect(findingIds(same)).toContain('thread-starts-conflict');
    expect(same.thread?.lead.nominal).toBeCloseTo(0.012, 9);
    const counted = dutyOf({
      ...wedge,
      stem: { ...wedge.stem, thread: tr(36, 6, 2), threadStarts: { value: 1, basis: 'measured', source: 'Counted.' } },
    });
    expect(counted.thread?.lead.nominal).toBeCloseTo(0.006, 9);
  });
  it('a steep thread is told not to hold itself', () => {
    const steep = withThread(tr(32, 6), 4);
    expect(steep.thread?.selfLocking).toBe('no');
    expect(findingIds(steep)).toContain('stem-overhauls');
    expect(dutyOf(wedge).thread?.selfLocking).toBe('yes');
  });
  it('friction that spans the limit makes self-locking depend', () => {
    const friction: Known<'1'> = { ...say('1', 0.15), low: say('1', 0.05).nominal };
    expect(dutyOf({ ...wedge, stem: { ...wedge.stem, threadFriction: friction } }).thread?.selfLocking).toBe('depends');
  });
});

describe('collar friction', () => {
  const ofKind = (
    kind: 'rising through the wheel' | 'rising with the wheel' | 'non-rising',
    more: ScheduleLine['stem'] = {},
  ) => dutyOf({ ...wedge, stem: { ...wedge.stem, kind: sayFact(kind), ...more } });

  it('counts in a rotating yoke nut and at a non-rising stem', () => {
    expect(step(ofKind('rising through the wheel'), 'collar-torque-opening')?.result.nominal).toBeCloseTo(38.23, 2);
    expect(step(ofKind('non-rising'), 'collar-torque-opening')?.result.nominal).toBeGreaterThan(20);
  });
  it('where stem and wheel rise together only the disc swivel rubs, and only when seating', () => {
    const duty = ofKind('rising with the wheel');
    expect(step(duty, 'collar-torque-opening')).toBeUndefined();
    expect(step(duty, 'collar-torque-closing')).toBeUndefined();
    expect(step(duty, 'swivel-torque-closing')?.result.nominal).toBeGreaterThan(0);
    expect(step(duty, 'swivel-torque-opening')).toBeUndefined();
  });
  it('a rolling bearing takes most of it away', () => {
    const { collarFriction: _friction, ...stem } = wedge.stem ?? {};
    const plain = dutyOf({ ...wedge, stem });
    const rolling = dutyOf({ ...wedge, stem: { ...stem, collarBearing: sayFact('rolling') } });
    expect(step(rolling, 'collar-torque-opening')?.result.high).toBeLessThan(
      (step(plain, 'collar-torque-opening')?.result.low ?? 0) / 5,
    );
  });
  it('a stem that turns in its packing pays torque for it, one that slides pays thrust', () => {
    expect(step(ofKind('non-rising'), 'packing-torque-opening')?.result.nominal).toBeCloseTo(32, 6);
    expect(ofKind('non-rising').opening.thrust?.nominal).toBeCloseTo(9424.8, 0);
    expect(step(ofKind('rising through the wheel'), 'packing-torque-opening')).toBeUndefined();
  });
});

describe('families of valves', () => {
  it('a penstock opens against weight and friction and may close by itself', () => {
    const duty = dutyOf({
      valveType: sayFact('penstock'),
      size: say('m', 1),
      process: { differentialPressure: say('Pa', 2000) },
    });
    expect(duty.closing.thrust?.low).toBeLessThan(0);
    expect(duty.opening.thrust?.low).toBeGreaterThan(0);
    expect(findingIds(duty)).toContain('closing-may-overhaul');
    expect(duty.bounds.map(({ kind }) => kind)).toContain('stem buckling');
    expect(duty.countTurns).toBe(true);
  });
  it('a globe covers both flow sides, and the notes narrow it', () => {
    const globe: Partial<ScheduleLine> = {
      valveType: sayFact('globe'),
      size: say('m', 0.08),
      rating: sayFact('Class 300'),
      process: { linePressure: say('Pa', 30e5), differentialPressure: say('Pa', 30e5) },
    };
    const open = dutyOf(globe);
    const under = dutyOf({ ...globe, notes: 'Flow under the disc.' });
    const over = dutyOf({ ...globe, notes: 'Pressure from above' });
    expect(open.closing.thrust?.high).toBeCloseTo(under.closing.thrust?.high ?? 0, 6);
    expect(open.closing.thrust?.low).toBeCloseTo(over.closing.thrust?.low ?? 0, 6);
    expect(under.opening.thrust?.nominal).toBeLessThan(0);
    expect(over.opening.thrust?.nominal).toBeGreaterThan(0);
  });
  it('a diaphragm valve is squeezed shut without seat friction and pushed open', () => {
    const duty = dutyOf({ valveType: sayFact('diaphragm'), size: say('m', 0.08), rating: sayFact('PN 10') });
    expect(duty.closing.thrust?.low).toBeGreaterThan(0);
    expect(duty.opening.thrust?.nominal).toBeLessThan(0);
    expect(step(duty, 'seat-load')).toBeUndefined();
  });
  it('a reverse-acting gate moves its stem out to close: the stem-end load changes sides', () => {
    const reverse = dutyOf({ ...wedge, action: sayFact('reverse') });
    expect(reverse.opening.thrust?.nominal).toBeCloseTo(dutyOf(wedge).closing.thrust?.nominal ?? 0, 6);
  });
  it('the weight of a gate counts only where it is large and hangs on its stem', () => {
    const large: Partial<ScheduleLine> = { valveType: sayFact('gate'), size: say('m', 0.8), rating: sayFact('PN 10') };
    expect(step(dutyOf(large), 'gate-weight')).toBeDefined();
    expect(step(dutyOf({ ...large, place: { faces: sayFact('side') } }), 'gate-weight')).toBeUndefined();
    expect(step(dutyOf(wedge), 'gate-weight')).toBeUndefined();
  });
  it('hydrants and stop taps follow size rules; a stop tap is far weaker', () => {
    const hydrant = dutyOf({ valveType: sayFact('hydrant'), size: say('m', 0.1) });
    const tap = dutyOf({ valveType: sayFact('stop tap'), size: say('m', 0.025) });
    expect([hydrant.movement, tap.movement]).toEqual(['keyed', 'keyed']);
    expect(tap.opening.neverExceed.torque.high).toBeLessThan(hydrant.opening.neverExceed.torque.low);
    expect(tap.turns.nominal).toBe(3.5);
    expect(hydrant.grip.kind).toBe('nut');
  });
});
