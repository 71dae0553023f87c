/*
 * The quote: scope, kits crew by crew, lines, what was assumed, what is left out, price with its reasons, cautions, terms, acceptance.
 * Invariant: every line of the schedule is in the summary or among the unserved; every assumed value is listed.
 * Not here: working out the plan and the price (fleet, pricing).
 * Read next: paper-inputs.ts, assumptions.ts.
 */

import { formatCeiling, type UnitSystem } from '#lib/units/format-quantity.ts';
import { sentenceIn } from '#lib/units/say-figure.ts';
import { sourceIn } from '#lib/units/us-beside.ts';
import { type Assumption, gatherAssumptions } from './assumptions.ts';
import {
  countLines,
  gatherClasses,
  modelName,
  type PaperClass,
  partNumbersText,
  rangeText,
  valveWords,
} from './line-classes.ts';
import { gatherWarnings, type LineWarning, warningNumbers } from './line-warnings.ts';
import type { Block, Paper, TableRow } from './paper.ts';
import { paperHead, siteFacts } from './paper-head.ts';
import {
  type KitInput,
  type PaperContext,
  type PaperLine,
  type PriceInput,
  SHORT_OF_TIME_OR_STOCK,
  type UnservedLine,
} from './paper-inputs.ts';
import {
  BASIS_LEGEND,
  BASIS_MARKS,
  countText,
  dateText,
  hoursText,
  massText,
  moneyText,
  tagsText,
} from './print-values.ts';
import { GENERAL_CAUTIONS } from './safety-words.ts';

export interface QuoteInput {
  readonly context: PaperContext;
  readonly lines: readonly PaperLine[];
  readonly unserved: readonly UnservedLine[];
  readonly kits: readonly KitInput[];
  readonly price: PriceInput;
  /** One sentence: which preference the plan follows and what was proven. */
  readonly planSentence: string;
  readonly validUntil: string;
  readonly exclusions: readonly string[];
  readonly terms: readonly string[];
}

/** Tags set in one row of a table; a longer class goes on in the next row, so that a row never outgrows a page. */
const TAGS_A_ROW = 60;

export function quotePaper(input: QuoteInput): Paper {
  const { context } = input;
  const facts = [
    ...siteFacts(context),
    { label: 'Issued', value: dateText(context.issuedOn) },
    { label: 'Valid until', value: dateText(input.validUntil) },
  ];
  return {
    ...paperHead(context, { kind: 'quote', title: 'Quote', facts }),
    blocks: [
      ...scope(input),
      ...priceBlocks(input.price, context.system),
      ...kitBlocks(input),
      ...lineBlocks(input),
      ...unservedBlocks(input.unserved, context.system),
      ...assumptionBlocks(gatherAssumptions(input.lines, context.system)),
      ...closingBlocks(input),
    ],
  };
}

function scope(input: QuoteInput): readonly Block[] {
  const { context, lines, unserved } = input;
  const valves = lines.reduce((sum, line) => sum + line.line.qty, 0);
  const served = `This quote covers portable powered operators, with heads, adapters, extensions and restraints, for ${countText(valves, 'valve')} on ${countText(countLines(lines), 'line')} of your schedule.`;
  const not =
    unserved.length === 0
      ? 'Every valve of the schedule is served.'
      : `${leftOver(unserved)} Reasons and ways out are below.`;
  return [
    { kind: 'heading', level: 1, text: 'Scope' },
    { kind: 'text', tone: 'plain', text: `${served} ${not} ${input.planSentence}` },
    ...(context.site.facts.length > 0
      ? [
          {
            kind: 'text',
            tone: 'muted',
            text: sourceIn(`Site: ${context.site.facts.join(' · ')}.`, context.system),
          } as const,
        ]
      : []),
  ];
}

