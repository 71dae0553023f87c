/*
 * What a torque ladder has to show of a duty and an assembly, as marks with words, before any geometry.
 * Invariant: every number that is drawn is also said in a label.
 * Not here: positions and shapes (torque-ladder.ts).
 * Read next: torque-ladder.ts.
 */
import type { Direction, DirectionDuty, Duty } from '#lib/duty/duty.ts';
import type { Assembly, DirectionSettings, LimiterSetting } from '#lib/equipment/assembly.ts';
import type { Model } from '#lib/equipment/model.ts';
import { formatCeiling, formatQuantity, formatRange, type UnitSystem } from '#lib/units/format-quantity.ts';
import type { Known } from '#lib/units/known-value.ts';
import type { PaintRole } from './drawing.ts';
import { chainNumbers } from './part-numbers.ts';

export interface Mark {
  readonly torque: number;
  readonly words: string;
  readonly role: PaintRole;
  readonly bold: boolean;
}

export interface DirectionMarks {
  readonly direction: Direction;
  readonly running: Known<'N·m'>;
  readonly starting: Known<'N·m'>;
  readonly never: number;
  readonly window: { readonly start: number; readonly ceiling: number } | null;
  readonly bounds: readonly Mark[];
  readonly labels: readonly Mark[];
}

export interface LadderSubject {
  readonly duty: Duty;
  /** The duty before a value was changed: its rungs stand dashed behind those that moved. */
  readonly before?: Duty;
  readonly assembly?: Assembly;
  readonly models?: readonly Model[];
  readonly system: UnitSystem;
  /** Its lettering in another language; as it is where it is absent. */
  readonly tell?: (words: string) => string;
}

/** A figure stays with its unit, in whatever language. */
export function lettering({ tell }: LadderSubject): (words: string) => string {
  if (tell === undefined) return (words) => words;
  return (words) => tell(words.replaceAll('\u00a0', ' ')).replace(/(?<=\d) (?=N·m|lbf)/g, '\u00a0');
}

/** Bounds above the lowest that a panel names one by one; the rest are counted. */
const OTHER_BOUNDS_NAMED = 4;

export function directionMarks(subject: LadderSubject, direction: Direction): DirectionMarks {
  const duty = subject.duty[direction];
  const settings = subject.assembly?.[direction];
  const window = settings === undefined ? idealWindow(duty) : settingsWindow(settings);
  const never = Number(duty.neverExceed.torque.low);
  const bounds = otherBounds(subject, direction);
  const print = (value: number) => torqueText(value, subject.system);
  const labels: Mark[] = [
    {
      torque: Number(duty.running.nominal),
      words: `Run\u00a0${rangeText(duty.running, subject.system)}`,
      role: 'needed',
      bold: false,
    },
    {
      torque: Number(duty.starting.nominal),
      words: `Start\u00a0${rangeText(duty.starting, subject.system)}`,
      role: 'needed',
      bold: false,
    },
    {
      torque: never,
      words: `Never above ${formatCeiling(never, subject.system)} (${duty.neverExceed.kind}, ${duty.neverExceed.torque.basis})`,
      role: 'never',
      bold: true,
    },
    ...bounds,
  ];
  if (window === null)
    labels.push({
      torque: (Number(duty.starting.high) + never) / 2,
      words: 'No limiter setting satisfies both ends',
      role: 'warning',
      bold: true,
    });
  else if (window.ceiling < window.start)
    labels.push({
      torque: window.ceiling,
      words: `Ceiling ${formatCeiling(window.ceiling, subject.system)} is below what may be needed: may not move`,
      role: 'warning',
      bold: true,
    });
  else {
    labels.push({ torque: window.start, words: `Limiter from ${print(window.start)}`, role: 'window', bold: false });
    labels.push({
      torque: window.ceiling,
      words: `Ceiling ${formatCeiling(window.ceiling, subject.system)}`,
      role: 'window',
      bold: true,
    });
  }
  return { direction, running: duty.running, starting: duty.starting, never, window, bounds, labels };
}

/** What each part of the chain can carry, at its own output (the valve's side). */
export function chainMarks(subject: LadderSubject): readonly Mark[] {
  const { assembly, models, system } = subject;
  if (assembly === undefined) return [];
  const print = (value: number) => torqueText(value, system);
  const { sureAtValve, stallAtValve, highestAtValve } = assembly.figures;
  const marks: Mark[] = [
    { torque: Number(sureAtValve), words: `Drive surely gives ${print(sureAtValve)}`, role: 'capacity', bold: true },
    {
      torque: Number(stallAtValve),
      words: `Drive stalls at up to ${print(stallAtValve)}`,
      role: 'capacity',
      bold: true,
    },
  ];
  if (highestAtValve < stallAtValve)
    marks.push({
      torque: Number(highestAtValve),
      words: `Limiter holds it to ${print(highestAtValve)}`,
      role: 'window',
      bold: false,
    });
  const driven = chainNumbers(assembly).filter((number) => !assembly.parts.options.includes(number));
  for (const number of driven) {
    const model = models?.find((candidate) => candidate.number === number);
    if (model === undefined || !('torqueRating' in model.facts)) continue;
    marks.push({
      torque: Number(model.facts.torqueRating),
      words: `${capital(model.role)} ${number} carries ${print(model.facts.torqueRating)}`,
      role: 'text',
      bold: false,
    });
  }
  return marks;
}

function otherBounds(subject: LadderSubject, direction: Direction): readonly Mark[] {
  const lowest = subject.duty[direction].neverExceed;
  const others = subject.duty.bounds
    .filter(
      (bound) =>
        bound.directions.includes(direction) && !(bound.kind === lowest.kind && bound.torque.low === lowest.torque.low),
    )
    .toSorted((a, b) => a.torque.low - b.torque.low || a.kind.localeCompare(b.kind));
  const named = others.slice(0, OTHER_BOUNDS_NAMED).map(
    (bound): Mark => ({
      torque: Number(bound.torque.low),
      words: `${capital(bound.kind)} ${torqueText(bound.torque.low, subject.system)}`,
      role: 'muted',
      bold: false,
    }),
  );
  const rest = others[OTHER_BOUNDS_NAMED];
  if (rest === undefined) return named;
  return [
    ...named,
    {
      torque: Number(rest.torque.low),
      words: `and ${others.length - OTHER_BOUNDS_NAMED} higher`,
      role: 'muted',
      bold: false,
    },
  ];
}

function idealWindow(duty: DirectionDuty): DirectionMarks['window'] {
  return duty.limiter === null ? null : { start: Number(duty.limiter.low), ceiling: Number(duty.limiter.high) };
}

function settingsWindow(settings: DirectionSettings): DirectionMarks['window'] {
  const set = [settings.unseat, settings.run, settings.seat].filter(
    (setting): setting is LimiterSetting => setting !== null,
  );
  if (set.length === 0) return null;
  return {
    start: Math.min(...set.map((setting) => setting.atValve.start)),
    ceiling: Math.max(...set.map((setting) => setting.atValve.ceiling)),
  };
}

function torqueText(value: number, system: UnitSystem): string {
  return formatQuantity({ value, unit: 'N·m', system }).replace(/ (?=\S+$)/, '\u00a0');
}

function rangeText(value: Known<'N·m'>, system: UnitSystem): string {
  const likely = torqueText(value.nominal, system).replace(/\s\S+$/, '');
  return value.low === value.high
    ? torqueText(value.nominal, system)
    : `${formatRange(value, system).replace(/ (?=\S+$)/, '\u00a0')}, likely\u00a0${likely}`;
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
