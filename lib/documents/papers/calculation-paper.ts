/*
 * The calculation sheet: for every class of equal valves each step with formula, inputs, result and authority, for an engineer to redo by hand.
 * Invariant: every input shows its unit and basis; a step is printed once per class, however many valves share it.
 * Not here: the calculations.
 * Read next: paper-inputs.ts.
 */

import { conversionBlocks } from '#lib/documents/words/conversion-words.ts';
import { measureFirstText } from '#lib/documents/words/measure-first-words.ts';
import { BASIS_LEGEND, BASIS_MARKS, countText, dateText, tagsText } from '#lib/documents/words/print-values.ts';
import type { Step, StepInput } from '#lib/units/calculation-step.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import { known } from '#lib/units/known-value.ts';
import { sourceIn } from '#lib/units/us-beside.ts';
import { countLines, gatherClasses, type PaperClass, partNumbersText, rangeText, valveWords } from './line-classes.ts';
import type { Block, Paper, TableRow } from './paper.ts';
import { paperHead, siteFacts } from './paper-head.ts';
import type { PaperContext, PaperLine } from './paper-inputs.ts';

export interface CalculationInput {
  readonly context: PaperContext;
  readonly lines: readonly PaperLine[];
}

export function calculationPaper(input: CalculationInput): Paper {
  const { context } = input;
  const classes = gatherClasses(input.lines);
  const facts = [
    ...siteFacts(context),
    {
      label: 'Covers',
      value: `${countText(countLines(input.lines), 'line')} in ${classes.length} ${classes.length === 1 ? 'class' : 'classes'}`,
    },
    { label: 'Issued', value: dateText(context.issuedOn) },
  ];
  return {
    ...paperHead(context, { kind: 'calculation sheet', title: 'Calculation sheet', facts }),
    blocks: [
      {
        kind: 'text',
        tone: 'plain',
        text: 'Every value has a low, a likely and a high end; results carry the whole range. Check any step by hand with the inputs beside it.',
      },
      { kind: 'text', tone: 'muted', text: BASIS_LEGEND },
      ...conversionBlocks(context.system),
      ...classes.flatMap((one, index) =>
        classBlocks({ one, of: classes.length, system: context.system, first: index === 0 ? 'first' : 'later' }),
      ),
    ],
  };
}

function classBlocks(asked: {
  readonly one: PaperClass;
  readonly of: number;
  readonly system: UnitSystem;
  readonly first: 'first' | 'later';
}): readonly Block[] {
  const { one, system } = asked;
  const duty: Block[] = [
    { kind: 'heading', level: 1, text: `Class ${one.number} of ${asked.of}: ${valveWords(one.line)}` },
    { kind: 'text', tone: 'plain', text: `${countText(one.valves, 'valve')}: ${tagsText(one.tags, 20)}.` },
    ...measureBlock(one, system),
    boundsTable(one, system),
    stepTable({ title: 'What the valve needs and may see', steps: one.duty.steps, before: [], system }),
  ];
  if (one.assembly === null || one.assembly.steps.length === 0) return pageStart(asked.first, duty);
  return pageStart(asked.first, [
    ...duty,
    stepTable({
      title: `What the equipment does: ${partNumbersText(one.assembly)}`,
      steps: one.assembly.steps,
      before: one.duty.steps,
      system,
    }),
  ]);
}

/** Where the ranges come from most: the one measurement that would narrow them. */
function measureBlock({ duty }: PaperClass, system: UnitSystem): readonly Block[] {
  const measure = measureFirstText(duty, system);
  return measure === null ? [] : [{ kind: 'text', tone: 'plain', text: `Measure this first: ${measure}` }];
}

function pageStart(first: 'first' | 'later', blocks: readonly Block[]): readonly Block[] {
  return first === 'first' ? blocks : [{ kind: 'page break' }, ...blocks];
}

function boundsTable(one: PaperClass, system: UnitSystem): Block {
  const rows = one.duty.bounds
    .toSorted((a, b) => a.torque.low - b.torque.low || a.kind.localeCompare(b.kind))
    .map(
      (bound): TableRow => ({
        cells: [
          bound.kind,
          bound.directions.join(' and '),
          rangeText(bound.torque, system),
          `${BASIS_MARKS[bound.torque.basis]}  ${sourceIn(bound.torque.source, system)}`,
        ],
      }),
    );
  return {
    kind: 'table',
    columns: [
      { label: 'Never above: bound', share: 20 },
      { label: 'Direction', share: 18 },
      { label: 'Torque', share: 24, align: 'right' },
      { label: 'Basis', share: 38 },
    ],
    rows,
    dense: true,
  };
}

interface StepTable {
  readonly title: string;
  readonly steps: readonly Step[];
  /** Steps of the valve, for the equipment's inputs that come out of them. */
  readonly before: readonly Step[];
  readonly system: UnitSystem;
}

function stepTable({ title, steps, before, system }: StepTable): Block {
  const rows = steps.flatMap((step, index): readonly TableRow[] => {
    const value = rangeText(step.result, system);
    const basis = BASIS_MARKS[step.result.basis];
    if (step.inputs.length === 0 && step.formula === '')
      return [
        { cells: [String(index + 1), step.name, value, `${basis}  ${sourceIn(step.source, system)}`], tone: 'result' },
      ];
    const earlier = steps.slice(0, index);
    return [
      { cells: [`${index + 1}  ${step.name}`], tone: 'group', ...(step.formula === '' ? {} : { note: step.formula }) },
      ...step.inputs.map((input): TableRow => {
        const told = from(input, { steps: earlier, say: 'step' }) ?? from(input, { steps: before, say: 'valve, step' });
        return {
          cells: [
            input.symbol,
            input.name,
            rangeText(known(input.unit, input, { basis: input.basis, source: input.source }), system),
            `${BASIS_MARKS[input.basis]}  ${told ?? sourceIn(input.source, system)}`,
          ],
        };
      }),
      { cells: ['=', 'result', value, `${basis}  ${sourceIn(step.source, system)}`], tone: 'result' },
    ];
  });
  return {
    kind: 'table',
    caption: { level: 2, text: title },
    columns: [
      { label: 'Symbol', share: 10 },
      { label: 'Quantity', share: 26 },
      { label: 'Low…high, likely', share: 24, align: 'right' },
      { label: 'Basis and source', share: 40 },
    ],
    rows,
    dense: true,
  };
}

/** `from step 12` where an input is the result of an earlier step: the same values from the same source; null where it is none. */
function from(
  input: StepInput,
  { steps, say }: { readonly steps: readonly Step[]; readonly say: 'step' | 'valve, step' },
): string | null {
  const index = steps.findLastIndex(
    ({ result }) =>
      result.source === input.source &&
      result.low === input.low &&
      result.nominal === input.nominal &&
      result.high === input.high,
  );
  return index < 0 ? null : `from ${say} ${index + 1}`;
}
