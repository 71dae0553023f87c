import { all, create } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { parseQuantity } from '#lib/units/parse-quantity.ts';
import { DIMENSIONS, type Dimension, fromSi, toSi, UNITS, type UnitRow } from '#lib/units/unit-table.ts';

/**
 * Every unit of the table, there and back, against a source outside the project: mathjs 14 (its own unit tables) where it has the
 * unit or its parts, else the factor printed in NIST SP 811 (2008), appendix B.8, or ISO 80000. Sizes and ratings that are names
 * and not units (DN, PN, Class, ship K) have a file of their own (designations.test.ts).
 */
const math = create({ ...all }, {});

/** What another source makes of a number in a unit, both ways, and to how many parts it can be trusted. */
interface Outside {
  readonly toSi: (value: number) => number;
  readonly fromSi: (value: number) => number;
  readonly tolerance: number;
  readonly by: 'mathjs' | 'print';
}

/** mathjs units for the SI side of each dimension. */
const TARGETS: Readonly<Partial<Record<Dimension, string>>> = {
  length: 'm',
  area: 'm^2',
  volume: 'litre',
  pressure: 'Pa',
  torque: 'N m',
  force: 'N',
  mass: 'kg',
  flow: 'm^3/s',
  speed: 'm/s',
  acceleration: 'm/s^2',
  rotation: 'cycle/minute',
  time: 's',
  angle: 'deg',
  voltage: 'V',
  power: 'W',
  energy: 'Wh',
};

/** By dimension and first name: one unit written for mathjs. */
const EXPRESSIONS: Readonly<Record<string, string>> = {
  'length mm': '1 mm',
  'length cm': '1 cm',
  'length m': '1 m',
  'length km': '1 km',
  'length in': '1 inch',
  'length ft': '1 foot',
  'length yd': '1 yard',
  'area m²': '1 m^2',
  'area mm²': '1 mm^2',
  'area cm²': '1 cm^2',
  'area in²': '1 inch^2',
  'volume l': '1 litre',
  'volume ml': '1 ml',
  'volume m³': '1 m^3',
  'volume gal': '1 gallon',
  'pressure Pa': '1 Pa',
  'pressure hPa': '1 hPa',
  'pressure kPa': '1 kPa',
  'pressure MPa': '1 MPa',
  'pressure bar': '1 bar',
  'pressure kgf/cm²': '1 kgf/cm^2',
  'pressure psi': '1 psi',
  'pressure atm': '1 atm',
  'pressure m head': '1000 mmH2O',
  'pressure ft head': '304.8 mmH2O',
  'torque N·m': '1 N m',
  'torque kN·m': '1 kN m',
  'torque daN·m': '1 daN m',
  'torque N·cm': '1 N cm',
  'torque N·mm': '1 N mm',
  'torque kgf·m': '1 kgf m',
  'torque kgf·cm': '1 kgf cm',
  'torque lbf·ft': '1 lbf foot',
  'torque lbf·in': '1 lbf inch',
  'torque ozf·in': '(1/16) lbf inch',
  'force N': '1 N',
  'force kN': '1 kN',
  'force daN': '1 daN',
  'force MN': '1 MN',
  'force kgf': '1 kgf',
  'force tf': '1000 kgf',
  'force lbf': '1 lbf',
  'force kip': '1000 lbf',
  'mass kg': '1 kg',
  'mass g': '1 g',
  'mass t': '1 tonne',
  'mass lb': '1 lbm',
  'mass oz': '1 ounce',
  'mass short ton': '1 ton',
  'mass long ton': '160 stone',
  'flow m³/s': '1 m^3/s',
  'flow m³/min': '1 m^3/minute',
  'flow m³/h': '1 m^3/hour',
  'flow l/s': '1 litre/s',
  'flow l/min': '1 litre/minute',
  'flow l/h': '1 litre/hour',
  'flow ft³/min': '1 foot^3/minute',
  'flow ft³/s': '1 foot^3/s',
  'flow gal/min': '1 gallon/minute',
  'speed m/s': '1 m/s',
  'speed m/min': '1 m/minute',
  'speed km/h': '1 km/hour',
  'speed ft/s': '1 foot/s',
  'speed ft/min': '1 foot/minute',
  'speed mile/h': '1 mile/hour',
  'acceleration m/s²': '1 m/s^2',
  'acceleration g': '1 kgf/kg',
  'acceleration ft/s²': '1 foot/s^2',
  'rotation 1/min': '1 cycle/minute',
  'rotation 1/s': '1 cycle/s',
  'rotation rad/s': '1 rad/s',
  'time s': '1 s',
  'time ms': '1 ms',
  'time min': '1 minute',
  'time h': '1 hour',
  'time d': '1 day',
  'angle °': '1 deg',
  'angle rad': '1 rad',
  'angle gon': '1 grad',
  'voltage V': '1 V',
  'voltage kV': '1 kV',
  'voltage mV': '1 mV',
  'power W': '1 W',
  'power kW': '1 kW',
  'power hp': '550 foot lbf / s',
  'power PS': '75 kgf m / s',
  'energy Wh': '1 Wh',
  'energy kWh': '1 kWh',
  'energy J': '1 J',
  'energy kJ': '1 kJ',
  'energy ft·lbf': '1 foot lbf',
};

