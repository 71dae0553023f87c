/*
 * What one changed input of a line would do to its duty, worked out at once beside what holds now.
 * Invariant: nothing is saved; text that cannot be read changes nothing and says why.
 * Not here: taking the value into the line (edit-cells.ts).
 * Read next: line-inputs.ts, ../schedule/edit-cells.ts.
 */
import type { Drawing } from '#lib/documents/drawings/drawing.ts';
import { torqueLadder } from '#lib/documents/drawings/torque-ladder.ts';
import { assessDuty } from '#lib/duty/assess-duty.ts';
import type { Duty } from '#lib/duty/duty.ts';
import { isColumn } from '#lib/intake/columns.ts';
import { readLine } from '#lib/intake/read-line.ts';
import type { IntakeProblem } from '#lib/intake/take-rows.ts';
import type { Finding } from '#lib/kernel/finding.ts';
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { type LineKey, loadLine } from '#lib/services/schedule/load-line.ts';
import { dutyOf, type LineRecord } from '#lib/services/schedule/schedule-record.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import type { Known, Range } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import { isTaken, type LineInput, lineInputs } from './line-inputs.ts';

export interface WhatIfFigure {
  readonly name: string;
  readonly before: Known<Unit>;
  readonly after: Known<Unit>;
  readonly changed: boolean;
}

export interface WhatIfWindow {
  readonly name: string;
  readonly before: Range<'N·m'> | null;
  readonly after: Range<'N·m'> | null;
  readonly changed: boolean;
}

export interface WhatIf {
  /** What reading the new text brings up. */
  readonly problems: readonly IntakeProblem[];
  /** Null where the text cannot be read: then nothing changes. */
  readonly change: {
    readonly figures: readonly WhatIfFigure[];
    readonly windows: readonly WhatIfWindow[];
    readonly come: readonly Finding[];
    readonly gone: readonly Finding[];
    readonly ladder: Drawing;
  } | null;
}

export interface WhatIfRequest extends LineKey {
  readonly column: string;
  readonly text: string;
  readonly measured: boolean;
  /** Units that the picture is lettered in. */
  readonly system?: UnitSystem;
}

export function whatIf(context: Context, request: WhatIfRequest): Result<WhatIf> {
  const { column } = request;
  if (!isColumn(column))
    return failed({ code: 'no-such-column', sentence: `“${column}” is not a column of the schedule.` });
  if (request.text.length > LIMITS.cell_characters)
    return failed({
      code: 'cell-too-long',
      sentence: `At most ${LIMITS.cell_characters} characters; shorten the text.`,
    });
  const found = readLineOf(context, request);
  if (!found.ok) return found;
  const { record, before, work } = found.value;
  const { [column]: _was, ...others } = record.cells;
  const text = request.text.trim();
  const marked = record.measured.filter((name) => name !== column);
  const cells = text === '' ? others : { ...others, [column]: text };
  const { line, problems } = readLine({
    row: record.row.row,
    cells,
    measured: request.measured ? [...marked, column] : marked,
  });
  const had = new Set(record.problems.map(problemKey));
  const fresh = problems.filter((problem) => problem.column === column || !had.has(problemKey(problem)));
  if (text !== '' && !isTaken(line, column)) return ok({ problems: fresh, change: null });
  return ok({
    problems: fresh,
    change: changeOf({ before, after: work({ line, cells }), system: request.system ?? 'si' }),
  });
}

/** The inputs that can be changed, each with what is taken for it now. */
export function listLineInputs(context: Context, key: LineKey): Result<readonly LineInput[]> {
  const found = readLineOf(context, key);
  return found.ok ? ok(lineInputs({ line: found.value.record.line, duty: found.value.before })) : found;
}

/** A duty as it would be with these cells, what visits know of the valve included. */
type SiteWork = (read: Pick<LineRecord, 'line' | 'cells'>) => Duty;

interface FoundLine {
  readonly record: LineRecord;
  readonly before: Duty;
  readonly work: SiteWork;
}

function readLineOf(context: Context, key: LineKey): Result<FoundLine> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const loaded = loadLine(context, key);
  if (!loaded.ok) return loaded;
  const { enquiry, record, knowledge } = loaded.value;
  const { site, row: enquiryRow } = enquiry;
  return ok({
    record,
    before: dutyOf({ record, site, siteKey: enquiryRow.site_json }),
    work: (read) => assessDuty({ line: knowledge.know(read).line, site }),
  });
}

function changeOf({
  before,
  after,
  system,
}: {
  readonly before: Duty;
  readonly after: Duty;
  readonly system: UnitSystem;
}): WhatIf['change'] {
  return {
    figures: FIGURES.map(([name, pick]) => figure({ name, before: pick(before), after: pick(after) })),
    windows: (['opening', 'closing'] as const).map((direction) =>
      windowOf({
        name: `Limiter window, ${direction}`,
        before: before[direction].limiter,
        after: after[direction].limiter,
      }),
    ),
    come: missingIn(before.findings, after.findings),
    gone: missingIn(after.findings, before.findings),
    ladder: {
      ...torqueLadder({ duty: after, before, system }),
      title: `Torque ladder of ${after.tag}, now and then`,
    },
  };
}

const FIGURES: readonly (readonly [name: string, pick: (duty: Duty) => Known<Unit>])[] = [
  ['Torque to start opening', ({ opening }) => opening.starting],
  ['Torque while opening', ({ opening }) => opening.running],
  ['Torque to start closing', ({ closing }) => closing.starting],
  ['Torque while closing', ({ closing }) => closing.running],
  ['Never above when opening', ({ opening }) => opening.neverExceed.torque],
  ['Never above when closing', ({ closing }) => closing.neverExceed.torque],
  ['Turns for a stroke', ({ turns }) => turns],
  ['Highest input speed', ({ maxInputSpeed }) => maxInputSpeed],
];

function figure(pair: Omit<WhatIfFigure, 'changed'>): WhatIfFigure {
  const { before, after } = pair;
  const same = before.low === after.low && before.nominal === after.nominal && before.high === after.high;
  return { ...pair, changed: !same || before.basis !== after.basis };
}

function windowOf(pair: Omit<WhatIfWindow, 'changed'>): WhatIfWindow {
  const { before, after } = pair;
  return { ...pair, changed: before?.low !== after?.low || before?.high !== after?.high };
}

/** Findings of the second list whose sentence the first does not have. */
function missingIn(these: readonly Finding[], those: readonly Finding[]): readonly Finding[] {
  const told = new Set(these.map(({ sentence }) => sentence));
  return those.filter(({ sentence }) => !told.has(sentence));
}

function problemKey({ code, column, sentence }: IntakeProblem): string {
  return `${code} ${column} ${sentence}`;
}
