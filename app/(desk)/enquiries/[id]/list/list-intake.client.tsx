'use client';

import type { FormEvent } from 'react';
import type { ColumnChoice } from '#lib/services/schedule/list-column-choices.ts';
import { CompareList } from './compare-list.client.tsx';
import { MappingTable } from './mapping-table.client.tsx';
import { Outcome } from './taken-lists.tsx';
import { type Existing, type ListSteps, type OpenList, useListIntake } from './use-list-intake.client.tsx';

interface ListIntakeProps {
  readonly enquiryId: number;
  readonly lines: number;
  readonly columns: readonly ColumnChoice[];
}

/** Upload, see what each column was taken for, correct it, see what would come of it, take it. */
export function ListIntake({ enquiryId, lines, columns }: ListIntakeProps) {
  const steps = useListIntake({ enquiryId, lines });
  const { open, preview, busy, trouble } = steps;
  return (
    <section>
      <ListUpload steps={steps} />
      <p aria-live="polite" className="soft">
        {busy}
      </p>
      {trouble !== '' && (
        <p className="notice refusal" role="alert">
          {trouble}
        </p>
      )}
      {open && (
        <div className="panel">
          <SheetChoice open={open} onChoose={steps.chooseSheet} />
          <MappingTable table={open.table} mapping={open.mapping} columns={columns} onChange={steps.changeMapping} />
          <TakeTools steps={steps} lines={lines} />
          {preview && <Outcome outcome={preview} />}
          {steps.compared && steps.existing === 'compare' && (
            <CompareList
              key={steps.compared.change}
              compared={steps.compared}
              columns={columns}
              isBusy={busy !== ''}
              onTake={steps.takeCompared}
            />
          )}
        </div>
      )}
    </section>
  );
}

function ListUpload({ steps }: { readonly steps: ListSteps }) {
  function onSubmit(event: FormEvent<HTMLFormElement>): void {
    event.preventDefault();
    void steps.upload(new FormData(event.currentTarget));
  }
  return (
    <form className="panel tools" onSubmit={onSubmit}>
      <div>
        <label htmlFor="list">Valve list (CSV, TSV or XLSX, at most 10 MB)</label>
        <input id="list" name="list" type="file" accept=".csv,.tsv,.txt,.xlsx" required />
      </div>
      <button type="submit" disabled={steps.busy !== ''}>
        Read the list
      </button>
      <a className="button" href="/api/v1/template">
        Download the template
      </a>
    </form>
  );
}

interface SheetChoiceProps {
  readonly open: OpenList;
  readonly onChoose: (sheet: number) => void;
}

/** What was read, and which sheet of it where there are several. */
function SheetChoice({ open, onChoose }: SheetChoiceProps) {
  const { list, table, sheet } = open;
  return (
    <>
      <h2>
        {list.fileName}: {table.rows} rows, those of its header included
      </h2>
      {table.notes.map((note) => (
        <p className="notice" key={note}>
          {note}
        </p>
      ))}
      {list.tables.length > 1 && (
        <div className="tools">
          <div>
            <label htmlFor="sheet">Sheet</label>
            <select id="sheet" value={sheet} onChange={(event) => onChoose(Number(event.target.value))}>
              {list.tables.map((one, index) => (
                <option key={one.name} value={index}>
                  {one.name} ({one.rows} rows)
                </option>
              ))}
            </select>
          </div>
        </div>
      )}
    </>
  );
}

function TakeTools({ steps, lines }: { readonly steps: ListSteps; readonly lines: number }) {
  const isBusy = steps.busy !== '';
  return (
    <div className="tools" style={{ marginTop: 'var(--space-3)' }}>
      <button type="button" disabled={isBusy} onClick={steps.look}>
        Show what comes of it
      </button>
      {lines > 0 && (
        <div>
          <label htmlFor="existing">The {lines} lines that are there</label>
          <select
            id="existing"
            value={steps.existing}
            onChange={(event) => steps.setExisting(existingOf(event.target.value))}
          >
            <option value="compare">are compared with the list, and I choose</option>
            <option value="replace">are replaced</option>
            <option value="keep">stay, the new ones come after them</option>
          </select>
        </div>
      )}
      {steps.existing === 'compare' ? (
        <button className="main" type="button" disabled={isBusy} onClick={steps.compare}>
          Compare
        </button>
      ) : (
        <button className="main" type="button" disabled={isBusy} onClick={steps.take}>
          Take the lines
        </button>
      )}
    </div>
  );
}

function existingOf(text: string): Existing {
  return text === 'keep' || text === 'replace' ? text : 'compare';
}
