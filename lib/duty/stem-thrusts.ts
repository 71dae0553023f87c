/*
 * The thrust on a stem, opening and closing apart, by the family of the valve.
 * Invariant: a thrust above zero works against the movement; ranges straddle zero where the pressure may help.
 * Not here: torque (screw-duty.ts).
 * Read next: screw-duty.ts.
 */
import {
  gateThrust,
  globeThrust,
  type Movement,
  packingFriction,
  penstockThrust,
  roundArea,
  seatingLoad,
  squeezeLoad,
  stemEndLoad,
} from '#lib/engineering/stem-thrust.ts';
import { exactly, type Known } from '#lib/units/known-value.ts';
import { metres, newtons, pascals, ratio, squareMetres } from '#lib/units/quantity.ts';
import type { ScheduleLine } from './schedule-line.ts';
import { calculate, lookUp, type Sheet, settle, term, withEffect } from './sheet.ts';
import type { ValveCharacter } from './valve-character.ts';
import { spreadOf, type ValveLoads } from './valve-loads.ts';
import type { ValveStem } from './valve-stem.ts';

export interface StemThrusts {
  readonly opening: Known<'N'>;
  readonly closing: Known<'N'>;
  /** Pressure on the stem's end that a collar carries although the thread does not; nought for stems that move out. */
  readonly collarOnly: Known<'N'>;
  /** Friction of the packing at the stem's surface; it becomes torque where the stem turns. */
  readonly packing: Known<'N'>;
}

export interface ThrustGiven {
  readonly line: ScheduleLine;
  readonly character: ValveCharacter;
  readonly loads: ValveLoads;
  readonly stem: ValveStem;
  readonly sheet: Sheet;
}

const NOTHING = exactly('N', 0, { basis: 'computed', source: 'Does not act on this stem.' });
const LARGE_GATE = 0.6;
const GRAVITY = 9.80665;

export function stemThrusts(given: ThrustGiven): StemThrusts {
  const { line, character, loads, stem, sheet } = given;
  const packing =
    line.stem.packingLoad ??
    calculate(sheet, {
      id: 'packing-load',
      name: 'Packing load',
      formula: 'Fp = k·d',
      unit: 'N',
      source: loads.packingPerDiameter.source,
      terms: {
        diameter: term('d', 'stem diameter', stem.diameter),
        rule: term('k', 'packing friction for each metre of diameter', loads.packingPerDiameter),
      },
      evaluate: (at) => packingFriction({ stemDiameter: metres(at('diameter')), loadPerDiameter: ratio(at('rule')) }),
    });
  const end = calculate(sheet, {
    id: 'stem-end-load',
    name: 'Stem-end load',
    formula: 'Fs = p·π·d²/4',
    unit: 'N',
    source: 'US NRC Information Notice 92-41: always to be counted.',
    terms: {
      pressure: term('p', 'line pressure', loads.linePressure),
      diameter: term('d', 'stem diameter', stem.diameter),
    },
    evaluate: (at) => stemEndLoad({ linePressure: pascals(at('pressure')), stemDiameter: metres(at('diameter')) }),
  });
  const movesOut = character.stemKind.value !== 'non-rising' && character.family !== 'penstock';
  const slides = character.stemKind.value === 'rising through the wheel';
  const parts: Parts = { end: movesOut ? end : NOTHING, slidingPacking: slides ? packing : NOTHING };
  const collarOnly = movesOut || character.family === 'penstock' ? NOTHING : end;
  const stated = line.stem.thrust;
  if (stated !== undefined) return { opening: stated, closing: stated, collarOnly, packing };
  return { opening: thrust(given, parts, 'opening'), closing: thrust(given, parts, 'closing'), collarOnly, packing };
}

interface Parts {
  readonly end: Known<'N'>;
  readonly slidingPacking: Known<'N'>;
}

function thrust(given: ThrustGiven, parts: Parts, movement: Movement): Known<'N'> {
  switch (given.character.family) {
    case 'globe':
      return globe(given, parts, movement);
    case 'squeeze':
      return squeeze(given, parts, movement);
    case 'penstock':
      return penstock(given, movement);
    case 'gate':
    case 'quarter turn':
    case 'keyed':
      return gate(given, parts, movement);
  }
}

function seatLoad({ loads, sheet }: ThrustGiven): Known<'N'> {
  return calculate(sheet, {
    id: 'seat-load',
    name: 'Load on the seat area',
    formula: 'Fd = Δp·π·D²/4',
    unit: 'N',
    source: 'Definition of pressure.',
    terms: {
      pressure: term('Δp', 'differential pressure', loads.differential),
      diameter: term('D', 'seat diameter', loads.seatDiameter),
    },
    evaluate: (at) => at('pressure') * roundArea(metres(at('diameter'))),
  });
}

