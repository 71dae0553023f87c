/*
 * Hydrants, stop taps and plugs on a key: torque, turns and ceiling by size rules.
 * Invariant: every figure is a range of common practice; a stated value replaces it elsewhere.
 * Not here: gate valves on a key (screw-duty.ts).
 * Read next: assess-duty.ts.
 */
import { HYDRANTS, type KeyedRow, STOP_TAPS } from '#lib/engineering/keyed-valves.ts';
import type { Known } from '#lib/units/known-value.ts';
import type { Direction, TorqueBound } from './duty.ts';
import type { DirectionTorque } from './screw-duty.ts';
import { calculate, lookUp, type Sheet, settle, term } from './sheet.ts';
import type { StartingFactors } from './starting-factor.ts';
import { strengthLeft } from './torque-bounds.ts';
import type { ValveCharacter } from './valve-character.ts';
import { spreadOf, type ValveLoads } from './valve-loads.ts';

interface KeyedGiven {
  readonly character: ValveCharacter;
  readonly loads: ValveLoads;
  readonly sheet: Sheet;
}

function rowsFor({
  character,
  loads,
}: KeyedGiven): readonly [least: KeyedRow, likely: KeyedRow, most: KeyedRow] | null {
  const rows = character.type === 'stop tap' ? STOP_TAPS : HYDRANTS;
  const last = rows.at(-1);
  if (last === undefined) return null;
  const at = (size: number): KeyedRow => rows.find(({ upToSize_mm }) => size * 1000 <= upToSize_mm) ?? last;
  return [at(loads.size.low), at(loads.size.nominal), at(loads.size.high)];
}

function over(
  given: KeyedGiven,
  pick: (row: KeyedRow) => readonly [number, number, number],
): { readonly low: number; readonly nominal: number; readonly high: number; readonly source: string } {
  const rows = rowsFor(given);
  if (rows === null) return { low: 0, nominal: 0, high: 0, source: 'No size rule.' };
  const [least, likely, most] = rows;
  return {
    low: Math.min(pick(least)[0], pick(most)[0]),
    nominal: pick(likely)[1],
    high: Math.max(pick(least)[2], pick(most)[2]),
    source: likely.source,
  };
}

export function keyedTorque(
  given: KeyedGiven & { readonly factors: StartingFactors },
  direction: Direction,
): DirectionTorque {
  const { sheet, factors, character } = given;
  const { source, ...range } = over(given, (row) => row.running_nm);
  const running = lookUp(sheet, {
    id: `running-torque-${direction}`,
    name: `Running torque by size rule, ${direction}`,
    value: settle('N·m', range, { basis: character.type === 'unknown' ? 'assumed' : 'rule of thumb', source }),
  });
  const starting = calculate(sheet, {
    id: `starting-torque-${direction}`,
    name: `Starting torque, ${direction}`,
    formula: 'T0 = T·k',
    unit: 'N·m',
    source: factors[direction].source,
    terms: { running: term('T', 'running torque', running), factor: term('k', 'starting factor', factors[direction]) },
    evaluate: (at) => at('running') * at('factor'),
  });
  return { starting, running, thrust: null };
}

export function keyedTurns(given: KeyedGiven): Known<'turn'> {
  const { source, ...range } = over(given, (row) => row.turns);
  return lookUp(given.sheet, {
    id: 'turns-by-size-rule',
    name: 'Turns by size rule',
    value: settle('turn', range, { basis: 'rule of thumb', source }),
  });
}

export function keyedBound(given: KeyedGiven): TorqueBound {
  const { source, ...range } = over(given, (row) => row.neverExceed_nm);
  const rule = lookUp(given.sheet, {
    id: 'bound-by-size-rule',
    name: 'Ceiling by size rule',
    value: settle('N·m', range, { basis: 'rule of thumb', source }),
  });
  const left = strengthLeft(given.character);
  const torque =
    left.low === 1
      ? rule
      : calculate(given.sheet, {
          id: 'bound-size-rule-old',
          name: 'Ceiling by size rule, weakened by age',
          formula: 'T = T0·k',
          unit: 'N·m',
          source: left.source,
          terms: {
            bound: term('T0', 'ceiling of a sound one', rule),
            left: term('k', 'strength that age leaves', left),
          },
          evaluate: (at) => at('bound') * at('left'),
        });
  return { kind: 'size rule', directions: ['opening', 'closing'], torque };
}

/** A plug or ball turned directly: what its square stands, by the torque it is made for. */
export function bareQuarterBound({
  atSeat,
  sheet,
}: {
  readonly atSeat: Known<'N·m'>;
  readonly sheet: Sheet;
}): TorqueBound {
  const margin = spreadOf('1', [1.5, 2, 3], {
    basis: 'rule of thumb',
    source: 'Stem and square of a quarter-turn valve against its seat torque; common practice, no source.',
  });
  return {
    kind: 'stem square',
    directions: ['opening', 'closing'],
    torque: calculate(sheet, {
      id: 'bound-stem-square',
      name: 'What the stem’s square stands',
      formula: 'T = T0·k',
      unit: 'N·m',
      source: margin.source,
      terms: { seat: term('T0', 'torque at the seat', atSeat), margin: term('k', 'against the seat torque', margin) },
      evaluate: (at) => at('seat') * at('margin'),
    }),
  };
}
