/*
 * Torque and turns at the input of a valve's gearbox.
 * Invariant: a worm over a true quarter turn takes ratio/4 turns; travelling nuts and links have no constant ratio and get a wide range.
 * Not here: end stops and flanges (torque-bounds.ts).
 * Read next: torque-bounds.ts.
 */
import { gearedTurns, gearInputTorque, quarterTurnInputTurns } from '#lib/engineering/gear-reduction.ts';
import { ballTorque, butterflyTorque } from '#lib/engineering/quarter-turn-torque.ts';
import { between } from '#lib/engineering/straight-lines.ts';
import { GEAR_EFFICIENCY, MULTI_TURN_GEAR_RATIO, WORM_RATIOS } from '#lib/engineering/valve-tables.ts';
import { type Known, type Origin, worstBasis } from '#lib/units/known-value.ts';
import { metres, newtonMetres, pascals, ratio, turns } from '#lib/units/quantity.ts';
import type { Direction } from './duty.ts';
import { HOUSE_CONSTANTS } from './house-constants.ts';
import type { GearboxKind, ScheduleLine } from './schedule-line.ts';
import type { DirectionTorque } from './screw-duty.ts';
import { calculate, combine, lookUp, type Sheet, settle, term, withEffect } from './sheet.ts';
import type { StartingFactors } from './starting-factor.ts';
import type { ValveCharacter } from './valve-character.ts';
import { spreadOf, type ValveLoads } from './valve-loads.ts';

export interface Gearing {
  readonly kind: GearboxKind;
  readonly ratio: Known<'1'>;
  readonly efficiency: Known<'1'>;
}

export interface GearGiven {
  readonly line: ScheduleLine;
  readonly character: ValveCharacter;
  readonly loads: ValveLoads;
  readonly sheet: Sheet;
}

const BUTTERFLY_SEAT = spreadOf('1', [2800, 4000, 6000], {
  basis: 'rule of thumb',
  source: 'Seating torque of a butterfly valve, 2.8 to 6 kN for each m of D²; common practice, no source.',
});
const SHAFT_SHARE = spreadOf('1', [0.09, 0.12, 0.15], {
  basis: 'rule of thumb',
  source: 'Shaft of a butterfly valve against its disc; common practice, no source.',
});
const BEARING_FRICTION = spreadOf('1', [0.08, 0.12, 0.17], {
  basis: 'rule of thumb',
  source: 'Friction of shaft bearings; common practice, no source.',
});
const BALL_SEAT = spreadOf('1', [3500, 5000, 7500], {
  basis: 'rule of thumb',
  source: 'Seat preload torque of a ball valve; common practice, no source.',
});
const PLUG_SEAT = spreadOf('1', [5000, 8000, 13_000], {
  basis: 'rule of thumb',
  source: 'Wedging torque of a plug valve; common practice, no source.',
});
const BALL_FRICTION = spreadOf('1', [0.05, 0.1, 0.16], {
  basis: 'rule of thumb',
  source: 'Friction of ball or plug in its seat; common practice, no source.',
});
/** Between the ends a quarter-turn valve needs less than at its seat. */
const MID_STROKE = spreadOf('1', [0.4, 0.6, 0.85], {
  basis: 'rule of thumb',
  source: 'Torque between the ends against torque at the seat; common practice, no source.',
});
/** The mechanical advantage of a travelling nut or link changes along the stroke. */
export const CHANGING_RATIO = spreadOf('1', [0.7, 1, 1.4], {
  basis: 'rule of thumb',
  source: 'A travelling nut or link has no constant ratio; common practice, no source.',
});

export function gearing({ line, character, loads, sheet }: GearGiven): Gearing {
  const quarter = character.family === 'quarter turn';
  const kind = line.torque.gearbox?.value ?? (quarter ? 'worm' : 'bevel');
  const said = line.torque.gearbox !== undefined;
  const efficiency =
    line.torque.gearEfficiency ??
    lookUp(sheet, {
      id: 'gear-efficiency',
      name: 'Efficiency of the gearbox',
      value: spreadOf('1', GEAR_EFFICIENCY[kind], {
        basis: said ? 'rule of thumb' : 'assumed',
        source: `Efficiency of ${kind} gearboxes, bearings included; common practice, no source.`,
      }),
    });
  return { kind, efficiency, ratio: line.torque.gearRatio ?? gearRatio({ line, loads, sheet, kind, quarter }) };
}

