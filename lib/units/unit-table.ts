/*
 * Every unit that a customer may write, as data: names, dimension, exact factor to our SI unit, authority.
 * Invariant: value in SI = (number + offset) × factor; factors are exact or as defined, never rounded by hand.
 * Not here: reading a text (parse-quantity.ts) and printing (format-quantity.ts).
 * Read next: parse-quantity.ts.
 */
import type { Unit } from './quantity.ts';

export const DIMENSIONS = {
  length: 'm',
  area: 'm²',
  volume: 'l',
  pressure: 'Pa',
  torque: 'N·m',
  force: 'N',
  mass: 'kg',
  temperature: '°C',
  flow: 'm³/s',
  speed: 'm/s',
  acceleration: 'm/s²',
  rotation: '1/min',
  time: 's',
  angle: '°',
  voltage: 'V',
  power: 'W',
  energy: 'Wh',
  sound: 'dB',
  ratio: '1',
  turns: 'turn',
} as const satisfies Readonly<Record<string, Unit>>;

export type Dimension = keyof typeof DIMENSIONS;

export interface UnitRow {
  readonly dimension: Dimension;
  /** The first name is the one we print; spaces, dots and case do not matter when reading. */
  readonly names: readonly string[];
  readonly factor: number;
  /** Added before multiplying; only temperatures have one. */
  readonly offset?: number;
  readonly authority: string;
}

const SI = 'BIPM SI Brochure, 9th edition';
const NIST = 'NIST SP 811 (2008), appendix B.8';
const DEFINED = 'NIST SP 811 (2008), appendix B.8: exact by definition';

/** Standard acceleration of free fall, exact (3rd CGPM, 1901). */
const G = 9.80665;
/** International inch, foot and pound, exact (1959 agreement; NIST SP 811, appendix B.6). */
const INCH = 0.0254;
const FOOT = 0.3048;
const POUND = 0.453_592_37;
const POUND_FORCE = POUND * G;
const US_GALLON_L = 3.785_411_784;
const IMPERIAL_GALLON_L = 4.546_09;

function row(dimension: Dimension, names: string, factor: number, authority: string): UnitRow {
  return { dimension, names: names.split('|'), factor, authority };
}

