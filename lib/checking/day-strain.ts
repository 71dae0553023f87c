/*
 * Trigger time, vibration and noise of a crew's day, worked out a second time valve by valve from strokes and declared values.
 * Invariant: own arithmetic from lines, assemblies and models; nothing is taken from the day but which valves it holds.
 * Not here: comparing (check-crew-days.ts), lifts (day-lifting.ts).
 * Read next: check-crew-days.ts.
 */

import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { DayWork } from '#lib/equipment/crew-day.ts';
import type { Model } from '#lib/equipment/model.ts';
import type { OutcomeFacts } from './outcome-facts.ts';

export interface Ends {
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
}

/** One visit to one valve. */
export interface Visit {
  readonly time: number;
  readonly trigger: Ends;
  readonly vibration: number;
  readonly sound: number;
}

const WORKING_DAY_S = 8 * 60 * 60;

/** What is checked, with its lines and models by name. */
export interface DayFacts extends OutcomeFacts {
  readonly lineOf: ReadonlyMap<string, ScheduleLine>;
  readonly modelOf: ReadonlyMap<string, Model>;
}

export function visitOf({ lineOf, modelOf, site, outcome }: DayFacts, work: DayWork): Visit | null {
  const line = lineOf.get(work.tag);
  const assembly = outcome.assemblies[work.assembly];
  const drive = modelOf.get(assembly?.parts.drive ?? '');
  if (line === undefined || assembly === undefined || drive?.role !== 'drive') return null;
  const strokes = Number.isFinite(line.strokes) && line.strokes >= 1 ? Math.floor(line.strokes) : 2;
  const ways = [assembly.opening.strokeTime, assembly.closing.strokeTime];
  const over = (pick: (way: { readonly low: number; readonly high: number }) => number): number => {
    const times = ways.map(pick).toSorted((a, b) => b - a);
    // The longer way comes first, so that an odd stroke counts as the longer.
    return Array.from({ length: strokes }, (_, index) => times[index % 2] ?? 0).reduce((sum, time) => sum + time, 0);
  };
  return {
    time: site.moveMinutes * 60 + (line.place.accessTime?.nominal ?? 0) + assembly.figures.timePerValve,
    trigger: {
      low: over(({ low }) => low),
      nominal: over(({ low, high }) => (low + high) / 2),
      high: over(({ high }) => high),
    },
    vibration: drive.facts.vibration,
    sound: drive.facts.soundPressure,
  };
}

export interface Counted {
  readonly qty: number;
  readonly visit: Visit;
}

const END_NAMES = ['low', 'nominal', 'high'] as const;

function each(of: (end: keyof Ends) => number): Ends {
  const [low = 0, nominal = 0, high = 0] = END_NAMES.map(of);
  return { low, nominal, high };
}

export function strainOf(day: readonly Counted[], persons: number) {
  const add = (of: (visit: Visit) => number): number => day.reduce((sum, { qty, visit }) => sum + qty * of(visit), 0);
  const squares = (end: keyof Ends): number => add(({ vibration, trigger }) => vibration * vibration * trigger[end]);
  const shared = (end: keyof Ends, by: number): number => Math.sqrt(squares(end) / by / WORKING_DAY_S);
  const energy = (end: keyof Ends): number => add(({ sound, trigger }) => trigger[end] * 10 ** (sound / 10));
  return {
    time: add(({ time }) => time),
    trigger: each((end) => add(({ trigger }) => trigger[end])),
    alone: each((end) => shared(end, 1)),
    turns: each((end) => shared(end, persons)),
    points: (400 * squares('nominal')) / (25 * WORKING_DAY_S),
    noise: each((end) => Math.max(0, 10 * Math.log10(Math.max(1, energy(end) / WORKING_DAY_S)))),
  };
}
