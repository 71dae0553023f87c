'use client';

import { type FindingChoice, type LineFilter, NO_FILTER, showsAll } from '#lib/schedule/line-filter.ts';
import type { ColumnChoice } from '#lib/services/schedule/list-column-choices.ts';
import { TEST_WORDS } from './column-filter.client.tsx';
import styles from './schedule-table.module.css';

interface FilterChipsProps {
  readonly filter: LineFilter;
  readonly choices: readonly ColumnChoice[];
  readonly onShow: (filter: LineFilter) => void;
}

export const FINDING_WORDS: Readonly<Record<FindingChoice, string>> = {
  all: 'all lines',
  problems: 'with problems',
  refused: 'with refused cells',
  doubt: 'with cells in doubt',
  warnings: 'with something to heed',
  clear: 'with nothing to settle',
};

const DUTY_WORDS = { starting: 'To start', running: 'To run', turns: 'Turns', neverExceed: 'Never above' } as const;

interface Chip {
  readonly words: string;
  readonly without: LineFilter;
}

/** What is filtered and sorted by at present, each to be dropped with one press. */
export function FilterChips({ filter, choices, onShow }: FilterChipsProps) {
  const chips = chipsOf(filter, (name) => choices.find((choice) => choice.name === name)?.label ?? name);
  if (chips.length === 0) return null;
  return (
    <ul className={styles.chips} aria-label="Filters and order">
      {chips.map(({ words, without }) => (
        <li key={words}>
          <button type="button" onClick={() => onShow(without)} aria-label={`Drop: ${words}`}>
            {words} <span aria-hidden="true">×</span>
          </button>
        </li>
      ))}
      {chips.length > 1 && (
        <li>
          <button type="button" onClick={() => onShow(NO_FILTER)}>
            {showsAll(filter) ? 'List’s own order' : 'Show all lines'}
          </button>
        </li>
      )}
    </ul>
  );
}

function chipsOf(filter: LineFilter, labelOf: (name: string) => string): readonly Chip[] {
  const cells = filter.cells.map(
    (one): Chip => ({
      words: `${labelOf(one.column)} ${TEST_WORDS[one.test.kind]}${'text' in one.test ? ` “${one.test.text}”` : ''}`,
      without: { ...filter, cells: filter.cells.filter((other) => other !== one) },
    }),
  );
  const bases = filter.bases.map(
    (one): Chip => ({
      words: `${DUTY_WORDS[one.column]} ${one.basis}`,
      without: { ...filter, bases: filter.bases.filter((other) => other !== one) },
    }),
  );
  const { sort } = filter;
  const sorted: readonly Chip[] = sort
    ? [
        {
          words: `Sorted by ${sort.column in DUTY_WORDS ? dutyWord(sort.column) : labelOf(sort.column)}, ${sort.way}`,
          without: { ...filter, sort: null },
        },
      ]
    : [];
  return [...cells, ...bases, ...sorted];
}

function dutyWord(name: string): string {
  return Object.entries(DUTY_WORDS).find(([key]) => key === name)?.[1] ?? name;
}
