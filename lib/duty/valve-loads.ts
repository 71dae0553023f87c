/*
 * Size, rating, pressures, seat, friction and packing of a valve: from the line, else from tables by type and size.
 * Invariant: a value of the line always wins; what is taken instead says so and is written on the sheet.
 * Not here: stem and thread (valve-stem.ts).
 * Read next: valve-stem.ts.
 */
import { classPressure, ratingPressure } from '#lib/engineering/pressure-rating.ts';
import type { Spread } from '#lib/engineering/valve-tables.ts';
import { exactly, type Known, known, type Origin } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import type { ScheduleLine, ValveType } from './schedule-line.ts';
import { combine, lookUp, type Sheet, term } from './sheet.ts';
import type { ValveCharacter } from './valve-character.ts';

export interface ValveLoads {
  readonly size: Known<'m'>;
  readonly rated: Known<'Pa'>;
  readonly linePressure: Known<'Pa'>;
  readonly differential: Known<'Pa'>;
  readonly seatDiameter: Known<'m'>;
  readonly valveFactor: Known<'1'>;
  /** Packing friction for each metre of stem diameter, as a plain number. */
  readonly packingPerDiameter: Known<'1'>;
}

interface Given {
  readonly line: ScheduleLine;
  readonly character: ValveCharacter;
  readonly sheet: Sheet;
}

/** Share of the seat load that resists sliding (globe: factor on the seat load; penstock: friction). */
const VALVE_FACTORS: Readonly<Partial<Record<ValveType, Spread>>> = {
  'wedge gate': [0.28, 0.35, 0.42],
  'flexible wedge gate': [0.28, 0.35, 0.42],
  'double disc gate': [0.24, 0.3, 0.38],
  'parallel slide gate': [0.2, 0.25, 0.3],
  'knife gate': [0.25, 0.35, 0.5],
  globe: [1.05, 1.1, 1.15],
  penstock: [0.2, 0.3, 0.45],
};
const SEAT_SHARES: Readonly<Record<ValveCharacter['family'], Spread>> = {
  gate: [0.98, 1, 1.03],
  globe: [0.9, 1, 1.03],
  squeeze: [1, 1.05, 1.15],
  penstock: [1, 1.05, 1.12],
  'quarter turn': [0.95, 1, 1.02],
  keyed: [0.9, 1, 1],
};

export function valveLoads(given: Given): ValveLoads {
  const { line, character, sheet } = given;
  const size = line.size ?? lookUp(sheet, { id: 'size', name: 'Nominal size', value: unknownSize(character) });
  const rated = ratedPressure(given);
  const linePressure = pressureOfLine(given, rated);
  return {
    size,
    rated,
    linePressure,
    differential: differentialPressure(given, linePressure),
    seatDiameter:
      line.stem.seatDiameter ??
      lookUp(sheet, { id: 'seat-diameter', name: 'Seat diameter', value: seatBySize(given, size) }),
    valveFactor:
      line.stem.valveFactor ??
      lookUp(sheet, { id: 'valve-factor', name: 'Valve factor', value: factorByType(character) }),
    packingPerDiameter: packingRule(character),
  };
}

/** A spread as a known value. */
export function spreadOf<U extends Unit>(
  unit: U,
  spread: Spread,
  origin: { readonly basis: Known<U>['basis']; readonly source: string },
): Known<U> {
  const [low, nominal, high] = spread;
  return known(unit, { low, nominal, high }, origin);
}

/** A share of another value, which it follows. */
export function shareOf<U extends Unit>(sheet: Sheet, { name, of, base, share, source }: ShareOf<U>): Known<U> {
  const basis = base.basis === 'assumed' ? 'assumed' : 'rule of thumb';
  const origin: Origin = { basis, source };
  return combine(sheet, {
    unit: base.unit,
    origin,
    terms: { base: term('x', of, base), share: term('k', name, spreadOf('1', share, origin)) },
    evaluate: (at) => at('base') * at('share'),
  });
}

interface ShareOf<U extends Unit> {
  /** What the share is, in words: it may turn out to be what matters most. */
  readonly name: string;
  /** What it is a share of, in words. */
  readonly of: string;
  readonly base: Known<U>;
  readonly share: Spread;
  readonly source: string;
}

function unknownSize({ family }: ValveCharacter): Known<'m'> {
  const spread: Spread =
    family === 'penstock' ? [0.3, 0.6, 1.2] : family === 'keyed' ? [0.02, 0.08, 0.1] : [0.08, 0.15, 0.4];
  return spreadOf('m', spread, {
    basis: 'assumed',
    source: `The list gives no size: DN ${spread[0] * 1000} to DN ${spread[2] * 1000} is covered.`,
  });
}

