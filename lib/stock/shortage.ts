/*
 * What a plan lacks on its dates, why, and when enough pieces would be free.
 * Invariant: a shortage names the model, how many are missing, and the first start on which none would be, if there is one.
 * Not here: planning around it (lib/fleet).
 * Read next: free-units.ts.
 */
import { addDays, type DateRange, daysBetween, type IsoDate, rangeOfDays } from '#lib/kernel/date-range.ts';
import { busyDays, fallsDue, freeCounted, freeUnits, isHireable } from './free-units.ts';
import type { StockQuestion } from './unit.ts';

/** Nobody waits longer than a year for a piece. */
const LOOK_AHEAD_DAYS = 366;

export interface Shortage {
  readonly model: string;
  readonly asked: number;
  readonly free: number;
  readonly missing: number;
  /** First day on which a hire of the same length could start with all pieces; null within the year ahead. */
  readonly freeFrom: IsoDate | null;
  readonly sentence: string;
}

export interface ShortageInput extends StockQuestion {
  readonly needs: readonly { readonly model: string; readonly count: number }[];
}

export function findShortages(input: ShortageInput): readonly Shortage[] {
  const counts = new Map<string, number>();
  for (const { model, count } of input.needs) counts.set(model, (counts.get(model) ?? 0) + count);
  return [...counts].flatMap(([model, asked]) => {
    const question = ofModel({ question: input, model });
    const free = freeOf({ question, model });
    return free >= asked ? [] : [shortageOf({ question, model, asked, free })];
  });
}

/** Units where the pieces have serial numbers, a number where they are counted. */
export function freeOf({ question, model }: { readonly question: StockQuestion; readonly model: string }): number {
  return isCounted(question) ? freeCounted({ question, model }) : freeUnits(question).length;
}

function isCounted({ counted }: StockQuestion): boolean {
  return counted !== undefined && counted.shelves.length > 0;
}

interface ShortOf {
  readonly question: StockQuestion;
  readonly model: string;
  readonly asked: number;
  readonly free: number;
}

function shortageOf({ question, model, asked, free }: ShortOf): Shortage {
  const freeFrom = firstStart({ question, model, asked });
  const when =
    freeFrom === null
      ? 'Within a year there is no start on which all of them are free.'
      : `All of them are free for a hire that starts on ${freeFrom}.`;
  return {
    model,
    asked,
    free,
    missing: asked - free,
    freeFrom,
    sentence: `${asked} of ${model} are asked for and ${free} are free: ${isCounted(question) ? tellCounted(question) : tellWhy(question)}. ${when}`,
  };
}

interface FirstStart {
  /** About one model only. */
  readonly question: StockQuestion;
  readonly model: string;
  readonly asked: number;
}

/** Starts worth trying are those on which some booking's turnaround ends. */
export function firstStart({ question, model, asked }: FirstStart): IsoDate | null {
  const latest = addDays(question.window.starts_on, LOOK_AHEAD_DAYS);
  const holds = (question.counted?.holds ?? []).map(({ days }) => days.ends_before);
  const starts = question.bookings
    .map((booking) => busyDays({ booking, turnaroundDays: question.turnaroundDays }).ends_before)
    .concat(holds)
    .filter((start) => start > question.window.starts_on && start <= latest)
    .sort();
  return (
    starts.find(
      (start) =>
        freeOf({ question: { ...question, window: moved({ window: question.window, start }) }, model }) >= asked,
    ) ?? null
  );
}

function moved({ window, start }: { readonly window: DateRange; readonly start: IsoDate }): DateRange {
  return rangeOfDays(start, daysBetween(window));
}

export function ofModel({
  question,
  model,
}: {
  readonly question: StockQuestion;
  readonly model: string;
}): StockQuestion {
  const units = question.units.filter((unit) => unit.model === model);
  const serials = new Set(units.map((unit) => unit.serial));
  return {
    ...question,
    units,
    bookings: question.bookings.filter((booking) => serials.has(booking.serial)),
    counted: {
      shelves: (question.counted?.shelves ?? []).filter((shelf) => shelf.model === model),
      holds: (question.counted?.holds ?? []).filter((hold) => hold.model === model),
    },
  };
}

function tellCounted({ counted }: StockQuestion): string {
  const there = (counted?.shelves ?? []).reduce((sum, { count }) => sum + count, 0);
  return `the house counts ${there}, and others hold the rest on these dates`;
}

function tellWhy(question: StockQuestion): string {
  const { units, window } = question;
  if (units.length === 0) return 'the house has none';
  const heldBack = units.filter((unit) => !isHireable(unit)).length;
  const due = units.filter((unit) => isHireable(unit) && fallsDue({ unit, window })).length;
  const booked = units.length - heldBack - due - freeUnits(question).length;
  const parts = [
    booked === 0 ? '' : `${booked} booked on these dates`,
    due === 0 ? '' : `${due} with an inspection or calibration that falls due before the hire ends`,
    heldBack === 0 ? '' : `${heldBack} in quarantine, in the workshop or lost`,
  ].filter((part) => part !== '');
  return parts.length === 0 ? `the house has ${units.length}` : `of ${units.length} there are ${parts.join(', ')}`;
}
