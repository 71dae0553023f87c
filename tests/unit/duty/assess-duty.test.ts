import { describe, expect, it } from 'vitest';
import { assessDuties } from '#lib/duty/assess-duties.ts';
import { assessDuty } from '#lib/duty/assess-duty.ts';
import type { Duty } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import { lineOf, PLAIN_SITE, say, sayFact } from '#tests/support/duty-lines.ts';

const dutyOf = (parts: Partial<ScheduleLine> = {}): Duty => assessDuty({ line: lineOf(parts), site: PLAIN_SITE });
const findingIds = (duty: Duty): readonly string[] => duty.findings.map(({ id }) => id);
const step = (duty: Duty, id: string) => duty.steps.find((one) => one.id === id);

const tr = (majorDiameter: number, pitch: number, starts?: number) =>
  sayFact({
    form: 'trapezoidal',
    majorDiameter_m: majorDiameter / 1000,
    pitch_m: pitch / 1000,
    designation: `Tr${majorDiameter}x${pitch}`,
    ...(starts === undefined ? {} : { starts }),
  } as const);

/** Everything said: DN 200 wedge gate, rising stem Tr32x6 in a plain yoke nut, wheel of 400 mm, 10 bar. */
const wedge: Partial<ScheduleLine> = {
  valveType: sayFact('wedge gate'),
  size: say('m', 0.2),
  rating: sayFact('Class 150'),
  process: { linePressure: say('Pa', 10e5), differentialPressure: say('Pa', 10e5), flowing: sayFact('still') },
  state: { condition: sayFact('free') },
  stem: {
    kind: sayFact('rising through the wheel'),
    thread: tr(32, 6, 1),
    diameter: say('m', 0.032),
    threadFriction: say('1', 0.15),
    collarFriction: say('1', 0.15),
    collarMeanDiameter: say('m', 0.048),
    collarBearing: sayFact('plain'),
    packingLoad: say('N', 2000),
    seatDiameter: say('m', 0.2),
    travel: say('m', 0.21),
    valveFactor: say('1', 0.3),
  },
  torque: { max: say('N·m', 150), closes: sayFact('clockwise') },
  interface: { drivenBy: sayFact('handwheel'), wheelDiameter: say('m', 0.4) },
};

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
