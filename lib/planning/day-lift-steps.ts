/*
 * The steps by which a day's lifts were screened: pace and filter, and the lifting equation where it speaks.
 * Invariant: each step can be redone by hand from what it names; assumed places of the hands are marked as assumed.
 * Not here: the screening itself (day-lifts.ts).
 * Read next: day-lifts.ts.
 */
import { filterMass } from '#lib/engineering/lifting.ts';
import type { DayLifts } from '#lib/equipment/crew-day.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import type { Step, StepInput } from '#lib/units/calculation-step.ts';
import { exactly } from '#lib/units/known-value.ts';
import type { Seconds, Unit } from '#lib/units/quantity.ts';

const WORKED_OUT = { basis: 'computed', source: 'Worked out from the values named.' } as const;
const ASSUMED = { basis: 'assumed', source: 'Assumed; nothing is said of it' } as const;

export function liftSteps(lifts: DayLifts, time: Seconds): readonly Step[] {
  return [filterStep(lifts, time), ...indexStep(lifts, time)];
}

function filterStep({ count, filter }: DayLifts, time: Seconds): Step {
  const waist = filterMass({ zone: 'elbow to knuckle', reach: 'close', persons: 'women' });
  const table = { basis: 'standard', source: 'HSE L23 and INDG143' } as const;
  return {
    id: 'crew-day-filter',
    name: 'Screening filter at waist height at the pace of the day, one person lifting all',
    formula: 'm = s(n/t)·m_table; s = 1 to 0.5 a minute, 0.7 to 2, 0.5 to 8, 0.2 above',
    inputs: [
      input('n', 'Pieces above 3 kg, put on and taken off', [count, '1'], WORKED_OUT),
      input('t', 'Work of the day', [time, 's'], WORKED_OUT),
      input('m_table', 'Filter at waist height, close to the body, anyone', [waist, 'kg'], table),
    ],
    result: exactly('kg', filter.atWaist, WORKED_OUT),
    source: 'Health and Safety Executive, L23',
  };
}

function indexStep({ count, equation }: DayLifts, time: Seconds): readonly Step[] {
  const { worst } = equation;
  if (worst === null) return [];
  const { reach, from, to } = WORKING_CONSTANTS.lift;
  return [
    {
      id: 'crew-day-lifting-index',
      name: 'Lifting index of the heaviest piece that the equation speaks of',
      formula:
        'LI = L/RWL; RWL = 23·(25/H)·(1 − 0.003·|V − 75|)·(0.82 + 4.5/D)·(1 − 0.0032·A)·FM(n/t)·CM, lengths in cm',
      inputs: [
        input('L', 'Mass of the piece', [worst.index * worst.limit, 'kg'], {
          basis: 'stated',
          source: 'Facts of the part',
        }),
        input('H', 'Hands before the ankles', [reach, 'm'], ASSUMED),
        input('V', 'Hands above the ground at the start', [from, 'm'], ASSUMED),
        input('D', 'Height lifted', [to - from, 'm'], ASSUMED),
        input('A', 'Twist', [0, '°'], ASSUMED),
        input('n', 'Pieces above 3 kg, put on and taken off', [count, '1'], WORKED_OUT),
        input('t', 'Work of the day', [time, 's'], WORKED_OUT),
        input('CM', 'Grip, fair, below 75 cm', [0.95, '1'], ASSUMED),
      ],
      result: exactly('1', worst.index, { basis: 'assumed', source: WORKED_OUT.source }),
      source: 'DHHS (NIOSH) 94-110, Applications Manual for the Revised NIOSH Lifting Equation',
    },
  ];
}

function input(
  symbol: string,
  name: string,
  [value, unit]: readonly [number, Unit],
  origin: Pick<StepInput, 'basis' | 'source'>,
): StepInput {
  return { symbol, name, low: value, nominal: value, high: value, unit, ...origin };
}
