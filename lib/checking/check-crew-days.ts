/*
 * Holds the planned days of the crews against what the crews do: each valve on one day, in order, and every figure of a day worked out again.
 * Invariant: a limit value that a day passes is told on it, and is passed only where the days and hours leave no way to spread the work.
 * Not here: the figures themselves (day-strain.ts, day-lifting.ts).
 * Read next: day-strain.ts.
 */
import { NOISE_LIMIT } from '#lib/engineering/noise.ts';
import { VIBRATION_LIMIT_VALUE } from '#lib/engineering/vibration.ts';
import type { CrewDay } from '#lib/equipment/crew-day.ts';
import { liftingOf } from './day-lifting.ts';
import { type Counted, type DayFacts, type Ends, strainOf, visitOf } from './day-strain.ts';
import { atMost, type Discrepancy, holds, same } from './discrepancy.ts';
import type { OutcomeFacts } from './outcome-facts.ts';

export function checkCrewDays(outcomeFacts: OutcomeFacts): readonly Discrepancy[] {
  const facts: DayFacts = {
    ...outcomeFacts,
    lineOf: new Map(outcomeFacts.lines.map((line) => [line.tag, line])),
    modelOf: new Map(outcomeFacts.models.map((model) => [model.number, model])),
  };
  const days = facts.outcome.crewDays ?? [];
  const crews = [...new Set([...days.map(({ crew }) => crew), ...facts.outcome.work.map(({ crew }) => crew)])];
  return [
    ...crews.flatMap((crew) => checkCrew(facts, { crew, days: days.filter((day) => day.crew === crew) })),
    ...days.flatMap((day) => checkDay(facts, day)),
  ];
}

interface Crew {
  readonly crew: number;
  readonly days: readonly CrewDay[];
}

function checkCrew(facts: DayFacts, { crew, days }: Crew): readonly Discrepancy[] {
  const planned = facts.outcome.lines.flatMap(({ tag, parts }) =>
    parts.filter((part) => part.crew === crew).map((part) => ({ ...part, tag })),
  );
  const [asked, done] = [planned, days.flatMap(({ work }) => work)].map(totals);
  const orders = days
    .flatMap(({ work }) => work)
    .map(({ tag }) => facts.lineOf.get(tag)?.place.placeOrder ?? Number.MAX_SAFE_INTEGER);
  const numbers = days.map(({ day }) => day).join(', ');
  return [
    ...holds(asked === done, {
      code: 'day-work',
      sentence: `The days of crew ${crew} together do not hold its work in the plan, each valve once.`,
      expected: asked ?? '',
      found: done ?? '',
    }),
    ...holds(numbers === days.map((_, index) => index + 1).join(', '), {
      code: 'day-number',
      sentence: `The days of crew ${crew} are not counted from 1, each once.`,
      expected: `1 to ${days.length}`,
      found: numbers,
    }),
    ...atMost({
      code: 'day-beyond',
      what: `The number of days of crew ${crew}`,
      expected: facts.site.days,
      found: days.length,
    }),
    ...holds(
      orders.every((order, index) => index === 0 || order >= (orders[index - 1] ?? 0)),
      {
        code: 'day-order',
        sentence: `Crew ${crew} goes back to a place that comes earlier in the working order.`,
        expected: 'rising places',
        found: orders.join(', '),
      },
    ),
    ...checkSpread(facts, { crew, days }),
  ];
}

function totals(work: readonly { readonly tag: string; readonly qty: number; readonly assembly: string }[]): string {
  const sums = new Map<string, number>();
  for (const { tag, qty, assembly } of work) {
    const key = `${tag} with ${assembly}`;
    sums.set(key, (sums.get(key) ?? 0) + qty);
  }
  return [...sums]
    .map(([key, qty]) => `${qty} ${key}`)
    .toSorted()
    .join(', ');
}

/** Where a day passes the limit, the same valves in the same order must not go into the days below it. */
function checkSpread(facts: DayFacts, { crew, days }: Crew): readonly Discrepancy[] {
  const limit = VIBRATION_LIMIT_VALUE;
  if (days.every(({ alone }) => alone.exposure.high <= limit)) return [];
  const visits = days.flatMap((day) => countedOf(facts, day));
  const shift = facts.site.shiftHours * 3600;
  let [used, time, dose] = [1, 0, 0];
  for (const { qty, visit } of visits) {
    const each = visit.vibration ** 2 * visit.trigger.high;
    if (visit.time > shift || each > limit ** 2 * 28_800) return [];
    for (let valve = 0; valve < qty; valve += 1) {
      const full = time + visit.time > shift * (1 - 1e-9) || dose + each > limit ** 2 * 28_800 * (1 - 1e-9);
      [used, time, dose] = full ? [used + 1, visit.time, each] : [used, time + visit.time, dose + each];
    }
  }
  return holds(used > facts.site.days, {
    code: 'day-spreadable',
    sentence: `Crew ${crew} passes the vibration limit on a day, though its work goes into ${used} days below it.`,
    expected: `no day above ${limit}`,
    found: Math.max(...days.map(({ alone }) => alone.exposure.high)),
  });
}

function countedOf(facts: DayFacts, day: CrewDay): readonly Counted[] {
  return day.work.flatMap((work) => {
    const visit = visitOf(facts, work);
    return visit === null ? [] : [{ qty: work.qty, visit }];
  });
}

