'use client';

import { useState } from 'react';
import type { ListCompared } from '#lib/services/schedule/compare-list.ts';
import type { ColumnChoice } from '#lib/services/schedule/list-column-choices.ts';
import styles from './compare-list.module.css';
import type { ComparisonChoice } from './use-list-intake.client.tsx';

interface CompareListProps {
  readonly compared: ListCompared;
  readonly columns: readonly ColumnChoice[];
  readonly isBusy: boolean;
  readonly onTake: (choice: ComparisonChoice) => void;
}

/** The changed list beside the schedule: each difference is taken or left, one by one or all together. */
export function CompareList({ compared, columns, isBusy, onTake }: CompareListProps) {
  const [taken, setTaken] = useState<ReadonlySet<string>>(() => new Set(keysOf(compared, 'sure')));
  const [order, setOrder] = useState<ComparisonChoice['order']>('keep');
  const labels = new Map(columns.map(({ name, label }) => [String(name), label]));
  const { added, gone, changed, same } = compared;
  const nothing = added.length + gone.length + changed.length === 0;

  function toggle(keys: readonly string[]): void {
    setTaken((before) => {
      const isAll = keys.every((key) => before.has(key));
      const next = new Set(before);
      for (const key of keys)
        if (isAll) next.delete(key);
        else next.add(key);
      return next;
    });
  }

  const shown = { compared, taken, toggle, labels };
  return (
    <section aria-label="Comparison with the schedule" className={styles.compare}>
      <h2>
        {added.length} added, {gone.length} gone, {changed.length} changed, {same} the same
      </h2>
      {nothing && compared.order === 'same' && <p>The list says what the schedule says. There is nothing to take.</p>}
      <p className="soft">
        What the Desk wrote or measured since the list before is marked, and is kept unless you tick it.
        {compared.silent.length > 0 &&
          ` The list has no column for ${compared.silent.map((name) => labels.get(name) ?? name).join(', ')}: these cells stay.`}
      </p>
      <div className="tools">
        <button type="button" onClick={() => setTaken(new Set(keysOf(compared, 'sure')))}>
          Take all but conflicts
        </button>
        <button type="button" onClick={() => setTaken(new Set(keysOf(compared, 'all')))}>
          Take everything
        </button>
        <button type="button" onClick={() => setTaken(new Set())}>
          Take nothing
        </button>
        {compared.order === 'other' && (
          <label className={styles.check}>
            <input
              type="checkbox"
              checked={order === 'list'}
              onChange={(event) => setOrder(event.target.checked ? 'list' : 'keep')}
            />{' '}
            put the lines in the list’s order
          </label>
        )}
      </div>
      <Changed {...shown} />
      <Added {...shown} />
      <Gone {...shown} />
      <div className="tools">
        <button
          type="button"
          className="main"
          disabled={isBusy}
          onClick={() => onTake({ ...choiceOf(compared, taken), order })}
        >
          {taken.size === 0 && order === 'keep' ? 'Keep the schedule as it is' : `Take ${taken.size} differences`}
        </button>
        <small>Both lists are kept. Undo in the schedule takes all of it back.</small>
      </div>
    </section>
  );
}

function keysOf({ added, gone, changed }: ListCompared, which: 'sure' | 'all'): readonly string[] {
  return [
    ...added.map(({ row }) => `row ${row}`),
    ...gone.filter(({ kind }) => which === 'all' || kind === 'listed').map(({ lineId }) => `gone ${lineId}`),
    ...changed.flatMap(({ lineId, cells }) =>
      cells.filter(({ kind }) => which === 'all' || kind === 'changed').map(({ column }) => `cell ${lineId} ${column}`),
    ),
  ];
}

function choiceOf({ added, gone, changed }: ListCompared, taken: ReadonlySet<string>): Omit<ComparisonChoice, 'order'> {
  return {
    added: added.map(({ row }) => row).filter((row) => taken.has(`row ${row}`)),
    gone: gone.map(({ lineId }) => lineId).filter((id) => taken.has(`gone ${id}`)),
    cells: changed.flatMap(({ lineId, cells }) =>
      cells.filter(({ column }) => taken.has(`cell ${lineId} ${column}`)).map(({ column }) => ({ lineId, column })),
    ),
  };
}

interface PartProps {
  readonly compared: ListCompared;
  readonly taken: ReadonlySet<string>;
  readonly toggle: (keys: readonly string[]) => void;
  readonly labels: ReadonlyMap<string, string>;
}

const AT_ONCE = 100;

function useMore(total: number) {
  const [shown, setShown] = useState(AT_ONCE);
  const more = shown < total && (
    <button type="button" onClick={() => setShown(shown + 5 * AT_ONCE)}>
      Show more of the {total}
    </button>
  );
  return { shown, more };
}

