/*
 * What a stocktake found: what stands where it should, what stands elsewhere, what is missing, what should not be here at all.
 * Invariant: every expected and every scanned unit is told of exactly once; only what should be here can be missing.
 * Not here: what is done about it (lib/services/stock/close-stocktake.ts).
 * Read next: unit.ts.
 */
import type { Unit } from './unit.ts';

/** A unit in these is not expected in the depot: with a customer, between depots, or gone. */
const ELSEWHERE = ['out', 'on the way', 'lost', 'retired'];

export interface StocktakeScope {
  readonly depot: string;
  /** Empty where the whole depot is counted. */
  readonly bay: string;
}

export interface ScannedUnit {
  readonly serial: string;
  readonly bay: string;
}

export interface StocktakeUnit {
  readonly serial: string;
  readonly model: string;
  readonly state: string;
  /** Where the record has it. */
  readonly depot: string;
  readonly bay: string;
  /** Where it was scanned; empty where it was not. */
  readonly foundIn: string;
}

export interface StocktakeFindings {
  readonly inPlace: readonly StocktakeUnit[];
  /** Found, but the record has it in another bay or depot. */
  readonly misplaced: readonly StocktakeUnit[];
  /** Found, though the record says that it is out, on its way, lost or retired. */
  readonly unexpected: readonly StocktakeUnit[];
  readonly missing: readonly StocktakeUnit[];
}

interface StocktakeQuestion {
  readonly scope: StocktakeScope;
  readonly units: readonly Unit[];
  readonly scans: readonly ScannedUnit[];
}

export function stocktakeFindings({ scope, units, scans }: StocktakeQuestion): StocktakeFindings {
  const foundIn = new Map(scans.map(({ serial, bay }) => [serial, bay]));
  const told = units.map((unit) => ({ ...shown(unit), foundIn: foundIn.get(unit.serial) ?? '' }));
  const found = told.filter(({ serial }) => foundIn.has(serial));
  const unexpected = found.filter(isElsewhere);
  const here = found.filter((unit) => !isElsewhere(unit));
  const stands = (unit: StocktakeUnit) => unit.depot === scope.depot && unit.bay === unit.foundIn;
  return {
    inPlace: here.filter(stands),
    misplaced: here.filter((unit) => !stands(unit)),
    unexpected,
    missing: told.filter(
      (unit) =>
        !foundIn.has(unit.serial) &&
        !isElsewhere(unit) &&
        unit.depot === scope.depot &&
        (scope.bay === '' || unit.bay === scope.bay),
    ),
  };
}

function isElsewhere({ state }: StocktakeUnit): boolean {
  return ELSEWHERE.includes(state);
}

function shown({ serial, model, state, depot, bay }: Unit): Omit<StocktakeUnit, 'foundIn'> {
  return { serial, model, state, depot, bay };
}
