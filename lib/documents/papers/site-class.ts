/*
 * One class of equal valves on the site sheet: a page to set up by and a page to work and write on.
 * Invariant: start, step and ceiling stand together, on the limiter's own scale and at the valve.
 * Not here: the general method and cautions (../words/safety-words.ts).
 * Read next: site-paper.ts.
 */

import { driveLine } from '#lib/documents/drawings/drive-line.ts';
import { torqueLadder } from '#lib/documents/drawings/torque-ladder.ts';
import { chanceText } from '#lib/documents/words/chance-words.ts';
import { scaleBlocks } from '#lib/documents/words/conversion-words.ts';
import { withoutTag } from '#lib/documents/words/line-warnings.ts';
import { measureFirstText } from '#lib/documents/words/measure-first-words.ts';
import { countText, tagsText } from '#lib/documents/words/print-values.ts';
import { restraintWords } from '#lib/documents/words/restraint-words.ts';
import type { Direction } from '#lib/duty/duty.ts';
import type { Assembly, DirectionSettings, LimiterSetting } from '#lib/equipment/assembly.ts';
import type { Severity } from '#lib/kernel/finding.ts';
import { formatCeiling, formatMark, formatQuantity, type UnitSystem } from '#lib/units/format-quantity.ts';
import { sentenceIn } from '#lib/units/say-figure.ts';
import { modelName, type PaperClass, partNumbersText, rangeText, valveWords } from './line-classes.ts';
import type { Block, LabelledText, TableRow } from './paper.ts';
import type { PaperContext } from './paper-inputs.ts';

export function classBlocks(asked: {
  readonly one: PaperClass;
  readonly of: number;
  readonly context: PaperContext;
  /** Notes that stand at the head of the sheet already. */
  readonly told: ReadonlySet<string>;
}): readonly Block[] {
  const { one, context } = asked;
  const { assembly } = one;
  if (assembly === null) return [];
  const { system, models } = context;
  const lettered = { assembly, models, duty: one.duty, system, ...(context.tell ? { tell: context.tell } : {}) };
  const name = `Class ${one.number} of ${asked.of}: ${valveWords(one.line)}`;
  return [
    { kind: 'page break' },
    { kind: 'heading', level: 1, text: name },
    {
      kind: 'text',
      tone: 'plain',
      text: `${countText(one.valves, 'valve')}: ${tagsText(one.tags, 14)}.${one.crews.length > 0 ? ` Crew ${one.crews.join(', ')}.` : ''} ${partNumbersText(assembly)}`,
    },
    { kind: 'drawing', drawing: driveLine({ ...lettered, line: one.line }), share: 0.9 },
    ...limiterBlocks(assembly, system),
    { kind: 'facts', columns: 3, items: expected(one, assembly, system) },
    { kind: 'text', tone: 'plain', text: restraintWords(assembly, models, system) },
    { kind: 'page break' },
    { kind: 'heading', level: 2, text: `${name}: work and record` },
    { kind: 'drawing', drawing: torqueLadder(lettered), share: 0.84 },
    ...findingBlocks(one, { told: asked.told, system }),
    ...(assembly.parts.adapters.length > 1
      ? [
          {
            kind: 'text',
            tone: 'plain',
            text: `The list leaves a range open: try ${assembly.parts.adapters.map((number) => `${number} ${modelName(models, number)}`).join(', then ')}.`,
          } as const,
        ]
      : []),
    record(one),
  ];
}

/** The table, and once under it where no ceiling reaches what the valve may need. */
function limiterBlocks(assembly: Assembly, system: UnitSystem): readonly Block[] {
  const settings = [assembly.opening, assembly.closing].flatMap(({ unseat, run, seat }) =>
    [unseat, run, seat].filter((setting) => setting !== null),
  );
  const short = settings.filter(({ coversStarting }) => !coversStarting);
  const table = limiterTable(assembly, system);
  const scale = scaleBlocks(assembly, system);
  if (short.length === 0) return [table, ...scale];
  const which = short.length === settings.length ? 'Each ceiling' : 'A ceiling marked ▲';
  return [
    table,
    ...scale,
    {
      kind: 'text',
      tone: 'strong',
      text: `▲ ${which} is below what the valve may need to start: it may not move at the torque allowed. Agree with the owner before the work; do not go higher.`,
    },
  ];
}

function limiterTable(assembly: Assembly, system: UnitSystem): Block {
  const rows = (['opening', 'closing'] as const).flatMap((direction) =>
    directionRows(direction, assembly[direction], system),
  );
  return {
    kind: 'table',
    caption: { level: 2, text: 'Limiter: start, step, ceiling' },
    columns: [
      { label: 'Direction', share: 14 },
      { label: 'Part of the stroke', share: 20 },
      { label: 'Start at', share: 14, align: 'right' },
      { label: 'Step', share: 12, align: 'right' },
      { label: 'Ceiling', share: 14, align: 'right' },
      { label: 'At the valve, start to ceiling', share: 26, align: 'right' },
    ],
    rows,
    dense: true,
  };
}

