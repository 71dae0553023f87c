'use client';
import { useState } from 'react';
import type { FieldTrouble } from '#app/_lib/send.client.tsx';
import type { HouseField, HouseSection } from '#lib/contracts/house-fields.ts';
import styles from '../equipment/equipment.module.css';
import { RecordInput } from './record-input.client.tsx';
import { changedAt, emptyRow, valueAt } from './record-value.ts';

interface RecordFormProps {
  readonly sections: readonly HouseSection[];
  readonly currency: string;
  readonly start: unknown;
  readonly act: string;
  /** Saves; answers with what is to be put right. */
  readonly onSave: (value: unknown) => Promise<{ readonly said: string; readonly problems: readonly FieldTrouble[] }>;
}

/** A form of sections over a JSON value; the house judges it when it is saved. */
export function RecordForm({ sections, currency, start, act, onSave }: RecordFormProps) {
  const [value, setValue] = useState(start);
  const [said, setSaid] = useState('');
  const [problems, setProblems] = useState<readonly FieldTrouble[]>([]);
  const save = async () => {
    const answer = await onSave(value);
    setSaid(answer.said);
    setProblems(answer.problems);
  };
  const bound = {
    currency,
    problems,
    value,
    onChange: (path: string, next: unknown) => setValue((old: unknown) => changedAt(old, path.split('.'), next)),
  };
  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        save();
      }}
    >
      {sections.map(({ title, fields }) => (
        <fieldset key={title} className={styles.group}>
          <legend>{title}</legend>
          <div className="fields">
            {fields
              .filter(({ kind }) => kind !== 'rows')
              .map((field) => (
                <RecordInput key={field.path} field={field} path={field.path} {...bound} label={field.label} />
              ))}
          </div>
          {fields.map((field) => (field.kind === 'rows' ? <Rows key={field.path} field={field} {...bound} /> : null))}
        </fieldset>
      ))}
      <div className={styles.bar}>
        <button type="submit" className="main">
          {act}
        </button>
        <span role="status" className={styles.trouble}>
          {said}
        </span>
      </div>
    </form>
  );
}

interface RowsProps {
  readonly field: Extract<HouseField, { kind: 'rows' }>;
  readonly currency: string;
  readonly problems: readonly FieldTrouble[];
  readonly value: unknown;
  readonly onChange: (path: string, next: unknown) => void;
}

function Rows({ field, value, onChange, ...bound }: RowsProps) {
  const held = valueAt(value, field.path);
  const rows: readonly unknown[] = Array.isArray(held) ? held : [];
  return (
    <div>
      <h3>{field.label}</h3>
      {field.help === undefined ? null : <p className="soft">{field.help}</p>}
      <div className="wide">
        <table>
          <thead>
            <tr>
              {field.columns.map((column) => (
                <th key={column.path} scope="col">
                  {column.label}
                  {column.kind === 'amount' ? `, ${bound.currency}` : ''}
                </th>
              ))}
              <th scope="col">Row</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((_row, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: rows have no name of their own while they are typed
              <tr key={index}>
                {field.columns.map((column) => (
                  <td key={column.path}>
                    <RecordInput
                      field={column}
                      path={`${field.path}.${index}.${column.path}`}
                      label={`${column.label}, row ${index + 1}`}
                      hidden
                      value={value}
                      onChange={onChange}
                      {...bound}
                    />
                  </td>
                ))}
                <td>
                  <button
                    type="button"
                    className="quiet small"
                    aria-label={`Take row ${index + 1} of ${field.label} out`}
                    onClick={() =>
                      onChange(
                        field.path,
                        rows.filter((_one, place) => place !== index),
                      )
                    }
                  >
                    Take out
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p>
        <button type="button" onClick={() => onChange(field.path, [...rows, emptyRow(field.columns)])}>
          Add a row
        </button>
      </p>
    </div>
  );
}