const FOUND_BY = { tag: '', place: 'found by its place', row: 'found by its row' } as const;

function Changed({ compared, taken, toggle, labels }: PartProps) {
  const { changed, tags } = compared;
  const { shown, more } = useMore(changed.reduce((sum, { cells }) => sum + cells.length, 0));
  if (changed.length === 0) return null;
  const cells = changed.flatMap((line) => line.cells.map((cell) => ({ ...cell, line })));
  return (
    <>
      <Title
        words="Cells that changed"
        keys={cells.map(({ line, column }) => `cell ${line.lineId} ${column}`)}
        {...{ taken, toggle }}
      />
      <div className="wide">
        <table>
          <thead>
            <tr>
              <th>Take</th>
              <th>Tag</th>
              <th>Column</th>
              <th>Schedule</th>
              <th>Changed list</th>
            </tr>
          </thead>
          <tbody>
            {cells.slice(0, shown).map(({ line, column, before, now, next, kind }) => {
              const key = `cell ${line.lineId} ${column}`;
              const label = `${labels.get(column) ?? column} of ${tags[line.lineId]}`;
              return (
                <tr key={key}>
                  <td>
                    <Take {...{ taken, toggle, label }} name={key} />
                  </td>
                  <td className="tag">{tags[line.lineId]}</td>
                  <td>
                    {labels.get(column) ?? column} {FOUND_BY[line.by] !== '' && <small>{FOUND_BY[line.by]}</small>}
                  </td>
                  <td>
                    {now === '' ? <em>empty</em> : now}{' '}
                    {kind === 'conflict' && (
                      <span className="mark warning">
                        {before === null || before === now
                          ? 'by the Desk'
                          : `by the Desk; the list before: ${before || 'empty'}`}
                      </span>
                    )}
                  </td>
                  <td>{next === '' ? <em>empty</em> : next}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
      {more}
    </>
  );
}

function Added({ compared, taken, toggle, labels }: PartProps) {
  const { added } = compared;
  const { shown, more } = useMore(added.length);
  if (added.length === 0) return null;
  return (
    <>
      <Title words="Rows that came" keys={added.map(({ row }) => `row ${row}`)} {...{ taken, toggle }} />
      <ul className={styles.rows}>
        {added.slice(0, shown).map(({ row, cells }) => (
          <li key={row}>
            <Take {...{ taken, toggle }} name={`row ${row}`} label={`Row ${row}, ${cells.tag ?? 'without a tag'}`} />
            <strong>{cells.tag ?? `row ${row}`}</strong>{' '}
            <small>
              {Object.entries(cells)
                .filter(([name]) => name !== 'tag')
                .map(([name, text]) => `${labels.get(name) ?? name} ${text}`)
                .join(' · ')}
            </small>
          </li>
        ))}
      </ul>
      {more}
    </>
  );
}

const GONE_WORDS = {
  listed: '',
  edited: 'the Desk wrote in it since',
  typed: 'came from no list',
} as const;

function Gone({ compared, taken, toggle }: PartProps) {
  const { gone, tags } = compared;
  const { shown, more } = useMore(gone.length);
  if (gone.length === 0) return null;
  return (
    <>
      <Title
        words="Lines that are not in the list"
        keys={gone.map(({ lineId }) => `gone ${lineId}`)}
        {...{ taken, toggle }}
      />
      <ul className={styles.rows}>
        {gone.slice(0, shown).map(({ lineId, kind }) => (
          <li key={lineId}>
            <Take {...{ taken, toggle }} name={`gone ${lineId}`} label={`Remove ${tags[lineId]}`} />
            <strong>{tags[lineId]}</strong>{' '}
            {GONE_WORDS[kind] !== '' && <span className="mark warning">{GONE_WORDS[kind]}</span>}
          </li>
        ))}
      </ul>
      {more}
    </>
  );
}

interface TitleProps extends Pick<PartProps, 'taken' | 'toggle'> {
  readonly words: string;
  readonly keys: readonly string[];
}

function Title({ words, keys, taken, toggle }: TitleProps) {
  const some = keys.filter((key) => taken.has(key)).length;
  return (
    <h3 className={styles.title}>
      <label>
        <input
          type="checkbox"
          checked={some === keys.length}
          ref={(box) => {
            if (box) box.indeterminate = some > 0 && some < keys.length;
          }}
          onChange={() => toggle(keys)}
        />{' '}
        {words}: {some} of {keys.length} taken
      </label>
    </h3>
  );
}

interface TakeProps extends Pick<PartProps, 'taken' | 'toggle'> {
  readonly name: string;
  readonly label: string;
}

function Take({ taken, toggle, name, label }: TakeProps) {
  return <input type="checkbox" aria-label={label} checked={taken.has(name)} onChange={() => toggle([name])} />;
}
