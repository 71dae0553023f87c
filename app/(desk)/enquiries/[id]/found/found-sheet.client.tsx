'use client';

import { useState } from 'react';
import type { VisitedValve } from '#lib/services/visits/open-visits.ts';
import { FoundProblems } from './found-problems.tsx';
import styles from './found-sheet.module.css';
import { FoundHelp, FoundValve } from './found-valve.client.tsx';
import { nameOf, useFound } from './use-found.client.tsx';

interface FoundSheetProps {
  readonly enquiryId: number;
  readonly valves: readonly VisitedValve[];
  readonly today: string;
}

const SHOWN_AT_FIRST = 60;

/** One row of blanks a valve; who and when are written once. */
export function FoundSheet({ enquiryId, valves, today }: FoundSheetProps) {
  const sheet = useFound({ enquiryId, valves, today });
  const [shown, setShown] = useState(SHOWN_AT_FIRST);
  const [filter, setFilter] = useState('');
  const matching = valves
    .map((valve, index) => ({ valve, index }))
    .filter(({ valve }) => nameOf(valve).toLowerCase().includes(filter.trim().toLowerCase()));
  const waiting = sheet.dirty.size;
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        void sheet.save();
      }}
    >
      <div className={styles.head}>
        <label>
          Who
          <input value={sheet.who} onChange={(event) => sheet.setWho(event.target.value)} autoComplete="name" />
        </label>
        <label>
          When
          <input type="date" value={sheet.when} max={today} onChange={(event) => sheet.setWhen(event.target.value)} />
        </label>
        <label>
          Find a valve
          <input type="search" value={filter} onChange={(event) => setFilter(event.target.value)} />
        </label>
        <button type="submit" className="main" disabled={waiting === 0 || sheet.busy}>
          {waiting === 0 ? 'Record what was found' : `Record ${waiting === 1 ? '1 valve' : `${waiting} valves`}`}
        </button>
        <span role="status">{sheet.told}</span>
      </div>
      <div role="alert">
        {sheet.trouble === '' ? null : <p className="notice refusal">{sheet.trouble}</p>}
        <FoundProblems problems={sheet.problems} nameOf={(row) => nameOf(valves[row - 1])} />
      </div>
      <FoundHelp />
      {matching.slice(0, shown).map(({ valve, index }) => (
        <FoundValve
          key={`${valve.lineId} ${valve.number}`}
          valve={valve}
          cells={sheet.cellsOf(index)}
          isDirty={sheet.dirty.has(index)}
          wrong={sheet.problems.filter(({ row }) => row === index + 1).map(({ column }) => column)}
          onType={(column, text) => sheet.type(index, column, text)}
        />
      ))}
      {matching.length > shown ? (
        <button type="button" onClick={() => setShown(shown + SHOWN_AT_FIRST)}>
          Show more valves ({matching.length - shown} left)
        </button>
      ) : null}
    </form>
  );
}
