'use client';

import { useRef, useState } from 'react';
import { FieldHelp } from '#app/_ui/field-help.client.tsx';
import type { LineFilter } from '#lib/schedule/line-filter.ts';
import { ColumnFilter } from './column-filter.client.tsx';
import type { GridColumn } from './grid-columns.ts';
import { widthOf } from './schedule-row.client.tsx';
import styles from './schedule-table.module.css';

interface ColumnHeadsProps {
  readonly columns: readonly GridColumn[];
  readonly filter: LineFilter;
  readonly chosen: 'none' | 'some' | 'all';
  readonly onShow: (filter: LineFilter) => void;
  readonly onHide: (name: string) => void;
  readonly onChooseAll: () => void;
}

/** The heads of the columns; each opens what sorts and filters by it. */
export function ColumnHeads({ columns, filter, chosen, onShow, onHide, onChooseAll }: ColumnHeadsProps) {
  return (
    <div role="row" className={styles.head} aria-rowindex={1}>
      <div role="columnheader" className={`${styles.cell} ${styles.pick}`} aria-colindex={1}>
        <input
          type="checkbox"
          aria-label="All lines shown"
          checked={chosen === 'all'}
          ref={(box) => {
            if (box) box.indeterminate = chosen === 'some';
          }}
          onChange={onChooseAll}
        />
      </div>
      {columns.map((column, at) => (
        <Head key={column.name} {...{ column, at, filter, onShow, onHide }} />
      ))}
      <div role="columnheader" className={`${styles.cell} ${styles.settle}`} aria-colindex={columns.length + 2}>
        To settle
      </div>
    </div>
  );
}

interface HeadProps extends Pick<ColumnHeadsProps, 'filter' | 'onShow' | 'onHide'> {
  readonly column: GridColumn;
  readonly at: number;
}

function Head({ column, at, filter, onShow, onHide }: HeadProps) {
  const box = useRef<HTMLDivElement>(null);
  const [isOpen, setOpen] = useState(false);
  const { sort } = filter;
  const isSorted = sort !== null && sort.column === column.name;
  const isFiltered = [...filter.cells, ...filter.bases].some((one) => one.column === column.name);
  const order = isSorted ? (sort.way === 'up' ? 'ascending' : 'descending') : 'none';

  function open(button: HTMLElement): void {
    const place = button.getBoundingClientRect();
    const pane = box.current;
    if (!pane) return;
    pane.style.left = `${Math.max(8, Math.min(place.left, window.innerWidth - 268))}px`;
    pane.style.top = `${place.bottom + 4}px`;
    pane.togglePopover();
  }

  return (
    <div role="columnheader" aria-sort={order} aria-colindex={at + 2} className={`${styles.cell} ${widthOf(column)}`}>
      <button
        type="button"
        className={styles.headButton}
        aria-haspopup="dialog"
        onClick={(event) => open(event.currentTarget)}
      >
        {column.label}
        {isSorted && <span aria-hidden="true">{sort.way === 'up' ? ' ↑' : ' ↓'}</span>}
        {isFiltered && <span className={styles.filtered}> filtered</span>}
      </button>
      {column.kind === 'cell' && <FieldHelp column={column.name} label={column.label} />}
      <div
        ref={box}
        popover="auto"
        className={styles.pane}
        role="dialog"
        aria-label={`Column ${column.label}`}
        onToggle={(event) => setOpen(event.newState === 'open')}
      >
        {isOpen && (
          <ColumnFilter
            column={column}
            filter={filter}
            onShow={(next) => {
              box.current?.hidePopover();
              onShow(next);
            }}
            onHide={() => onHide(column.name)}
          />
        )}
      </div>
    </div>
  );
}
