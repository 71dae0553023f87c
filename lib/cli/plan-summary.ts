/*
 * What `plan` says on the terminal: what became of the rows, the plan, the kits, the price, and what is not served and why.
 * Invariant: rows refused or set aside are told before the plan; lines that share their reasons are told together.
 * Not here: the JSON answer (answer.ts).
 * Read next: plan-command.ts.
 */
import { withoutTag } from '#lib/documents/words/line-warnings.ts';
import { countText, massText, tagsText } from '#lib/documents/words/print-values.ts';
import type { Taken } from '#lib/intake/take-rows.ts';
import { decimalText } from '#lib/money/currency.ts';
import { crewDaysOf } from '#lib/services/plans/crew-days-of.ts';
import { crewOffset, lackingSentences } from '#lib/services/plans/crew-numbers.ts';
import { type PapersInput, planSentence } from '#lib/services/quotes/papers-of.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import { sentenceIn } from '#lib/units/say-figure.ts';
import { tellCrewDays } from './crew-days-answer.ts';

/** Rows, reasons and tags told on the terminal; all of them are in the JSON answer. */
const TOLD = 12;

export function planSummary({ taken, papers }: { readonly taken: Taken; readonly papers: PapersInput }): string {
  const { price } = papers;
  return [
    ...tellRows({ ...taken, system: papers.system ?? 'si' }),
    planSentence(papers),
    ...tellKits(papers),
    ...lackingSentences(papers),
    ...tellCrewDays(crewDaysOf(papers), papers.system ?? 'si'),
    `Price with tax: ${decimalText(price.gross_minor, price.currency)} ${price.currency} for ${countText(price.days, 'day')}`,
    ...tellUnserved(papers),
    'Vibration, noise and lifts are screening figures from declared values: measured values and the law of the place decide.',
    'Figures are estimates until measured: start low, raise the limiter in steps, never past the ceiling.',
  ].join('\n');
}

function tellRows({
  counts,
  setAside,
  problems,
  system,
}: Pick<Taken, 'counts' | 'setAside' | 'problems'> & { readonly system: UnitSystem }) {
  const { rows, lines, refused, blank } = counts;
  const told = (severity: 'refused' | 'doubt') =>
    problems
      .filter((problem) => problem.severity === severity)
      .map((problem) => `  Row ${problem.row}, ${problem.column}: ${sentenceIn(problem, system)} ${problem.remedy}`);
  return [
    `${rows} rows: ${lines} lines, ${counts.setAside} set aside, ${refused} refused, ${blank} blank.`,
    ...first(told('refused')),
    ...first(setAside.map(({ row, tag, reason }) => `  Row ${row}, ${tag}: set aside. ${reason}`)),
    ...first(told('doubt')),
  ];
}

function first(told: readonly string[]): readonly string[] {
  const more = told.length - TOLD;
  return more > 0 ? [...told.slice(0, TOLD), `  and ${more} more, all in the JSON answer.`] : told;
}

function tellKits({ outcome, models, system = 'si' }: PapersInput): readonly string[] {
  const names = new Map(models.map(({ number, name }) => [number, name]));
  return outcome.kits.flatMap((kit) => {
    const crew = `Crew ${kit.crew + crewOffset(outcome)}`;
    if (kit.items.length === 0) return [`${crew}: not needed for this plan`];
    return [
      `${crew}: ${(kit.time_s / 3600).toFixed(1)} h, ${system === 'si' ? `${kit.mass_kg.toFixed(0)} kg` : massText(kit.mass_kg, system)}`,
      ...kit.items.map(({ item, count }) => `  ${count} × ${item} ${names.get(item) ?? ''}`),
    ];
  });
}

function tellUnserved({ worked, system = 'si' }: PapersInput): readonly string[] {
  if (worked.unserved.length === 0) return [];
  const groups = new Map<string, string[]>();
  for (const { tag, classId } of worked.unserved) groups.set(classId, [...(groups.get(classId) ?? []), tag]);
  const told = [...groups].map(([classId, tags]) => {
    const one = worked.unserved.find((line) => line.classId === classId);
    const because = (one?.because ?? []).map((told) => `    ${withoutTag(sentenceIn(told, system), tags)}`);
    const repairs = (one?.repairs ?? []).map(
      (told) => `    It would work so: ${withoutTag(sentenceIn(told, system), tags)}`,
    );
    return [`  ${tagsText(tags, TOLD)}:`, ...because, ...repairs].join('\n');
  });
  return [`Nothing fits ${worked.unserved.length} lines:`, ...first(told)];
}
