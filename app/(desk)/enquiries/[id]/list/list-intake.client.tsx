'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import type { ColumnChoice } from '#lib/services/list-column-choices.ts';
import type { ReceivedList } from '#lib/services/receive-list.ts';
import { type Mapping, MappingTable } from './mapping-table.client.tsx';
import { Outcome } from './taken-lists.tsx';

interface ListIntakeProps {
  readonly enquiryId: number;
  readonly lines: number;
  readonly columns: readonly ColumnChoice[];
}

type Preview = Parameters<typeof Outcome>[0]['outcome'];

/** Upload, see what each column was taken for, correct it, see what would come of it, take it. */
export function ListIntake({ enquiryId, lines, columns }: ListIntakeProps) {
  const router = useRouter();
  const [list, setList] = useState<ReceivedList>();
  const [sheet, setSheet] = useState(0);
  const [mapping, setMapping] = useState<Mapping>();
  const [preview, setPreview] = useState<Preview>();
  const [existing, setExisting] = useState<'keep' | 'replace'>(lines > 0 ? 'replace' : 'keep');
  const [trouble, setTrouble] = useState('');
  const [busy, setBusy] = useState('');
  const table = list?.tables[sheet];

  async function upload(event: FormEvent<HTMLFormElement>): Promise<void> {
    event.preventDefault();
    setBusy('Reading the list…');
    const sent = await send<ReceivedList>({
      method: 'POST',
      path: `/api/v1/enquiries/${enquiryId}/lists`,
      body: new FormData(event.currentTarget),
    });
    setBusy('');
    setTrouble(sent.ok ? '' : sent.sentence);
    setPreview(undefined);
    if (!sent.ok) return;
    setList(sent.value);
    choose(sent.value, 0);
  }

  function choose(received: ReceivedList, index: number): void {
    setSheet(index);
    setMapping(received.tables[index]?.mapping);
    setPreview(undefined);
  }

  async function ask(step: 'preview' | 'take'): Promise<void> {
    if (!list || !table || !mapping) return;
    setBusy(step === 'take' ? 'Taking the lines…' : 'Reading every row…');
    const path = `/api/v1/enquiries/${enquiryId}/lists/${list.fileId}${step === 'preview' ? '/preview' : ''}`;
    const sent = await send<Preview>({ method: 'POST', path, body: { table: table.name, mapping, existing } });
    setBusy('');
    setTrouble(sent.ok ? '' : sent.sentence);
    if (!sent.ok) return;
    if (step === 'preview') setPreview(sent.value);
    else {
      router.push(`/enquiries/${enquiryId}`);
      router.refresh();
    }
  }

  return (
    <section>
      <form className="panel tools" onSubmit={upload}>
        <div>
          <label htmlFor="list">Valve list (CSV, TSV or XLSX, at most 10 MB)</label>
          <input id="list" name="list" type="file" accept=".csv,.tsv,.txt,.xlsx" required />
        </div>
        <button type="submit" disabled={busy !== ''}>
          Read the list
        </button>
        <a className="button" href="/api/v1/template">
          Download the template
        </a>
      </form>
      <p aria-live="polite" className="soft">
        {busy}
      </p>
      {trouble !== '' && (
        <p className="notice refusal" role="alert">
          {trouble}
        </p>
      )}
      {list && table && mapping && (
        <div className="panel">
          <h2>
            {list.fileName}: {table.rows} rows
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
                <select id="sheet" value={sheet} onChange={(event) => choose(list, Number(event.target.value))}>
                  {list.tables.map((one, index) => (
                    <option key={one.name} value={index}>
                      {one.name} ({one.rows} rows)
                    </option>
                  ))}
                </select>
              </div>
            </div>
          )}
          <MappingTable
            table={table}
            mapping={mapping}
            columns={columns}
            onChange={(next) => {
              setMapping(next);
              setPreview(undefined);
            }}
          />
          <div className="tools" style={{ marginTop: 'var(--space-3)' }}>
            <button type="button" disabled={busy !== ''} onClick={() => ask('preview')}>
              Show what comes of it
            </button>
            {lines > 0 && (
              <div>
                <label htmlFor="existing">The {lines} lines that are there</label>
                <select
                  id="existing"
                  value={existing}
                  onChange={(event) => setExisting(event.target.value === 'keep' ? 'keep' : 'replace')}
                >
                  <option value="replace">are replaced</option>
                  <option value="keep">stay, the new ones come after them</option>
                </select>
              </div>
            )}
            <button className="main" type="button" disabled={busy !== ''} onClick={() => ask('take')}>
              Take the lines
            </button>
          </div>
          {preview && <Outcome outcome={preview} />}
        </div>
      )}
    </section>
  );
}