function ratedPressure({ line, character, sheet }: Given): Known<'Pa'> {
  const text = line.rating?.value;
  const ambient = text === undefined ? null : ratingPressure(text);
  if (ambient !== null && text !== undefined) {
    const ratingClass = Number(/class\s*(\d+)/i.exec(text)?.[1] ?? Number.NaN);
    const temperature = line.process.temperature;
    const hot = temperature === undefined ? null : classPressure({ ratingClass, temperature: temperature.nominal });
    return exactly('Pa', Math.min(hot ?? ambient, ambient), {
      basis: 'standard',
      source: `Pressure that the rating ${text} stands for (ASME B16.34, EN 1333; iron classes and K ratings from memory).`,
    });
  }
  const spread: Spread = character.setting === 'waterworks' ? [10e5, 16e5, 16e5] : [16e5, 19.6e5, 51.1e5];
  const basis = 'assumed';
  return lookUp(sheet, {
    id: 'rated-pressure',
    name: 'Rated pressure',
    value: spreadOf('Pa', spread, {
      basis,
      source: `The list gives no rating: ${spread[0] / 1e5} to ${spread[2] / 1e5} bar is taken, usual for ${character.setting === 'waterworks' ? 'waterworks' : 'plants'}.`,
    }),
  });
}

function pressureOfLine({ line, character, sheet }: Given, rated: Known<'Pa'>): Known<'Pa'> {
  if (line.process.linePressure !== undefined) return line.process.linePressure;
  const stated = line.process.differentialPressure;
  if (stated !== undefined) {
    const high = Math.max(stated.high, Math.min(rated.nominal, stated.high * 1.5));
    const origin: Origin = {
      basis: 'assumed',
      source: 'Taken from the differential pressure: at least as high, at most half as much again or the rating.',
    };
    return lookUp(sheet, {
      id: 'line-pressure',
      name: 'Line pressure',
      value: combine(sheet, {
        unit: 'Pa',
        origin,
        terms: {
          stated: term('Δp', 'differential pressure', stated),
          more: term('k', 'line pressure above the differential pressure', spreadOf('1', [0, 0, 1], origin)),
        },
        evaluate: (at) => at('stated') + at('more') * (high - stated.high),
      }),
    });
  }
  if (character.family === 'penstock')
    return lookUp(sheet, { id: 'line-pressure', name: 'Water pressure at the door', value: unknownHead() });
  const share: Spread = character.setting === 'waterworks' ? [0.15, 0.35, 0.6] : [0.15, 0.5, 0.85];
  const origin: Origin = {
    basis: 'assumed',
    source: `The list gives no pressure: ${share[0] * 100} to ${share[2] * 100} % of the rated pressure is taken.`,
  };
  const value = combine(sheet, {
    unit: 'Pa',
    origin,
    terms: {
      rated: term('p', 'rated pressure', rated),
      share: term('k', 'line pressure against the rated pressure', spreadOf('1', share, origin)),
    },
    evaluate: (at) => at('rated') * at('share'),
  });
  return lookUp(sheet, { id: 'line-pressure', name: 'Line pressure', value });
}

function differentialPressure({ line, character, sheet }: Given, linePressure: Known<'Pa'>): Known<'Pa'> {
  if (line.process.differentialPressure !== undefined) return line.process.differentialPressure;
  if (character.family === 'penstock') return linePressure;
  const low = line.state.bypass?.value === true ? 0 : 0.3;
  const said = line.process.linePressure !== undefined;
  const origin: Origin = {
    basis: 'assumed',
    source: `The differential pressure is not given: ${low === 0 ? 'with the by-pass it may be nought, at' : 'at'} most the whole line pressure stands across the closed valve.`,
  };
  const share = spreadOf('1', [low, said ? 0.8 : 1, 1], origin);
  const value = combine(sheet, {
    unit: 'Pa',
    origin,
    terms: {
      line: term('p', 'line pressure', linePressure),
      share: term('k', 'differential pressure against line pressure', share),
    },
    evaluate: (at) => at('line') * at('share'),
  });
  return lookUp(sheet, { id: 'differential-pressure', name: 'Differential pressure', value });
}

function unknownHead(): Known<'Pa'> {
  return spreadOf('Pa', [5e3, 25e3, 60e3], {
    basis: 'assumed',
    source: 'The list gives no head: 0.5 to 6 m of water at the middle of the door is taken.',
  });
}

function seatBySize({ character, sheet }: Given, size: Known<'m'>): Known<'m'> {
  return shareOf(sheet, {
    name: 'seat against nominal size',
    of: 'nominal size',
    base: size,
    share: SEAT_SHARES[character.family],
    source: 'Seat diameter by nominal size; common practice, no source.',
  });
}

function factorByType({ type, setting }: ValveCharacter): Known<'1'> {
  const spread = VALVE_FACTORS[type] ?? (setting === 'waterworks' ? [0.22, 0.3, 0.38] : [0.28, 0.35, 0.42]);
  const basis = type === 'unknown' ? 'assumed' : 'rule of thumb';
  return spreadOf('1', spread, {
    basis,
    source:
      'Valve factor by type: 0.3 for wedges, plants argue 0.4 and more; parallel slides 0.2 to 0.25; globes 1.1 (industry guide and a maker’s engineering page, secondary).',
  });
}

function packingRule({ setting }: ValveCharacter): Known<'1'> {
  const spread: Spread = setting === 'waterworks' ? [10e3, 22e3, 40e3] : [45e3, 80e3, 125e3];
  return spreadOf('1', spread, {
    basis: 'rule of thumb',
    source: `Friction of the packing, ${spread[0] / 1000} to ${spread[2] / 1000} N for each mm of stem diameter; common practice, no source.`,
  });
}
