/*
 * The thrust on a stem, opening and closing apart, by the family of the valve.
 * Invariant: a thrust above zero works against the movement; ranges straddle zero where the pressure may help.
 * Not here: globes, clamping valves and penstocks (special-thrusts.ts); torque (screw-duty.ts).
 * Read next: special-thrusts.ts, screw-duty.ts.
 */
import { gateThrust, type Movement, packingFriction, stemEndLoad } from '#lib/engineering/stem-thrust.ts';
import type { Known, Origin } from '#lib/units/known-value.ts';
import { metres, newtons, pascals, ratio } from '#lib/units/quantity.ts';
import { calculate, combine, lookUp, term, withEffect } from './sheet.ts';
import { globeThrusts, penstockThrusts, squeezeThrusts } from './special-thrusts.ts';
import { GRAVITY, NOTHING, type Parts, seatLoad, type ThrustGiven, type ThrustPair } from './thrust-parts.ts';
import { spreadOf } from './valve-loads.ts';

export interface StemThrusts extends ThrustPair {
  /** Pressure on the stem's end that a collar carries although the thread does not; nought for stems that move out. */
  readonly collarOnly: Known<'N'>;
  /** Friction of the packing at the stem's surface; it becomes torque where the stem turns. */
  readonly packing: Known<'N'>;
}

const LARGE_GATE = 0.6;

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
  return { ...thrustsOf(given, parts), collarOnly, packing };
}

function thrustsOf(given: ThrustGiven, parts: Parts): ThrustPair {
  switch (given.character.family) {
    case 'globe':
      return globeThrusts(given, parts);
    case 'squeeze':
      return squeezeThrusts(given, parts);
    case 'penstock':
      return penstockThrusts(given);
    case 'gate':
    case 'quarter turn':
    case 'keyed':
      return gateThrusts(given, parts);
  }
}

function gateThrusts(given: ThrustGiven, parts: Parts): ThrustPair {
  const shared = { ...parts, seat: seatLoad(given), weight: weighs(given) ? gateWeight(given) : NOTHING };
  return { opening: gate(given, shared, 'opening'), closing: gate(given, shared, 'closing') };
}

/** The weight counts for large gates that hang on their stem. */
function weighs({ loads, line }: ThrustGiven): boolean {
  const faces = line.place.faces?.value;
  return loads.size.high >= LARGE_GATE && faces !== 'side' && faces !== 'down';
}

function gate(
  given: ThrustGiven,
  { end, slidingPacking, seat, weight }: Parts & { readonly seat: Known<'N'>; readonly weight: Known<'N'> },
  movement: Movement,
): Known<'N'> {
  // A reverse-acting gate moves its stem out to close.
  const up = (movement === 'opening') !== (given.line.action?.value === 'reverse');
  return calculate(given.sheet, {
    id: `thrust-${movement}`,
    name: `Stem thrust, ${movement}`,
    unit: 'N',
    formula: up ? 'F = VF·Fd + Fp − Fs + W' : 'F = VF·Fd + Fp + Fs − W',
    source: 'US NRC Motor-Operated Valves Course Manual, section 3.2; sign when opening from memory.',
    terms: {
      seat: term('Fd', 'load on the seat area', seat),
      factor: term('VF', 'valve factor', given.loads.valveFactor),
      packing: term('Fp', 'packing that the stem slides through', slidingPacking),
      end: withEffect(up ? 'lowers' : 'raises', term('Fs', 'stem-end load', end)),
      weight: withEffect(up ? 'raises' : 'lowers', term('W', 'weight of the gate', weight)),
    },
    evaluate: (at) =>
      gateThrust({
        movement: up ? 'opening' : 'closing',
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
  const origin: Origin = {
    basis: 'assumed',
    source: 'Mass of a large gate by its size; common practice, no source.',
  };
  const value = combine(sheet, {
    unit: 'N',
    origin,
    terms: {
      size: term('D', 'nominal size', loads.size),
      share: term('k', 'gate against what is usual for the size', spreadOf('1', [0.3, 1, 2], origin)),
    },
    evaluate: (at) => 1300 * at('size') ** 3 * GRAVITY * at('share'),
  });
  return lookUp(sheet, { id: 'gate-weight', name: 'Weight of the gate', value });
}
