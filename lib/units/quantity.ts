/*
 * Branded quantities: a number whose type carries its unit.
 * Invariant: inside the core every quantity is in the SI unit (or unit accepted for use with SI) that its type names.
 * Not here: parsing and printing of customers' units (parse-quantity.ts, format-quantity.ts).
 * Read next: known-value.ts.
 */
declare const unit: unique symbol;

export type Unit =
  | 'N·m'
  | 'N'
  | 'm'
  | 'm²'
  | 'Pa'
  | '1/min'
  | 's'
  | 'kg'
  | 'W'
  | 'J'
  | 'Wh'
  | '°C'
  | '°'
  | 'm³/s'
  | 'turn'
  | '1'
  | 'dB'
  | 'm/s²'
  | 'm/s'
  | 'V'
  | 'l';

export type Quantity<U extends Unit> = number & { readonly [unit]: U };

export type NewtonMetres = Quantity<'N·m'>;
export type Newtons = Quantity<'N'>;
export type Metres = Quantity<'m'>;
export type SquareMetres = Quantity<'m²'>;
export type Pascals = Quantity<'Pa'>;
/** Rotational speed; 1/min is accepted for use with SI (ISO 80000-3). */
export type RevolutionsPerMinute = Quantity<'1/min'>;
export type Seconds = Quantity<'s'>;
export type Kilograms = Quantity<'kg'>;
export type Watts = Quantity<'W'>;
export type Joules = Quantity<'J'>;
export type WattHours = Quantity<'Wh'>;
export type Celsius = Quantity<'°C'>;
export type Degrees = Quantity<'°'>;
export type CubicMetresPerSecond = Quantity<'m³/s'>;
export type Turns = Quantity<'turn'>;
/** A plain ratio, factor or coefficient. */
export type Ratio = Quantity<'1'>;
export type Decibels = Quantity<'dB'>;
export type MetresPerSecondSquared = Quantity<'m/s²'>;
export type MetresPerSecond = Quantity<'m/s'>;
export type Volts = Quantity<'V'>;
export type Litres = Quantity<'l'>;

export const newtonMetres = (value: number): NewtonMetres => value as NewtonMetres;
export const newtons = (value: number): Newtons => value as Newtons;
export const metres = (value: number): Metres => value as Metres;
export const millimetres = (value: number): Metres => (value / 1000) as Metres;
export const squareMetres = (value: number): SquareMetres => value as SquareMetres;
export const pascals = (value: number): Pascals => value as Pascals;
export const bar = (value: number): Pascals => (value * 1e5) as Pascals;
export const perMinute = (value: number): RevolutionsPerMinute => value as RevolutionsPerMinute;
export const seconds = (value: number): Seconds => value as Seconds;
export const minutes = (value: number): Seconds => (value * 60) as Seconds;
export const kilograms = (value: number): Kilograms => value as Kilograms;
export const watts = (value: number): Watts => value as Watts;
export const joules = (value: number): Joules => value as Joules;
export const wattHours = (value: number): WattHours => value as WattHours;
export const celsius = (value: number): Celsius => value as Celsius;
export const degrees = (value: number): Degrees => value as Degrees;
export const cubicMetresPerSecond = (value: number): CubicMetresPerSecond => value as CubicMetresPerSecond;
export const turns = (value: number): Turns => value as Turns;
export const ratio = (value: number): Ratio => value as Ratio;
export const decibels = (value: number): Decibels => value as Decibels;
export const metresPerSecondSquared = (value: number): MetresPerSecondSquared => value as MetresPerSecondSquared;
export const metresPerSecond = (value: number): MetresPerSecond => value as MetresPerSecond;
export const volts = (value: number): Volts => value as Volts;
export const litres = (value: number): Litres => value as Litres;
/** For generic code that already knows the unit. */
export const quantity = <U extends Unit>(value: number): Quantity<U> => value as Quantity<U>;
