/*
 * Torque, turns and inner bounds of a valve by the way it moves: screw, gearbox or key.
 * Invariant: everything is referred to the valve's input, where the drive sits.
 * Not here: stated values that replace these (assess-duty.ts).
 * Read next: screw-duty.ts, geared-duty.ts, keyed-duty.ts.
 */
import type { Known } from '#lib/units/known-value.ts';
import type { Direction, Duty, DutyThread, TorqueBound } from './duty.ts';
import { gearboxBound, shaftBounds, throughGear } from './gear-bounds.ts';
import {
  atGearInput,
  bareQuarterTurns,
  gearing,
  multiTurnTurns,
  quarterTurnAtShaft,
  quarterTurnTorque,
  quarterTurnTurns,
} from './geared-duty.ts';
import { bareQuarterBound, keyedBound, keyedTorque, keyedTurns } from './keyed-duty.ts';
import { type DirectionTorque, dutyThread, screwTorque, screwTurns } from './screw-duty.ts';
import { scratchSheet } from './sheet.ts';
import { type StartingFactors, startingFactors } from './starting-factor.ts';
import { stemBounds } from './stem-bounds.ts';
import { stemThrusts } from './stem-thrusts.ts';
import type { BoundGiven } from './torque-bounds.ts';
import { type ValveStem, valveStem } from './valve-stem.ts';

export interface ValveWork {
  readonly movement: Duty['movement'];
  readonly torque: Readonly<Record<Direction, DirectionTorque>>;
  readonly turns: Known<'turn'>;
  /** Turns worked out without the turns that the list states, to compare with them. */
  readonly independentTurns: Known<'turn'>;
  readonly bounds: readonly TorqueBound[];
  readonly thread: DutyThread | null;
  readonly stem: ValveStem | null;
  readonly factors: StartingFactors;
}

export function workOfValve(given: BoundGiven): ValveWork {
  const { character } = given;
  const factors = startingFactors(given);
  if (character.family === 'keyed') return keyed(given, factors);
  if (character.family === 'quarter turn') return quarterTurn(given, factors);
  return screw(given, factors);
}

function keyed(given: BoundGiven, factors: StartingFactors): ValveWork {
  const turns = keyedTurns(given);
  return {
    movement: 'keyed',
    factors,
    turns,
    independentTurns: turns,
    thread: null,
    stem: null,
    bounds: [keyedBound(given)],
    torque: {
      opening: keyedTorque({ ...given, factors }, 'opening'),
      closing: keyedTorque({ ...given, factors }, 'closing'),
    },
  };
}

function quarterTurn(given: BoundGiven, factors: StartingFactors): ValveWork {
  const { character, sheet, loads, line } = given;
  const atSeat = quarterTurnTorque(given);
  const shaft = {
    opening: quarterTurnAtShaft({ ...given, atSeat, factors }, 'opening'),
    closing: quarterTurnAtShaft({ ...given, atSeat, factors }, 'closing'),
  };
  if (!character.geared) {
    const turns = bareQuarterTurns(loads);
    return {
      movement: 'keyed',
      factors,
      turns,
      independentTurns: turns,
      thread: null,
      stem: null,
      torque: shaft,
      bounds: [bareQuarterBound({ atSeat, sheet }), ...shaftBounds(given)],
    };
  }
  const gear = gearing(given);
  const turns = quarterTurnTurns({ gear, sheet });
  return {
    movement: 'geared',
    factors,
    turns,
    thread: null,
    stem: null,
    independentTurns:
      line.torque.turns === undefined
        ? turns
        : quarterTurnTurns({ gear: gearing({ ...withoutTurns(given), sheet: scratchSheet() }), sheet: scratchSheet() }),
    torque: {
      opening: atGearInput({ torque: shaft.opening, gear, sheet, direction: 'opening' }),
      closing: atGearInput({ torque: shaft.closing, gear, sheet, direction: 'closing' }),
    },
    bounds: [gearboxBound(given), ...throughGear({ bounds: shaftBounds(given), gear, sheet })],
  };
}

function screw(given: BoundGiven, factors: StartingFactors): ValveWork {
  const { character, sheet, line } = given;
  const stem = valveStem(given);
  const withStem = { ...given, stem };
  const whole = { ...withStem, thrusts: stemThrusts(withStem), factors };
  const torque = { opening: screwTorque(whole, 'opening'), closing: screwTorque(whole, 'closing') };
  const stemTurns = screwTurns(withStem);
  const bounds = stemBounds(withStem);
  const independent = line.torque.turns === undefined ? stemTurns : turnsWithout(given);
  const shared = { factors, thread: dutyThread(stem), stem };
  if (!character.geared)
    return { ...shared, movement: 'screw', torque, turns: stemTurns, independentTurns: independent, bounds };
  const gear = gearing(given);
  return {
    ...shared,
    movement: 'geared',
    torque: {
      opening: atGearInput({ torque: torque.opening, gear, sheet, direction: 'opening' }),
      closing: atGearInput({ torque: torque.closing, gear, sheet, direction: 'closing' }),
    },
    turns: multiTurnTurns({ stemTurns, gear, sheet }),
    independentTurns: multiTurnTurns({ stemTurns: independent, gear, sheet: scratchSheet() }),
    bounds: [gearboxBound(given), ...throughGear({ bounds, gear, sheet })],
  };
}

/** Turns of the stem as if the list had not stated any, to compare with what it states. */
function turnsWithout(given: BoundGiven): Known<'turn'> {
  const alone = { ...withoutTurns(given), sheet: scratchSheet() };
  return screwTurns({ ...alone, stem: valveStem(alone) });
}

function withoutTurns(given: BoundGiven): BoundGiven {
  const { turns: _turns, ...torque } = given.line.torque;
  return { ...given, line: { ...given.line, torque } };
}
