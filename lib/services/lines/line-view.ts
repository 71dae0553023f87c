/*
 * One line as a table or a form shows it: the text of its cells, how they were read, its problems and its duty in short.
 * Invariant: every number keeps its range, basis and source.
 * Not here: loading (list-lines.ts) and saving (edit-cells.ts).
 * Read next: ../schedule/list-lines.ts.
 */
import type { Duty } from '#lib/duty/duty.ts';
import type { KnownFromVisits } from '#lib/found/found.ts';
import type { Cells, Column } from '#lib/intake/columns.ts';
import type { IntakeProblem } from '#lib/intake/take-rows.ts';
import type { Finding } from '#lib/kernel/finding.ts';
import type { LineRecord } from '#lib/services/schedule/schedule-record.ts';
import type { VisitView } from '#lib/services/visits/site-knowledge.ts';
import type { Known, Range } from '#lib/units/known-value.ts';

export interface DutyView {
  /** The worse direction. */
  readonly starting: Known<'N·m'>;
  readonly running: Known<'N·m'>;
  readonly turns: Known<'turn'>;
  readonly neverExceed: Known<'N·m'>;
  readonly neverExceedKind: string;
  readonly limiter: { readonly opening: Range<'N·m'> | null; readonly closing: Range<'N·m'> | null };
  readonly closes: Duty['closes'];
  readonly measureFirst: string | null;
  readonly findings: readonly Finding[];
}

export interface LineView {
  readonly id: number;
  readonly row: number;
  readonly version: number;
  readonly tag: string;
  readonly qty: number;
  readonly cells: Cells;
  readonly measured: readonly Column[];
  readonly problems: readonly IntakeProblem[];
  readonly duty: DutyView;
  /** What earlier visits know of the valve and what became of it, and all visits there were. */
  readonly known: readonly KnownFromVisits[];
  readonly visits: readonly VisitView[];
}

export function lineView(record: LineRecord, duty: Duty): LineView {
  return viewOfLine(record, dutyView(duty));
}

export function viewOfLine(record: LineRecord, duty: DutyView): LineView {
  return {
    id: record.row.id,
    row: record.row.row,
    version: record.row.version,
    tag: record.line.tag,
    qty: record.line.qty,
    cells: record.cells,
    measured: record.measured,
    problems: record.problems,
    known: record.known,
    visits: record.visits,
    duty,
  };
}

export function dutyView(duty: Duty): DutyView {
  const worse = duty.opening.starting.high >= duty.closing.starting.high ? duty.opening : duty.closing;
  const tighter =
    duty.opening.neverExceed.torque.low <= duty.closing.neverExceed.torque.low ? duty.opening : duty.closing;
  const harder = duty.opening.running.high >= duty.closing.running.high ? duty.opening : duty.closing;
  return {
    starting: worse.starting,
    running: harder.running,
    turns: duty.turns,
    neverExceed: tighter.neverExceed.torque,
    neverExceedKind: tighter.neverExceed.kind,
    limiter: { opening: duty.opening.limiter, closing: duty.closing.limiter },
    closes: duty.closes,
    measureFirst: duty.measureFirst,
    findings: duty.findings,
  };
}