function gate(given: ThrustGiven, { end, slidingPacking }: Parts, movement: Movement): Known<'N'> {
  const counts =
    given.loads.size.high >= LARGE_GATE &&
    given.line.place.faces?.value !== 'side' &&
    given.line.place.faces?.value !== 'down';
  const weight = counts ? gateWeight(given) : NOTHING;
  const up = movement === 'opening';
  return calculate(given.sheet, {
    id: `thrust-${movement}`,
    name: `Stem thrust, ${movement}`,
    unit: 'N',
    formula: up ? 'F = VF·Fd + Fp − Fs + W' : 'F = VF·Fd + Fp + Fs − W',
    source: 'US NRC Motor-Operated Valves Course Manual, section 3.2; sign when opening from memory.',
    terms: {
      seat: term('Fd', 'load on the seat area', seatLoad(given)),
      factor: term('VF', 'valve factor', given.loads.valveFactor),
      packing: term('Fp', 'packing that the stem slides through', slidingPacking),
      end: withEffect(up ? 'lowers' : 'raises', term('Fs', 'stem-end load', end)),
      weight: withEffect(up ? 'raises' : 'lowers', term('W', 'weight of the gate', weight)),
    },
    evaluate: (at) =>
      gateThrust({
        movement,
        seatLoad: newtons(at('seat')),
        valveFactor: ratio(at('factor')),
        stemEnd: newtons(at('end')),
        packing: newtons(at('packing')),
        weight: newtons(at('weight')),
      }),
  });
}

/** Large gates only: a wedge's mass by its size. */
function gateWeight({ loads, sheet }: ThrustGiven): Known<'N'> {
  const at = (size: number, factor: number): number => 1300 * size ** 3 * GRAVITY * factor;
  return lookUp(sheet, {
    id: 'gate-weight',
    name: 'Weight of the gate',
    value: settle(
      'N',
      { low: at(loads.size.low, 0.3), nominal: at(loads.size.nominal, 1), high: at(loads.size.high, 2) },
      { basis: 'assumed', source: 'Mass of a large gate by its size; common practice, no source.' },
    ),
  });
}

function globe(given: ThrustGiven, { end, slidingPacking }: Parts, movement: Movement): Known<'N'> {
  const { line, loads, sheet } = given;
  const lineLoad = spreadOf('1', [3500, 9000, 18_000], {
    basis: 'rule of thumb',
    source:
      'Seating load for each metre of seat, about 9 kN/m (50 lbf/in) for metal seats, from memory; common practice.',
  });
  const seating = calculate(sheet, {
    id: 'seating-load',
    name: 'Seating load',
    formula: 'Fseat = q·π·D',
    unit: 'N',
    source: lineLoad.source,
    terms: {
      diameter: term('D', 'seat diameter', loads.seatDiameter),
      lineLoad: term('q', 'load for each metre of seat', lineLoad),
    },
    evaluate: (at) => seatingLoad({ seatDiameter: metres(at('diameter')), lineLoad: ratio(at('lineLoad')) }),
  });
  const ways = flowWays(line.notes);
  const seat = seatLoad(given);
  const each = ways.map((flow) =>
    calculate(sheet, {
      id: `thrust-${movement}-flow-${flow}`,
      name: `Stem thrust, ${movement}, pressure ${flow} the disc`,
      unit: 'N',
      formula: `F = ${(movement === 'closing') === (flow === 'under') ? '' : '−'}VF·Fd + Fp ${movement === 'closing' ? '+ Fs + Fseat' : '− Fs'}`,
      source: 'US NRC Motor-Operated Valves Course Manual, section 3.2; factor 1.1 secondary.',
      terms: {
        seat: withEffect('either', term('Fd', 'load on the seat area', seat)),
        factor: withEffect('either', term('VF', 'valve factor', loads.valveFactor)),
        packing: term('Fp', 'packing that the stem slides through', slidingPacking),
        end: withEffect(movement === 'closing' ? 'raises' : 'lowers', term('Fs', 'stem-end load', end)),
        seating: term('Fseat', 'seating load', seating),
      },
      evaluate: (at) =>
        globeThrust({
          movement,
          flow,
          seatLoad: newtons(at('seat')),
          valveFactor: ratio(at('factor')),
          stemEnd: newtons(at('end')),
          packing: newtons(at('packing')),
          seating: newtons(at('seating')),
        }),
    }),
  );
  const [first, second] = each;
  if (first === undefined || second === undefined) return first ?? NOTHING;
  return lookUp(sheet, {
    id: `thrust-${movement}`,
    name: `Stem thrust, ${movement}`,
    value: settle(
      'N',
      {
        low: Math.min(first.low, second.low),
        nominal: Math.max(first.nominal, second.nominal),
        high: Math.max(first.high, second.high),
      },
      {
        basis: 'assumed',
        source:
          'The side of the disc that the pressure comes from is not given: both are covered, the heavier is taken as likely.',
      },
    ),
  });
}

