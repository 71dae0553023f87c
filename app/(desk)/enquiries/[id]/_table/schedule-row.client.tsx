'use client';

import Link from 'next/link';
import { memo } from 'react';
import { KnownMark } from '#app/_ui/line/known-mark.client.tsx';
import { useSentences } from '#app/_ui/shown-units.client.tsx';
import type { LineView } from '#lib/services/lines/line-view.ts';
import type { CellEdit } from '#lib/services/schedule/edit-cells.ts';
import type { Place } from './block.ts';
import type { GridColumn } from './grid-columns.ts';
import styles from './schedule-table.module.css';
import { SheetCell } from './sheet-cell.client.tsx';
import type { Unsaved } from './use-saving.client.tsx';

export interface RowVerbs {
  readonly write: (edits: readonly CellEdit[]) => void;
  readonly choose: (lineId: number) => void;
}

interface ScheduleRowProps {
  readonly enquiryId: number;
  readonly index: number;
  readonly top: number;
  readonly line: LineView | undefined;
  readonly columns: readonly GridColumn[];
  readonly isChosen: boolean;
  /** Columns of the block in this row; -1 for none. */
  readonly left: number;
  readonly right: number;
  /** Column of the cell that bears the focus; -1 in other rows. */
  readonly stop: number;
  readonly unsaved: ReadonlyMap<string, Unsaved> | undefined;
  /** Who wrote a cell a moment ago. */
  readonly foreign: ReadonlyMap<string, string> | undefined;
  readonly verbs: RowVerbs;
}

/** One line of the schedule: its cells to write in, its duty, and what is to settle. */
export const ScheduleRow = memo(function Row(props: ScheduleRowProps) {
  const { enquiryId, index, top, line, columns, isChosen } = props;
  const place = { transform: `translateY(${top}px)` };
  if (!line) {
    return (
      <div role="row" className={styles.row} style={place} aria-rowindex={index + 2}>
        <div role="gridcell" className={styles.cell}>
          loading…
        </div>
      </div>
    );
  }
  const name = nameOf(line);
  return (
    <div
      role="row"
      className={isChosen ? `${styles.row} ${styles.chosen}` : styles.row}
      style={place}
      aria-rowindex={index + 2}
      aria-selected={isChosen}
    >
      <div role="gridcell" className={`${styles.cell} ${styles.pick}`} aria-colindex={1}>
        <input
          type="checkbox"
          aria-label={`Choose ${name}`}
          tabIndex={-1}
          checked={isChosen}
          onChange={() => props.verbs.choose(line.id)}
        />
      </div>
      {columns.map((column, at) => (
        <GridCell key={column.name} {...{ ...props, line, name, column, at }} />
      ))}
      <div role="gridcell" className={`${styles.cell} ${styles.settle}`} aria-colindex={columns.length + 2}>
        <ToSettle line={line} name={name} href={`/enquiries/${enquiryId}/lines/${line.id}`} isStop={props.stop >= 0} />
      </div>
    </div>
  );
});

interface GridCellProps extends Omit<ScheduleRowProps, 'line'> {
  readonly line: LineView;
  readonly name: string;
  readonly column: GridColumn;
  readonly at: number;
}

function GridCell({ line, name, column, at, index, left, right, stop, unsaved, foreign, verbs }: GridCellProps) {
  const isIn = at >= left && at <= right && left >= 0;
  const place: Place = { row: index, column: at };
  const classes = [styles.cell, widthOf(column), isIn ? styles.block : ''];
  if (column.kind === 'duty') {
    return (
      <div role="gridcell" className={classes.join(' ')} aria-colindex={at + 2} aria-selected={isIn}>
        <KnownMark
          known={line.duty[column.name]}
          cell={{ ...place, label: `${column.label}, ${name}`, isStop: stop === at }}
        />
      </div>
    );
  }
  const waiting = unsaved?.get(column.name);
  const who = foreign?.get(column.name);
  const measured = line.measured.some((one) => one === column.name);
  if (waiting?.kept) classes.push(styles.kept);
  if (who !== undefined) classes.push(styles.foreign);
  return (
    <div role="gridcell" className={classes.join(' ')} aria-colindex={at + 2} aria-selected={isIn}>
      <SheetCell
        place={place}
        label={`${column.choice.label}, ${name}`}
        help={column.choice.help}
        text={waiting?.text ?? cellText(line, column.name)}
        known={knownText(line, column.name)}
        isStop={stop === at}
        onSave={(text) => verbs.write([{ lineId: line.id, column: column.name, text }])}
      />
      {measured && (
        <abbr className={styles.mark} title="measured">
          M
        </abbr>
      )}
      {waiting?.kept && <span className={styles.flag}>not saved</span>}
      {who !== undefined && <span className={styles.flag}>{who}</span>}
    </div>
  );
}

interface ToSettleProps {
  readonly line: LineView;
  readonly name: string;
  readonly href: string;
  readonly isStop: boolean;
}

function ToSettle({ line, name, href, isStop }: ToSettleProps) {
  const refused = line.problems.filter(({ severity }) => severity === 'refused').length;
  const doubts = line.problems.filter(({ severity }) => severity === 'doubt').length;
  const warnings = line.duty.findings.filter(({ severity }) => severity !== 'note').length;
  const tell = useSentences();
  const sentences = [...line.problems, ...line.duty.findings].map(tell);
  return (
    <Link
      href={href}
      prefetch={false}
      tabIndex={isStop ? 0 : -1}
      title={sentences.join('\n')}
      aria-label={`Details of ${name}: ${said({ refused, doubts, warnings })}`}
    >
      {refused > 0 && <span className="mark refusal">{refused} refused</span>}{' '}
      {doubts > 0 && <span className="mark warning">{doubts} in doubt</span>}{' '}
      {warnings > 0 && <span className="mark warning">{warnings} to heed</span>}{' '}
      {refused + doubts + warnings === 0 && 'details'} {line.known.length > 0 && <span className="mark">visited</span>}
    </Link>
  );
}

interface Counts {
  readonly refused: number;
  readonly doubts: number;
  readonly warnings: number;
}

function said({ refused, doubts, warnings }: Counts): string {
  const parts = [
    refused > 0 ? `${refused} refused` : '',
    doubts > 0 ? `${doubts} in doubt` : '',
    warnings > 0 ? `${warnings} to heed` : '',
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'nothing to settle' : parts.join(', ');
}

export function nameOf(line: LineView): string {
  return line.tag === '' ? `row ${line.row}` : line.tag;
}

export function widthOf({ kind, name }: GridColumn): string {
  if (kind === 'duty') return styles.duty ?? '';
  if (name === 'tag') return styles.tag ?? '';
  return name === 'qty' ? (styles.short ?? '') : '';
}

function knownText(line: LineView, column: string): string | undefined {
  const known = line.known.find((one) => one.column === column && one.use === 'used');
  return known && `${known.text} (visit)`;
}

function cellText(line: LineView, column: string): string {
  const cells: Readonly<Record<string, string | undefined>> = line.cells;
  return cells[column] ?? '';
}
