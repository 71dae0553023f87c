'use client';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import type { ImportPreview, ImportRow } from '#lib/services/csv-table.ts';
import styles from './equipment.module.css';

interface CsvExchangeProps {
  /** Where the file is saved from, looked at and taken. */
  readonly path: string;
  readonly what: string;
  readonly mayChange: boolean;
}

/** A CSV file out, and in again: shown row by row before it is taken whole. */
export function CsvExchange({ path, what, mayChange }: CsvExchangeProps) {
  const router = useRouter();
  const [text, setText] = useState('');
  const [preview, setPreview] = useState<ImportPreview | null>(null);
  const [said, setSaid] = useState({ sentence: '', kind: 'good' });
  const look = async (file: File | undefined) => {
    if (file === undefined) return;
    const content = await file.text();
    const sent = await send<ImportPreview>({ method: 'POST', path, body: { text: content } });
    setText(content);
    setPreview(sent.ok ? sent.value : null);
    setSaid({ sentence: sent.ok ? '' : sent.sentence, kind: 'refusal' });
  };
  const take = async () => {
    const sent = await send({ method: 'POST', path, body: { text, seen: preview?.seen } });
    setSaid(sent.ok ? { sentence: 'Taken as shown.', kind: 'good' } : { sentence: sent.sentence, kind: 'refusal' });
    if (!sent.ok) return;
    setPreview(null);
    router.refresh();
  };
  return (
    <>
      <div className="tools">
        <a className="button" href={path} download>
          Save {what} as CSV
        </a>
        <div>
          <label htmlFor={`file-${path}`}>Look at a CSV file of {what}</label>
          <input
            id={`file-${path}`}
            type="file"
            accept=".csv,text/csv"
            onChange={(event) => look(event.target.files?.[0])}
          />
        </div>
      </div>
      <p role="status" className={said.sentence === '' ? '' : `notice ${said.kind}`}>
        {said.sentence}
      </p>
      {preview === null ? null : <Preview preview={preview} mayChange={mayChange} onTake={take} />}
    </>
  );
}

const ROWS_SHOWN = 200;

interface PreviewProps {
  readonly preview: ImportPreview;
  readonly mayChange: boolean;
  readonly onTake: () => void;
}

function Preview({ preview, mayChange, onTake }: PreviewProps) {
  const count = (kind: ImportRow['kind']) => preview.rows.filter((row) => row.kind === kind).length;
  const told = preview.rows.filter(({ kind }) => kind !== 'same');
  const refused = count('refused');
  return (
    <section className="panel" aria-label="What the file would change">
      <p>
        <strong>
          {count('added')} added, {count('changed')} changed, {count('same')} the same, {refused} refused.
        </strong>{' '}
        {refused > 0 ? 'Nothing can be taken until every refused row is put right.' : ''}
      </p>
      {told.length === 0 ? null : (
        <div className="wide">
          <table>
            <thead>
              <tr>
                <th scope="col" className="number">
                  Row
                </th>
                <th scope="col">Name</th>
                <th scope="col">What happens</th>
                <th scope="col">Column by column</th>
              </tr>
            </thead>
            <tbody>
              {told.slice(0, ROWS_SHOWN).map((row) => (
                <RowView key={row.row} row={row} />
              ))}
            </tbody>
          </table>
        </div>
      )}
      {told.length > ROWS_SHOWN ? <p>and {told.length - ROWS_SHOWN} more rows</p> : null}
      <div className={styles.bar}>
        <button
          type="button"
          className="main"
          onClick={onTake}
          disabled={!mayChange || refused > 0 || told.length === 0}
        >
          Take {count('added') + count('changed')} rows
        </button>
        {mayChange ? null : <span className="soft">Only an administrator takes a file.</span>}
        {told.length === 0 ? <span className="soft">The file changes nothing.</span> : null}
      </div>
    </section>
  );
}

function RowView({ row }: { readonly row: ImportRow }) {
  return (
    <tr>
      <td className="number">{row.row}</td>
      <th scope="row">{row.name}</th>
      <td>
        <span className={row.kind === 'refused' ? 'mark refusal' : 'mark'}>{row.kind}</span>
      </td>
      <td>
        {row.problems.map(({ column, sentence }) => (
          <div key={`${column} ${sentence}`}>
            {column}: {sentence}
          </div>
        ))}
        {row.differences.map(({ column, before, after }) => (
          <div key={column}>
            {column}: <span className={styles.gone}>{before}</span> {after === '' ? 'empty' : after}
          </div>
        ))}
      </td>
    </tr>
  );
}
