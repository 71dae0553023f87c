/*
 * The site sheet: method and cautions once, the order of work and the crews' days, then for every class of equal valves how to set up, what to set and what to write down.
 * Invariant: a limiter setting is never printed without its ceiling; an unknown direction is never printed as clockwise.
 * Not here: pictures (../drawings/drive-line.ts, ../drawings/torque-ladder.ts) and settings themselves (kits).
 * Read next: site-class.ts.
 */

import { countText, dateText } from '#lib/documents/words/print-values.ts';
import { AT_THE_VALVE, GENERAL_CAUTIONS, METHOD_STEPS } from '#lib/documents/words/safety-words.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import { sourceIn } from '#lib/units/us-beside.ts';
import { crewDaysBlocks } from './crew-days-blocks.ts';
import { gatherClasses, inWorkingOrder, type PaperClass, valveWords } from './line-classes.ts';
import type { Block, Paper, TableRow } from './paper.ts';
import { paperHead, siteFacts } from './paper-head.ts';
import type { CrewDaysInput, PaperContext, PaperLine } from './paper-inputs.ts';
import { classBlocks, classNotes } from './site-class.ts';

export interface SiteSheetInput {
  readonly context: PaperContext;
  readonly lines: readonly PaperLine[];
  /** What each crew's days ask of its people; empty where no days are planned. */
  readonly crewDays: readonly CrewDaysInput[];
}

export function sitePaper(input: SiteSheetInput): Paper {
  const { context } = input;
  const lines = input.lines.filter((line) => line.assembly !== null);
  const classes = gatherClasses(lines);
  const shared = notesOfAll(classes, context.system);
  const valves = classes.reduce((sum, one) => sum + one.valves, 0);
  const facts = [
    ...siteFacts(context),
    {
      label: 'Work',
      value: `${countText(valves, 'valve')} in ${classes.length} ${classes.length === 1 ? 'class' : 'classes'} of equal valves`,
    },
    { label: 'Issued', value: dateText(context.issuedOn) },
  ];
  return {
    ...paperHead(context, {
      kind: 'site sheet',
      title: 'Site sheet',
      facts,
      foot: 'Start low, raise the limiter in steps, never past the ceiling. Figures are estimates until measured.',
    }),
    blocks: [
      { kind: 'callout', tone: 'caution', title: 'Before anything else', items: GENERAL_CAUTIONS },
      { kind: 'heading', level: 1, text: 'At every valve' },
      { kind: 'list', marker: 'number', items: METHOD_STEPS },
      { kind: 'callout', tone: 'caution', title: 'While the drive turns', items: AT_THE_VALVE },
      ...(context.site.facts.length > 0
        ? [
            {
              kind: 'callout',
              tone: 'note',
              title: 'This place',
              items: context.site.facts.map((text) => sourceIn(text, context.system)),
            } as const,
          ]
        : []),
      ...(shared.size > 0
        ? [{ kind: 'callout', tone: 'note', title: 'Good to know of all these valves', items: [...shared] } as const]
        : []),
      ...(shared.size > 0 ? [] : [{ kind: 'page break' } as const]),
      ...workingOrder({ lines, classes }),
      ...crewDaysBlocks(input.crewDays, context),
      ...classes.flatMap((one) => classBlocks({ one, of: classes.length, context, told: shared })),
    ],
  };
}

/** Notes that every class shares; none where there is one class, which tells its own. */
function notesOfAll(classes: readonly PaperClass[], system: UnitSystem): ReadonlySet<string> {
  const [first, ...others] = classes.filter(({ assembly }) => assembly !== null).map((one) => classNotes(one, system));
  if (first === undefined || others.length === 0) return new Set();
  return new Set(first.filter((sentence) => others.every((notes) => notes.includes(sentence))));
}

function workingOrder(asked: {
  readonly lines: readonly PaperLine[];
  readonly classes: readonly PaperClass[];
}): readonly Block[] {
  const numberOf = new Map(asked.classes.flatMap((one) => one.lines.map((line) => [line, one.number] as const)));
  const rows: TableRow[] = [];
  let crew: number | undefined | null = null;
  inWorkingOrder(asked.lines).forEach((line, index) => {
    if (line.crew !== crew)
      rows.push({ cells: [line.crew === undefined ? 'No crew yet' : `Crew ${line.crew}`], tone: 'group' });
    crew = line.crew;
    rows.push({
      cells: [
        String(index + 1),
        line.line.tag,
        line.line.place.location ?? '—',
        valveWords(line.line),
        String(line.line.qty),
        String(numberOf.get(line) ?? '—'),
        '☐',
      ],
    });
  });
  return [
    {
      kind: 'table',
      caption: { level: 1, text: 'Order of work' },
      columns: [
        { label: '', share: 6, align: 'right' },
        { label: 'Tag', share: 18 },
        { label: 'Where', share: 28 },
        { label: 'Valve', share: 26 },
        { label: 'Number', share: 8, align: 'right' },
        { label: 'Class', share: 7, align: 'centre' },
        { label: 'Done', share: 7, align: 'centre' },
      ],
      rows,
      dense: true,
    },
  ];
}
