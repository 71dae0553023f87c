'use client';

import { type FormEvent, useState } from 'react';
import { BASES, type CellTest, isBasis, isDuty, type LineFilter } from '#lib/schedule/line-filter.ts';
import type { GridColumn } from './grid-columns.ts';
import styles from './schedule-table.module.css';

type Kind = CellTest['kind'];

export const TEST_WORDS: Readonly<Record<Kind, string>> = {
  has: 'holds',
  lacks: 'does not hold',
  is: 'is',
  empty: 'is empty',
  filled: 'is not empty',
  measured: 'was measured',
  unmeasured: 'was not measured',
};

interface ColumnFilterProps {
  readonly column: GridColumn;
  readonly filter: LineFilter;
  readonly onShow: (filter: LineFilter) => void;
  readonly onHide: () => void;
}

/** Sorts by a column, shows only lines whose cell passes a test, or hides the column. */
export function ColumnFilter({ column, filter, onShow, onHide }: ColumnFilterProps) {
  const { name } = column;
  const sortable = filterColumn(column);
  const others: LineFilter = {
    ...filter,
    cells: filter.cells.filter((one) => one.column !== name),
    bases: filter.bases.filter((one) => one.column !== name),
  };
  const isFiltered = others.cells.length + others.bases.length < filter.cells.length + filter.bases.length;
  return (
    <div className={styles.paneBody}>
      <div className="tools">
        {sortable && (
          <>
            <button type="button" onClick={() => onShow({ ...filter, sort: { column: sortable, way: 'up' } })}>
              Sort up
            </button>
            <button type="button" onClick={() => onShow({ ...filter, sort: { column: sortable, way: 'down' } })}>
              Sort down
            </button>
          </>
        )}
        {filter.sort?.column === name && (
          <button type="button" onClick={() => onShow({ ...filter, sort: null })}>
            List’s own order
          </button>
        )}
      </div>
      {column.kind === 'cell' ? (
        <CellQuestion
          column={column}
          filter={filter}
          onAsk={(cell) => onShow({ ...others, cells: [...others.cells, cell] })}
        />
      ) : (
        <BasisQuestion
          column={column}
          filter={filter}
          onAsk={(basis) => onShow({ ...others, bases: [...others.bases, basis] })}
        />
      )}
      <div className="tools">
        {isFiltered && (
          <button type="button" onClick={() => onShow(others)}>
            Drop this filter
          </button>
        )}
        {column.kind === 'cell' && name !== 'tag' && (
          <button type="button" onClick={onHide}>
            Hide the column
          </button>
        )}
      </div>
    </div>
  );
}

interface QuestionProps<Asked> {
  readonly column: GridColumn;
  readonly filter: LineFilter;
  readonly onAsk: (asked: Asked) => void;
}

function CellQuestion({ column, filter, onAsk }: QuestionProps<LineFilter['cells'][number]>) {
  const before = filter.cells.find((one) => one.column === column.name)?.test;
  const [kind, setKind] = useState<Kind>(before?.kind ?? 'has');
  const [text, setText] = useState(before && 'text' in before ? before.text : '');
  const asksText = kind === 'has' || kind === 'lacks' || kind === 'is';

  function onSubmit(event: FormEvent): void {
    event.preventDefault();
    const asked = filterColumn(column);
    if (!asked || isDuty(asked)) return;
    onAsk({ column: asked, test: asksText ? { kind, text } : { kind } });
  }

  return (
    <form onSubmit={onSubmit} className="tools">
      <div>
        <label htmlFor={`kind-${column.name}`}>Only lines where it</label>
        <select id={`kind-${column.name}`} value={kind} onChange={(event) => setKind(kindOf(event.target.value))}>
          {Object.entries(TEST_WORDS).map(([value, word]) => (
            <option key={value} value={value}>
              {word}
            </option>
          ))}
        </select>
      </div>
      {asksText && (
        <div>
          <label htmlFor={`text-${column.name}`}>this text</label>
          <input id={`text-${column.name}`} value={text} onChange={(event) => setText(event.target.value)} />
        </div>
      )}
      <button type="submit">Show these</button>
    </form>
  );
}

function BasisQuestion({ column, filter, onAsk }: QuestionProps<LineFilter['bases'][number]>) {
  const before = filter.bases.find((one) => one.column === column.name)?.basis;
  return (
    <div>
      <label htmlFor={`basis-${column.name}`}>Only lines whose figure is</label>
      <select
        id={`basis-${column.name}`}
        value={before ?? ''}
        onChange={(event) => {
          const asked = filterColumn(column);
          const basis = event.target.value;
          if (asked && isDuty(asked) && isBasis(basis)) onAsk({ column: asked, basis });
        }}
      >
        <option value="">choose…</option>
        {BASES.map((basis) => (
          <option key={basis} value={basis}>
            {basis}
          </option>
        ))}
      </select>
    </div>
  );
}

function filterColumn(column: GridColumn) {
  if (column.kind === 'duty') return column.name;
  const { name } = column.choice;
  return name === 'ignore' || name === 'remark' ? undefined : name;
}

function kindOf(text: string): Kind {
  const kinds: readonly Kind[] = ['has', 'lacks', 'is', 'empty', 'filled', 'measured', 'unmeasured'];
  return kinds.find((kind) => kind === text) ?? 'has';
}