function checkDay(facts: DayFacts, day: CrewDay): readonly Discrepancy[] {
  const persons = Math.floor(facts.site.personsPerCrew);
  const strain = strainOf(countedOf(facts, day), Math.max(1, persons));
  const name = `day ${day.day} of crew ${day.crew}`;
  const one = (code: string, what: string, expected: number, found: number) =>
    same({ code, what: `${what} on ${name}`, expected, found });
  const range = (code: string, what: string, expected: Ends, found: Ends) => [
    ...one(code, `${what}, at the least,`, expected.low, found.low),
    ...one(code, what, expected.nominal, found.nominal),
    ...one(code, `${what}, at the most,`, expected.high, found.high),
  ];
  const { turns } = day;
  return [
    ...one('day-valves', 'The number of valves', qtyOf(day), day.valves),
    ...one('day-time', 'The time in seconds', strain.time, day.time),
    ...range('day-trigger', 'The trigger time in seconds', strain.trigger, day.trigger),
    ...range('day-vibration', 'A(8) of one person', strain.alone, day.alone.exposure),
    ...one('day-points', 'The vibration points of one person', strain.points, day.alone.points),
    ...range('day-noise', 'L_EX,8h', strain.noise, day.noise),
    ...one('day-persons', 'The number of persons who take turns', Math.max(1, persons), turns?.persons ?? 1),
    ...(turns === null
      ? []
      : [
          ...range('day-turns', 'A(8) in turns', strain.turns, turns.exposure),
          ...one('day-turns', 'The vibration points in turns', strain.points / persons, turns.points),
        ]),
    ...checkLifts(facts, day, strain.time),
    ...checkTold(facts, day, strain),
    ...checkSteps(day),
  ];
}

const qtyOf = ({ work }: CrewDay): number => work.reduce((sum, { qty }) => sum + qty, 0);

function checkLifts(facts: DayFacts, day: CrewDay, time: number): readonly Discrepancy[] {
  const expected = liftingOf(facts, day, time);
  const { count, heaviest, number, filter, equation } = day.lifts;
  const { worst } = equation;
  const refused = equation.refused.map(({ why, valves }) => `${valves} × ${why}`).toSorted();
  const one = (code: string, what: string, wanted: number, found: number) =>
    same({ code, what: `${what} on day ${day.day} of crew ${day.crew}`, expected: wanted, found });
  return [
    ...one('day-lifts', 'The number of lifts', expected.count, count),
    ...one('day-heaviest', 'The heaviest piece in kg', expected.heaviest, heaviest),
    ...one(
      'day-heaviest',
      `The mass in kg of ${number}, said to be the heaviest,`,
      expected.heaviest,
      facts.modelOf.get(number)?.mass ?? 0,
    ),
    ...one('day-filter', 'The filter from the ground in kg', expected.fromGround, filter.fromGround),
    ...one('day-filter', 'The filter at waist height in kg', expected.atWaist, filter.atWaist),
    ...one('day-index', 'The weight limit in kg', expected.limit ?? 0, worst?.limit ?? 0),
    ...one('day-index', 'The lifting index', expected.index ?? 0, worst?.index ?? 0),
    ...one('day-equation', 'The valves that the equation speaks of', expected.valves, equation.valves),
    ...holds(refused.join('; ') === expected.refused.join('; '), {
      code: 'day-equation',
      sentence: `What the lifting equation does not speak of on day ${day.day} of crew ${day.crew} is not what was found.`,
      expected: expected.refused.join('; '),
      found: refused.join('; '),
    }),
  ];
}

/** Limits are told where they are passed and nowhere else. */
function checkTold(facts: DayFacts, day: CrewDay, strain: ReturnType<typeof strainOf>): readonly Discrepancy[] {
  const told = day.findings.map(({ id }) => id);
  const cases: readonly (readonly [string, boolean])[] = [
    ['crew-day-vibration-limit', strain.alone.high > VIBRATION_LIMIT_VALUE],
    ['crew-day-noise-limit', strain.noise.nominal > NOISE_LIMIT],
    ['crew-day-over-shift', strain.time > facts.site.shiftHours * 3600 + 1],
  ];
  return cases.flatMap(([id, passed]) =>
    holds(told.filter((one) => one === id).length === (passed ? 1 : 0), {
      code: 'day-told',
      sentence: `Day ${day.day} of crew ${day.crew} ${passed ? 'does not tell' : 'wrongly tells'} ${id}.`,
      expected: passed ? id : 'nothing of it',
      found: told.join(', ') || 'nothing',
    }),
  );
}

/** The sheet's results are the day's figures. */
function checkSteps({ day, crew, steps, trigger, alone, turns, noise, lifts }: CrewDay): readonly Discrepancy[] {
  const just = (value: number): Ends => ({ low: value, nominal: value, high: value });
  const { worst } = lifts.equation;
  const figures: readonly (readonly [string, Ends])[] = [
    ['crew-day-trigger', trigger],
    ['crew-day-vibration', alone.exposure],
    ['crew-day-points', just(alone.points)],
    ...(turns === null ? [] : [['crew-day-vibration-in-turns', turns.exposure] as const]),
    ['crew-day-noise', noise],
    ['crew-day-filter', just(lifts.filter.atWaist)],
    ...(worst === null ? [] : [['crew-day-lifting-index', just(worst.index)] as const]),
  ];
  const show = (results: readonly (readonly [string, Ends])[]): string =>
    results.map(([id, { low, nominal, high }]) => `${id} ${[low, nominal, high].join(' ')}`).join('; ');
  const [expected, found] = [show(figures), show(steps.map(({ id, result }) => [id, result]))];
  return holds(expected === found, {
    code: 'day-steps',
    sentence: `The steps of day ${day} of crew ${crew} do not end in its figures.`,
    expected,
    found,
  });
}
