/*
 * Which other terms an enquiry is tried under: days and crews around those asked, each part left out, and ways around a shortage.
 * Invariant: what is free is counted anew for every other window; the terms nearest to those asked come first.
 * Not here: trying them (../../planning/try-cases.ts) and keeping the answer (study-enquiry.ts).
 * Read next: study-enquiry.ts.
 */
import { addDays, rangeOfDays } from '#lib/kernel/date-range.ts';
import { LIMITS } from '#lib/kernel/limits.ts';
import type { PlanCase } from '#lib/planning/try-cases.ts';
import type { PlanOutcome, WorkedOut, WorkOutInput } from '#lib/planning/worked-out.ts';
import type { Context } from '#lib/services/context.ts';
import { freePieces, houseModels, stockQuestion } from '#lib/services/house/house-facts.ts';
import { depotsOf, freeAtHome } from './depots-view.ts';

export interface CasesAsked {
  readonly enquiryId: number;
  readonly input: WorkOutInput;
}

export interface Point {
  readonly days: number;
  readonly crews: number;
}

/** Beyond these a long list would be planned too many times. */
const MOST_DAYS_TRIED = 10;
const MOST_CREWS_TRIED = 3;
const LONG_LIST = 1_000;

/** Days from one to twice those asked, crews from one to three; the asked crews first, the asked days before others. */
export function frontierPoints({ site, lines }: WorkOutInput): readonly Point[] {
  const isLong = lines.length > LONG_LIST;
  const last = Math.min(LIMITS.hire_days, Math.max(site.days + 3, 2 * site.days));
  const most = isLong ? MOST_DAYS_TRIED / 2 : MOST_DAYS_TRIED;
  const step = Math.max(1, Math.ceil(last / most));
  const days = new Set([site.days]);
  for (let day = 1; day <= last; day += step) days.add(day);
  const near = [...days].sort((a, b) => Math.abs(a - site.days) - Math.abs(b - site.days) || a - b);
  const others = Array.from({ length: MOST_CREWS_TRIED }, (_, index) => index + 1).filter((n) => n !== site.crews);
  const crews = isLong ? [site.crews] : [site.crews, ...others];
  return crews.flatMap((count) => near.map((day) => ({ days: day, crews: count })));
}

export function frontierCases(
  context: Context,
  at: CasesAsked & { readonly points: readonly Point[] },
): readonly PlanCase[] {
  const { startsOn } = at.input.site;
  const free = new Map<number, WorkOutInput['free']>();
  const freeFor = (days: number): WorkOutInput['free'] => {
    const known =
      free.get(days) ?? freePieces(context, { window: rangeOfDays(startsOn, days), enquiryId: at.enquiryId });
    free.set(days, known);
    return known;
  };
  return at.points.map(({ days, crews }) => ({
    key: `${days}d${crews}c`,
    change: { days, crews, free: freeFor(days) },
  }));
}

/** No number of a part has a space in it. */
export const HOME_DEPOT_ALONE = 'despatching depot alone';

/** The plan as it is, then without each part that it carries, then without what is brought from other depots. */
export function withoutCases(
  context: Context,
  at: CasesAsked & { readonly parts: readonly string[]; readonly kits: PlanOutcome['kits'] },
): readonly PlanCase[] {
  const { enquiryId, input, parts, kits } = at;
  const { site } = input;
  const { brought } = depotsOf(context, { enquiryId, site, kits });
  const home =
    brought.length === 0 ? [] : [{ key: HOME_DEPOT_ALONE, change: { free: freeAtHome(context, { enquiryId, site }) } }];
  return [
    { key: 'as planned', change: {} },
    ...parts.map((part) => ({ key: part, change: { without: [part] } })),
    ...home,
  ];
}

const MORE_DAYS = [1, 2, 4];
const MORE_CREWS = [1, 2];
const STARTS_TRIED = 4;
const LOOK_AHEAD_DAYS = 60;

/** More days, another crew, a later start, parts that were left out, and pieces that the house does not have free. */
export function wayCases(
  context: Context,
  at: CasesAsked & { readonly shortage: WorkedOut['shortage'] },
): readonly PlanCase[] {
  const { input, enquiryId, shortage } = at;
  const { site, constraints } = input;
  const freeFrom = (startsOn: string, days: number): WorkOutInput['free'] =>
    freePieces(context, { window: rangeOfDays(startsOn, days), enquiryId });
  const days = MORE_DAYS.map((more) => site.days + more).filter((count) => count <= LIMITS.hire_days);
  const crews = MORE_CREWS.map((more) => site.crews + more).filter((count) => count <= LIMITS.crews);
  const short = (shortage?.short ?? []).filter(({ wanted, free }) => wanted > free);
  return [
    { key: 'as planned', change: {} },
    ...days.map((count) => ({
      key: `days ${count}`,
      change: { days: count, free: freeFrom(site.startsOn, count) },
    })),
    ...crews.map((count) => ({ key: `crews ${count}`, change: { crews: count } })),
    ...laterStarts(context, at).map((start) => ({
      key: `start ${start}`,
      change: { startsOn: start, free: freeFrom(start, site.days) },
    })),
    ...(constraints.excludedParts.length === 0 ? [] : [{ key: 'again', change: { again: constraints.excludedParts } }]),
    ...(short.length === 0
      ? []
      : [
          {
            key: 'more pieces',
            change: { free: { ...input.free, ...Object.fromEntries(short.map(({ item, wanted }) => [item, wanted])) } },
          },
        ]),
  ];
}

/** Days on which something comes back, where the house asks the same prices then as now. */
function laterStarts(context: Context, { input, enquiryId }: CasesAsked): readonly string[] {
  const { startsOn, days } = input.site;
  const { bookings, turnaroundDays } = stockQuestion(context, { window: rangeOfDays(startsOn, days), enquiryId });
  const latest = addDays(startsOn, LOOK_AHEAD_DAYS);
  const backs = bookings
    .map(({ window }) => addDays(window.ends_before, turnaroundDays))
    .filter((start) => start > startsOn && start <= latest)
    .filter((start) => JSON.stringify(houseModels(context, start)) === JSON.stringify(input.models));
  return [...new Set(backs)].sort().slice(0, STARTS_TRIED);
}