function directionRows(direction: Direction, settings: DirectionSettings, system: UnitSystem): readonly TableRow[] {
  const parts = [
    ['unseat', settings.unseat],
    ['run', settings.run],
    ['seat', settings.seat],
  ] as const;
  const rows = parts.flatMap(([part, setting]) =>
    setting === null ? [] : [settingRow({ direction, part, setting, system })],
  );
  if (rows.length > 0) return rows;
  return [{ cells: [direction, 'no limiter in this assembly', '—', '—', '—', '—'] }];
}

function settingRow(asked: {
  readonly direction: Direction;
  readonly part: string;
  readonly setting: LimiterSetting;
  readonly system: UnitSystem;
}): TableRow {
  const { setting, system } = asked;
  const print = (value: number) => formatQuantity({ value, unit: 'N·m', system });
  return {
    cells: [
      asked.direction,
      asked.part,
      formatMark(setting.start, system),
      formatMark(setting.step, system),
      `${setting.coversStarting ? '' : '▲ '}${formatMark(setting.ceiling, system)}`,
      `${print(setting.atValve.start)} to ${formatCeiling(setting.atValve.ceiling, system)}`,
    ],
  };
}

function expected(one: PaperClass, assembly: Assembly, system: UnitSystem): readonly LabelledText[] {
  const time = (settings: DirectionSettings) =>
    `${formatQuantity({ value: settings.strokeTime.low, unit: 's', system })} to ${formatQuantity({ value: settings.strokeTime.high, unit: 's', system })}`;
  const turning =
    one.duty.closes === 'unknown'
      ? 'not known: try gently by hand'
      : `${one.duty.closes}, seen facing the ${one.duty.grip.kind === 'wheel' ? 'wheel' : 'nut'}`;
  return [
    { label: 'Turns for one stroke', value: rangeText(one.duty.turns, system) },
    { label: 'Time to open', value: time(assembly.opening) },
    { label: 'Time to close', value: time(assembly.closing) },
    { label: 'To close, the wheel turns', value: turning },
    { label: 'To open, select on the drive', value: assembly.opening.select },
    { label: 'To close, select on the drive', value: assembly.closing.select },
    {
      label: 'Chance that it moves at the first visit',
      value: `${chanceText(assembly.figures.chance)}: an estimate from ranges, no promise`,
    },
    { label: 'Strokes a visit', value: String(one.duty.strokes) },
    { label: 'Never faster than', value: formatQuantity({ value: one.duty.maxInputSpeed.low, unit: '1/min', system }) },
    {
      label: 'Turns counter',
      value: assembly.figures.counterRequired ? 'required: zero it at the closed end' : 'not required',
    },
  ];
}

/** Notes of a class; what all classes share is told once at the head of the sheet. */
export function classNotes(one: PaperClass, system: UnitSystem): readonly string[] {
  const measure = measureFirstText(one.duty, system);
  return [
    ...sentencesOf(one, { severities: ['note'], system }),
    ...(measure === null ? [] : [`Measure this first: ${measure}`]),
  ];
}

function sentencesOf(
  one: PaperClass,
  { severities, system }: { readonly severities: readonly Severity[]; readonly system: UnitSystem },
): readonly string[] {
  const findings = [...one.duty.findings, ...(one.assembly?.findings ?? [])];
  const told = severities.flatMap((severity) => findings.filter((finding) => finding.severity === severity));
  return [...new Set(told.map((finding) => withoutTag(sentenceIn(finding, system), one.tags)))];
}

function findingBlocks(
  one: PaperClass,
  { told, system }: { readonly told: ReadonlySet<string>; readonly system: UnitSystem },
): readonly Block[] {
  const warnings = sentencesOf(one, { severities: ['refusal', 'warning'], system });
  const notes = classNotes(one, system).filter((sentence) => !told.has(sentence));
  return [
    ...(warnings.length > 0
      ? [{ kind: 'callout', tone: 'caution', title: 'Cautions for these valves', items: warnings } as const]
      : []),
    ...(notes.length > 0 ? [{ kind: 'callout', tone: 'note', title: 'Good to know', items: notes } as const] : []),
  ];
}

/** One row a valve; a line of several identical valves gets as many rows, counted through when crews share them. */
function record(one: PaperClass): Block {
  const rows = one.lines.flatMap(({ line, share }) => {
    const { before, of } = share ?? { before: 0, of: line.qty };
    return Array.from(
      { length: line.qty },
      (_, index): TableRow => ({
        cells: [of > 1 ? `${line.tag} (${before + index + 1} of ${of})` : line.tag, '', '', '', '', '', ''],
      }),
    );
  });
  return {
    kind: 'table',
    columns: [
      { label: 'Valve', share: 20 },
      { label: 'As found', share: 12 },
      { label: 'Turns', share: 10 },
      { label: 'Highest torque', share: 13 },
      { label: 'As left', share: 12 },
      { label: 'Defects', share: 19 },
      { label: 'Who, when', share: 14 },
    ],
    rows,
    tall: true,
  };
}