function gearRatio({
  line,
  loads,
  sheet,
  kind,
  quarter,
}: Pick<GearGiven, 'line' | 'loads' | 'sheet'> & {
  readonly kind: GearboxKind;
  readonly quarter: boolean;
}): Known<'1'> {
  const stated = line.torque.turns;
  if (quarter && stated !== undefined) {
    const widen = kind === 'travelling nut' ? CHANGING_RATIO : HOUSE_CONSTANTS.soundStrength;
    return calculate(sheet, {
      id: 'gear-ratio',
      name: 'Ratio of the gearbox',
      formula: kind === 'travelling nut' ? 'i = 4·N·k' : 'i = 4·N',
      unit: '1',
      source: 'Geometry of a quarter turn.',
      terms: { turns: term('N', 'stated turns', stated), widen: term('k', 'change along the stroke', widen) },
      evaluate: (at) => 4 * at('turns') * at('widen'),
    });
  }
  const bySize: Origin = {
    basis: 'assumed',
    source: 'Ratio of the worm gearbox by size of valve, half to nearly double; common practice, no source.',
  };
  const value = quarter
    ? combine(sheet, {
        unit: '1',
        origin: bySize,
        terms: {
          size: term('D', 'nominal size', loads.size),
          share: term('k', 'ratio against what is usual for the size', spreadOf('1', [0.55, 1, 1.8], bySize)),
        },
        evaluate: (at) => between({ points: WORM_RATIOS, x: at('size') * 1000 }) * at('share'),
      })
    : spreadOf('1', MULTI_TURN_GEAR_RATIO, {
        basis: 'assumed',
        source: 'Gears on gate valves, 2:1 to 4:1 by size; from memory.',
      });
  return lookUp(sheet, { id: 'gear-ratio', name: 'Ratio of the gearbox', value });
}

/** Torque at the shaft of a quarter-turn valve: stated, else by type, size and pressure. */
export function quarterTurnTorque({ line, character, loads, sheet }: GearGiven): Known<'N·m'> {
  if (line.torque.outputTorque !== undefined) return line.torque.outputTorque;
  const size = term('D', 'nominal size', loads.size);
  const pressure = term('Δp', 'differential pressure', loads.differential);
  if (character.type === 'butterfly') {
    return calculate(sheet, {
      id: 'shaft-torque',
      name: 'Torque at the valve’s shaft',
      formula: 'T = cs·D² + π/8·D²·Δp·(k·D)·f',
      unit: 'N·m',
      source: 'Form as in AWWA M49, from memory; coefficients common practice, no source.',
      terms: {
        size,
        pressure,
        seat: term('cs', 'seating coefficient', BUTTERFLY_SEAT),
        shaft: term('k', 'shaft against disc', SHAFT_SHARE),
        friction: term('f', 'bearing friction', BEARING_FRICTION),
      },
      evaluate: (at) =>
        butterflyTorque({
          size: metres(at('size')),
          differential: pascals(at('pressure')),
          seatCoefficient: ratio(at('seat')),
          shaftShare: ratio(at('shaft')),
          friction: ratio(at('friction')),
        }),
    });
  }
  return calculate(sheet, {
    id: 'shaft-torque',
    name: 'Torque at the valve’s shaft',
    formula: 'T = cs·D² + π/4·D²·Δp·f·0.65·D',
    unit: 'N·m',
    source: 'Common practice, no source.',
    terms: {
      size,
      pressure,
      seat: term('cs', 'seating coefficient', character.type === 'plug' ? PLUG_SEAT : BALL_SEAT),
      friction: term('f', 'seat friction', BALL_FRICTION),
    },
    evaluate: (at) =>
      ballTorque({
        size: metres(at('size')),
        differential: pascals(at('pressure')),
        seatCoefficient: ratio(at('seat')),
        friction: ratio(at('friction')),
      }),
  });
}

/** Starting and running at the shaft: the seat decides the start, in both directions. */
export function quarterTurnAtShaft(
  given: GearGiven & { readonly atSeat: Known<'N·m'>; readonly factors: StartingFactors },
  direction: Direction,
): DirectionTorque {
  const { atSeat, factors, sheet } = given;
  const running = calculate(sheet, {
    id: `running-torque-${direction}`,
    name: `Running torque at the shaft, ${direction}`,
    formula: 'Tr = T·k',
    unit: 'N·m',
    source: MID_STROKE.source,
    terms: { seat: term('T', 'torque at the seat', atSeat), share: term('k', 'between the ends', MID_STROKE) },
    evaluate: (at) => at('seat') * at('share'),
  });
  const starting = calculate(sheet, {
    id: `starting-torque-${direction}`,
    name: `Starting torque at the shaft, ${direction}`,
    formula: 'T0 = T·(1 + (k − 1)/2)',
    unit: 'N·m',
    source: 'The torque at the seat already holds the unseating; half of the starting surplus is added.',
    terms: { seat: term('T', 'torque at the seat', atSeat), factor: term('k', 'starting factor', factors[direction]) },
    evaluate: (at) => at('seat') * (1 + (at('factor') - 1) / 2),
  });
  return { starting, running, thrust: null };
}