/** Valves that nothing fits, and valves left only for want of time or stock, told apart. */
function leftOver(unserved: readonly UnservedLine[]): string {
  const short = unserved.filter(({ because }) => because.some(({ id }) => id === SHORT_OF_TIME_OR_STOCK));
  const unfit = unserved.filter((line) => !short.includes(line));
  const count = (lines: readonly UnservedLine[]) =>
    `${countText(
      lines.reduce((sum, { qty }) => sum + qty, 0),
      'valve',
    )} on ${countText(lines.length, 'line')}`;
  return [
    ...(unfit.length > 0 ? [`No equipment fits ${count(unfit)} as the list stands.`] : []),
    ...(short.length > 0 ? [`The time and stock there are do not reach for ${count(short)}.`] : []),
  ].join(' ');
}

function priceBlocks(price: PriceInput, system: UnitSystem): readonly Block[] {
  const money = (minor: number) => moneyText(minor, price.currency);
  const rows: TableRow[] = price.lines.map((line) => ({
    cells: [line.label, String(line.quantity), line.taxCategory, money(line.amount_minor)],
    note: sourceIn(line.how, system),
  }));
  rows.push({ cells: ['Net total', '', '', money(price.net_minor)], tone: 'total' });
  for (const tax of price.taxes)
    rows.push({
      cells: [
        `${tax.label}, ${tax.rate_percent} % on ${money(tax.base_minor)}`,
        '',
        tax.category,
        money(tax.tax_minor),
      ],
      tone: 'muted',
    });
  rows.push({ cells: [`Total to pay, ${price.currency}`, '', '', money(price.total_minor)], tone: 'total' });
  if (price.deposit_minor !== undefined && price.deposit_minor > 0)
    rows.push({
      cells: ['Deposit due with the order, part of the total', '', '', money(price.deposit_minor)],
      tone: 'muted',
    });
  const notes: Block[] = price.notes.map((text) => ({ kind: 'text', tone: 'muted', text }));
  return [
    {
      kind: 'table',
      caption: { level: 1, text: `Price for ${countText(price.days, 'day')} of hire` },
      columns: [
        { label: 'Item and how its price came about', share: 62 },
        { label: 'Number', share: 10, align: 'right' },
        { label: 'Tax', share: 8, align: 'centre' },
        { label: price.currency, share: 20, align: 'right' },
      ],
      rows,
    },
    ...notes,
  ];
}

function kitBlocks(input: QuoteInput): readonly Block[] {
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

function lineBlocks(input: QuoteInput): readonly Block[] {
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
  readonly input: QuoteInput;
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

function unservedBlocks(unserved: readonly UnservedLine[], system: UnitSystem): readonly Block[] {
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

function assumptionBlocks(assumptions: readonly Assumption[]): readonly Block[] {
  if (assumptions.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: {
        level: 1,
        text: 'What was assumed',
        words:
          'The list did not say these things. The kits cover the ranges shown; measured values make the plan surer and often cheaper.',
      },
      columns: [
        { label: 'Value', share: 20 },
        { label: 'Taken as', share: 22 },
        { label: 'Lines', share: 24 },
        { label: 'If it is wrong', share: 34 },
      ],
      rows: assumptions.map((one) => ({
        cells: [`${one.what} (${one.basis})`, one.taken, tagsText(one.tags, 8), one.ifWrong],
      })),
      dense: true,
    },
  ];
}

function closingBlocks(input: QuoteInput): readonly Block[] {
  return [
    { kind: 'heading', level: 1, text: 'Not included' },
    { kind: 'list', marker: 'dot', items: input.exclusions },
    { kind: 'callout', tone: 'caution', title: 'Cautions', items: GENERAL_CAUTIONS },
    { kind: 'heading', level: 1, text: 'Terms' },
    { kind: 'list', marker: 'number', items: input.terms },
    {
      kind: 'together',
      blocks: [
        { kind: 'heading', level: 1, text: 'Acceptance' },
        {
          kind: 'text',
          tone: 'plain',
          text: `We order the hire described in ${input.context.number}${input.context.revision === undefined ? '' : `, revision ${input.context.revision}`}, with its assumptions, cautions and terms.`,
        },
        {
          kind: 'signatures',
          parties: [
            {
              title: input.context.customer.name,
              lines: ['Name and position', 'Signature and date', 'Purchase order'],
            },
            { title: input.context.house.name, lines: ['Name and position', 'Signature and date'] },
          ],
        },
      ],
    },
  ];
}