const SP811 = 'NIST SP 811 (2008), appendix B.8';
/** Left out of the comparison with mathjs, each with the reason; compared with print instead: its factor and how many digits it prints. */
const PUBLISHED: Readonly<
  Record<
    string,
    { readonly published: number; readonly digits: number; readonly source: string; readonly reason: string }
  >
> = {
  'volume imp gal': {
    published: 4.54609,
    digits: 7,
    source: `${SP811}: gallon [Canadian and U.K. (Imperial)] to litre`,
    reason: 'mathjs has the US gallon alone',
  },
  'flow imp gal/min': {
    published: 4.54609e-3 / 60,
    digits: 7,
    source: `${SP811}: imperial gallon to cubic metre, over 60 s`,
    reason: 'mathjs has the US gallon alone',
  },
  'pressure mmHg': {
    published: 1.333224e2,
    digits: 7,
    source: `${SP811}: torr (Torr)`,
    reason: 'mathjs takes mmHg with six digits',
  },
  'pressure inHg': {
    published: 3.386389e3,
    digits: 7,
    source: `${SP811}: inch of mercury, conventional`,
    reason: 'mathjs has no inch of mercury',
  },
  'sound dB': {
    published: 1,
    digits: 15,
    source: 'ISO 80000-3: the decibel is kept as it is',
    reason: 'a level is no unit to mathjs',
  },
  'ratio 1': {
    published: 1,
    digits: 15,
    source: 'ISO 80000-1: a ratio has the unit one',
    reason: 'a ratio has no unit',
  },
  'ratio %': { published: 0.01, digits: 15, source: 'ISO 80000-1: per cent is 0.01', reason: 'a ratio has no unit' },
  'turns turn': {
    published: 1,
    digits: 15,
    source: 'ISO 80000-3: a turn is counted as it is',
    reason: 'a count has no unit',
  },
};

const TEMPERATURES: Readonly<Record<string, string>> = { '°C': 'degC', '°F': 'degF', K: 'K' };

const nameOf = ({ dimension, names }: UnitRow): string => `${dimension} ${names[0] ?? ''}`;

function outsideOf(row: UnitRow): Outside | undefined {
  const { dimension } = row;
  const scale = dimension === 'temperature' ? TEMPERATURES[row.names[0] ?? ''] : undefined;
  if (scale !== undefined)
    return {
      toSi: (value) => math.unit(value, scale).toNumber('degC'),
      fromSi: (value) => math.unit(value, 'degC').toNumber(scale),
      tolerance: 1e-10,
      by: 'mathjs',
    };
  const expression = EXPRESSIONS[nameOf(row)];
  const target = TARGETS[dimension];
  if (expression !== undefined && target !== undefined) {
    const one = math.evaluate(expression);
    return {
      toSi: (value) => math.evaluate(`${value} * (${expression})`).toNumber(target),
      fromSi: (value) => Number(math.divide(math.unit(value, target), one)),
      // mathjs holds the pound-force per square inch with twelve digits.
      tolerance: 1e-10,
      by: 'mathjs',
    };
  }
  const print = PUBLISHED[nameOf(row)];
  if (print === undefined) return undefined;
  return {
    toSi: (value) => value * print.published,
    fromSi: (value) => value / print.published,
    tolerance: 0.6 * 10 ** (1 - print.digits),
    by: 'print',
  };
}