/** Refers torque at stem or shaft to the gearbox's input. */
export function atGearInput({
  torque,
  gear,
  sheet,
  direction,
}: {
  readonly torque: DirectionTorque;
  readonly gear: Gearing;
  readonly sheet: Sheet;
  readonly direction: Direction;
}): DirectionTorque {
  const changes = gear.kind === 'travelling nut';
  const refer = (what: 'starting' | 'running'): Known<'N·m'> =>
    calculate(sheet, {
      id: `${what}-torque-input-${direction}`,
      name: `${what === 'starting' ? 'Starting' : 'Running'} torque at the gearbox input, ${direction}`,
      unit: 'N·m',
      formula: changes ? 'Tin = k·T/(i·η)' : 'Tin = T/(i·η)',
      source: 'Wentzell, Machine Design, ch. 13.',
      terms: {
        torque: term('T', `${what} torque at the output`, torque[what]),
        ratio: withEffect(torque[what].low < 0 ? 'either' : 'lowers', term('i', 'ratio', gear.ratio)),
        efficiency: withEffect(torque[what].low < 0 ? 'either' : 'lowers', term('η', 'efficiency', gear.efficiency)),
        changing: withEffect(
          torque[what].low < 0 ? 'either' : 'raises',
          term('k', 'change along the stroke', changes ? CHANGING_RATIO : HOUSE_CONSTANTS.soundStrength),
        ),
      },
      evaluate: (at) =>
        gearInputTorque({
          outputTorque: newtonMetres(at('torque')),
          ratio: ratio(at('ratio')),
          efficiency: ratio(at('efficiency')),
        }) * at('changing'),
    });
  return { starting: refer('starting'), running: refer('running'), thrust: torque.thrust };
}

/** Input turns of a quarter turn: ratio/4 for a worm, wide for what has no constant ratio. */
export function quarterTurnTurns({ gear, sheet }: { readonly gear: Gearing; readonly sheet: Sheet }): Known<'turn'> {
  const changes = gear.kind === 'travelling nut';
  return calculate(sheet, {
    id: 'turns-of-the-input',
    name: 'Turns of the gearbox input for a quarter turn',
    formula: changes ? 'N = k·i/4' : 'N = i/4',
    unit: 'turn',
    source: changes ? CHANGING_RATIO.source : 'Geometry; a 40:1 worm takes 10 turns.',
    terms: {
      ratio: term('i', 'ratio', gear.ratio),
      changing: term('k', 'change along the stroke', changes ? CHANGING_RATIO : HOUSE_CONSTANTS.soundStrength),
    },
    evaluate: (at) => quarterTurnInputTurns(ratio(at('ratio'))) * at('changing'),
  });
}

export function multiTurnTurns({
  stemTurns,
  gear,
  sheet,
}: {
  readonly stemTurns: Known<'turn'>;
  readonly gear: Gearing;
  readonly sheet: Sheet;
}): Known<'turn'> {
  return calculate(sheet, {
    id: 'turns-of-the-input',
    name: 'Turns of the gearbox input',
    formula: 'Nin = N·i',
    unit: 'turn',
    source: 'Geometry.',
    terms: { turns: term('N', 'turns of the stem', stemTurns), ratio: term('i', 'ratio', gear.ratio) },
    evaluate: (at) => gearedTurns({ valveTurns: turns(at('turns')), ratio: ratio(at('ratio')) }),
  });
}

/** A quarter-turn valve without a gearbox turns a quarter turn. */
export function bareQuarterTurns(loads: ValveLoads): Known<'turn'> {
  return settle(
    'turn',
    { low: 0.23, nominal: 0.25, high: 0.27 },
    { basis: worstBasis(['computed', loads.size.basis]), source: 'A quarter turn without a gearbox.' },
  );
}

/** Wheel of a geared valve by size, where it is not given. */
export function gearWheel(loads: ValveLoads): Known<'m'> {
  const nominal = Math.min(0.2 + 0.4 * loads.size.nominal, 0.7);
  const at = (factor: number): number => Math.round(nominal * factor * 200) / 200;
  return settle(
    'm',
    { low: at(0.75), nominal: at(1), high: at(1.35) },
    {
      basis: 'assumed',
      source: 'Wheel of the gearbox by size of valve, to the next 5 mm; common practice, no source.',
    },
  );
}
