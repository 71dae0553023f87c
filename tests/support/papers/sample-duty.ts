/** Invented lines, duties and assemblies for pictures and papers, made from a few numbers each. */
import type { DirectionDuty, Duty, Grip, TorqueBound } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Assembly, AssemblyParts, DirectionSettings, LimiterSetting } from '#lib/equipment/assembly.ts';
import type { Finding } from '#lib/kernel/finding.ts';
import { type Basis, exactly, fact, type Known, known } from '#lib/units/known-value.ts';
import { joules, kilograms, newtonMetres, newtons, perMinute, seconds } from '#lib/units/quantity.ts';

const origin = (basis: Basis) => ({
  basis,
  source: basis === 'assumed' ? 'Nothing was said; the usual value for this size.' : 'Customer list, as stated.',
});

export function torque(low: number, nominal: number, high: number, basis: Basis = 'computed'): Known<'N·m'> {
  return known(
    'N·m',
    { low, nominal, high },
    { basis, source: basis === 'computed' ? 'Stem torque from thrust and thread.' : origin(basis).source },
  );
}

export interface SampleDuty {
  readonly tag: string;
  readonly qty?: number;
  readonly run?: readonly [number, number, number];
  readonly start?: readonly [number, number, number];
  readonly never?: number;
  readonly otherBounds?: readonly (readonly [string, number])[];
  readonly grip?: Partial<Grip>;
  readonly movement?: Duty['movement'];
  readonly closes?: Duty['closes'];
  readonly findings?: readonly Finding[];
  readonly limiterFits?: 'yes' | 'no';
}

export function sampleDuty(asked: SampleDuty): Duty {
  const [runLow, run, runHigh] = asked.run ?? [38, 52, 74];
  const [startLow, start, startHigh] = asked.start ?? [62, 95, 140];
  const never = asked.never ?? 310;
  const lowest: TorqueBound = {
    kind: 'stem torsion',
    directions: ['opening', 'closing'],
    torque: torque(never, never * 1.1, never * 1.3),
  };
  const others = (
    asked.otherBounds ?? [
      ['wheel', never * 1.35],
      ['spokes', never * 1.6],
      ['hand force', never * 2.2],
    ]
  ).map(
    ([kind, value]): TorqueBound => ({
      kind,
      directions: ['opening', 'closing'],
      torque: torque(value, value, value * 1.2, 'rule of thumb'),
    }),
  );
  const side = (factor: number): DirectionDuty => ({
    starting: torque(startLow * factor, start * factor, startHigh * factor),
    running: torque(runLow * factor, run * factor, runHigh * factor),
    neverExceed: lowest,
    limiter:
      asked.limiterFits === 'no' ? null : { low: newtonMetres(startHigh * factor * 1.25), high: newtonMetres(never) },
    thrust: known(
      'N',
      { low: 9000 * factor, nominal: 14000 * factor, high: 21000 * factor },
      { basis: 'computed', source: 'Differential load on the seat, packing and stem end.' },
    ),
  });
  return {
    tag: asked.tag,
    qty: asked.qty ?? 1,
    strokes: 2,
    movement: asked.movement ?? 'screw',
    opening: side(1),
    closing: side(0.84),
    turns: known(
      'turn',
      { low: 38, nominal: 42, high: 46 },
      { basis: 'computed', source: 'Travel divided by lead, with lost motion.' },
    ),
    bounds: [lowest, ...others],
    thread: {
      meanDiameter: exactly('m', 0.033, origin('standard')),
      lead: exactly('m', 0.006, origin('stated')),
      selfLocking: 'yes',
    },
    closes: asked.closes ?? 'clockwise',
    minStrokeTime: exactly('s', 90, origin('rule of thumb')),
    maxInputSpeed: exactly('1/min', 40, origin('rule of thumb')),
    grip: {
      kind: 'wheel',
      wheelDiameter: known('m', { low: 0.4, nominal: 0.45, high: 0.5 }, origin('assumed')),
      wheelSpokes: { low: 4, high: 5 },
      wheelRises: 'no',
      stemRisesThroughWheel: 'no',
      travel: exactly('m', 0.252, origin('standard')),
      ...asked.grip,
    },
    countTurns: true,
    seized: false,
    findings: asked.findings ?? [],
    steps: sampleSteps(startLow, start, startHigh),
    measureFirst: 'Measure the wheel diameter: it decides which adapter is carried.',
    measureFirstEffect: null,
  };
}