const VALUES = [0.001, 0.37, 1, 12.5, 451, 987_654.321];
/** Temperatures from below the coldest site to the hottest steam. */
const DEGREES = [-40, -0.5, 0, 32, 100, 212, 451, 900];

function near(found: number, expected: number, tolerance: number): void {
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(tolerance * Math.max(Math.abs(expected), 1e-12) + 1e-13 * 500);
}

describe('units', () => {
  it('of the table are all compared, with mathjs or with a named print', () => {
    const without = UNITS.filter((row) => outsideOf(row) === undefined).map(nameOf);
    expect(without, 'neither compared nor left out with a reason').toEqual([]);
    const printed = UNITS.filter((row) => outsideOf(row)?.by === 'print').map(nameOf);
    expect(printed.toSorted()).toEqual(Object.keys(PUBLISHED).toSorted());
    const known = new Set(UNITS.map(nameOf));
    expect(
      Object.keys(EXPRESSIONS).filter((name) => !known.has(name)),
      'compared but not in the table',
    ).toEqual([]);
    console.info(`${UNITS.length} units: ${UNITS.length - printed.length} with mathjs, ${printed.length} with print`);
  });

  it.each(UNITS.map((row) => [nameOf(row), row] as const))(
    '%s agrees with an outside source in both directions',
    (_name, row) => {
      const outside = outsideOf(row);
      expect(outside).toBeDefined();
      if (outside === undefined) return;
      for (const value of row.dimension === 'temperature' ? DEGREES : VALUES) {
        near(toSi(row, value), outside.toSi(value), outside.tolerance);
        near(fromSi(row, value), outside.fromSi(value), outside.tolerance);
        near(fromSi(row, toSi(row, value)), value, 1e-14);
      }
    },
  );

  it('every name of every unit is read with a number in front, as the outside source makes it', () => {
    let read = 0;
    const wrong: string[] = [];
    for (const row of UNITS) {
      const outside = outsideOf(row);
      for (const name of row.names)
        for (const value of row.dimension === 'temperature' ? [-5, 12.5, 80] : [1, 12.5, 340]) {
          const found = parseQuantity({ text: `${value} ${name}`, dimension: row.dimension });
          const expected = outside?.toSi(value) ?? Number.NaN;
          const close =
            found.ok &&
            Math.abs(found.value.value - expected) <=
              (outside?.tolerance ?? 0) * Math.abs(expected) + 1e-9 * Math.abs(expected);
          if (!close) wrong.push(`${row.dimension}: ${value} ${name}`);
          read += 1;
        }
    }
    console.info(`${read} texts of number and unit read`);
    expect(wrong).toEqual([]);
    expect(read).toBeGreaterThan(3 * UNITS.length);
  });

  it('every dimension has its own SI unit first, with the factor one', () => {
    for (const dimension of Object.keys(DIMENSIONS)) {
      const own = UNITS.find((unit) => unit.dimension === dimension && unit.factor === 1);
      expect(own, dimension).toBeDefined();
    }
  });

  it('published equivalents that people know by heart hold', () => {
    // NIST SP 811 (2008), appendix B.8, as printed there.
    const printed: readonly (readonly [Dimension, string, number, number])[] = [
      ['torque', 'lbf·ft', 1.355818, 7],
      ['torque', 'lbf·in', 1.129848e-1, 7],
      ['torque', 'kgf·m', 9.80665, 7],
      ['pressure', 'psi', 6.894757e3, 7],
      ['pressure', 'kgf/cm²', 9.80665e4, 7],
      ['pressure', 'ft head', 2.989067e3, 7],
      ['force', 'lbf', 4.448222, 7],
      ['mass', 'lb', 4.535924e-1, 7],
      ['flow', 'ft³/min', 4.719474e-4, 7],
      ['flow', 'gal/min', 6.30902e-5, 6],
      ['power', 'hp', 7.456999e2, 7],
      ['energy', 'ft·lbf', 1.355818 / 3600, 7],
      ['pressure', 'm head', 9.80665e3, 7],
    ];
    for (const [dimension, name, factor, digits] of printed) {
      const unit = UNITS.find((row) => row.dimension === dimension && row.names[0] === name);
      expect(unit, name).toBeDefined();
      expect(Math.abs((unit?.factor ?? 0) / factor - 1), name).toBeLessThan(0.6 * 10 ** (1 - digits));
    }
  });
});
