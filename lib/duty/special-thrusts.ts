/*
 * Stem thrust of globes, of diaphragm and pinch valves, and of penstocks, opening and closing apart.
 * Invariant: a thrust above zero works against the movement; a globe whose flow side is unknown covers both.
 * Not here: gates (stem-thrusts.ts).
 * Read next: stem-thrusts.ts.
 */
import {
  globeThrust,
  type Movement,
  penstockThrust,
  roundArea,
  seatingLoad,
  squeezeLoad,
} from '#lib/engineering/stem-thrust.ts';
import { exactly, type Known } from '#lib/units/known-value.ts';
import { metres, newtons, pascals, ratio, squareMetres } from '#lib/units/quantity.ts';
import { calculate, combine, lookUp, remember, type Sheet, settle, term, withEffect } from './sheet.ts';
import { GRAVITY, NOTHING, type Parts, seatLoad, type ThrustGiven, type ThrustPair } from './thrust-parts.ts';
import { spreadOf } from './valve-loads.ts';

const SEATING = spreadOf('1', [3500, 9000, 18_000], {
  basis: 'rule of thumb',
  source:
    'Seating load for each metre of seat, about 9 kN/m (50 lbf/in) for metal seats, from memory; common practice.',
});
const TIGHT = spreadOf('Pa', [4e5, 10e5, 20e5], {
  basis: 'rule of thumb',
  source: 'Pressure that presses rubber tight, 4 to 20 bar over the bore; common practice, no source.',
});
const HELPED_OPEN = spreadOf('1', [-1, -0.4, 0.15], {
  basis: 'rule of thumb',
  source: 'Pressure and rubber push a clamped valve open; it may stick when old; common practice, no source.',
});
const OPENING_SHARE = spreadOf('1', [0.785, 0.95, 1.05], {
  basis: 'assumed',
  source: 'Round or square opening: area against the square of its width.',
});
const DOOR_MASS = spreadOf('1', [90, 180, 320], {
  basis: 'assumed',
  source: 'Door and stem weigh 90 to 320 kg for each square metre of opening; common practice, no source.',
});

export function globeThrusts(given: ThrustGiven, parts: Parts): ThrustPair {
  const { line, loads, sheet } = given;
  const seat = seatLoad(given);
  const seating = calculate(sheet, {
    id: 'seating-load',
    name: 'Seating load',
    formula: 'Fseat = q·π·D',
    unit: 'N',
    source: SEATING.source,
    terms: {
      diameter: term('D', 'seat diameter', loads.seatDiameter),
      lineLoad: term('q', 'load for each metre of seat', SEATING),
    },
    evaluate: (at) => seatingLoad({ seatDiameter: metres(at('diameter')), lineLoad: ratio(at('lineLoad')) }),
  });
  const ways = flowSides(line.notes);
  const side = spreadOf('1', ways.length === 1 ? [0, 0, 0] : [0, 0.5, 1], {
    basis: 'assumed',
    source: 'Which side of the disc the pressure comes from: either is as likely.',
  });
  const one = (movement: Movement): Known<'N'> =>
    eitherWay(
      sheet,
      { movement, side },
      ways.map((flow) => globe(given, { ...parts, seat, seating, flow }, movement)),
    );
  return { opening: one('opening'), closing: one('closing') };
}

interface GlobeParts extends Parts {
  readonly seat: Known<'N'>;
  readonly seating: Known<'N'>;
  readonly flow: 'under' | 'over';
}