function flowWays(notes: string | undefined): readonly ('under' | 'over')[] {
  if (notes !== undefined && /(flow|pressure)\s+(from\s+)?(under|below)|under (the )?(disc|plug|seat)/i.test(notes))
    return ['under'];
  if (notes !== undefined && /(flow|pressure)\s+(from\s+)?(over|above)|over (the )?(disc|plug|seat)/i.test(notes))
    return ['over'];
  return ['under', 'over'];
}

/** Closing squeezes; opening is pushed along by what was squeezed. */
function squeeze(given: ThrustGiven, { slidingPacking }: Parts, movement: Movement): Known<'N'> {
  const { loads, sheet } = given;
  const tight = spreadOf('Pa', [4e5, 10e5, 20e5], {
    basis: 'rule of thumb',
    source: 'Pressure that presses rubber tight, 4 to 20 bar over the bore; common practice, no source.',
  });
  const load = calculate(sheet, {
    id: 'squeeze-load',
    name: 'Load that squeezes it shut',
    formula: 'F = (p + σ)·π·D²/4',
    unit: 'N',
    source: tight.source,
    terms: {
      pressure: term('p', 'line pressure', loads.linePressure),
      tight: term('σ', 'pressing tight', tight),
      diameter: term('D', 'bore', loads.seatDiameter),
    },
    evaluate: (at) =>
      squeezeLoad({
        linePressure: pascals(at('pressure')),
        squeeze: pascals(at('tight')),
        area: squareMetres(roundArea(metres(at('diameter')))),
      }),
  });
  if (movement === 'closing') {
    return calculate(sheet, {
      id: 'thrust-closing',
      name: 'Stem thrust, closing',
      formula: 'F = Fsq + Fp',
      unit: 'N',
      source: 'Statics; no seat friction.',
      terms: {
        load: term('Fsq', 'load that squeezes it shut', load),
        packing: term('Fp', 'packing that the stem slides through', slidingPacking),
      },
      evaluate: (at) => at('load') + at('packing'),
    });
  }
  const value = settle(
    'N',
    { low: -load.high, nominal: -0.4 * load.nominal, high: 0.15 * load.high },
    {
      basis: 'rule of thumb',
      source: 'Pressure and rubber push a clamped valve open; it may stick when old; common practice, no source.',
    },
  );
  return lookUp(sheet, { id: 'thrust-opening', name: 'Stem thrust, opening', value });
}

function penstock({ line, loads, sheet }: ThrustGiven, movement: Movement): Known<'N'> {
  const share =
    line.stem.seatDiameter === undefined
      ? spreadOf('1', [0.785, 0.95, 1.05], {
          basis: 'assumed',
          source: 'Round or square opening: area against the square of its width.',
        })
      : exactly('1', Math.PI / 4, line.stem.seatDiameter);
  const water = calculate(sheet, {
    id: 'water-load',
    name: 'Water on the door',
    formula: 'H = p·k·D²',
    unit: 'N',
    source: 'Hydrostatics.',
    terms: {
      pressure: term('p', 'water pressure at the door', loads.differential),
      diameter: term('D', 'width or bore', loads.seatDiameter),
      share: term('k', 'area against the square of the width', share),
    },
    evaluate: (at) => at('pressure') * at('share') * at('diameter') ** 2,
  });
  const massPerArea = spreadOf('1', [90, 180, 320], {
    basis: 'assumed',
    source: 'Door and stem weigh 90 to 320 kg for each square metre of opening; common practice, no source.',
  });
  const weight = calculate(sheet, {
    id: 'door-weight',
    name: 'Weight of door and stem',
    formula: 'W = m″·D²·g',
    unit: 'N',
    source: massPerArea.source,
    terms: {
      mass: term('m″', 'mass for each square metre, kg', massPerArea),
      diameter: term('D', 'width or bore', loads.seatDiameter),
    },
    evaluate: (at) => at('mass') * at('diameter') ** 2 * GRAVITY,
  });
  const up = movement === 'opening';
  return calculate(sheet, {
    id: `thrust-${movement}`,
    name: `Stem thrust, ${movement}`,
    formula: up ? 'F = W + μ·H' : 'F = μ·H − W',
    unit: 'N',
    source: 'Statics of a sliding door; below zero it overhauls.',
    terms: {
      water: term('H', 'water on the door', water),
      friction: term('μ', 'friction of the door', loads.valveFactor),
      weight: withEffect(up ? 'raises' : 'lowers', term('W', 'weight of door and stem', weight)),
    },
    evaluate: (at) =>
      penstockThrust({
        movement,
        weight: newtons(at('weight')),
        friction: ratio(at('friction')),
        waterLoad: newtons(at('water')),
      }),
  });
}
