import { type Dimension, findUnit, fromSi, toSi } from '#lib/units/unit-table.ts';
import type { Value } from './entry.ts';

/*
 * Reads an entry's inputs; a unit stands at the end of a name and is read with our own table of units.
 * Invariant: an input that is not there, or is of another kind, is an error and never a default.
 * Not here: what is made of them (the checks by topic).
 * Read next: entry.ts.
 */
export function branch(tree: Value, name: string): Value {
  const found =
    typeof tree === 'object' && tree !== null ? Object.entries(tree).find(([key]) => key === name) : undefined;
  if (found?.[1] === undefined) throw new Error(`There is no “${name}”.`);
  return found[1];
}

export function has(tree: Value, name: string): boolean {
  return namesOf(tree).includes(name);
}

export function namesOf(tree: Value): readonly string[] {
  return typeof tree === 'object' && tree !== null ? Object.keys(tree) : [];
}

export function number(tree: Value, name?: string): number {
  const found = name === undefined ? tree : branch(tree, name);
  if (typeof found !== 'number') throw new Error(`“${name ?? found}” is no number.`);
  return found;
}

export function text(tree: Value, name?: string): string {
  const found = name === undefined ? tree : branch(tree, name);
  if (typeof found !== 'string') throw new Error(`“${name ?? found}” is no text.`);
  return found;
}

export function list(tree: Value, name?: string): readonly Value[] {
  const found = name === undefined ? tree : branch(tree, name);
  if (!isList(found)) throw new Error(`“${name ?? ''}” is no list.`);
  return found;
}

export function numbers(tree: Value, name?: string): readonly number[] {
  return list(tree, name).map((one) => number(one));
}

/** `si(inputs, 'dm', 'length')` takes `dm_mm` or `dm_in`, whichever is there, in our SI unit. */
export function si(tree: Value, name: string, dimension: Dimension): number {
  const key = namesOf(tree).find((one) => one.startsWith(`${name}_`) && unitOf(one, dimension) !== undefined);
  const unit = key === undefined ? undefined : unitOf(key, dimension);
  if (key === undefined || unit === undefined) throw new Error(`There is no “${name}” with a unit of ${dimension}.`);
  return toSi(unit, number(tree, key));
}

/** One figure in a unit, from our SI unit. */
export function inUnit(text: string, dimension: Dimension, value: number): number {
  const unit = findUnit({ text, dimension });
  if (unit === undefined) throw new Error(`“${text}” is no unit of ${dimension}.`);
  return fromSi(unit, value);
}

export function fromUnit(text: string, dimension: Dimension, value: number): number {
  const unit = findUnit({ text, dimension });
  if (unit === undefined) throw new Error(`“${text}” is no unit of ${dimension}.`);
  return toSi(unit, value);
}

/** An answer for each of the names that are asked. */
export function each(shape: Value, answer: (name: string) => Value): Value {
  return Object.fromEntries(namesOf(shape).map((name) => [name, answer(name)]));
}

/** A figure as it is printed, to so many decimals. */
export function printed(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}

function unitOf(name: string, dimension: Dimension) {
  return findUnit({ text: name.split('_').at(-1) ?? '', dimension });
}

function isList(value: Value): value is readonly Value[] {
  return Array.isArray(value);
}
