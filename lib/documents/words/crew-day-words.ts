/*
 * A crew's planned days in words: a row of figures a day, marks where a value is passed, and what is to be said, each thing once.
 * Invariant: a figure that passes a limit is never rounded below it; a mark is a word, never a colour alone.
 * Not here: working the figures out (planning) and laying them out (../papers/site-paper.ts, the Kits screen).
 * Read next: ../../equipment/crew-day.ts.
 */
import type { CrewDay } from '#lib/equipment/crew-day.ts';
import type { Finding } from '#lib/kernel/finding.ts';
import { formatQuantity, type UnitSystem } from '#lib/units/format-quantity.ts';
import { hoursText, listText } from './print-values.ts';

export interface CrewDayRow {
  readonly day: string;
  readonly valves: string;
  readonly hours: string;
  readonly trigger: string;
  /** `3.9, up to 4.4` for one person who holds the drive all day. */
  readonly vibration: string;
  readonly points: string;
  /** `2.8` each where the persons of the crew take turns; `—` where one works alone. */
  readonly turns: string;
  readonly noise: string;
  readonly lift: string;
  /** Values that the day passes, in words; empty where it passes none. */
  readonly marks: readonly string[];
}

/** What the figures are, wherever they stand. */
export const CREW_DAY_CAUTIONS: readonly string[] = [
  'Screening figures from the makers’ declared values, which often understate what the hands and ears get: measured values and the law of the place decide, and a competent person assesses the risk.',
  'Vibration is for the person who holds the drive through all powered strokes of the day; “in turns” is for each where all persons of the crew hold it equally long. Noise is for everyone who stays near the drive, without hearing protection. No other vibration or noise of that day is counted.',
  'Values in the European directives 2002/44/EC and 2003/10/EC: vibration A(8) action 2.5, limit 5 m/s² (100 and 400 points); noise L_EX,8h action 80 and 85, limit 87 dB(A).',
];

const MARKS: Readonly<Record<string, string>> = {
  'crew-day-vibration-limit': 'vibration limit',
  'crew-day-noise-limit': 'noise limit',
  'crew-day-vibration-action': 'vibration action value',
  'crew-day-noise-upper': 'upper noise action value',
  'crew-day-noise-lower': 'lower noise action value',
  'crew-day-over-shift': 'longer than the shift',
};

export function crewDayRow(day: CrewDay, system: UnitSystem): CrewDayRow {
  const { exposure, points } = day.alone;
  const told = new Set(day.findings.map(({ id }) => id));
  return {
    day: String(day.day),
    valves: String(day.valves),
    hours: hoursText(day.time / 3600),
    trigger: hoursText(day.trigger.nominal / 3600),
    vibration: upTo(oneUp(exposure.nominal), oneUp(exposure.high)),
    points: String(Math.ceil(points - 1e-9)),
    turns: day.turns === null ? '—' : oneUp(day.turns.exposure.nominal),
    noise: oneUp(day.noise.nominal),
    lift: `${formatQuantity({ value: day.lifts.heaviest, unit: 'kg', system })} ${day.lifts.number}`,
    marks: Object.entries(MARKS).flatMap(([id, mark]) => (told.has(id) ? [mark] : [])),
  };
}

function upTo(likely: string, most: string): string {
  return likely === most ? likely : `${likely}, up to ${most}`;
}

/** To one decimal, upwards. */
function oneUp(value: number): string {
  return (Math.ceil(value * 10 - 1e-9) / 10).toFixed(1);
}

const GRAVITY = { refusal: 0, warning: 1, note: 2 } as const;

/** Everything to be said of a crew's days, the gravest first; what holds for several days is said of the worst and names the others. */
export function crewDayFindings(days: readonly CrewDay[]): readonly Finding[] {
  const ids = [...new Set(days.flatMap(({ findings }) => findings.map(({ id }) => id)))];
  return ids
    .flatMap((id) => {
      const having = days.flatMap((day) => {
        const finding = day.findings.find((one) => one.id === id);
        return finding === undefined ? [] : [{ day, finding }];
      });
      const [worst, ...others] = having.toSorted((a, b) => weight(b) - weight(a));
      return worst === undefined ? [] : [withDays(worst.finding, others.map(({ day }) => day.day).toSorted(rising))];
    })
    .toSorted((a, b) => GRAVITY[a.severity] - GRAVITY[b.severity]);
}

const rising = (a: number, b: number): number => a - b;

function weight({ day, finding }: { readonly day: CrewDay; readonly finding: Finding }): number {
  const graver = (2 - GRAVITY[finding.severity]) * 1e6;
  if (finding.id.includes('noise')) return graver + day.noise.nominal;
  if (finding.id.includes('lift')) return graver + day.lifts.heaviest;
  return graver + (finding.id.includes('shift') ? day.time : day.alone.exposure.high);
}

function withDays(finding: Finding, others: readonly number[]): Finding {
  if (others.length === 0) return finding;
  const more = ` Likewise on ${others.length === 1 ? 'day' : 'days'} ${listText(others.map(String))}.`;
  const inUs = finding.inUs === undefined ? {} : { inUs: `${finding.inUs}${more}` };
  return { ...finding, sentence: `${finding.sentence}${more}`, ...inUs };
}