export const UNITS: readonly UnitRow[] = [
  row(
    'length',
    'mm|millimetre|millimetres|millimeter|millimeters|millimètres|milímetros|millimeter|мм|毫米',
    0.001,
    SI,
  ),
  row(
    'length',
    'cm|centimetre|centimetres|centimeter|centimeters|centimètres|centímetros|zentimeter|см|厘米',
    0.01,
    SI,
  ),
  row('length', 'm|metre|metres|meter|meters|mètre|mètres|metro|metros|mtr|mtrs|м|米', 1, SI),
  row('length', 'km|kilometre|kilometres|kilometer|kilometers', 1000, SI),
  row(
    'length',
    "in|inch|inches|\"|″|''|zoll|pouce|pouces|pulgada|pulgadas|pulg|polegada|polegadas|pollici|дюйм|дюймов",
    INCH,
    DEFINED,
  ),
  row('length', "ft|foot|feet|'|′|fuss|pied|pieds|pie|pies|pé|pés", FOOT, DEFINED),
  row('length', 'yd|yard|yards', 3 * FOOT, DEFINED),
  row('area', 'm²|m2|sq m|sqm', 1, SI),
  row('area', 'mm²|mm2|sq mm|sqmm', 1e-6, SI),
  row('area', 'cm²|cm2|sq cm|sqcm', 1e-4, SI),
  row('area', 'in²|in2|sq in|sqin', INCH * INCH, DEFINED),
  row('volume', 'l|litre|litres|liter|liters|ltr', 1, SI),
  row('volume', 'ml|millilitre|milliliter', 0.001, SI),
  row('volume', 'm³|m3|cubic metre|cubic metres|cubic meter|cubic meters', 1000, SI),
  row('volume', 'gal|us gal|gallon|gallons|usgal', US_GALLON_L, DEFINED),
  row('volume', 'imp gal|imperial gallon|imperial gallons|uk gal', IMPERIAL_GALLON_L, DEFINED),
  row('pressure', 'Pa|pascal|pascals', 1, SI),
  row('pressure', 'hPa|mbar|millibar', 100, SI),
  row('pressure', 'kPa|kilopascal|kPag|kPa g', 1000, SI),
  row('pressure', 'MPa|megapascal|МПа', 1e6, SI),
  row('pressure', 'bar|bars|barg|bar g|bar(g)|bara|bares|бар|巴', 1e5, SI),
  row('pressure', 'kgf/cm²|kg/cm²|kgf/cm2|kg/cm2|ksc|kp/cm2|at|кгс/см2|公斤', G * 1e4, DEFINED),
  row('pressure', 'psi|psig|lb/in2|lbf/in2|lbs/in2|psi g|pounds per square inch', POUND_FORCE / (INCH * INCH), NIST),
  row('pressure', 'atm|atmosphere|atmospheres|атм', 101_325, DEFINED),
  row(
    'pressure',
    'm head|m H2O|mH2O|mWC|m WC|mwg|mCE|mca|m c a|mWS|mhd|metres head|meters head|metres water|m of head|m of water',
    G * 1000,
    'NIST SP 811 (2008), appendix B.8: metre of water, conventional',
  ),
  row(
    'pressure',
    'ft head|ft H2O|ftH2O|ftWC|ft WC|feet head|ft of head|ft of water|feet of water',
    G * 1000 * FOOT,
    'NIST SP 811 (2008), appendix B.8: foot of water, conventional',
  ),
  row(
    'pressure',
    'mmHg|torr',
    101_325 / 760,
    'NIST SP 811 (2008), appendix B.8: torr (mmHg differs in the seventh digit)',
  ),
  row('pressure', 'inHg|in Hg', 3386.389, 'NIST SP 811 (2008), appendix B.8: inch of mercury, conventional'),
  row('torque', 'N·m|Nm|newton metre|newton metres|newton meter|newton meters|joule per turn|Н·м|牛米', 1, SI),
  row('torque', 'kN·m|kNm', 1000, SI),
  row('torque', 'daN·m|daNm', 10, SI),
  row('torque', 'N·cm|Ncm', 0.01, SI),
  row('torque', 'N·mm|Nmm', 0.001, SI),
  row('torque', 'kgf·m|kgm|kgfm|kg m|mkg|kpm|m kgf|mkgf|кгс·м', G, DEFINED),
  row('torque', 'kgf·cm|kgcm|kgfcm|kg cm|cmkg', G / 100, DEFINED),
  row(
    'torque',
    'lbf·ft|ft·lbf|ft lb|ft-lb|ft lbs|foot pounds|foot pound|ft pounds|foot lbs|lb ft|lbs ft|lb-ft|lbft|ftlb|ftlbs|pound feet|pound foot',
    POUND_FORCE * FOOT,
    NIST,
  ),
  row(
    'torque',
    'lbf·in|in·lbf|in lb|in-lb|in lbs|inch pounds|inch pound|lb in|lbs in|lb-in|lbin|inlb|inlbs|pound inch',
    POUND_FORCE * INCH,
    NIST,
  ),
  row('torque', 'ozf·in|in·ozf|oz in|in oz', (POUND_FORCE / 16) * INCH, NIST),
  row('force', 'N|newton|newtons', 1, SI),
  row('force', 'kN|kilonewton|kilonewtons', 1000, SI),
  row('force', 'daN|decanewton', 10, SI),
  row('force', 'MN|meganewton', 1e6, SI),
  row('force', 'kgf|kp|kg|kilogram force|kilopond', G, DEFINED),
  row('force', 'tf|t|tonne force|tonnes force', 1000 * G, DEFINED),
  row('force', 'lbf|lb|lbs|pound force|pounds force', POUND_FORCE, NIST),
  row('force', 'kip|kipf|kips', 1000 * POUND_FORCE, NIST),
  row('mass', 'kg|kilogram|kilograms|kilogramme|kilo|kilos|kgs|кг', 1, SI),
  row('mass', 'g|gram|grams|gramme', 0.001, SI),
  row('mass', 't|tonne|tonnes|metric ton|metric tons', 1000, SI),
  row('mass', 'lb|lbs|pound|pounds|lbm', POUND, DEFINED),
  row('mass', 'oz|ounce|ounces', POUND / 16, DEFINED),
  row('mass', 'short ton|us ton|short tons', 2000 * POUND, DEFINED),
  row('mass', 'long ton|uk ton|long tons', 2240 * POUND, DEFINED),
  row('temperature', '°C|C|degC|deg C|celsius|centigrade|º C|℃|° c', 1, SI),
  { ...row('temperature', '°F|F|degF|deg F|fahrenheit|º F|℉', 5 / 9, DEFINED), offset: -32 },
  { ...row('temperature', 'K|kelvin', 1, SI), offset: -273.15 },
  row('flow', 'm³/s|m3/s|cumecs|cumec', 1, SI),
  row('flow', 'm³/min|m3/min', 1 / 60, SI),
  row('flow', 'm³/h|m3/h|m3/hr|cmh|m3h', 1 / 3600, SI),
  row('flow', 'l/s|lps|litres per second|liters per second|ltr/s', 0.001, SI),
  row('flow', 'l/min|lpm|litres per minute|liters per minute|nl/min|ltr/min', 0.001 / 60, SI),
  row('flow', 'l/h|l/hr|lph', 0.001 / 3600, SI),
  row('flow', 'ft³/min|ft3/min|cfm|scfm|cu ft/min', FOOT ** 3 / 60, NIST),
  row('flow', 'ft³/s|ft3/s|cfs|cusecs|cusec', FOOT ** 3, NIST),
  row('flow', 'gal/min|gpm|us gpm|usgpm', (US_GALLON_L * 0.001) / 60, NIST),
  row('flow', 'imp gal/min|igpm|imp gpm', (IMPERIAL_GALLON_L * 0.001) / 60, NIST),
  row('speed', 'm/s|metres per second|meters per second|mps', 1, SI),
  row('speed', 'm/min', 1 / 60, SI),
  row('speed', 'km/h|kph|kmh', 1000 / 3600, SI),
  row('speed', 'ft/s|fps|feet per second', FOOT, DEFINED),
  row('speed', 'ft/min|fpm', FOOT / 60, NIST),
  row('speed', 'mile/h|mph|mi/h', (5280 * FOOT) / 3600, DEFINED),
  row('acceleration', 'm/s²|m/s2', 1, SI),
  row('acceleration', 'g|gn', G, DEFINED),
  row('acceleration', 'ft/s²|ft/s2', FOOT, DEFINED),
  row('rotation', '1/min|rpm|r/min|rev/min|min⁻¹|u/min|tr/min|rev per min|об/мин', 1, 'ISO 80000-3'),
  row('rotation', '1/s|rps|r/s|rev/s', 60, 'ISO 80000-3'),
  row('rotation', 'rad/s', 60 / (2 * Math.PI), SI),
  row('time', 's|sec|secs|second|seconds|sek|сек|с|秒', 1, SI),
  row('time', 'ms|millisecond|milliseconds', 0.001, SI),
  row('time', 'min|mins|minute|minutes|minuten|minutos|мин|分', 60, SI),
  row('time', 'h|hr|hrs|hour|hours|std|heure|heures|hora|horas|час', 3600, SI),
  row('time', 'd|day|days', 86_400, SI),
  row('angle', '°|deg|degree|degrees|degrés|grados|º', 1, SI),
  row('angle', 'rad|radian|radians', 180 / Math.PI, SI),
  row('angle', 'gon|grad', 0.9, DEFINED),
  row('voltage', 'V|volt|volts|VAC|V AC|VDC|V DC', 1, SI),
  row('voltage', 'kV|kilovolt', 1000, SI),
  row('voltage', 'mV|millivolt', 0.001, SI),
  row('power', 'W|watt|watts', 1, SI),
  row('power', 'kW|kilowatt|kilowatts', 1000, SI),
  row('power', 'hp|horsepower|bhp', 550 * FOOT * POUND_FORCE, NIST),
  row('power', 'PS|metric hp|ch|cv', 75 * G, DEFINED),
  row('energy', 'Wh|watt hour|watt hours', 1, SI),
  row('energy', 'kWh', 1000, SI),
  row('energy', 'J|joule|joules', 1 / 3600, SI),
  row('energy', 'kJ', 1 / 3.6, SI),
  row('energy', 'ft·lbf|ft lbf', (FOOT * POUND_FORCE) / 3600, NIST),
  row('sound', 'dB|dB(A)|dBA|decibel|decibels', 1, 'IEC 61672-1'),
  row('ratio', '1|:1|to 1|x', 1, SI),
  row('ratio', '%|percent|per cent|pct', 0.01, SI),
  row(
    'turns',
    'turn|turns|rev|revs|revolution|revolutions|tours|tour|vueltas|vuelta|voltas|umdrehungen|umdr|umd|giri|t|об',
    1,
    'a turn is a count',
  ),
];

/** Spaces, dots, hyphens and case do not tell units apart once the dimension is known. */
export function unitKey(text: string): string {
  return text
    .replace(/º/g, '°')
    .normalize('NFKC')
    .replace(/[\s·⋅∙•*.^_\-−]/g, '')
    .replace(/[“”″]/g, '"')
    .replace(/[’′`]/g, "'")
    .replace(/''/g, '"')
    .toLowerCase();
}

const INDEX: ReadonlyMap<string, UnitRow> = new Map(
  [...UNITS]
    .reverse()
    .flatMap((unit) => unit.names.map((name) => [`${unit.dimension} ${unitKey(name)}`, unit] as const)),
);

export function findUnit(question: { readonly text: string; readonly dimension: Dimension }): UnitRow | undefined {
  return INDEX.get(`${question.dimension} ${unitKey(question.text)}`);
}

/** Fifteen digits drop the noise of binary fractions (6 in is 0.1524 m, not 0.15239999999999998 m) and lose nothing. */
export function toSi(unit: UnitRow, value: number): number {
  return Number(((value + (unit.offset ?? 0)) * unit.factor).toPrecision(15));
}

export function fromSi(unit: UnitRow, value: number): number {
  return value / unit.factor - (unit.offset ?? 0);
}
