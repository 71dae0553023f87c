/*
 * Blocks of a quote on one option: kits crew by crew, lines and what serves them, lines that are not served.
 * Invariant: every line of the schedule is in the summary or among the unserved.
 * Not here: price (quote-price-blocks.ts).
 * Read next: quote-paper.ts.
 */

import { gatherWarnings, type LineWarning, warningNumbers } from '#lib/documents/words/line-warnings.ts';
import {
  BASIS_LEGEND,
  BASIS_MARKS,
  countText,
  hoursText,
  massText,
  tagsText,
} from '#lib/documents/words/print-values.ts';
import { formatCeiling, type UnitSystem } from '#lib/units/format-quantity.ts';
import { sentenceIn } from '#lib/units/say-figure.ts';
import { gatherClasses, modelName, type PaperClass, partNumbersText, rangeText, valveWords } from './line-classes.ts';
import type { Block, TableRow } from './paper.ts';
import type { UnservedLine } from './paper-inputs.ts';
import type { QuoteOptionInput } from './quote-option-input.ts';

/** Tags set in one row of a table; a longer class goes on in the next row, so that a row never outgrows a page. */
const TAGS_A_ROW = 60;

export function kitBlocks(input: QuoteOptionInput): readonly Block[] {
  const { kits, context } = input;
  const rows = kits.flatMap((kit): TableRow[] => [
    {
      cells: [
        kit.items.length === 0
          ? `Crew ${kit.crew}: not needed for this plan`
          : `Crew ${kit.crew}: ${countText(kit.valves, 'valve')}, ${hoursText(kit.hours)}, ${massText(kit.mass_kg, context.system)}`,
      ],
      tone: 'group',
    },
    ...kit.items.map((item) => ({ cells: [String(item.count), item.number, modelName(context.models, item.number)] })),
  ]);
  return [
    {
      kind: 'table',
      caption: { level: 1, text: 'Kits, crew by crew' },
      columns: [
        { label: 'Count', share: 10, align: 'right' },
        { label: 'Number', share: 16 },
        { label: 'Equipment', share: 74 },
      ],
      rows,
    },
  ];
}

export function lineBlocks(input: QuoteOptionInput): readonly Block[] {
  const classes = gatherClasses(input.lines);
  const warnings = gatherWarnings(classes, input.context.system);
  return [
    {
      kind: 'table',
      caption: {
        level: 1,
        text: 'Lines and what serves them',
        words: `Equal valves stand together. Torques are at the wheel or nut, the worse direction. ▲ numbers a warning told below. ${BASIS_LEGEND}`,
      },
      columns: [
        { label: 'Valves', share: 23 },
        { label: 'Number', share: 8, align: 'right' },
        { label: 'To start', share: 20, align: 'right' },
        { label: 'Never above', share: 15, align: 'right' },
        { label: 'Crew', share: 7, align: 'centre' },
        { label: 'Equipment', share: 27 },
      ],
      rows: classes.flatMap((one) => classRows({ one, input, warnings })),
      dense: true,
    },
    {
      kind: 'text',
      tone: 'muted',
      text: 'Settings, turns and times of each line are on the site sheet; the working is on the calculation sheet.',
    },
    ...warningBlocks(warnings),
  ];
}

function warningBlocks(warnings: readonly LineWarning[]): readonly Block[] {
  if (warnings.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: { level: 1, text: 'Warnings about lines' },
      columns: [
        { label: '▲', share: 6, align: 'right' },
        { label: 'Warning', share: 64 },
        { label: 'Lines', share: 30 },
      ],
      rows: warnings.map(({ number, sentence, tags }) => ({ cells: [String(number), sentence, tagsText(tags, 12)] })),
      dense: true,
    },
  ];
}

interface ClassRowsInput {
  readonly one: PaperClass;
  readonly input: QuoteOptionInput;
  readonly warnings: readonly LineWarning[];
}

function classRows({ one, input, warnings }: ClassRowsInput): readonly TableRow[] {
  const { system } = input.context;
  const worse = one.duty.opening.starting.high >= one.duty.closing.starting.high ? one.duty.opening : one.duty.closing;
  const lowest =
    one.duty.opening.neverExceed.torque.low <= one.duty.closing.neverExceed.torque.low
      ? one.duty.opening.neverExceed
      : one.duty.closing.neverExceed;
  const start = `${rangeText(worse.starting, system)} (${BASIS_MARKS[worse.starting.basis]})`;
  const never = `${formatCeiling(lowest.torque.low, system)} (${BASIS_MARKS[lowest.torque.basis]})`;
  const crews = one.crews.length === 0 ? '—' : one.crews.join(', ');
  const marks = warningNumbers(one, { warnings, system });
  const chunks = Array.from({ length: Math.ceil(one.tags.length / TAGS_A_ROW) }, (_, index) =>
    one.tags.slice(index * TAGS_A_ROW, (index + 1) * TAGS_A_ROW),
  );
  return chunks.map((tags, index): TableRow => {
    const note = index === 0 && marks.length > 0 ? `${tags.join(', ')} — ▲ ${marks.join(', ')}` : tags.join(', ');
    if (index > 0) return { cells: ['continued'], tone: 'muted', note };
    return {
      cells: [
        valveWords(one.line),
        String(one.valves),
        start,
        never,
        crews,
        one.assembly === null ? 'none' : partNumbersText(one.assembly),
      ],
      note,
    };
  });
}

export function unservedBlocks(unserved: readonly UnservedLine[], system: UnitSystem): readonly Block[] {
  if (unserved.length === 0) return [];
  const groups = new Map<string, { tags: string[]; line: UnservedLine }>();
  for (const line of unserved) {
    const key = JSON.stringify([line.because.map((finding) => finding.sentence), line.repairs]);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { tags: [line.tag], line });
    else group.tags.push(line.tag);
  }
  const rows = [...groups.values()].map(
    ({ tags, line }): TableRow => ({
      cells: [
        tagsText(tags, 12),
        line.because.map((finding) => sentenceIn(finding, system)).join(' '),
        line.repairs.length === 0
          ? 'Ask the Desk.'
          : line.repairs
              .map((repair) => `${sentenceIn(repair, system)}${repair.cost === undefined ? '' : ` (${repair.cost})`}`)
              .join(' '),
      ],
    }),
  );
  return [
    {
      kind: 'table',
      caption: { level: 1, text: 'Lines that are not served' },
      columns: [
        { label: 'Lines', share: 18 },
        { label: 'Why', share: 46 },
        { label: 'What would change it', share: 36 },
      ],
      rows,
    },
  ];
}
