/*
 * The planned days of every crew: its valves in working order, day by day, and what each day asks of its people.
 * Invariant: the days of a crew hold its work of the plan, each valve once, in working order, on no more days than the site has.
 * Not here: which crew does what (lib/fleet); the figures are checked in ../checking/check-crew-days.ts.
 * Read next: split-days.ts, day-exposure.ts, day-lifts.ts, day-findings.ts.
 */
import type { Site } from '#lib/duty/site.ts';
import { VIBRATION_ACTION_VALUE, VIBRATION_LIMIT_VALUE } from '#lib/engineering/vibration.ts';
import type { CrewDay } from '#lib/equipment/crew-day.ts';
import type { Model } from '#lib/equipment/model.ts';
import { minutes, seconds } from '#lib/units/quantity.ts';
import { type CrewPortion, crewPortions, type PortionsInput } from './crew-portions.ts';
import { dayExposure } from './day-exposure.ts';
import { type DayContext, dayFindings } from './day-findings.ts';
import { liftSteps } from './day-lift-steps.ts';
import { dayLifts } from './day-lifts.ts';
import { fillDays, highestDose, type Split, splitDays } from './split-days.ts';

export interface CrewDaysInput extends Omit<PortionsInput, 'crew' | 'models'> {
  readonly models: readonly Model[];
  /** Added to the plan's crew for the name that people read. */
  readonly crewOffset: number;
}

interface CrewSplit {
  readonly crew: number;
  readonly portions: readonly CrewPortion[];
  readonly split: Split<CrewPortion>;
}

const EIGHT_HOURS_S = 28_800;

export function crewDays(input: CrewDaysInput): readonly CrewDay[] {
  const models = new Map(input.models.map((model) => [model.number, model]));
  const crews = new Set(input.lines.flatMap(({ parts }) => parts.map(({ crew }) => crew)));
  const caps = { days: input.site.days, shift: shiftOf(input.site), dose: EIGHT_HOURS_S * VIBRATION_LIMIT_VALUE ** 2 };
  const splits = [...crews]
    .toSorted((a, b) => a - b)
    .map((crew): CrewSplit => {
      const portions = crewPortions({ ...input, models, crew });
      return { crew, portions, split: splitDays(portions, caps) };
    });
  return splits.flatMap((one) =>
    one.split.days.map((day, index) => dayOf({ input, models, splits, one, day, number: index + 1 })),
  );
}

interface DayInput {
  readonly input: CrewDaysInput;
  readonly models: ReadonlyMap<string, Model>;
  readonly splits: readonly CrewSplit[];
  readonly one: CrewSplit;
  readonly day: readonly CrewPortion[];
  readonly number: number;
}

function dayOf({ input, models, splits, one, day, number }: DayInput): CrewDay {
  const { site } = input;
  const time = seconds(day.reduce((sum, { qty, time: each }) => sum + qty * each, 0));
  const exposure = dayExposure(day, site.personsPerCrew);
  const lifts = dayLifts({ day, time, site, models });
  const figures = {
    crew: one.crew,
    day: number,
    work: day.map(({ line, key, qty }) => ({ tag: line.tag, qty, assembly: key })),
    valves: day.reduce((sum, { qty }) => sum + qty, 0),
    time,
    ...exposure,
    lifts,
    steps: [...exposure.steps, ...liftSteps(lifts, time)],
  };
  return { ...figures, findings: dayFindings(figures, contextOf({ input, splits, one, number })) };
}

function contextOf({ input, splits, one, number }: Omit<DayInput, 'models' | 'day'>): DayContext {
  const { site, crewOffset } = input;
  const { days, filled } = one.split;
  const free = splits
    .filter(({ crew }) => crew !== one.crew)
    .map(({ crew, split }) => ({ name: `crew ${crew + crewOffset}`, days: site.days - split.days.length }))
    .filter((other) => other.days > 0)
    .toSorted((a, b) => b.days - a.days);
  return {
    name: `Crew ${one.crew + crewOffset}, day ${number}`,
    shift_s: shiftOf(site),
    daysForAction: daysForAction(one.portions, site),
    days: site.days,
    other: free[0] ?? null,
    spreadFrom: days.length > filled ? filled : null,
    daysUsed: days.length,
  };
}

function daysForAction(portions: readonly CrewPortion[], site: Site): number | null {
  const dose = EIGHT_HOURS_S * VIBRATION_ACTION_VALUE ** 2;
  const days = fillDays(portions, { time: shiftOf(site), dose });
  return days.length <= site.days && highestDose(days) <= dose ? days.length : null;
}

function shiftOf({ shiftHours }: Site): number {
  return minutes(shiftHours * 60);
}