function globe(
  { loads, sheet }: ThrustGiven,
  { end, slidingPacking, seat, seating, flow }: GlobeParts,
  movement: Movement,
): Known<'N'> {
  const against = (movement === 'closing') === (flow === 'under');
  const closing = movement === 'closing';
  const answer = against ? 'raises' : 'lowers';
  return calculate(sheet, {
    id: `thrust-${movement}-flow-${flow}`,
    name: `Stem thrust, ${movement}, pressure ${flow} the disc`,
    unit: 'N',
    formula: `F = ${against ? '' : '−'}VF·Fd + Fp ${closing ? '+ Fs + Fseat' : '− Fs'}`,
    source: 'US NRC Motor-Operated Valves Course Manual, section 3.2; factor 1.1 secondary.',
    terms: {
      seat: withEffect(answer, term('Fd', 'load on the seat area', seat)),
      factor: withEffect(answer, term('VF', 'valve factor', loads.valveFactor)),
      packing: term('Fp', 'packing that the stem slides through', slidingPacking),
      end: withEffect(closing ? 'raises' : 'lowers', term('Fs', 'stem-end load', end)),
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
  });
}

function eitherWay(
  sheet: Sheet,
  { movement, side }: { readonly movement: Movement; readonly side: Known<'1'> },
  each: readonly Known<'N'>[],
): Known<'N'> {
  const [first, second] = each;
  if (first === undefined) return NOTHING;
  const named = { id: `thrust-${movement}`, name: `Stem thrust, ${movement}` };
  if (second === undefined) return lookUp(sheet, { ...named, value: first });
  const source =
    'The side of the disc that the pressure comes from is not given: both are covered, the heavier is taken as likely.';
  const range = {
    low: Math.min(first.low, second.low),
    nominal: Math.max(first.nominal, second.nominal),
    high: Math.max(first.high, second.high),
  };
  const value = remember(sheet, settle('N', range, { basis: 'assumed', source }), {
    terms: {
      first: term('F1', 'stem thrust, one side', first),
      second: term('F2', 'stem thrust, other side', second),
      side: withEffect('picks', term('k', 'side of the disc that the pressure comes from', side)),
    },
    evaluate: (at) => {
      if (at('side') === side.nominal) return Math.max(at('first'), at('second'));
      return at('side') < side.nominal ? at('first') : at('second');
    },
  });
  return lookUp(sheet, { ...named, value });
}

/** Which side of the disc the pressure comes from, as far as the notes say it. */
export function flowSides(notes: string | undefined): readonly ('under' | 'over')[] {
  if (notes !== undefined && /(flow|pressure)\s+(from\s+)?(under|below)|under (the )?(disc|plug|seat)/i.test(notes))
    return ['under'];
  if (notes !== undefined && /(flow|pressure)\s+(from\s+)?(over|above)|over (the )?(disc|plug|seat)/i.test(notes))
    return ['over'];
  return ['under', 'over'];
}

/** Closing squeezes; opening is pushed along by what was squeezed. */
export function squeezeThrusts({ loads, sheet }: ThrustGiven, { slidingPacking }: Parts): ThrustPair {
  const load = calculate(sheet, {
    id: 'squeeze-load',
    name: 'Load that squeezes it shut',
    formula: 'F = (p + σ)·π·D²/4',
    unit: 'N',
    source: TIGHT.source,
    terms: {
      pressure: term('p', 'line pressure', loads.linePressure),
      tight: term('σ', 'pressing tight', TIGHT),
      diameter: term('D', 'bore', loads.seatDiameter),
    },
    evaluate: (at) =>
      squeezeLoad({
        linePressure: pascals(at('pressure')),
        squeeze: pascals(at('tight')),
        area: squareMetres(roundArea(metres(at('diameter')))),
      }),
  });
  const closing = calculate(sheet, {
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
  const value = combine(sheet, {
    unit: 'N',
    origin: { basis: HELPED_OPEN.basis, source: HELPED_OPEN.source },
    terms: {
      load: withEffect('either', term('Fsq', 'load that squeezes it shut', load)),
      share: term('k', 'push or sticking against the squeezing load', HELPED_OPEN),
    },
    evaluate: (at) => at('share') * at('load'),
  });
  return { opening: lookUp(sheet, { id: 'thrust-opening', name: 'Stem thrust, opening', value }), closing };
}

export function penstockThrusts(given: ThrustGiven): ThrustPair {
  const { line, loads, sheet } = given;
  const share =
    line.stem.seatDiameter === undefined ? OPENING_SHARE : exactly('1', Math.PI / 4, line.stem.seatDiameter);
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
  const weight = calculate(sheet, {
    id: 'door-weight',
    name: 'Weight of door and stem',
    formula: 'W = m″·D²·g',
    unit: 'N',
    source: DOOR_MASS.source,
    terms: {
      mass: term('m″', 'mass for each square metre, kg', DOOR_MASS),
      diameter: term('D', 'width or bore', loads.seatDiameter),
    },
    evaluate: (at) => at('mass') * at('diameter') ** 2 * GRAVITY,
  });
  return {
    opening: penstock(given, { water, weight }, 'opening'),
    closing: penstock(given, { water, weight }, 'closing'),
  };
}

function penstock(
  { loads, sheet }: ThrustGiven,
  { water, weight }: { readonly water: Known<'N'>; readonly weight: Known<'N'> },
  movement: Movement,
): Known<'N'> {
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
