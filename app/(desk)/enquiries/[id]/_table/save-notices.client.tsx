'use client';

import type { Clash } from '#lib/services/schedule/change-answer.ts';
import type { ColumnChoice } from '#lib/services/schedule/list-column-choices.ts';
import { nameOf } from './schedule-row.client.tsx';
import styles from './schedule-table.module.css';
import type { Schedule } from './use-schedule.client.tsx';

interface SaveNoticesProps {
  readonly schedule: Schedule;
  readonly choices: readonly ColumnChoice[];
}

/** What could not be saved, and cells that two people wrote: nothing is lost, and each is settled here. */
export function SaveNotices({ schedule, choices }: SaveNoticesProps) {
  const { saving, lines } = schedule;
  const { store } = saving;
  return (
    <>
      {saving.trouble !== '' && (
        <div className="notice refusal" role="alert">
          <p>{saving.trouble} It is kept here and tried again by itself.</p>
          <button type="button" onClick={() => store?.again()}>
            Save now
          </button>
        </div>
      )}
      {lines.lost !== '' && saving.trouble === '' && (
        <p className="notice refusal" role="alert">
          {lines.lost}
        </p>
      )}
      {saving.refused.map((refusal) => (
        <div className="notice refusal" role="alert" key={refusal.job.key}>
          <p>{refusal.sentence}</p>
          {refusal.job.kind === 'cells' && (
            <p>
              Not saved:{' '}
              {refusal.job.edits
                .slice(0, 5)
                .map(({ text }) => `“${text}”`)
                .join(', ')}
            </p>
          )}
          <div className="tools">
            <button type="button" onClick={() => store?.again(refusal)}>
              Try again
            </button>
            <button type="button" onClick={() => store?.letGo(refusal)}>
              Let it go
            </button>
          </div>
        </div>
      ))}
      {saving.clashes.length > 0 && <Clashes schedule={schedule} choices={choices} />}
    </>
  );
}

const SHOWN = 20;

function Clashes({ schedule, choices }: SaveNoticesProps) {
  const { clashes, store } = schedule.saving;

  function takeMine(some: readonly Clash[]): void {
    const changed = some.filter(({ kind }) => kind === 'changed');
    const gone = some.filter(({ kind, mine }) => kind === 'gone' && mine !== '');
    const edits = changed.map(({ lineId, column, mine, theirs }) => ({ lineId, column, text: mine, was: theirs }));
    const lost = [...new Set(gone.map(({ lineId }) => lineId))].map((id) => ({
      cells: Object.fromEntries(gone.filter(({ lineId }) => lineId === id).map(({ column, mine }) => [column, mine])),
    }));
    schedule.take(
      ...(edits.length > 0 ? [{ kind: 'cells' as const, edits }] : []),
      ...(lost.length > 0 ? [{ kind: 'add' as const, lines: lost }] : []),
    );
    for (const clash of some) store?.settle(clash);
  }

  function keepTheirs(some: readonly Clash[]): void {
    schedule.lines.refresh(some.map(({ lineId }) => lineId));
    for (const clash of some) store?.settle(clash);
  }

  return (
    <div className="notice warning" role="alert">
      <p>
        {clashes.length === 1 ? 'A cell was' : `${clashes.length} cells were`} changed by somebody else before your text
        was saved. Their text stands until you choose.
      </p>
      <ul className={styles.clashes}>
        {clashes.slice(0, SHOWN).map((clash) => (
          <ClashView key={`${clash.lineId} ${clash.column}`} {...{ clash, schedule, choices, takeMine, keepTheirs }} />
        ))}
      </ul>
      {clashes.length > 1 && (
        <div className="tools">
          <button type="button" onClick={() => takeMine(clashes)}>
            Take all mine
          </button>
          <button type="button" onClick={() => keepTheirs(clashes)}>
            Keep all theirs
          </button>
        </div>
      )}
    </div>
  );
}

interface ClashViewProps extends SaveNoticesProps {
  readonly clash: Clash;
  readonly takeMine: (some: readonly Clash[]) => void;
  readonly keepTheirs: (some: readonly Clash[]) => void;
}

function ClashView({ clash, schedule, choices, takeMine, keepTheirs }: ClashViewProps) {
  const line = schedule.lines.line(clash.lineId);
  const label = choices.find(({ name }) => name === clash.column)?.label ?? clash.column;
  const who = clash.who === '' ? 'somebody else' : clash.who;
  return (
    <li>
      <span>
        <strong>
          {label}
          {line ? `, ${nameOf(line)}` : ''}
        </strong>
        : yours “{clash.mine}”,{' '}
        {clash.kind === 'gone' ? `but ${who} removed the line` : `${who} wrote “${clash.theirs}”`}
      </span>
      <button type="button" onClick={() => takeMine([clash])}>
        {clash.kind === 'gone' ? 'Take mine as a new line' : 'Take mine'}
      </button>
      <button type="button" onClick={() => keepTheirs([clash])}>
        {clash.kind === 'gone' ? 'Let mine go' : 'Keep theirs'}
      </button>
    </li>
  );
}