function sampleSteps(startLow: number, start: number, high: number): Duty['steps'] {
  return [
    {
      id: 'differential-load',
      name: 'Load of the differential pressure on the seat',
      formula: 'Fs = p · π/4 · ds²',
      inputs: [
        {
          symbol: 'p',
          name: 'differential pressure',
          low: 1_000_000,
          nominal: 1_000_000,
          high: 1_000_000,
          unit: 'Pa',
          basis: 'stated',
          source: 'Customer list.',
        },
        {
          symbol: 'ds',
          name: 'seat diameter',
          low: 0.245,
          nominal: 0.25,
          high: 0.262,
          unit: 'm',
          basis: 'rule of thumb',
          source: 'Nominal size; seats are seldom wider than the bore by more than 5 %.',
        },
      ],
      result: known(
        'N',
        { low: 47144, nominal: 49087, high: 53913 },
        { basis: 'computed', source: 'Pressure on the seat area.' },
      ),
      source: 'Pressure times area.',
    },
    {
      id: 'stem-torque-opening',
      name: 'Torque that turns the stem, opening',
      formula: 'T = F·dm/2 · (l + π·f·dm·sec α)/(π·dm − f·l·sec α) + F·fc·dc/2',
      inputs: [
        {
          symbol: 'F',
          name: 'stem thrust',
          low: 9000,
          nominal: 14000,
          high: 21000,
          unit: 'N',
          basis: 'computed',
          source: 'Step above.',
        },
        {
          symbol: 'dm',
          name: 'mean thread diameter',
          low: 0.033,
          nominal: 0.033,
          high: 0.033,
          unit: 'm',
          basis: 'standard',
          source: 'ISO 2904, Tr 36 × 6.',
        },
        {
          symbol: 'l',
          name: 'lead',
          low: 0.006,
          nominal: 0.006,
          high: 0.006,
          unit: 'm',
          basis: 'stated',
          source: 'Customer list.',
        },
        {
          symbol: 'f',
          name: 'thread friction',
          low: 0.12,
          nominal: 0.15,
          high: 0.2,
          unit: '1',
          basis: 'rule of thumb',
          source: 'Common practice, no source: bronze on steel, greased to dry.',
        },
      ],
      result: torque(Math.min(startLow, start), start, high),
      source: 'Shigley, Mechanical Engineering Design, power-screw equations.',
    },
    {
      id: 'turns',
      name: 'Turns for one stroke',
      formula: 'n = h / l + n₀',
      inputs: [
        {
          symbol: 'h',
          name: 'travel',
          low: 0.25,
          nominal: 0.252,
          high: 0.27,
          unit: 'm',
          basis: 'standard',
          source: 'Seat bore with overtravel.',
        },
      ],
      result: known(
        'turn',
        { low: 38, nominal: 42, high: 46 },
        { basis: 'computed', source: 'Travel divided by lead.' },
      ),
      source: 'Geometry of the thread.',
    },
  ];
}

export function sampleLine(tag: string, more: Partial<ScheduleLine> = {}): ScheduleLine {
  return {
    tag,
    qty: 1,
    strokes: 2,
    valveType: fact('wedge gate', origin('stated')),
    size: exactly('m', 0.25, origin('stated')),
    rating: fact('PN 16', origin('stated')),
    process: { differentialPressure: exactly('Pa', 1_000_000, origin('stated')) },
    state: {},
    stem: {},
    torque: {},
    interface: { drivenBy: fact('handwheel', origin('stated')) },
    place: { location: 'Pump hall, lower gallery' },
    ...more,
  };
}

function setting(start: number, ceiling: number): LimiterSetting {
  return {
    start: newtonMetres(start / 2.3),
    step: newtonMetres(10),
    ceiling: newtonMetres(ceiling / 2.3),
    atValve: { start: newtonMetres(start), ceiling: newtonMetres(ceiling) },
    coversStarting: ceiling >= start,
  };
}

export function sampleAssembly(duty: Duty, parts: Partial<AssemblyParts>, findings: readonly Finding[] = []): Assembly {
  const direction = (
    side: DirectionDuty,
    select: DirectionSettings['select'],
    way: 'opening' | 'closing',
  ): DirectionSettings => {
    const starting = Number(side.starting.high) * 1.25;
    const ceiling = Number(side.neverExceed.torque.low) * 0.92;
    return {
      unseat: way === 'opening' ? setting(starting, ceiling) : null,
      run: setting(Number(side.running.high) * 1.25, Math.min(ceiling, starting)),
      seat: way === 'closing' ? setting(Number(side.running.high) * 1.3, ceiling * 0.8) : null,
      strokeTime: { low: seconds(118), high: seconds(192) },
      speed: perMinute(24),
      select,
    };
  };
  const all: AssemblyParts = {
    drive: 'D-214',
    gear: 0,
    head: 'H-126',
    extensions: [],
    adapters: ['W-117'],
    restraint: 'R-210',
    options: ['L-104', 'C-102'],
    accessories: [{ number: 'S-156', count: 2 }],
    ...parts,
  };
  return {
    id: [all.drive, all.head, ...all.extensions, ...all.adapters, all.restraint, ...all.options].join('+'),
    parts: all,
    opening: direction(
      duty.opening,
      duty.closes === 'unknown' ? 'try gently first: direction unknown' : 'anticlockwise',
      'opening',
    ),
    closing: direction(
      duty.closing,
      duty.closes === 'unknown' ? 'try gently first: direction unknown' : 'clockwise',
      'closing',
    ),
    figures: {
      stallAtValve: newtonMetres(480),
      highestAtValve: newtonMetres(Number(duty.opening.neverExceed.torque.low) * 0.98),
      sureAtValve: newtonMetres(268),
      totalRatio: 2.5,
      limiterRequired: true,
      counterRequired: true,
      reactionForce: newtons(870),
      sideLoad: newtons(870),
      energyPerVisit: joules(43_000),
      setUpTime: seconds(420),
      timePerValve: seconds(900),
      mass: kilograms(29.4),
      heaviestPiece: kilograms(8.8),
      chance: 0.93,
    },
    findings,
    steps: [],
  };
}
