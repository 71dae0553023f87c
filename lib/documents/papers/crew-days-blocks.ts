/*
 * The crews' days on the site sheet: for each crew a table of its days with what they ask of people, what is to be said of them, and the cautions once.
 * Invariant: every day of every crew stands there; a passed limit stands in the table and in a callout.
 * Not here: words and figures (../words/crew-day-words.ts).
 * Read next: site-paper.ts.
 */

import { CREW_DAY_CAUTIONS, crewDayFindings, crewDayRow } from '#lib/documents/words/crew-day-words.ts';
import { formatQuantity, type UnitSystem } from '#lib/units/format-quantity.ts';
import { sentenceIn } from '#lib/units/say-figure.ts';
import type { Block, TableRow } from './paper.ts';
import type { CrewDaysInput, PaperContext } from './paper-inputs.ts';

export function crewDaysBlocks(crews: readonly CrewDaysInput[], { system }: PaperContext): readonly Block[] {
  if (crews.length === 0) return [];
  const rows = crews.flatMap(({ crew, days, heaviestCase }): readonly TableRow[] => [
    { cells: [`Crew ${crew}`, caseWords(heaviestCase, system)], tone: 'group' },
    ...days.map((day): TableRow => {
      const row = crewDayRow(day, system);
      const marks = row.marks.length === 0 ? {} : { note: `Passes: ${row.marks.join(', ')}.` };
      const { valves, hours, trigger, vibration, points, turns, noise, lift } = row;
      return { cells: [row.day, valves, hours, trigger, vibration, points, turns, noise, lift], ...marks };
    }),
  ]);
  const told = crews.flatMap(({ days }) => crewDayFindings(days));
  const said = (severities: readonly string[]): readonly string[] =>
    told.filter(({ severity }) => severities.includes(severity)).map((finding) => sentenceIn(finding, system));
  const [grave, warnings, notes] = [said(['refusal']), said(['warning']), said(['note'])];
  return [
    {
      kind: 'table',
      caption: { level: 1, text: 'The crews’ days', words: 'What each day asks of people; screening figures.' },
      columns: [
        { label: 'Day', share: 6, align: 'right' },
        { label: 'Valves', share: 8, align: 'right' },
        { label: 'Work', share: 12, align: 'right' },
        { label: 'At the drive', share: 12, align: 'right' },
        { label: 'A(8) m/s²', share: 14, align: 'right' },
        { label: 'Points', share: 8, align: 'right' },
        { label: 'In turns', share: 9, align: 'right' },
        { label: 'L_EX,8h dB(A)', share: 12, align: 'right' },
        { label: 'Heaviest piece', share: 19, align: 'right' },
      ],
      rows,
      dense: true,
    },
    ...callout('refusal', 'Do not work these days as they stand', grave),
    ...callout('caution', 'For people’s sake', warnings),
    ...callout('note', 'Good to know of these days', notes),
    { kind: 'list', marker: 'dot', items: CREW_DAY_CAUTIONS },
  ];
}

function caseWords(heaviest: CrewDaysInput['heaviestCase'], system: UnitSystem): string {
  if (heaviest === null) return '';
  const mass = formatQuantity({ value: heaviest.mass_kg, unit: 'kg', system });
  return `Heaviest case in and out of the vehicle: ${mass}, ${heaviest.lift}`;
}

function callout(tone: 'refusal' | 'caution' | 'note', title: string, items: readonly string[]): readonly Block[] {
  return items.length === 0 ? [] : [{ kind: 'callout', tone, title, items }];
}
