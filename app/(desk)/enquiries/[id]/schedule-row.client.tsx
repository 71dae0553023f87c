'use client';

import Link from 'next/link';
import type { KeyboardEvent } from 'react';
import { KnownMark } from '#app/_ui/known-mark.tsx';
import type { CellEdit } from '#lib/services/edit-cells.ts';
import type { LineView } from '#lib/services/line-view.ts';
import type { ColumnChoice } from '#lib/services/list-column-choices.ts';
import styles from './schedule-table.module.css';

interface ScheduleRowProps {
  readonly enquiryId: number;
  readonly index: number;
  readonly top: number;
  readonly line: LineView | undefined;
  readonly columns: readonly ColumnChoice[];
  readonly isChosen: boolean;
  readonly onEdit: (edits: readonly CellEdit[]) => void;
  readonly onChoose: (lineId: number) => void;
}

export function ScheduleRow({ enquiryId, index, top, line, columns, isChosen, onEdit, onChoose }: ScheduleRowProps) {
  const place = { transform: `translateY(${top}px)` };
  if (!line) {
    return (
      <div role="row" className={styles.row} style={place} aria-rowindex={index + 2}>
        <div role="cell" className={styles.cell}>
          loading…
        </div>
      </div>
    );
  }
  const { duty } = line;
  const refusals = duty.findings.filter(({ severity }) => severity !== 'note').length;
  return (
    <div
      role="row"
      className={isChosen ? `${styles.row} ${styles.chosen}` : styles.row}
      style={place}
      aria-rowindex={index + 2}
      onFocus={() => onChoose(line.id)}
    >
      {columns.map((column, at) => (
        <div role="cell" className={styles.cell} key={column.name}>
          <input
            key={`${line.version} ${column.name}`}
            className={styles.input}
            aria-label={`${column.label}, ${line.tag}`}
            title={column.help}
            data-row={index}
            data-column={at}
            defaultValue={cellText(line, column)}
            onChange={(event) => {
              event.target.dataset.dirty = 'yes';
            }}
            onKeyDown={(event) => moveOrReset(event, cellText(line, column))}
            onPaste={(event) => {
              const rows = event.clipboardData.getData('text');
              if (!rows.includes('\t')) return;
              event.preventDefault();
              onEdit(pasted({ text: rows.split(/\r?\n/)[0] ?? '', lineId: line.id, columns: columns.slice(at) }));
            }}
            onBlur={(event) => {
              delete event.target.dataset.dirty;
              if (event.target.value === cellText(line, column)) return;
              onEdit([{ lineId: line.id, column: column.name, text: event.target.value }]);
            }}
          />
        </div>
      ))}
      {[duty.starting, duty.running, duty.turns, duty.neverExceed].map((known, at) => (
        <div role="cell" className={`${styles.cell} ${styles.duty}`} key={['start', 'run', 'turns', 'never'][at]}>
          <KnownMark known={known} />
        </div>
      ))}
      <div role="cell" className={styles.cell}>
        <Link
          href={`/enquiries/${enquiryId}/lines/${line.id}`}
          title={[
            ...line.problems.map(({ sentence }) => sentence),
            ...duty.findings.map(({ sentence }) => sentence),
          ].join('\n')}
        >
          {line.problems.length + refusals === 0 ? 'details' : `${line.problems.length + refusals} to settle`}
        </Link>
      </div>
    </div>
  );
}

function cellText(line: LineView, column: ColumnChoice): string {
  const cells: Readonly<Record<string, string | undefined>> = line.cells;
  return cells[column.name] ?? '';
}

function pasted({
  text,
  lineId,
  columns,
}: {
  readonly text: string;
  readonly lineId: number;
  readonly columns: readonly ColumnChoice[];
}): readonly CellEdit[] {
  return text.split('\t').flatMap((value, at) => {
    const column = columns[at];
    return column ? [{ lineId, column: column.name, text: value }] : [];
  });
}

/** Enter and the arrows up and down go to the same column of the next row; Escape brings the text back. */
function moveOrReset(event: KeyboardEvent<HTMLInputElement>, before: string): void {
  const input = event.currentTarget;
  if (event.key === 'Escape') {
    input.value = before;
    delete input.dataset.dirty;
  }
  const by = event.key === 'Enter' || event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
  if (by === 0) return;
  event.preventDefault();
  const next = document.querySelector<HTMLInputElement>(
    `input[data-row="${Number(input.dataset.row) + by}"][data-column="${input.dataset.column}"]`,
  );
  if (next) next.focus();
  else input.blur();
}
