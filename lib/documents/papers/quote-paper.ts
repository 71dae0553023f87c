/*
 * The quote: what changed since the last revision, options side by side, scope, price, kits, lines, what was assumed, what is left out, cautions, terms, acceptance.
 * Invariant: every line of the schedule is in the summary or among the unserved; every assumed value is listed.
 * Not here: working out the plan and the price (fleet, pricing).
 * Read next: quote-option-input.ts, quote-price-blocks.ts, quote-line-blocks.ts.
 */

import { type Assumption, gatherAssumptions } from '#lib/documents/words/assumptions.ts';
import { countText, dateText, tagsText } from '#lib/documents/words/print-values.ts';
import type { QuoteChanges } from '#lib/documents/words/quote-changes.ts';
import { GENERAL_CAUTIONS } from '#lib/documents/words/safety-words.ts';
import { sourceIn } from '#lib/units/us-beside.ts';
import { countLines } from './line-classes.ts';
import type { Block, Paper } from './paper.ts';
import { paperHead, siteFacts } from './paper-head.ts';
import { SHORT_OF_TIME_OR_STOCK, type UnservedLine } from './paper-inputs.ts';
import { kitBlocks, lineBlocks, unservedBlocks } from './quote-line-blocks.ts';
import { optionTitle, type QuoteOptionInput } from './quote-option-input.ts';
import { comparison, priceBlocks } from './quote-price-blocks.ts';

export interface QuoteInput extends QuoteOptionInput {
  readonly validUntil: string;
  /** Further options beside the first; the customer orders one. */
  readonly others?: readonly QuoteOptionInput[];
  /** What is different from the revision before; absent in a first quote. */
  readonly changes?: QuoteChanges;
  readonly exclusions: readonly string[];
  readonly terms: readonly string[];
}

export function quotePaper(input: QuoteInput): Paper {
  const { context, others = [] } = input;
  const options = [input, ...others];
  const facts = [
    ...siteFacts(context).filter(({ label }) => others.length === 0 || !OF_AN_OPTION.includes(label)),
    { label: 'Issued', value: dateText(context.issuedOn) },
    { label: 'Valid until', value: dateText(input.validUntil) },
  ];
  return {
    ...paperHead(context, { kind: 'quote', title: 'Quote', facts }),
    blocks: [
      ...(input.changes === undefined ? [] : changeBlocks(input.changes)),
      ...(others.length === 0 ? oneOption(input) : severalOptions(options)),
      ...assumptionBlocks(gatherAssumptions(input.lines, context.system)),
      ...closingBlocks({ input, options }),
    ],
  };
}

/** What each option says for itself where there are several. */
const OF_AN_OPTION: readonly string[] = ['Hire window', 'Crews'];

function oneOption(input: QuoteOptionInput): readonly Block[] {
  const { context } = input;
  return [
    { kind: 'heading', level: 1, text: 'Scope' },
    ...scope(input),
    ...priceBlocks({ price: input.price, system: context.system, payment: input.payment ?? [] }),
    ...kitBlocks(input),
    ...lineBlocks(input),
    ...unservedBlocks(input.unserved, context.system),
  ];
}

/** What they have in common and where they differ first, then each with its price, kits and lines. */
function severalOptions(options: readonly QuoteOptionInput[]): readonly Block[] {
  return [
    { kind: 'heading', level: 1, text: 'Options' },
    {
      kind: 'text',
      tone: 'plain',
      text: `This quote offers ${options.length} options for the same schedule; one of them is ordered. Each has its own price, kits and lines below.`,
    },
    comparison(options),
    ...options.flatMap((option, index): readonly Block[] => [
      { kind: 'page break' },
      { kind: 'heading', level: 1, text: optionTitle(option, index) },
      ...oneOption(option),
    ]),
  ];
}

function scope(input: QuoteOptionInput): readonly Block[] {
  const { context, lines, unserved } = input;
  const valves = lines.reduce((sum, line) => sum + line.line.qty, 0);
  const served = `This quote covers portable powered operators, with heads, adapters, extensions and restraints, for ${countText(valves, 'valve')} on ${countText(countLines(lines), 'line')} of your schedule.`;
  const not =
    unserved.length === 0
      ? 'Every valve of the schedule is served.'
      : `${leftOver(unserved)} Reasons and ways out are below.`;
  return [
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

/** Numbered like the changes of a drawing: what was, what is now. */
function changeBlocks({ since, groups }: QuoteChanges): readonly Block[] {
  return [
    { kind: 'heading', level: 1, text: `Changed since ${since}` },
    ...groups.flatMap((group): readonly Block[] => [
      { kind: 'text', tone: 'strong', text: group.about },
      { kind: 'list', marker: 'dot', items: group.sentences },
    ]),
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

function closingBlocks({
  input,
  options,
}: {
  readonly input: QuoteInput;
  readonly options: readonly QuoteOptionInput[];
}): readonly Block[] {
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
          text: `We order ${options.length === 1 ? 'the hire' : 'the one option marked here, as it is'} described in ${input.context.number}${input.context.revision === undefined ? '' : `, revision ${input.context.revision}`}, with its assumptions, cautions and terms.`,
        },
        ...(options.length === 1 ? [] : [{ kind: 'list', marker: 'box', items: options.map(optionTitle) } as const]),
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
